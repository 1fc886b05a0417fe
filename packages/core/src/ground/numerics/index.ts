export { fShare, standardNormalQuantile, standardNormalShare, studentShare } from './distributions.ts';
export { type Random, seededRandom } from './random.ts';
export { type Interval, quantileOf, type Sample, sampleOf, studentQuantile } from './sample.ts';
