export { checkWork, unitsWithoutSteps } from './check-work.ts';
export { type DrawnWork, type WorkChoice, workFromRecord } from './from-record.ts';
export { instanceOf } from './instance-of.ts';
export { methodFromSchedule } from './method-from-schedule.ts';
export { parseWork, workJsonSchema, writeWork } from './read-work.ts';
export {
  type StepMotion,
  type Work,
  type WorkBench,
  type WorkPlace,
  type WorkStep,
  workFormatVersion,
  workSchema,
} from './work-schema.ts';
