import { type FindingCode, findingTexts, type Severity } from './catalogue.ts';

/** Where a finding points: into the document (JSON pointer), into a text (line and column from 1), or at a file. */
export interface FindingPlace {
  readonly pointer?: string;
  readonly line?: number;
  readonly column?: number;
  readonly file?: string;
  readonly hand?: 'left' | 'right';
  readonly frame?: number;
}

/**
 * Something a person should know about their data or film: what was found, where, and what to do.
 * `message` is a whole sentence in plain words; `source` names a publication when the finding rests on one.
 */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly where: FindingPlace;
  readonly message: string;
  readonly source?: string;
}

/** Makes a finding from the catalogue; words in braces are filled from `words`. */
export function finding(
  code: FindingCode,
  where: FindingPlace = {},
  words: Readonly<Record<string, string | number>> = {},
): Finding {
  const entry = findingTexts[code];
  const message = entry.text.replace(/\{(\w+)\}/g, (whole, name: string) =>
    name in words ? String(words[name]) : whole,
  );
  return { code, severity: entry.severity, where, message };
}

/** A finding as one line: place first, then what and what to do. */
export function findingLine(item: Finding): string {
  const { file, line, column, pointer } = item.where;
  const parts = [
    file,
    line === undefined ? undefined : `line ${line}${column === undefined ? '' : `, column ${column}`}`,
    pointer === undefined ? undefined : pointer === '' ? 'the whole document' : pointer,
  ].filter((part): part is string => part !== undefined);
  return `${parts.length > 0 ? `${parts.join(': ')}: ` : ''}${item.message} [${item.code}]`;
}
