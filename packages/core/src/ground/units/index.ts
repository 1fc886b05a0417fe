export { countText, numberText, percentText } from './number-text.ts';
export { clockText, exactSeconds, parseTime, timeNumber, timeText } from './time-text.ts';
export { fromUnit, inUnit, type TimeUnit, timeUnitNames, timeUnits } from './time-unit.ts';
