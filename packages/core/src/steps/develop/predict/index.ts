export { type Calibration, calibrate, type Factor, predictedConfidence } from './calibration.ts';
export type { MotionWanted } from './from-cells.ts';
export { type Library, libraryFrom } from './library.ts';
export { type Cell, cellsOf, type Occurrence, occurrencesOf } from './observed.ts';
export {
  drawnTime,
  type PredictedTime,
  predictedTime,
  type TimeError,
  type TimeSource,
} from './predicted-time.ts';
export { burstPace, type PredictionBase, type Predictor, predictorFrom } from './predictor.ts';
export { nextMotion } from './single-motion.ts';
export { parseTimeTable, type TableLine, type TimeTable, tableColumns } from './time-table.ts';
export { type DrawnTimes, drawTimes, predictWork, type StepTimes, type WorkTimes } from './work-times.ts';
