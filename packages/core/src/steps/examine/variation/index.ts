export type {
  BoundOrReason,
  Deviation,
  DeviationPattern,
  ElementVariation,
  PatternCount,
  PracticeBound,
  Spread,
  TypicalCycle,
  Variation,
} from './variation-types.ts';
