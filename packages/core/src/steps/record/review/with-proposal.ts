import {
  type Cycle,
  isProposed,
  itemsBetween,
  type Method,
  type MethodClock,
  type Motion,
  markedStretch,
  proposedBetween,
  type Row,
  spanAt,
} from '../../../ground/study/index.ts';
import { betweenCycles } from '../propose/aside.ts';
import type { Proposal, ProposedCycle, ProposedMotion, ProposedSpan } from '../propose/index.ts';
import { clearedMethod, isBare, markedEnd } from './cleared.ts';

/** Boundaries closer than this in real time are the same one: a person’s mark then stands. Microseconds. */
const sameUs = 200_000;

/** A cycle that is to stand in the row, or the stretch that a person has refused. */
interface Stand {
  readonly start: number;
  readonly end: number;
  readonly mark?: Cycle;
  readonly confidence?: number;
  /** A person’s motions stand in it, so that its end is theirs as well. */
  readonly theirs: boolean;
}

/**
 * The method with a proposal in it. Proposals of before are replaced; what a person has marked or confirmed keeps its
 * bounds to the frame. The row of cycles knows no gaps, so time between two cycles stands there as set aside.
 */
export function withProposal(
  before: Method,
  proposal: Proposal,
  clock: Pick<MethodClock, 'timeOf'>,
  newId: () => string,
): Method {
  const method = clearedMethod(before, proposal.kept);
  const near = (a: number, b: number) => Math.abs(clock.timeOf(a) - clock.timeOf(b)) <= sameUs;
  const theirs = standsOf(method, proposal, near);
  const refused = theirs.filter(({ mark }) => mark?.setAside !== undefined);
  const snapped = snapTo(theirs, proposal, near);
  const open = (span: ProposedSpan) =>
    refused.every(({ start, end }) => span.to <= start || span.from >= end);
  const fill = (row: Row<Motion>, motions: readonly ProposedMotion[]) => {
    const pieces = piecesOf(motions, snapped.spans);
    const free = refused.map(({ start, end }) => ({ from: start, to: end }));
    return filledRow(
      row,
      pieces.flatMap(({ motion, ...span }) => without(span, free).map((part) => ({ ...part, motion }))),
      newId,
    );
  };
  const filled = {
    ...method,
    left: fill(method.left, proposal.left),
    right: fill(method.right, proposal.right),
  };
  if (proposal.cycles.length === 0) return filled;
  const found = snapped.cycles.filter(({ start, end }) => open({ from: start, to: end }));
  return { ...filled, cycles: cycleRow(method, theirs, found, newId) };
}

type Near = (a: number, b: number) => boolean;

/** The cycles that a person has marked, with the ends that are theirs. */
function standsOf(method: Method, { cycles }: Proposal, near: Near): Stand[] {
  const { items } = method.cycles;
  if (items.length === 0) {
    const whole = markedStretch(method, (motion) => !isProposed(motion));
    return whole === undefined || cycles.length === 0
      ? []
      : [{ start: whole.from, end: whole.to, theirs: true }];
  }
  return items.flatMap((mark, index): Stand[] => {
    const { start, end } = spanAt(method.cycles, index) as { start: number; end: number };
    const bare = isBare(method, start, end);
    if (bare && mark.said === 'confirmed' && mark.setAside === betweenCycles) return [];
    if (bare && mark.setAside !== undefined) return [{ start, end, mark, theirs: false }];
    const inside = cycles.filter((cycle) => cycle.start > start && cycle.start < end);
    const other = inside.filter((cycle) => !near(cycle.start, start));
    const own = bare ? cycles.find((cycle) => near(cycle.start, start))?.end : markedEnd(method, start, end);
    const cut = other.length > 0 && own !== undefined ? Math.min(own, end) : end;
    return [{ start, end: cut, mark, theirs: !bare && proposedBetween(method, start, cut) === 0 }];
  });
}

/** Moves what is proposed to the bounds that a person has set, where it lies that close to them, and cuts it there. */
function snapTo(theirs: readonly Stand[], { cycles, spans }: Proposal, near: Near) {
  const starts = theirs.map(({ start }) => start);
  const ends = theirs.map(({ end }) => end);
  const snap = (at: number, to: readonly number[]) => to.find((bound) => near(bound, at)) ?? at;
  const wide = ({ from, to }: ProposedSpan): ProposedSpan => ({
    from: snap(from, [...ends, ...starts]),
    to: snap(to, [...starts, ...ends]),
  });
  const cut = (cycle: ProposedCycle): ProposedCycle => {
    const { from, to } = wide({ from: cycle.start, to: cycle.end });
    const over = theirs.find(({ start, end }) => from > start && from < end);
    const start = over?.end ?? from;
    return { ...cycle, start, end: Math.min(to, ...starts.filter((at) => at > start)) };
  };
  return {
    spans: spans.map((span) => ({ ...wide(span), was: span })).filter(({ from, to }) => to > from),
    cycles: cycles.map(cut).filter(({ start, end }) => end > start && !starts.includes(start)),
  };
}

