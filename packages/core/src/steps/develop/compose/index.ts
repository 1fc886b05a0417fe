export { checkSchedule } from './check-schedule.ts';
export { type Composed, type ComposeWish, compose } from './compose.ts';
export { type Arc, arcsOf, type Orders, type Timing, timingOf } from './event-graph.ts';
export type {
  CycleKind,
  Instance,
  Mode,
  PlacedTask,
  Role,
  Schedule,
  Spot,
  Task,
} from './instance.ts';
export { roleOf } from './instance.ts';
export { ordersOf, scheduleOf } from './schedule.ts';
export { type ShorterMethod, type ShorterWish, shorterThan } from './shorter-than.ts';
