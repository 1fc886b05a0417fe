export {
  type Alignment,
  type AlignRow,
  align,
  alignRow,
  otherObjectCost,
  sameMotions,
} from './alignment.ts';
export { markElement, moveElement, removeElement, renameElement } from './commands.ts';
export type { BreakStatus, ElementBreak, ElementSpan, ElementTimes, FoundElements } from './element-times.ts';
export { elementPieces, elementTraces, findElements } from './find-elements.ts';
