export { type RunChartLook, runChart } from './run-chart.ts';
export { type RunBand, type RunFacts, type RunPoint, runOf } from './run-facts.ts';
export { type StudySheetLook, studySheetPages } from './study-sheet.ts';
