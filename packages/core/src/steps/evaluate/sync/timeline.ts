import type { CycleSync, SyncPart } from './sync.ts';

/** How two cycles run beside each other. */
export type SyncMode = 'phase' | 'elements' | 'real';

export const syncModes: Readonly<Record<SyncMode, string>> = {
  phase: 'by the share of the cycle that has gone by',
  elements: 'by element or shared motion: each begins together, and the shorter one waits',
  real: 'in real time from the start of the cycle: the shorter one ends first and waits',
};

interface Durations {
  readonly before: number;
  readonly after: number;
}

interface Piece {
  readonly name: string | undefined;
  /** On the time of the pair, microseconds. */
  readonly start: number;
  readonly length: number;
  readonly before: { readonly start: number; readonly length: number };
  readonly after: { readonly start: number; readonly length: number };
}

/** The one time along which both cycles are shown. All times are microseconds from the start. */
export interface SyncTimeline {
  readonly mode: SyncMode;
  readonly length: number;
  /** Where the named parts begin, for a scale under the films. */
  readonly parts: readonly { readonly name: string; readonly start: number; readonly length: number }[];
  /** The times of both cycles that are shown at a moment of the pair. */
  readonly at: (time: number) => Durations;
  /** The first moment of the pair at which a cycle shows this time of its own. */
  readonly momentOf: (side: 'before' | 'after', time: number) => number;
}

/** @param durations lengths of the two cycles, above 0 */
export function syncTimeline(sync: CycleSync, mode: SyncMode, durations: Durations): SyncTimeline {
  const pieces = piecesOf(sync, mode, durations);
  const stretch = mode === 'phase';
  const last = pieces.at(-1);
  const length = last === undefined ? 0 : last.start + last.length;
  const ownTime = ({ start, length: wide, ...sides }: Piece, side: keyof Durations, time: number) => {
    const gone = Math.min(Math.max(0, time - start), wide);
    const { start: from, length: own } = sides[side];
    return from + (stretch ? (wide === 0 ? 0 : (gone / wide) * own) : Math.min(gone, own));
  };
  return {
    mode,
    length,
    parts: pieces.flatMap(({ name, start, length: wide }) =>
      name === undefined ? [] : [{ name, start, length: wide }],
    ),
    at: (time) => {
      const piece = pieces.findLast(({ start }) => start <= time) ?? pieces[0];
      if (piece === undefined) return { before: 0, after: 0 };
      return { before: ownTime(piece, 'before', time), after: ownTime(piece, 'after', time) };
    },
    momentOf: (side, time) => {
      const piece = pieces.find((item) => time < item[side].start + item[side].length) ?? last;
      if (piece === undefined) return 0;
      const { start: from, length: own } = piece[side];
      const gone = Math.min(Math.max(0, time - from), own);
      return piece.start + (stretch ? (own === 0 ? 0 : (gone / own) * piece.length) : gone);
    },
  };
}

function piecesOf({ parts }: CycleSync, mode: SyncMode, durations: Durations): readonly Piece[] {
  if (mode !== 'elements')
    return inRow([{ name: undefined, before: whole(durations.before), after: whole(durations.after) }]);
  const spans: Omit<Piece, 'start' | 'length'>[] = [];
  let at: Durations = { before: 0, after: 0 };
  const gap = (to: Durations) => {
    const [before, after] = [span(at.before, to.before), span(at.after, to.after)];
    if (before.length > 0 || after.length > 0) spans.push({ name: undefined, before, after });
  };
  for (const part of parts) {
    gap({ before: part.before.start, after: part.after.start });
    spans.push({ name: part.name, ...sidesOf(part) });
    at = { before: part.before.end, after: part.after.end };
  }
  gap(durations);
  return inRow(spans);
}

function sidesOf({ before, after }: SyncPart): Pick<Piece, 'before' | 'after'> {
  return { before: span(before.start, before.end), after: span(after.start, after.end) };
}

function span(from: number, to: number): { readonly start: number; readonly length: number } {
  return { start: from, length: Math.max(0, to - from) };
}

function whole(duration: number): { readonly start: number; readonly length: number } {
  return { start: 0, length: duration };
}

function inRow(spans: readonly Omit<Piece, 'start' | 'length'>[]): readonly Piece[] {
  let start = 0;
  return spans.map((item) => {
    const length = Math.max(item.before.length, item.after.length);
    const piece = { ...item, start, length };
    start += length;
    return piece;
  });
}
