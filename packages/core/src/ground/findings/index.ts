export { type FindingCode, findingTexts, type Severity } from './catalogue.ts';
export { type Finding, type FindingPlace, finding, findingLine } from './finding.ts';
export {
  firstFault,
  foundText,
  largest,
  type NumberRange,
  rangeFault,
  shortNumber,
  smallest,
} from './number-range.ts';
export { reportParts } from './refused-schema.ts';
