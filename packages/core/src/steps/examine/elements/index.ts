export type { BreakStatus, ElementBreak, ElementSpan, ElementTimes, FoundElements } from './element-times.ts';
