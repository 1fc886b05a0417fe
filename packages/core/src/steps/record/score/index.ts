export { type Area, inside, type ScoreAreas, scoreAreas } from './areas.ts';
export { axisNodes } from './axis-nodes.ts';
export { type AxisTick, axisSteps, axisTicks } from './axis-ticks.ts';
export { handHeight } from './hand-height.ts';
export { handNodes } from './hand-nodes.ts';
export { type HandSide, handSide } from './hand-side.ts';
export type { ScoreHit } from './hit.ts';
export { hitScore } from './hit.ts';
export { overlayNodes, overviewWindow } from './overlay-nodes.ts';
export { overviewNodes, overviewScale } from './overview-nodes.ts';
export { type MotionPiece, type Piece, type RunPiece, rowPieces } from './pieces.ts';
export { motionAtTime, type RowTimes, rowTimes, withBoundary } from './row-times.ts';
export { type TimeScale, timeScale } from './scale.ts';
export type {
  BoundaryRef,
  LitSpan,
  ScoreGround,
  ScoreInput,
  ScorePreview,
  ScoreSelection,
} from './score-input.ts';
export { groundNodes, type ScoreLayout, scoreLayout, scorePlan } from './score-layout.ts';
export { boundaryOf, boundaryRange, clampBoundary, nearestBoundary, scoreLimits } from './snap.ts';
export {
  clampView,
  followView,
  frameSpan,
  panView,
  type TimeView,
  type ViewLimits,
  zoomView,
} from './view.ts';
