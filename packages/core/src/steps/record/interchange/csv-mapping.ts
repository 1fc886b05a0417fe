import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { fundamentalMotions, type MotionKind, parseMotionKind } from '../../../ground/tables/index.ts';
import { type CsvLine, unguardText } from './csv-cells.ts';
import { type NamedTable, namedTable, type TableDesign } from './csv-columns.ts';

/** What a label of somebody else's record stands for. */
export interface MappedLabel {
  /** As the mapping writes it. */
  readonly label: string;
  /** Line of the mapping, from 1. */
  readonly line: number;
  readonly kind: MotionKind;
  readonly object?: string;
  readonly from?: string;
  readonly to?: string;
}

export interface LabelMapping {
  /** By `labelKey`. */
  readonly labels: ReadonlyMap<string, MappedLabel>;
  /** Columns that were not read, and labels that stand there twice and say the same. */
  readonly notes: readonly Finding[];
}

type Column = 'label' | 'motion' | 'object' | 'from' | 'to';
const design: TableDesign<Column> = {
  columns: ['label', 'motion', 'object', 'from', 'to'],
  needed: ['label', 'motion'],
};
const details = ['object', 'from', 'to'] as const;
/** At most this many characters in a label and in a text beside it. */
export const longestText = 200;

/** Labels are the same when they differ in outer blanks or in large and small letters only. */
export function labelKey(label: string): string {
  return label.trim().toLowerCase();
}

/**
 * Reads a mapping of labels to motions: a table `label,motion[,object][,from][,to]`. A motion is a letter code, a name
 * or `unmarked`. Either all of it holds, or all its faults come back, each with its line and column.
 */
export function readLabelMapping(text: string): Result<LabelMapping, readonly Finding[]> {
  const table = namedTable(text, design);
  if (!table.ok) return table;
  const labels = new Map<string, MappedLabel>();
  const faults: Finding[] = [];
  const notes = [...table.value.notes];
  for (const line of table.value.lines) {
    const mapped = readLine(table.value, line);
    if (!mapped.ok) {
      faults.push(...mapped.error);
      continue;
    }
    const { label } = mapped.value;
    const before = labels.get(labelKey(label));
    if (before === undefined) labels.set(labelKey(label), mapped.value);
    else {
      const where = { line: line.line, column: table.value.cellOf.label + 1 };
      if (isSame(before, mapped.value)) {
        notes.push(finding('csv/mapping-again', where, { label, line: before.line }));
      } else faults.push(finding('csv/mapping-twice', where, { label, line: before.line }));
    }
  }
  return faults.length > 0 ? fail(faults) : ok({ labels, notes });
}

function isSame(one: MappedLabel, other: MappedLabel): boolean {
  return one.kind === other.kind && details.every((detail) => one[detail] === other[detail]);
}

function readLine(
  { cellOf }: NamedTable<Column>,
  { line, cells }: CsvLine,
): Result<MappedLabel, readonly Finding[]> {
  const faults: Finding[] = [];
  const cell = (column: Column) => unguardText(cells[cellOf[column]] ?? '');
  const where = (column: Column) => ({ line, column: cellOf[column] + 1 });
  const label = cell('label').trim();
  if (label === '') faults.push(finding('csv/mapping-label', where('label')));
  const found = cell('motion');
  const kind = parseMotionKind(found);
  if (kind === undefined) {
    const codes = fundamentalMotions.map((facts) => facts.code).join(' ');
    faults.push(finding('csv/mapping-motion', where('motion'), { found, codes }));
  }
  for (const column of ['label', ...details] as const) {
    const { length } = cell(column);
    if (length <= longestText) continue;
    faults.push(finding('csv/too-long', where(column), { column, found: length, most: longestText }));
  }
  if (kind === undefined || faults.length > 0) return fail(faults);
  const texts = details.flatMap((column) => (cell(column) === '' ? [] : [[column, cell(column)] as const]));
  return ok({ label, line, kind, ...Object.fromEntries(texts) });
}
