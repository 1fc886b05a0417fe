export { type CsvLine, type CsvTable, csvTable } from './csv-cells.ts';
export { type CsvColumn, csvColumns } from './csv-columns.ts';
export { type LabelMapping, type MappedLabel, readLabelMapping } from './csv-mapping.ts';
export type { CsvOptions } from './csv-options.ts';
export { type CsvStudy, csvToStudy } from './csv-to-study.ts';
export { motionsToCsv } from './motions-to-csv.ts';
export { motionsToVtt } from './motions-to-vtt.ts';
