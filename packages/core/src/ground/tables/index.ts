export {
  type BodyPercentile,
  type BodySex,
  type BodySizes,
  bodySizes,
  bodySizesSource,
} from './body-sizes.ts';
export {
  type DecisionChoice,
  decisionChoices,
  type ExaminationHead,
  type ExaminationHeadFacts,
  type ExaminationQuestion,
  type ExaminationQuestionFacts,
  examinationHeads,
  examinationQuestionOf,
  examinationQuestions,
} from './critical-examination.ts';
export {
  classesCaution,
  furtherPrinciples,
  type MotionClass,
  type MotionClassFacts,
  motionClasses,
  type Principle,
  type PrincipleArea,
  type PrincipleNumber,
  principleOf,
  principles,
} from './motion-economy.ts';
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
  ballistic,
  discTransfer,
  heavierLoad,
  type Movement,
  type MovementLaw,
  type MovementLawId,
  movementLawOf,
  movementLaws,
  otherHandSlower,
  tapping,
} from './movement-laws.ts';
export {
  type ProcessSymbol,
  type ProcessSymbolFacts,
  processSymbols,
  symbolOfMotion,
} from './process-symbols.ts';
export {
  type RatingScaleFacts,
  type RatingScaleId,
  ratingScales,
} from './rating-scales.ts';
export {
  type AllowanceColumn,
  type AllowanceEdition,
  type AllowanceEditionId,
  type AllowanceLevel,
  type AllowanceRow,
  type AllowanceRowId,
  allowanceEditions,
  contingencyMost,
} from './relaxation-allowances.ts';
export { type Source, type SourceId, sources } from './sources.ts';
export { type WorkArea, type WorkAreaFacts, workAreaOf, workAreas } from './work-areas.ts';
export { shoes, sittingHeight, type WorkHeightFacts, type WorkKind, workHeights } from './work-heights.ts';
