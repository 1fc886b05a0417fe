import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import { countText } from '../../../ground/units/index.ts';
import { unguardText } from './csv-cells.ts';
import {
  type CsvColumn,
  csvColumns,
  headOf,
  namedTable,
  proposalColumns,
  type TableDesign,
} from './csv-columns.ts';
import { inTextOrder } from './csv-findings.ts';
import { labelReader, unusedLabels } from './csv-labels.ts';
import { type CsvMotion, type LineWays, motionsOfLine } from './csv-motions.ts';
import { decimalMarkFaults } from './csv-numbers.ts';
import type { CsvOptions } from './csv-options.ts';
import { linesOfSubject } from './csv-subjects.ts';

/** The motions of a table, and in which of its columns, from 1, a fault of their times or cycles is told. */
export interface CsvMotions {
  readonly motions: readonly CsvMotion[];
  readonly notes: readonly Finding[];
  readonly startColumn: number;
  readonly cycleColumn: number;
}

type Column = CsvColumn | 'subject';

function designFor(hand: Hand | undefined): TableDesign<Column> {
  return {
    columns: csvColumns,
    needed: [...(hand === undefined ? (['hand'] as const) : []), 'motion', 'start_s', 'end_s'],
    silent: ['subject', ...proposalColumns],
    others: { motion: 'label' },
  };
}

/** Reads a table with a line for each motion: all its motions, or the faults of all lines together. */
export function readMotionTable(text: string, options: CsvOptions): Result<CsvMotions, readonly Finding[]> {
  const design = designFor(options.hand);
  const table = namedTable(text, design);
  if (!table.ok) return isWide(text, design) ? fail([finding('csv/wide', { line: 1 })]) : table;
  const { cellOf, head, notes } = table.value;
  const lines = linesOfSubject(table.value, cellOf.subject, options.subject);
  if (!lines.ok) return lines;
  const labelled = head.cells[cellOf.motion]?.toLowerCase() === 'label';
  const byLabel = labelled || options.mapping !== undefined || options.unmapped !== undefined;
  const labels = byLabel ? labelReader(options) : undefined;
  const ways: LineWays = { cellOf, options, labels, both: [], unsaid: [] };
  const read = lines.value.map((line) => motionsOfLine(ways, line));
  const faults = [
    ...decimalMarkFaults(lines.value, [cellOf.start_s, cellOf.end_s]),
    ...read.flatMap((line) => line.faults),
  ];
  const unmapped = labels?.unmapped() ?? [];
  if (faults.length > 0 || (unmapped.length > 0 && options.unmapped === undefined)) {
    return fail([...inTextOrder(faults), ...(options.unmapped === undefined ? unmapped : [])]);
  }
  const every = table.value.lines.map(({ cells }) => unguardText(cells[cellOf.motion] ?? ''));
  return ok({
    motions: read.flatMap((line) => line.motions),
    notes: [...notes, ...unmapped, ...unusedLabels(options.mapping, every), ...handNotes(ways)],
    startColumn: cellOf.start_s + 1,
    cycleColumn: cellOf.cycle + 1,
  });
}

/** One line a cycle, with the elements in columns: no motions at all, so what is missing would mislead. */
function isWide(text: string, design: TableDesign<Column>): boolean {
  const { names } = headOf(text, design);
  const has = (column: Column) => names.includes(column);
  const other = names.some(
    (name) => name !== '' && ![...csvColumns, ...proposalColumns, 'subject'].includes(name),
  );
  return has('cycle') && has('start_s') && !has('motion') && !has('end_s') && !has('hand') && other;
}

function handNotes({ both, unsaid, options }: LineWays): Finding[] {
  const noteOf = (code: 'csv/both-copied' | 'csv/hand-given', [line, ...more]: readonly number[]) =>
    line === undefined
      ? []
      : [finding(code, { line }, { lines: countText(more.length + 1, 'line'), hand: options.hand ?? '' })];
  return [...noteOf('csv/both-copied', both), ...noteOf('csv/hand-given', unsaid)];
}
