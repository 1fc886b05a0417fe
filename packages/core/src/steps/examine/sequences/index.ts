export type {
  Likeness,
  RankedRuns,
  RepeatedRun,
  RepeatedSequences,
  RunOccurrence,
  RunStep,
  SequenceChoice,
  SequenceRow,
} from './run.ts';
export { type MotionToken, type TokenBy, tokenWords } from './token.ts';
