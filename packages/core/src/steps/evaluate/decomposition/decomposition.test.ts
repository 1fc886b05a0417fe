import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mirrored, twoHandStudyArb } from '../../../../../../tests/helpers/two-hand-records.ts';
import { type CycleText, tenth, twoHandStudy } from '../../../../../../tests/helpers/two-hand-study.ts';
import { type SlowMotion, slowCharges, slowEffects } from '../../../../../../tests/oracles/moment-charges.ts';
import type { Study } from '../../../ground/study/index.ts';
import { type MethodReading, readMethod } from '../../examine/index.ts';
import { type Cause, causes, type Decomposition, decompositionOf } from './decomposition.ts';

function reading(study: Study): MethodReading | undefined {
  const result = readMethod(study, 'm');
  return result.ok ? result.value : undefined;
}

/** The study with every proposal confirmed. */
function confirmed(study: Study): Study {
  const text = JSON.stringify(study).replaceAll('"said":"proposed"', '"said":"confirmed"');
  return JSON.parse(text) as Study;
}

function between(before: readonly CycleText[], after: readonly CycleText[], units = 1): Decomposition {
  const [first, second] = [twoHandStudy(before), twoHandStudy(after)].map(reading);
  if (first === undefined || second === undefined) throw new Error('cannot be read');
  return decompositionOf(first, { ...second, method: { ...second.method, unitsPerCycle: units } });
}

/** The totals that are not 0, in tenths of a second. */
function told({ totals }: Decomposition): Partial<Record<Cause, number>> {
  return Object.fromEntries(
    causes.flatMap((cause) => (totals[cause] === 0 ? [] : [[cause, totals[cause] / tenth]])),
  );
}

describe('cases that can be seen at a glance', () => {
  const present = [{ left: 'TE body 4, G body 2, UD 9', right: 'UD 6, TL ring 5, RL ring 4' }];

  it('a motion of one hand alone that is gone is removed, whole', () => {
    const without = [{ left: 'TE body 4, G body 2, UD 5', right: 'UD 6, TL ring 5' }];
    expect(told(between(present, without))).toEqual({ removed: 4 });
    expect(told(between(without, present))).toEqual({ added: -4 });
  });

  it('a motion of one hand alone that takes less is shortened', () => {
    const nearer = [{ left: 'TE body 4, G body 2, UD 6', right: 'UD 6, TL ring 2, RL ring 4' }];
    expect(told(between(present, nearer))).toEqual({ shortened: 3 });
    expect(told(between(nearer, present))).toEqual({ lengthened: -3 });
  });

  it('the same motions at the same time are made simultaneous', () => {
    const both = [{ left: 'TE body 4, G body 2, UD 3', right: 'TL ring 5, RL ring 4' }];
    const found = between(present, both);
    expect(told(found)).toEqual({ 'made simultaneous': 6 });
    // Six tenths side by side are charged half to each hand: three less on the left, three less on the right.
    expect(found.byHand).toEqual({ left: 3 * tenth, right: 3 * tenth });
    expect(told(between(both, present))).toEqual({ 'no longer simultaneous': -6 });
  });

  it('two units in one cycle with both hands alike are made simultaneous, and a hold that is gone costs nothing by itself', () => {
    const held = [{ left: 'H body 8', right: 'TL ring 4, A ring 4' }];
    const two = [{ left: 'TL ring 4, A ring 4', right: 'TL ring 4, A ring 4' }];
    const found = between(held, two, 2);
    expect(found.saved).toBe(4 * tenth);
    expect(told(found)).toEqual({ 'made simultaneous': 4 });
    expect(found.byHand).toEqual({ left: -2 * tenth, right: 6 * tenth });
    expect(found.rows.map(({ name }) => name)).toEqual(['assemble, ring', 'transport loaded, ring']);
  });

  it('half as many of a motion is removed, in full when the rest stays as it was', () => {
    const twice = [{ left: 'UD 10', right: 'TE ring 3, G ring 2, TE ring 3, G ring 2' }];
    const once = [{ left: 'UD 5', right: 'TE ring 3, G ring 2' }];
    expect(told(between(twice, once))).toEqual({ removed: 5 });
  });

  it('waiting of both hands counts half in each, and is removed with the wait', () => {
    const wait = [{ left: 'UD 4, TE ring 3', right: 'UD 7' }];
    const none = [{ left: 'TE ring 3', right: 'UD 3' }];
    const found = between(wait, none);
    expect(found.saved).toBe(4 * tenth);
    expect(Object.values(found.totals).reduce((sum, part) => sum + part, 0)).toBe(4 * tenth);
    expect(found.rows.map(({ name }) => name)).toEqual(['unavoidable delay']);
  });

  it('names of objects that differ in case and spaces alone are one', () => {
    const spaced = twoHandStudy([{ left: 'UD 5', right: 'TE ring 5' }]);
    const [method] = spaced.methods;
    if (method === undefined) throw new Error('no method');
    const items = method.right.items.map((motion) => ({ ...motion, object: '  Ring ' }));
    const [first, second] = [
      spaced,
      { ...spaced, methods: [{ ...method, right: { ...method.right, items } }] },
    ];
    const [a, b] = [reading(first), reading(second)];
    expect(a && b && decompositionOf(a, b).rows).toEqual([]);
  });
});

