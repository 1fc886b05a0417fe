export { emptyTimeStudy, timeStudyFromRecord } from './begin.ts';
export { filledSheet, type PackedTimeStudy, packTimeStudy, slimSheet, unpackTimeStudy } from './packed.ts';
export { type PastedCell, type PastedReadings, type PasteWish, parsePasted } from './pasted.ts';
export { timeStudySheet } from './sheet.ts';
export { allowancesOf, allowanceWords } from './sheet-plan.ts';
export type {
  PilotGap,
  PilotProgress,
  SheetAllowances,
  SheetCell,
  SheetFault,
  SheetField,
  SheetRow,
  TimeStudySheet,
  WholeCycle,
} from './sheet-types.ts';
export { type StandardWish, standardAtWork, type WorkedStandard } from './standard-at-work.ts';
export { type TypedTime, toUs } from './typed-time.ts';
