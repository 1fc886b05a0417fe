import { type Finding, type FindingPlace, finding } from '../../../ground/findings/index.ts';
import { type MotionKind, parseMotionKind } from '../../../ground/tables/index.ts';
import { countText } from '../../../ground/units/index.ts';
import { type LabelMapping, labelKey } from './csv-mapping.ts';
import { namesText } from './csv-names.ts';
import type { CsvOptions } from './csv-options.ts';

/** What a label was read as. */
export interface Labelled {
  readonly kind: MotionKind;
  readonly object?: string;
  readonly from?: string;
  readonly to?: string;
  /** The label itself, where the motion does not say the same. */
  readonly note?: string;
}

export interface LabelReader {
  /** What the label stands for; what stands for nothing is counted and read as not marked. */
  readonly read: (label: string, where: FindingPlace) => Labelled;
  /** Every label that stands for nothing, the most frequent first, then in the order of the text. */
  readonly unmapped: () => readonly Finding[];
}

/** Reads labels by a mapping; without one, by the names of the fundamental motions. */
export function labelReader({ mapping, unmapped }: CsvOptions): LabelReader {
  const missing = new Map<string, { label: string; count: number; where: FindingPlace }>();
  const read = (text: string, where: FindingPlace): Labelled => {
    const label = text.trim();
    const known = knownLabel(label, mapping);
    if (known !== undefined) return known;
    const entry = missing.get(labelKey(label));
    if (entry === undefined) missing.set(labelKey(label), { label, count: 1, where });
    else entry.count += 1;
    return { kind: 'unmarked', ...noteOf(label) };
  };
  const code = unmapped === 'unmarked' ? 'csv/unmapped-read' : 'csv/unmapped';
  return {
    read,
    unmapped: () =>
      [...missing.values()]
        .toSorted((a, b) => b.count - a.count || (a.where.line ?? 0) - (b.where.line ?? 0))
        .map(({ label, count, where }) => finding(code, where, { label, times: countText(count, 'time') })),
  };
}

function knownLabel(label: string, mapping: LabelMapping | undefined): Labelled | undefined {
  if (mapping === undefined) {
    const kind = parseMotionKind(label);
    return kind === undefined ? undefined : { kind };
  }
  const found = mapping.labels.get(labelKey(label));
  if (found === undefined) return undefined;
  const { label: _, line: __, ...rest } = found;
  return { ...rest, ...noteOf(label) };
}

function noteOf(label: string): { note?: string } {
  return label === '' ? {} : { note: label };
}

/** A note on labels of the mapping that no line of the table has. */
export function unusedLabels(mapping: LabelMapping | undefined, labels: Iterable<string>): Finding[] {
  if (mapping === undefined) return [];
  const there = new Set([...labels].map(labelKey));
  const unused = [...mapping.labels].filter(([key]) => !there.has(key)).map(([, { label }]) => label);
  if (unused.length === 0) return [];
  return [
    finding(
      'csv/mapping-unused',
      {},
      { labels: countText(unused.length, 'label'), names: namesText(unused) },
    ),
  ];
}
