export {
  type Allowance,
  type AllowanceChoice,
  type AllowanceConvention,
  type AllowancePart,
  allowanceFactor,
  conventionWords,
  inConvention,
  type Relaxation,
  relaxationFrom,
} from './allowances.ts';
export {
  type Assurance,
  assuranceOf,
  type CyclesForm,
  type CyclesNeeded,
  type CyclesWish,
  cyclesNeeded,
  type Pilot,
  type Precision,
  type PrecisionReached,
  precisionReached,
} from './cycles-needed.ts';
export {
  type ElementSummary,
  type OutlierProposal,
  type OutlierRule,
  summarise,
} from './element-summary.ts';
export { type RecordChoice, type RecordedReadings, readingsFromRecord } from './from-record.ts';
export { readingsFromTable, type TableChoice, type TableReadings } from './from-table.ts';
export {
  batchTime,
  firstFrom,
  type LearningCurve,
  type LearningModel,
  learningExponent,
  learningModelWords,
  nearBatchTime,
  rateFromTwo,
  timeUpTo,
  unitReaching,
  unitTime,
} from './learning.ts';
export { fitLearning, type LearningFit, type LearningPoint } from './learning-fit.ts';
export { type Line, lineOf } from './line.ts';
export {
  momentsOf,
  numbersFromTable,
  observationTimes,
  type Shift,
  type Span,
} from './observation-times.ts';
export * from './print/index.ts';
export {
  type BasicReading,
  type BasicTimes,
  basicTime,
  basicTimes,
  convertRating,
  highestPace,
  type RatingSource,
  ratingFault,
  type ScaleStandard,
} from './rating.ts';
export {
  type CountedReading,
  countedReadings,
  type Reading,
  readingFaults,
  readingsOf,
  timesFromRunningWatch,
} from './reading.ts';
export * from './report/index.ts';
export { roundedDown, roundedUp } from './rounding.ts';
export * from './sheet/index.ts';
export { type Bootstrap, type BootstrapWish, bootstrapStandard } from './standard-bootstrap.ts';
export {
  type MeasuredElement,
  type MeasuredStandard,
  measuredStandard,
  type StandardInterval,
  type Uncertainty,
} from './standard-interval.ts';
export {
  type AllowancePlan,
  type Output,
  outputIn,
  type StandardElement,
  type StandardTime,
  standardTime,
  type TimedElement,
} from './standard-time.ts';
export * from './stopwatch/index.ts';
export {
  type StudyElement,
  type StudyPlan,
  type StudyRow,
  type StudyStandard,
  studyStandard,
} from './study-standard.ts';
export { type Trend, trendOf } from './trend.ts';
export { type ReadingGroup, type Variance, varianceBetween } from './variance.ts';
export {
  type ObservationsNeeded,
  observationsNeeded,
  type SampledDay,
  type SampledStandard,
  type SampledWork,
  type ShareChart,
  type ShareLimits,
  type SharePrecision,
  type ShareSeen,
  shareChart,
  shareLimits,
  shareSeen,
  standardFromSampling,
} from './work-sampling.ts';
