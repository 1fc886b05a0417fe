export { type CsvColumn, csvColumns } from './csv-columns.ts';
export { type CsvOptions, type CsvStudy, csvToStudy } from './csv-to-study.ts';
export { motionsToCsv } from './motions-to-csv.ts';
export { motionsToVtt } from './motions-to-vtt.ts';
