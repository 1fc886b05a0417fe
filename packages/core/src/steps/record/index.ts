export { recordAdvice } from './advice.ts';
export {
  type ChartChoice,
  type ChartFacts,
  type ChartHeader,
  type ChartMotion,
  chartFacts,
} from './chart/facts.ts';
export { describeMotion, type MotionWords } from './chart/motion-words.ts';
export { type ProcessChartLook, processChart } from './chart/process-chart.ts';
export { type GroupTimes, groupTimes, type HandTotal, type KindTotal, kindTotals } from './chart/totals.ts';
export { type TwoHandChartLook, twoHandChart } from './chart/two-hand-chart.ts';
export * from './commands/index.ts';
export * from './interchange/index.ts';
export {
  defaultKeyMap,
  type KeyCode,
  type KeyMap,
  keyFor,
  keyMeaning,
  mirroredKeys,
  mirrorKey,
  plainKeyLabel,
  readKeyMap,
  withKey,
} from './key-map.ts';
export * from './propose/index.ts';
export * from './review/index.ts';
export * from './score/index.ts';
export * from './tracks/index.ts';
