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
export { repeatedSequences } from './sequences.ts';
export { type MotionToken, type TokenBy, type TokenTable, tokenTable, tokenWords } from './token.ts';
