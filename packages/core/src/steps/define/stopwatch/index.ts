export {
  comingElement,
  elapsedTime,
  type JointTime,
  readyWatch,
  recentReadings,
  runningElement,
  runningTime,
  type WatchChange,
  type WatchCommand,
  type WatchPlan,
  type WatchReading,
  type WatchState,
  type WatchStep,
  type WatchSums,
  type WatchTiming,
  watchPlan,
} from './watch-state.ts';
export { watchStep } from './watch-step.ts';
