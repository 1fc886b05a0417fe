import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type InstanceKind, twoHandInstance } from '../../../../../../tests/helpers/two-hand-instances.ts';
import { compose, type Instance, type Orders, ordersOf } from '../compose/index.ts';
import { carriedTogether, exchanged, judgeOrders, movedBefore, moveInRow, toOtherHand } from './index.ts';

const kinds: readonly InstanceKind[] = [
  { parts: 2, units: 1, base: 'fixture' },
  { parts: 2, units: 1, base: 'hand' },
  { parts: 1, units: 2, base: 'fixture' },
  { parts: 3, units: 1, base: 'hand' },
];

function composedOf(seed: number, kind: number, cycle: 'open' | 'closed') {
  const instance = twoHandInstance(seed, kinds[kind] ?? { parts: 2, units: 1, base: 'hand' });
  const composed = compose(instance, { seed: 1, rounds: 5, kind: cycle });
  if (!composed.ok) throw new Error(composed.error.message);
  return { instance, composed: composed.value, orders: ordersOf(instance, composed.value.schedule) };
}

const startArb = fc.record({
  seed: fc.integer({ min: 1, max: 5000 }),
  kind: fc.integer({ min: 0, max: kinds.length - 1 }),
  cycle: fc.constantFrom<'open' | 'closed'>('open', 'closed'),
});
const pickArb = fc.record({
  what: fc.constantFrom('move', 'exchange', 'before', 'hand', 'together'),
  hand: fc.constantFrom<'left' | 'right'>('left', 'right'),
  one: fc.nat(30),
  other: fc.nat(30),
  by: fc.constantFrom<-1 | 1>(-1, 1),
});

type Pick = typeof pickArb extends fc.Arbitrary<infer Made> ? Made : never;

function edited(instance: Instance, orders: Orders, pick: Pick): Orders | undefined {
  const row = orders[pick.hand];
  const [one, other] = [row[pick.one % Math.max(1, row.length)], row[pick.other % Math.max(1, row.length)]];
  if (one === undefined || other === undefined) return undefined;
  if (pick.what === 'move') return moveInRow(orders, pick.hand, one, pick.by);
  if (pick.what === 'exchange') return exchanged(orders, pick.hand, one, other);
  if (pick.what === 'before') return movedBefore(orders, pick.hand, one, other);
  const tasks = pick.what === 'hand' ? [one] : carriedTogether(instance, orders, one);
  return toOtherHand(instance, orders, judgeOrders(instance, orders).schedule, tasks);
}

/** Every step stands once in the row of each hand that takes part in it, and nowhere else. */
function rowsFit({ tasks }: Instance, { modes, left, right }: Orders): boolean {
  return tasks.every((task, index) => {
    const mode = task.modes[modes[index] ?? 0];
    const count = (row: readonly number[]) => row.filter((other) => other === index).length;
    return (
      mode !== undefined &&
      count(left) === (mode.left === undefined ? 0 : 1) &&
      count(right) === (mode.right === undefined ? 0 : 1)
    );
  });
}

