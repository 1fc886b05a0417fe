export type { PlacedStart } from './boundaries.ts';
export { cycleChances, leastChance, trueChance } from './chance.ts';
export type { ConfirmedCycle, LabelledStart, Stretch } from './confirmed.ts';
export type { ProposeInput } from './method-input.ts';
export type { Proposal, ProposedCycle, ProposedMotion, ProposedSpan } from './proposal.ts';
export { proposeFromTrack } from './propose.ts';
export {
  type OnProgress,
  type ProposedRows,
  type ProposeWeights,
  proposeRows,
  proposeWeights,
} from './propose-rows.ts';
export { type ProposeReport, proposeReport, proposeReportJsonSchema } from './report.ts';
