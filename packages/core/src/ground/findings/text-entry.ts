export type Severity = 'error' | 'warning' | 'note';

/** One text of the catalogue; words in braces are filled in. */
export interface TextEntry {
  readonly severity: Severity;
  readonly text: string;
}
