export { type Grouping, type GroupingId, groupings, groupOf, type MotionGroup } from './motion-groupings.ts';
export {
  fundamentalMotions,
  type MotionFacts,
  type MotionKind,
  motionFacts,
  motionFactsOf,
  motionKinds,
  type Pattern,
  parseMotionKind,
} from './motion-kinds.ts';
export {
  type ProcessSymbol,
  type ProcessSymbolFacts,
  processSymbols,
  symbolOfMotion,
} from './process-symbols.ts';
export { type Source, type SourceId, sources } from './sources.ts';
