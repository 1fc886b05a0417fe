export {
  type ComparedMoney,
  type ComparisonFacts,
  comparedMoney,
  comparisonOf,
} from './comparison/comparison.ts';
export {
  type Cause,
  type ChargedMotion,
  causes,
  type Decomposition,
  type DecompositionPart,
  type DecompositionRow,
  decompositionOf,
  decompositionRule,
} from './decomposition/decomposition.ts';
export {
  type Difference,
  type DifferenceWish,
  differenceOf,
  type MethodTimes,
  type TimedMethod,
  type TimeRatio,
} from './difference/difference.ts';
export type { DrawnDifference } from './difference/drawn.ts';
export type { MoreCycles } from './difference/more-cycles.ts';
export {
  type Assignment,
  type AssignmentPlan,
  assignment,
  type BestAssignment,
  bestAssignment,
  idealMachines,
  type ServedMachine,
} from './machines/assignment.ts';
export {
  type Calling,
  type CallingGroup,
  type ChanceStops,
  machinesCalling,
  type ServiceLoss,
  serviceLoss,
  standingTogether,
} from './machines/random-calls.ts';
export { machinesReportJsonSchema, machinesReportSchema } from './machines/report-schema.ts';
export { type MachinesNeeded, machinesNeeded, type Order } from './machines/workload.ts';
export type { BreakEven } from './money/break-even.ts';
export { type ChangeMoney, moneyOf } from './money/change-case.ts';
export { type Learning, type LearningLoss, learningLoss } from './money/learning-loss.ts';
export {
  type CaseField,
  caseFields,
  type Outlook,
  outlookOf,
  outlookRule,
  type RangedCase,
  type TornadoBar,
} from './money/outlook.ts';
export { discountedPayback, evenPayback, type Payback, payback } from './money/payback.ts';
export {
  annuityFactor,
  type Investment,
  netPresentValue,
} from './money/present-value.ts';
export type { ChangeCase } from './money/yearly-flows.ts';
export { type YearlySaving, type YearOfWork, yearlySaving } from './money/yearly-saving.ts';
export { objectKey } from './motion-key.ts';
export {
  type EqualPace,
  equalPaceRule,
  type PacedMotion,
  paceOf,
  type SavingAtEqualPace,
  unitTimes,
} from './pace/pace.ts';
export { materialShare } from './pace/pace-notes.ts';
export type { SharedMotion, SharedSide } from './pace/shared-motions.ts';
export * from './page/index.ts';
export { type Claim, type ClaimGrounds, claimOf } from './proof/claim.ts';
export { type Proof, type ProofChoice, proofOf } from './proof/proof.ts';
export { type EvaluateReport, evaluateReportJsonSchema, evaluateReportSchema } from './report-schema.ts';
export {
  outputGainedFor,
  type Saving,
  savingFromRates,
  savingFromTimes,
  savingWords,
  timeSavedFor,
} from './saving.ts';
export { type CycleSync, type SyncPart, syncOf } from './sync/sync.ts';
export { type SyncMode, type SyncTimeline, syncModes, syncTimeline } from './sync/timeline.ts';
