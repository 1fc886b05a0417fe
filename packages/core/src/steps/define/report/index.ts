export { defineFiguresJsonSchema, defineFiguresSchema } from './figures-schema.ts';
export { defineReport, type ReportSource, type WorkedSheet } from './report.ts';
export { type DefineReport, defineReportJsonSchema, defineReportSchema } from './report-schema.ts';
