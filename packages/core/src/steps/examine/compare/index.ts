export {
  type ComparedCycle,
  type Comparison,
  type CycleChoice,
  compareCycles,
  defaultComparison,
  type LengthChange,
  lengthChange,
} from './comparison.ts';
export { type ComparisonRow, comparisonRows } from './comparison-rows.ts';
export {
  type ComparisonLook,
  type ComparisonPlaces,
  comparisonPlaces,
  comparisonScene,
} from './comparison-scene.ts';
export { type ComparisonWords, comparisonWords } from './comparison-words.ts';
export { type CycleOption, cycleOptions, cycleOptionWords } from './cycle-options.ts';
export { type CycleStep, cycleSteps } from './cycle-steps.ts';
