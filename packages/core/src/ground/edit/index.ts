export { applyAll, applyEdit } from './apply.ts';
export type { Applied, ApplyResult } from './apply-result.ts';
export {
  type CycleFields,
  type Edit,
  type ElementFields,
  type ExaminationFields,
  editName,
  editSchema,
  type FilmFields,
  type GroupEdit,
  type MethodFields,
  type MotionFields,
  type PlaceFields,
  readEdit,
  type SingleEdit,
  type StudyFields,
} from './edit.ts';
export { sameData } from './fields.ts';
export {
  dropRedo,
  dropUndo,
  emptyHistory,
  type History,
  perform,
  redo,
  redoName,
  type Step,
  undo,
  undoName,
} from './history.ts';
export type {
  ComparisonFields,
  TimedElementFields,
  TimeEdit,
  TimeStudyFields,
} from './time-edits.ts';
export type { WorkEdit, WorkFields, WorkPlaceFields, WorkStepFields } from './work-edits.ts';