describe('a composed method that is changed by hand', () => {
  it('unchanged, can be done and takes as long as it was composed', () => {
    fc.assert(
      fc.property(startArb, ({ seed, kind, cycle }) => {
        const { instance, composed, orders } = composedOf(seed, kind, cycle);
        const judged = judgeOrders(instance, orders);
        expect(judged.faults).toEqual([]);
        expect(judged.schedule.period).toBe(composed.schedule.period);
      }),
      { seed: 61, numRuns: 25 },
    );
  });

  it('changed at random, takes no less than what is proven, or it is told what it breaks', () => {
    const seen = { done: 0, broken: 0, longer: 0 };
    fc.assert(
      fc.property(
        startArb,
        fc.array(pickArb, { minLength: 1, maxLength: 2 }),
        ({ seed, kind, cycle }, picks) => {
          const { instance, composed, orders } = composedOf(seed, kind, cycle);
          let now = orders;
          for (const pick of picks) now = edited(instance, now, pick) ?? now;
          expect(rowsFit(instance, now)).toBe(true);
          const { left, right } = now;
          const shared = left.filter((task) => right.includes(task));
          if (picks.every(({ what }) => what !== 'hand' && what !== 'together'))
            expect(right.filter((task) => left.includes(task))).toEqual(shared);
          const { schedule, faults } = judgeOrders(instance, now);
          expect(schedule.placed.every(({ start }) => Number.isFinite(start) && start >= 0)).toBe(true);
          for (const { message } of faults) expect(message).not.toMatch(/undefined|NaN/);
          if (faults.length > 0) seen.broken += 1;
          else {
            seen.done += 1;
            // Whoever writes the rows by hand cannot beat a proof.
            expect(schedule.period).toBeGreaterThanOrEqual(composed.bound);
            if (schedule.period > composed.schedule.period) seen.longer += 1;
          }
        },
      ),
      { seed: 62, numRuns: 240 },
    );
    // All three must occur, or the property says nothing.
    expect(Math.min(seen.done, seen.broken, seen.longer)).toBeGreaterThan(3);
  });

  it('a place that comes before what is placed is in the hand: the sentence names hand and steps', () => {
    const { instance, orders } = composedOf(7, 0, 'open');
    const row = orders.left.length >= orders.right.length ? ('left' as const) : ('right' as const);
    const get = orders[row].find((task, index) => {
      const next = orders[row][index + 1];
      return next !== undefined && carriedTogether(instance, orders, task).includes(next);
    });
    if (get === undefined) throw new Error('nothing is carried');
    const place = orders[row][orders[row].indexOf(get) + 1] ?? get;
    const turned = exchanged(orders, row, get, place);
    if (turned === undefined) throw new Error('nothing to exchange');
    const { faults } = judgeOrders(instance, turned);
    const words = faults.map(({ message }) => message).join(' ');
    expect(words).toContain(`the ${row} hand carries`);
    expect(words).toContain(`“${instance.tasks[place]?.name}”`);
  });

  it('what hangs together by a load goes to the other hand as a whole and can then be done', () => {
    // With a base held by a hand everything of the unit hangs together, and steps that either hand does are the same for both.
    let tried = 0;
    for (let seed = 1; seed <= 40 && tried < 8; seed += 1) {
      const { instance, composed, orders } = composedOf(seed, 1, 'open');
      if (instance.tasks.some(({ modes }) => modes.length === 1)) continue;
      tried += 1;
      const all = instance.tasks.map((_, task) => task);
      const other = toOtherHand(instance, orders, composed.schedule, all);
      if (other === undefined) throw new Error('nothing to do');
      const judged = judgeOrders(instance, other);
      expect(judged.faults).toEqual([]);
      // Ways are the same for both hands here, so the mirrored method takes as long.
      expect(judged.schedule.period).toBe(composed.schedule.period);
      const [first] = carriedTogether(instance, orders, 0);
      expect(carriedTogether(instance, orders, first ?? 0)).toContain(0);
    }
    expect(tried).toBe(8);
  });

  it('there is nothing to do at the end of a row, with itself, or with a step that one hand alone can do', () => {
    const { instance, composed, orders } = composedOf(3, 0, 'open');
    const [first] = orders.left;
    if (first === undefined) throw new Error('no step');
    expect(moveInRow(orders, 'left', first, -1)).toBeUndefined();
    expect(exchanged(orders, 'left', first, first)).toBeUndefined();
    expect(movedBefore(orders, 'left', first, first)).toBeUndefined();
    const single = instance.tasks.flatMap(({ modes }, task) => (modes.length === 1 ? [task] : []));
    expect(toOtherHand(instance, orders, composed.schedule, single)).toBeUndefined();
  });
});