describe('laws on random records', () => {
  const pairs = fc.tuple(twoHandStudyArb(60), twoHandStudyArb(60), fc.integer({ min: 1, max: 3 }));
  const law = (check: (before: MethodReading, after: MethodReading) => void) =>
    fc.assert(
      fc.property(pairs, ([first, second, units]) => {
        // Proposals, which leave a cycle out of all figures, are not the matter here.
        const [before, after] = [reading(confirmed(first)), reading(confirmed(second))];
        if (before === undefined || after === undefined) return;
        check(before, { ...after, method: { ...after.method, unitsPerCycle: units } });
      }),
      { seed: 43, numRuns: 400 },
    );
  const sumOf = (numbers: readonly number[]) => numbers.reduce((sum, value) => sum + value, 0);

  it('every way of adding up gives the difference of the means, to the microsecond', () => {
    law((before, after) => {
      const found = decompositionOf(before, after);
      expect(found.saved).toBe(found.before - found.after);
      expect(sumOf(found.rows.map(({ saved }) => saved))).toBe(found.saved);
      expect(sumOf(Object.values(found.totals))).toBe(found.saved);
      expect(found.byHand.left + found.byHand.right).toBe(found.saved);
      for (const hand of ['left', 'right'] as const)
        expect(sumOf(found.rows.map(({ byHand }) => byHand[hand]))).toBe(found.byHand[hand]);
      for (const { parts, saved, byHand } of found.rows) {
        expect(sumOf(parts.map((part) => part.saved))).toBe(saved);
        expect(byHand.left + byHand.right).toBe(saved);
      }
    });
  });

  it('mirrored records give the same rows with the hands exchanged', () => {
    fc.assert(
      fc.property(pairs, ([first, second]) => {
        const [before, after] = [reading(first), reading(second)];
        const [left, right] = [reading(mirrored(first)), reading(mirrored(second))];
        if (before === undefined || after === undefined) return;
        if (left === undefined || right === undefined) throw new Error('the mirrored record cannot be read');
        const [straight, turned] = [decompositionOf(before, after), decompositionOf(left, right)];
        expect(turned.totals).toEqual(straight.totals);
        const changed = ({ rows }: Decomposition) =>
          rows.flatMap(({ name, parts }) => (parts.length === 0 ? [] : [[name, parts]]));
        expect(changed(turned)).toEqual(changed(straight));
        for (const row of straight.rows) {
          const other = turned.rows.find(({ name }) => name === row.name)?.byHand.right ?? 0;
          expect(Math.abs(row.byHand.left - other)).toBeLessThanOrEqual(1);
        }
        expect(Math.abs(turned.byHand.left - straight.byHand.right)).toBeLessThanOrEqual(
          straight.rows.length,
        );
      }),
      { seed: 44, numRuns: 300 },
    );
  });

  it('a method against itself gives nothing, and the other way round the opposite', () => {
    const opposite: Record<Cause, Cause> = {
      removed: 'added',
      added: 'removed',
      shortened: 'lengthened',
      lengthened: 'shortened',
      'made simultaneous': 'no longer simultaneous',
      'no longer simultaneous': 'made simultaneous',
    };
    law((before, after) => {
      expect(decompositionOf(before, before).rows).toEqual([]);
      const [there, back] = [decompositionOf(before, after), decompositionOf(after, before)];
      for (const cause of causes) {
        const away = there.totals[cause] + back.totals[opposite[cause]];
        // Each row of three parts is rounded by less than 1.
        expect(Math.abs(away)).toBeLessThanOrEqual(2 * Math.max(there.rows.length, back.rows.length) + 2);
      }
    });
  });

  it('agrees with a slow second way from the rule alone', () => {
    let compared = 0;
    law((before, after) => {
      if (before.cycles[0]?.number === 0 || after.cycles[0]?.number === 0) return;
      const slow = [before, after].map(({ study, method }) =>
        slowCharges({ ...study, methods: [method] }, 'm'),
      ) as [Map<string, SlowMotion>, Map<string, SlowMotion>];
      for (const row of decompositionOf(before, after).rows) {
        const key = `${row.kind} ${row.object ?? ''}`;
        const [first, second] = [slow[0].get(key), slow[1].get(key)];
        for (const [mine, theirs] of [
          [row.before, first],
          [row.after, second],
        ] as const) {
          expect(mine.count).toBeCloseTo(theirs?.count ?? 0, 9);
          expect(mine.handTime).toBeCloseTo(theirs?.handTime ?? 0, 9);
          expect(mine.left).toBeCloseTo(theirs?.charged.left ?? 0, 9);
          expect(mine.right).toBeCloseTo(theirs?.charged.right ?? 0, 9);
        }
        if (first === undefined || second === undefined) continue;
        slowEffects(first, second).forEach((effect, index) => {
          const names = [causes[index], causes[index + 3]];
          const part = row.parts.find(({ cause }) => names.includes(cause))?.saved ?? 0;
          expect(Math.abs(part - effect)).toBeLessThan(1 + 1e-9);
          compared += 1;
        });
      }
    });
    expect(compared).toBeGreaterThan(500);
  });
});
