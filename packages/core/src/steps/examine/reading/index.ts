export type { Piece } from './pieces.ts';
export {
  type CycleReading,
  cycleWords,
  type MethodReading,
  type ReadingChoice,
  readMethod,
  readRecords,
  type Trace,
  traceTime,
} from './reading.ts';
export { type Segment, segmentsOf } from './segments.ts';
export { type HandState, stateOf } from './state.ts';
