export { clearSpan, copyToNextCycle, copyToOtherHand, type Span } from './copy.ts';
export { endCycles, markCycle, moveCycleMark, removeCycleMark, setCycleAside } from './cycles.ts';
export {
  changeMotion,
  changeMotions,
  joinWithPrevious,
  type MarkOptions,
  markMotion,
  moveRowEnd,
  moveStart,
  splitMotion,
  type Target,
} from './mark.ts';
export { type MotionDraft, replaceSpan } from './replace-span.ts';
