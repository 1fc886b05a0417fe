import {
  type Cycle,
  findItem,
  type Hand,
  isConfirmedCycle,
  isProposed,
  itemsBetween,
  type Method,
  type Motion,
  type Row,
} from '../../../ground/study/index.ts';
import { betweenCycles, notACycle } from '../propose/aside.ts';
import { isBare, withoutMotions } from './cleared.ts';

interface Said {
  readonly said?: 'marked' | 'proposed' | 'confirmed' | undefined;
  readonly confidence?: number | undefined;
}

/** A person says what the program only proposed. */
export function confirmedItem<Item extends Said>(item: Item): Item {
  if (!isProposed(item)) return item;
  const { confidence: _, ...rest } = item;
  return { ...rest, said: 'confirmed' } as Item;
}

/** What is to be confirmed. */
export interface Confirming {
  readonly motion: (motion: Motion, hand: Hand) => boolean;
  readonly cycle: (cycle: Cycle) => boolean;
}

/** A gap between cycles goes with the cycle that it ends: once that one is confirmed, so is the gap. */
export function confirmedMethod(method: Method, { motion, cycle }: Confirming): Method {
  const row = (hand: Hand): Row<Motion> => ({
    ...method[hand],
    items: method[hand].items.map((item) => (motion(item, hand) ? confirmedItem(item) : item)),
  });
  const items = method.cycles.items.map((item) => (cycle(item) ? confirmedItem(item) : item));
  const next = { ...method, left: row('left'), right: row('right'), cycles: { ...method.cycles, items } };
  return { ...next, cycles: withGaps(next) };
}

function withGaps(method: Method): Row<Cycle> {
  const { items } = method.cycles;
  const done = (index: number) => {
    const ended = {
      ...method,
      cycles: { ...method.cycles, items: items.with(index + 1, confirmedItem(items[index + 1] as Cycle)) },
    };
    return isConfirmedCycle(ended, index);
  };
  const gap = (cycle: Cycle, index: number) =>
    isProposed(cycle) && cycle.confidence === undefined && cycle.setAside === betweenCycles && index > 0;
  return {
    ...method.cycles,
    items: items.map((cycle, index) => (gap(cycle, index) && done(index - 1) ? confirmedItem(cycle) : cycle)),
  };
}

/** A whole cycle: its mark, the mark that ends it, and all motions of both hands that lie in it. */
export function confirmedCycle(method: Method, id: string): Method {
  const cycle = findItem(method.cycles, id);
  if (cycle === undefined) return method;
  const within = (hand: Hand) =>
    new Set(itemsBetween(method[hand], cycle.start, cycle.end).map(({ item }) => item.id));
  const motions = { left: within('left'), right: within('right') };
  const ends = method.cycles.items[cycle.index + 1]?.id;
  return confirmedMethod(method, {
    motion: (motion, hand) => motions[hand].has(motion.id),
    cycle: (mark) => mark.id === id || mark.id === ends,
  });
}

/**
 * The method after a person has refused a cycle: its proposed motions are unmarked again, and the time belongs to no cycle.
 * Marks that the person set themselves stay, and so do motions that they have marked or confirmed.
 */
export function refusedCycle(method: Method, id: string): Method {
  const cycle = findItem(method.cycles, id);
  if (cycle === undefined) return method;
  const clear = (hand: Hand) => {
    const inside = new Set(
      itemsBetween(method[hand], cycle.start, cycle.end)
        .filter(({ item }) => isProposed(item) && item.start >= cycle.start)
        .map(({ item }) => item.id),
    );
    return withoutMotions(method[hand], ({ id: motion }) => inside.has(motion));
  };
  const next = { ...method, left: clear('left'), right: clear('right') };
  const { said } = cycle.item;
  const goes = said !== undefined && said !== 'marked' && isBare(next, cycle.start, cycle.end);
  return goes ? { ...next, cycles: withoutCycle(method.cycles, cycle.index) } : next;
}

/** The mark stays and says that no cycle is there, so that the one before keeps its end and it is not proposed again. */
function withoutCycle(row: Row<Cycle>, index: number): Row<Cycle> {
  const { confidence: _, ...mark } = row.items[index] as Cycle;
  return { ...row, items: row.items.with(index, { ...mark, said: 'confirmed', setAside: notACycle }) };
}
