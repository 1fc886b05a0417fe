import { describe, expect, it } from 'vitest';
import { everyCombination } from '../../../../../../tests/oracles/every-combination.ts';
import type { Work, WorkStep } from '../work/index.ts';
import type { ChangeId, WorkChange } from './change.ts';
import { combinationsOf } from './combinations.ts';
import type { CostRange } from './cost.ts';
import { changeOf } from './rules.ts';

/** Invented: a clip is put on a body that a hand holds. Distances and times vary with the number. */
function clipWork(number: number): Work {
  const spread = (step: number) => ((number * 7 + step * 13) % 10) / 10;
  const step = (facts: Partial<WorkStep> & Pick<WorkStep, 'id' | 'place' | 'motions'>): WorkStep => ({
    name: facts.id,
    hand: 'either',
    eyes: false,
    unit: 1,
    ...facts,
  });
  const us = (least: number, at: number) => Math.round(least * (1 + spread(at)));
  return {
    workFormat: 1,
    title: `Clips ${number}, invented`,
    demo: true,
    unitsPerCycle: 1,
    home: 'free',
    places: [
      { id: 'bodies', name: 'Bodies', kind: 'bin', at: { x: -300 - 80 * spread(1), y: 380 } },
      { id: 'clips', name: 'Clips', kind: 'bin', at: { x: 240 + 90 * spread(2), y: 400 } },
      { id: 'front', name: 'Front', kind: 'bench', at: { x: 0, y: 200 } },
      { id: 'box', name: 'Box', kind: 'exit', at: { x: -350, y: 160 + 60 * spread(3) } },
    ],
    steps: [
      step({ id: 'body', place: 'bodies', motions: [{ kind: 'G', us: us(200_000, 4) }], after: 'body' }),
      step({
        id: 'clip',
        place: 'clips',
        motions: [
          { kind: 'St', us: us(150_000, 5) },
          { kind: 'G', us: us(150_000, 6) },
        ],
        after: 'clip',
        eyes: true,
      }),
      step({
        id: 'fit',
        place: 'front',
        motions: [
          { kind: 'P', us: us(400_000, 7) },
          { kind: 'A', us: us(300_000, 8) },
        ],
        before: 'clip',
        eyes: true,
        held: { object: 'body', place: 'front', by: 'hand', becomes: 'unit' },
        follows: [{ step: 'body' }, { step: 'clip' }],
      }),
      step({
        id: 'aside',
        place: 'box',
        motions: [{ kind: 'RL', us: us(80_000, 9) }],
        before: 'unit',
        follows: [{ step: 'fit' }],
      }),
    ],
  };
}

const ids: readonly ChangeId[] = [
  'aligned-supply',
  'guide',
  'stop',
  'fixture',
  'closer-places',
  'chute',
  'two-units',
];
const costs = new Map<ChangeId, CostRange>(
  ids.map((id, index) => {
    const likely = [120, 300, 150, 700, 60, 240, 900][index] ?? 0;
    return [id, { low: likely * 0.8, likely, high: likely * 1.5 }];
  }),
);
const changesOf = (work: Work): readonly WorkChange[] => ids.flatMap((id) => changeOf(id, work) ?? []);
const wish = { readings: [], seed: 1, draws: 20 };
const numbers = [1, 2, 3];

describe('combinations of changes, against every subset composed to its proof', () => {
  it.each(numbers)('work %i: the front against cost is the same', (number) => {
    const work = clipWork(number);
    const changes = changesOf(work);
    const found = combinationsOf(work, changes, { ...wish, costs, most: 200 });
    if (!found.ok) throw new Error(found.error.message);
    const effort = (chosen: readonly WorkChange[]) =>
      chosen.reduce((sum, { id }) => sum + (costs.get(id)?.likely ?? 0), 0);
    const expected = everyCombination(work, changes, effort, [['guide', 'stop']]);
    expect(found.value.exact).toBe(true);
    expect(
      found.value.front.map(({ cost, worth }) => [cost?.likely, Math.round(worth.method.unitTime)]),
    ).toEqual(
      [...new Map(expected.map((one) => [one.effort, [one.effort, Math.round(one.unitTime)]])).values()].sort(
        (a, b) => (a[0] ?? 0) - (b[0] ?? 0),
      ),
    );
    expect(found.value.ruledOut).toBeGreaterThan(0);
    expect(found.value.ruledOut).toBeLessThan(found.value.tried);
  });

  it.each(numbers)(
    'work %i: the beam is never better than all, and reaches the shortest of them',
    (number) => {
      const work = clipWork(number);
      const changes = changesOf(work);
      const all = combinationsOf(work, changes, { ...wish, most: 200 });
      const beam = combinationsOf(work, changes, { ...wish, most: 1 });
      if (!all.ok || !beam.ok) throw new Error('refused');
      expect(all.value.exact).toBe(true);
      expect(beam.value.exact).toBe(false);
      for (const { worth } of beam.value.front) {
        const best = all.value.front
          .filter((point) => point.worth.changes.length <= worth.changes.length)
          .at(-1);
        expect(worth.method.unitTime).toBeGreaterThanOrEqual((best?.worth.method.unitTime ?? 0) - 1);
      }
      const shortest = (one: typeof all.value) => one.front.at(-1)?.worth.method.unitTime ?? 0;
      expect(shortest(beam.value)).toBeLessThanOrEqual(1.01 * shortest(all.value));
    },
  );

  it('twice the same is the same', () => {
    const work = clipWork(5);
    const once = combinationsOf(work, changesOf(work), { ...wish, most: 1 });
    const again = combinationsOf(work, changesOf(work), { ...wish, most: 1 });
    const told = (one: typeof once) =>
      one.ok
        ? one.value.front.map(({ worth }) => [worth.changes, worth.method.unitTime, worth.interval])
        : [];
    expect(told(once).length).toBeGreaterThan(2);
    expect(told(again)).toEqual(told(once));
  });

  it('what has no cost is left out and named; the others carry the sum of their ranges', () => {
    const work = clipWork(1);
    const some = new Map([...costs].filter(([id]) => id !== 'guide'));
    const found = combinationsOf(work, changesOf(work), { ...wish, costs: some, most: 200 });
    if (!found.ok) throw new Error(found.error.message);
    expect(found.value.withoutCost.map(({ id }) => id)).toEqual(['guide']);
    for (const { worth, cost } of found.value.front) {
      expect(worth.changes).not.toContain('guide');
      const high = worth.changes.reduce((sum, id) => sum + (some.get(id)?.high ?? 0), 0);
      expect(cost?.high).toBeCloseTo(high, 6);
    }
  });

  it('a taken change is in every combination, and costs nothing more', () => {
    const work = clipWork(2);
    const taken = changesOf(work).filter(({ id }) => id === 'fixture');
    const found = combinationsOf(work, changesOf(work), { ...wish, costs, taken, most: 200 });
    if (!found.ok) throw new Error(found.error.message);
    for (const { worth } of found.value.front) expect(worth.changes).toContain('fixture');
    expect(found.value.front[0]?.cost?.likely).toBe(0);
  });
});