type SnappedSpan = ProposedSpan & { readonly was: ProposedSpan };
type Piece = ProposedSpan & { readonly motion: ProposedMotion };

/** The motions of each stretch with their ends; they fill it without a gap. */
function piecesOf(motions: readonly ProposedMotion[], spans: readonly SnappedSpan[]): Piece[] {
  return spans.flatMap(({ from, to, was }) => {
    const own = motions.filter(({ start }) => start >= was.from && start < was.to);
    return own.flatMap((motion, index): Piece[] => {
      const start = index === 0 ? from : Math.max(from, motion.start);
      const end = Math.min(to, own[index + 1]?.start ?? to);
      return end > start ? [{ from: start, to: end, motion }] : [];
    });
  });
}

function filledRow(row: Row<Motion>, pieces: readonly Piece[], newId: () => string): Row<Motion> {
  const blank = (start: number): Motion => ({ id: newId(), start, kind: 'unmarked', said: 'marked' });
  const end = Math.max(row.end, pieces.at(-1)?.to ?? 0);
  const all: Row<Motion> = { items: end > row.end ? [...row.items, blank(row.end)] : row.items, end };
  const spans = itemsBetween(all, 0, end).map(({ item, start, end: to }) => ({ item, from: start, to }));
  const taken = spans.filter(({ item }) => item.kind !== 'unmarked');
  const put = pieces.flatMap(({ motion, ...piece }) =>
    without(piece, taken).map((free) => ({ ...free, motion })),
  );
  const rest = spans.filter(({ item }) => item.kind === 'unmarked');
  const unmarked = rest.flatMap(({ item, ...span }) =>
    without(span, put).map(({ from }) => (from === item.start ? item : blank(from))),
  );
  const items = [...taken.map(({ item }) => item), ...unmarked, ...put.map((one) => said(one, newId()))];
  return { items: items.sort((a, b) => a.start - b.start), end };
}

/** Nothing is claimed of what the program itself calls unmarked, so there is nothing to confirm. */
function said({ from, motion }: Piece, id: string): Motion {
  if (motion.kind === 'unmarked') return { id, start: from, kind: 'unmarked', said: 'marked' };
  const { confidence, start: _, ...label } = motion;
  return { id, start: from, ...label, confidence, said: 'proposed' };
}

function without(whole: ProposedSpan, taken: readonly ProposedSpan[]): ProposedSpan[] {
  const left: ProposedSpan[] = [];
  let { from } = whole;
  for (const gone of taken) {
    if (gone.to <= from || gone.from >= whole.to) continue;
    if (gone.from > from) left.push({ from, to: gone.from });
    from = gone.to;
  }
  if (from < whole.to) left.push({ from, to: whole.to });
  return left;
}

function cycleRow(
  method: Method,
  theirs: readonly Stand[],
  found: readonly ProposedCycle[],
  newId: () => string,
): Row<Cycle> {
  const proposed = found.map(
    ({ start, end, confidence }): Stand => ({ start, end, confidence, theirs: false }),
  );
  const stands = [...theirs, ...proposed].sort((a, b) => a.start - b.start);
  const items: Cycle[] = [];
  let before: Stand | undefined;
  for (const stand of stands) {
    // Where a person ended the cycle before, the mark is theirs, whoever says what comes after it.
    const stated = before?.theirs === true && before.end === stand.start;
    if (before !== undefined && before.end < stand.start) items.push(gapMark(before, newId()));
    items.push(stand.mark ?? newMark(stand, stated, newId()));
    before = stand;
  }
  const last = before !== undefined && before.mark === undefined ? before.end : method.cycles.end;
  return { items, end: last };
}

function gapMark({ end, theirs }: Stand, id: string): Cycle {
  return { id, start: end, setAside: betweenCycles, said: theirs ? 'confirmed' : 'proposed' };
}

function newMark({ start, confidence, theirs }: Stand, stated: boolean, id: string): Cycle {
  if (theirs) return { id, start };
  if (stated) return { id, start, said: 'confirmed' };
  return { id, start, said: 'proposed', ...(confidence === undefined ? {} : { confidence }) };
}
