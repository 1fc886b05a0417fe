export { type Area, inside, type ScoreAreas, scoreAreas } from './areas.ts';
export { axisSteps, axisTicks } from './axis-ticks.ts';
export { type MotionPiece, type Piece, type RunPiece, rowPieces } from './pieces.ts';
export { motionAtTime, type RowTimes, rowTimes, withBoundary } from './row-times.ts';
export { type TimeScale, timeScale } from './scale.ts';
export type { BoundaryRef, ScoreSelection } from './score-input.ts';
export { boundaryRange, clampBoundary, nearestBoundary } from './snap.ts';
export {
  clampView,
  followView,
  frameSpan,
  panView,
  type TimeView,
  type ViewLimits,
  zoomView,
} from './view.ts';
