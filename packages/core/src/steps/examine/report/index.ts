export { parseCycles } from './cycle-choice.ts';
export { type Examined, examinationReport, type FigureSet } from './examination-report.ts';
export { type FigureRow, figureRows } from './figure-rows.ts';
export {
  type ExaminationReport,
  examinationReportJsonSchema,
  examinationReportSchema,
} from './report-schema.ts';
