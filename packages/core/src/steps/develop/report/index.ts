export {
  type DevelopReport,
  developReportJsonSchema,
  developReportSchema,
  type WorkWrittenReport,
} from './report-schema.ts';
