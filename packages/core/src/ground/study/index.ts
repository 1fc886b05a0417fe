export { checkFilm, checkRow, checkStudy } from './check.ts';
export { checkElements, checkExamination, subjectKey } from './check-examination.ts';
export { emptyStudy, unmarkedMethod } from './create.ts';
export { encodeFrameTimes, type FrameClock, frameClock, frameCount } from './frame-times.ts';
export { parseStudy, readStudy, shapeFindings } from './parse.ts';
export { endOf, findItem, itemAt, itemsBetween, rowStart, type Spanned, spanAt } from './row.ts';
export { clockFault, clockResiduals, type SceneClock, sceneClock } from './scene-clock.ts';
export {
  type Answer,
  type Clock,
  type Cycle,
  type Decision,
  type ElementMark,
  type Examination,
  type ExaminationSubject,
  type Film,
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
export { filmOf, type MethodClock, methodClock } from './time-base.ts';
export { writeStudy } from './write.ts';
