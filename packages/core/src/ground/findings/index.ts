export { type FindingCode, findingTexts, type Severity } from './catalogue.ts';
export { type Finding, type FindingPlace, finding, findingLine } from './finding.ts';
