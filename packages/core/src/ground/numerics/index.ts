export { type Interval, quantileOf, type Sample, sampleOf, studentQuantile } from './sample.ts';
