export { checkFilm, checkRow, checkStudy } from './check.ts';
export { checkElements, checkExamination, subjectKey } from './check-examination.ts';
export { checkKeptWork } from './check-kept-work.ts';
export { checkComparison, checkTimeStudy } from './check-time-study.ts';
export type { Comparison, MoneyCase } from './comparison-schema.ts';
export { emptyStudy, unmarkedMethod } from './create.ts';
export { encodeFrameTimes, type FrameClock, frameClock, frameCount } from './frame-times.ts';
export { parseStudy, readStudy, shapeFindings } from './parse.ts';
export { isConfirmedCycle, isProposed, markedStretch, proposedBetween } from './proposed.ts';
export { endOf, findItem, itemAt, itemsBetween, rowStart, type Spanned, spanAt } from './row.ts';
export { clockFault, clockResiduals, type SceneClock, sceneClock } from './scene-clock.ts';
export {
  type Answer,
  type Calibration,
  type Clock,
  type Cycle,
  type Decision,
  type ElementMark,
  type Examination,
  type ExaminationSubject,
  type Film,
  type FilmTrack,
  type FrameTimes,
  formatVersion,
  type Hand,
  hands,
  type Method,
  type Motion,
  type Operation,
  otherHand,
  type Place,
  type Row,
  type Study,
  studyJsonSchema,
  studyParts,
  studySchema,
} from './schema.ts';
export type { Frozen } from './schema-parts.ts';
export { filmOf, type MethodClock, methodClock } from './time-base.ts';
export type {
  ForeignElement,
  Sitting,
  TimeStudy,
  TimeStudyAllowances,
  TimeStudyElement,
  TimeStudyReading,
  TimeStudySource,
} from './time-study-schema.ts';
export {
  type KeptChange,
  type KeptWork,
  type StepMotion,
  type Work,
  type WorkBench,
  type WorkPlace,
  type WorkStep,
  workFormatVersion,
  workSchema,
} from './work-schema.ts';
export { writeStudy } from './write.ts';
