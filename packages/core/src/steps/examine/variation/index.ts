export { patternNames } from './patterns.ts';
export { variationOf } from './variation.ts';
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
  VariationChoice,
} from './variation-types.ts';
