export { bothHandsSlower, shareOfBothAtWork, slowedBy } from './both-at-work.ts';
export { type PeriodInterval, periodInterval } from './period-interval.ts';
