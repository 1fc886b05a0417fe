import {
  emptyStudy,
  type Hand,
  type Method,
  type Motion,
  type Place,
  type Study,
} from '../../../../ground/study/index.ts';
import { parseMotionKind } from '../../../../ground/tables/index.ts';
import { type MethodReading, type ReadingChoice, readMethod } from '../../reading/index.ts';

/** What both hands do in one cycle, one motion after the other: `'TE 0.4 body front>bin, G 0.3 body bin>'`. */
export type CycleRows = readonly [left: string, right: string];

export interface RecordOptions {
  /** Where places lie, millimetres; places that the rows name and this does not have no position. */
  readonly places?: Readonly<Record<string, Place['at']>>;
  readonly unitsAYear?: number;
  readonly method?: Partial<Method>;
  readonly choice?: ReadingChoice;
}

/**
 * A hand-made record for the tests. A motion is written as `KIND SECONDS [object] [from>to] [[note]]`: the code, its
 * length in seconds, words for the object, the places on both sides of `>` (either may be left out) and a note in square
 * brackets; a `?` after the code makes it a proposal. A row that is shorter than the other is filled up as not marked.
 */
export function studyOf(cycles: readonly CycleRows[], options: RecordOptions = {}): Study {
  const rows = { left: [] as Motion[], right: [] as Motion[] };
  const starts: number[] = [];
  let at = 0;
  for (const [left, right] of cycles) {
    starts.push(at);
    const ends = [addRow(rows.left, 'left', left, at), addRow(rows.right, 'right', right, at)];
    const end = Math.max(...ends);
    if ((ends[0] ?? end) < end) rows.left.push(unmarked('left', rows.left.length, ends[0] ?? end));
    if ((ends[1] ?? end) < end) rows.right.push(unmarked('right', rows.right.length, ends[1] ?? end));
    at = end;
  }
  const method: Method = {
    id: 'm',
    name: 'Present method',
    kind: 'composed',
    base: { kind: 'micros' },
    unitsPerCycle: 1,
    left: { items: rows.left, end: at },
    right: { items: rows.right, end: at },
    cycles: { items: starts.map((start, index) => ({ id: `c${index + 1}`, start })), end: at },
    ...options.method,
  };
  const { unitsAYear } = options;
  return {
    ...emptyStudy('s', 'Hose couplings'),
    operation: { name: 'Hose couplings', ...(unitsAYear === undefined ? {} : { unitsAYear }) },
    places: placesOf([...rows.left, ...rows.right], options.places ?? {}),
    methods: [method],
  };
}

/** The same, read. @throws when it cannot be read */
export function readingOf(cycles: readonly CycleRows[], options: RecordOptions = {}): MethodReading {
  const result = readMethod(studyOf(cycles, options), 'm', options.choice);
  if (!result.ok) throw new RangeError(result.error.message);
  return result.value;
}

function addRow(into: Motion[], hand: Hand, text: string, start: number): number {
  let at = start;
  for (const part of text.split(',')) {
    if (part.trim() === '') continue;
    const { motion, length } = parsed(part.trim());
    into.push({ ...motion, id: `${hand[0]}${into.length}`, start: at });
    at += length;
  }
  return at;
}

function unmarked(hand: Hand, index: number, start: number): Motion {
  return { id: `${hand[0]}${index}`, start, kind: 'unmarked', said: 'marked' };
}

function parsed(text: string): { motion: Omit<Motion, 'id' | 'start'>; length: number } {
  const [, words = '', note] = /^([^[]*)(?:\[(.*)\])?$/.exec(text) ?? [];
  const [code = '', seconds = '', ...rest] = words.trim().split(/\s+/);
  const kind = parseMotionKind(code.replace('?', ''));
  const length = Math.round(Number(seconds) * 1e6);
  if (kind === undefined || !Number.isInteger(length) || length < 1)
    throw new RangeError(`cannot read "${text}"`);
  const [from, to] = rest.find((word) => word.includes('>'))?.split('>') ?? [];
  const object = rest.filter((word) => !word.includes('>')).join(' ');
  return {
    length,
    motion: {
      kind,
      said: code.endsWith('?') ? 'proposed' : 'marked',
      ...(object ? { object } : {}),
      ...(from ? { from } : {}),
      ...(to ? { to } : {}),
      ...(note ? { note } : {}),
    },
  };
}

function placesOf(motions: readonly Motion[], at: Readonly<Record<string, Place['at']>>): Place[] {
  const ids = new Set(motions.flatMap(({ from, to }) => [from, to]).filter((id) => id !== undefined));
  for (const id of Object.keys(at)) ids.add(id);
  return [...ids].sort().map((id) => {
    const position = at[id];
    return { id, name: id.replaceAll('-', ' '), ...(position === undefined ? {} : { at: position }) };
  });
}
