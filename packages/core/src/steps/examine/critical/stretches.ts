import {
  type ExaminationSubject,
  findItem,
  type Hand,
  hands,
  itemAt,
  itemsBetween,
  type Method,
  type MethodClock,
  type Motion,
  rowStart,
} from '../../../ground/study/index.ts';
import type { Trace } from '../reading/index.ts';
import type { MethodRecord } from './method-record.ts';
import { elementOf, type SubjectOf } from './subjects.ts';

/** A piece of one hand's row, in boundaries of the method. */
export interface Stretch {
  readonly hand: Hand;
  readonly from: number;
  readonly to: number;
}

/** Where a subject stands in the record. */
export interface SubjectStretches {
  /** What it is about, in order of time; at least one. */
  readonly own: readonly Stretch[];
  /**
   * What its time is taken from. For a motion: every motion of that hand in the cycles read that has the same words.
   * Undefined when it does not lie in the cycles read.
   */
  readonly timed: readonly Stretch[] | undefined;
}

/** Undefined when the subject is not in the record any more, or is the operation as a whole. */
export function stretchesOf(record: MethodRecord, subject: ExaminationSubject): SubjectStretches | undefined {
  switch (subject.kind) {
    case 'operation':
      return undefined;
    case 'motion':
      return ofMotion(record, subject);
    case 'element':
      return ofElement(record, subject);
    default:
      return ofLead(record, subject);
  }
}

function ofMotion(
  { method, reading }: MethodRecord,
  { hand, motion }: SubjectOf<'motion'>,
): SubjectStretches | undefined {
  const found = findItem(method[hand], motion);
  if (found === undefined || found.item.kind === 'unmarked') return undefined;
  const own = [{ hand, from: found.start, to: found.end }];
  const pieces = (reading?.cycles ?? []).flatMap((cycle) => cycle[hand]);
  const counts = pieces.some((piece) => piece.motion?.id === motion && piece.kind !== 'unmarked');
  if (!counts) return { own, timed: undefined };
  const alike = pieces.filter(
    (piece) => piece.kind !== 'unmarked' && piece.motion !== undefined && sameWords(piece.motion, found.item),
  );
  return { own, timed: alike.map(({ from, to }) => ({ hand, from, to })) };
}

export function sameWords(a: Motion, b: Motion): boolean {
  return a.kind === b.kind && a.object === b.object && a.from === b.from && a.to === b.to;
}

function ofElement({ method }: MethodRecord, subject: SubjectOf<'element'>): SubjectStretches | undefined {
  const element = elementOf(method, subject);
  if (element === undefined) return undefined;
  const { from, to } = elementSpan(method, element.at);
  const own = to > from ? [{ hand: element.hand, from, to }] : [];
  return own.length === 0 ? undefined : { own, timed: undefined };
}

/** From a break point to the next one in time, or to the end of the cycle (without one, of the longer row). */
export function elementSpan(method: Method, at: number): { readonly from: number; readonly to: number } {
  const ends = Math.max(method.left.end, method.right.end);
  const cycle = itemAt(method.cycles, at);
  const first = rowStart(method.cycles);
  const limit = cycle?.end ?? (at < first ? first : ends);
  const later = (method.elements ?? []).map((item) => item.at).filter((other) => other > at);
  return { from: at, to: Math.min(limit, ...later) };
}

function ofLead(record: MethodRecord, { lead: id }: SubjectOf<'lead'>): SubjectStretches | undefined {
  const lead = record.leads().find((item) => item.id === id);
  if (lead === undefined) return undefined;
  const own = lead.traces.flatMap(handsOf).sort((a, b) => a.from - b.from || (a.hand < b.hand ? -1 : 1));
  return own.length === 0 ? undefined : { own, timed: own };
}

function handsOf({ hand, from, to }: Trace): Stretch[] {
  return (hand === 'both' ? hands : [hand]).map((one) => ({ hand: one, from, to }));
}

/** The marked motions of the stretch's hand that touch it. */
export function motionsIn(method: Method, { hand, from, to }: Stretch): readonly Motion[] {
  return itemsBetween(method[hand], from, to)
    .map(({ item }) => item)
    .filter((item) => item.kind !== 'unmarked');
}

/**
 * Where a motion is done: its own places, or, when it has none, where the hand was taken by the motions before it.
 * Undefined when that is not said.
 */
export function placesOf(method: Method, hand: Hand, motion: Motion): readonly string[] {
  const own = [motion.from, motion.to].filter((place) => place !== undefined);
  if (own.length > 0) return own;
  const row = method[hand];
  const index = itemAt(row, motion.start)?.index ?? 0;
  for (let at = index - 1; at >= 0; at -= 1) {
    const item = row.items[at] as Motion;
    if (item.to !== undefined) return [item.to];
    if (item.kind === 'TE' || item.kind === 'TL' || item.kind === 'unmarked') return [];
    if (item.from !== undefined) return [item.from];
  }
  return [];
}

/** The marked motions of the hand right before and right after a stretch, within its cycle. */
export function neighbours(
  method: Method,
  { hand, from, to }: Stretch,
): { readonly before: Motion | undefined; readonly after: Motion | undefined } {
  const row = method[hand];
  const cycle = itemAt(method.cycles, from);
  const here = itemAt(row, from);
  const next = itemAt(row, to);
  const first = cycle?.start ?? 0;
  const before = here !== undefined && here.start > first ? row.items[here.index - 1] : undefined;
  const follower = next === undefined || next.start >= to ? next?.item : row.items[next.index + 1];
  const after = follower !== undefined && (cycle === undefined || follower.start < cycle.end);
  return { before: marked(before), after: after ? marked(follower) : undefined };
}

function marked(motion: Motion | undefined): Motion | undefined {
  return motion === undefined || motion.kind === 'unmarked' ? undefined : motion;
}

/** The time that at least one of the stretches covers. Where both hands are at it at once, it counts once. */
export function coveredTime(stretches: readonly Stretch[], { span }: Pick<MethodClock, 'span'>): number {
  let [total, reached] = [0, 0];
  for (const { from, to } of [...stretches].sort((a, b) => a.from - b.from)) {
    const start = Math.max(reached, from);
    if (to <= start) continue;
    total += span(start, to);
    reached = to;
  }
  return total;
}
