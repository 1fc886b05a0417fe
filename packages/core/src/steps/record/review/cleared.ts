import {
  type Cycle,
  endOf,
  type Hand,
  hands,
  isProposed,
  itemsBetween,
  type Method,
  type Motion,
  type Row,
} from '../../../ground/study/index.ts';
import { betweenCycles, notACycle } from '../propose/aside.ts';
import type { ProposedSpan } from '../propose/index.ts';

/** Whether nothing begins in a stretch, in either hand; what only reaches into it belongs to the one before. */
export function isBare(method: Method, from: number, to: number): boolean {
  return hands.every((hand) =>
    itemsBetween(method[hand], from, to).every(({ item }) => item.kind === 'unmarked' || item.start < from),
  );
}

/** Takes motions away: their time is `unmarked` again, joined with what lies unmarked beside it. */
export function withoutMotions(row: Row<Motion>, gone: (motion: Motion) => boolean): Row<Motion> {
  const items: Motion[] = [];
  let freed = false;
  for (const item of row.items) {
    const goes = gone(item);
    const next: Motion = goes ? { id: item.id, start: item.start, kind: 'unmarked', said: 'marked' } : item;
    const before = items.at(-1);
    const plain = next.kind === 'unmarked' && next.note === undefined;
    if (before?.kind === 'unmarked' && plain && (goes || freed)) {
      freed = true;
      continue;
    }
    freed = goes;
    items.push(next);
  }
  return { ...row, items };
}

/** Whether anything is proposed and not confirmed. */
export function hasProposals({ left, right, cycles }: Method): boolean {
  return [left, right, cycles].some((row) => (row.items as readonly (Motion | Cycle)[]).some(isProposed));
}

/**
 * The method without any proposal, but for those in the kept stretches. What a person has marked or confirmed stays to
 * the frame: where only a proposed mark ended their last cycle, that cycle ends with the last motion in it.
 */
export function clearedMethod(method: Method, kept: readonly ProposedSpan[] = []): Method {
  if (!hasProposals(method)) return method;
  const goes = (item: Motion | Cycle) =>
    isProposed(item) && kept.every(({ from, to }) => item.start < from || item.start >= to);
  const clear = (hand: Hand) => withoutMotions(method[hand], goes);
  const emptied = { ...method, left: clear('left'), right: clear('right') };
  return { ...emptied, cycles: clearedCycles(emptied, goes, kept) };
}

function clearedCycles(
  method: Method,
  goes: (cycle: Cycle) => boolean,
  spans: readonly ProposedSpan[],
): Row<Cycle> {
  const { items, end } = method.cycles;
  const kept = items.flatMap((cycle, index): Cycle[] => {
    if (!goes(cycle)) return [cycle];
    // What a person has refused, and what is kept, ends where the proposal after it began.
    const ends = items[index - 1]?.setAside === notACycle || spans.some(({ to }) => to === cycle.start);
    return ends ? [{ id: cycle.id, start: cycle.start, said: 'confirmed', setAside: betweenCycles }] : [];
  });
  return withoutBareMarks(method, { items: kept, end: endOfKept(method, kept, end) });
}

function endOfKept(method: Method, kept: readonly Cycle[], end: number): number {
  const last = kept.at(-1);
  const all = method.cycles.items;
  if (last === undefined || all.at(-1)?.id === last.id) return end;
  return Math.max(last.start + 1, markedEnd(method, last.start, end) ?? end);
}

/** Where the last motion of a stretch ends that is not `unmarked`, in either hand; undefined when there is none. */
export function markedEnd(method: Method, from: number, to: number): number | undefined {
  const ends = hands.flatMap((hand) =>
    itemsBetween(method[hand], from, to).flatMap(({ item, end }) => (item.kind === 'unmarked' ? [] : [end])),
  );
  return ends.length === 0 ? undefined : Math.max(...ends);
}

/** A confirmed mark with nothing behind it is only where the cycle before it ends. */
function withoutBareMarks(method: Method, row: Row<Cycle>): Row<Cycle> {
  const bare = row.items.map(
    (cycle, index) =>
      cycle.said === 'confirmed' &&
      cycle.setAside !== notACycle &&
      isBare(method, cycle.start, endOf(row, index)),
  );
  const items: Cycle[] = [];
  row.items.forEach((cycle, index) => {
    if (bare[index] === true && (index === 0 || bare[index - 1] === true)) return;
    items.push(bare[index] === true ? { ...cycle, setAside: cycle.setAside ?? betweenCycles } : cycle);
  });
  const last = items.at(-1);
  const lastBare = bare.at(-1) === true && last !== undefined && items.length > 1;
  return lastBare ? { items: items.slice(0, -1), end: last.start } : { items, end: row.end };
}
