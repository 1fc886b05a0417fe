import { describe, expect, it } from 'vitest';
import { type CycleText, tenth, twoHandStudy } from '../../../../../../tests/helpers/two-hand-study.ts';
import type { Place, Study } from '../../../ground/study/index.ts';
import { type MethodReading, readMethod } from '../../examine/index.ts';
import { sharedMotions } from './shared-motions.ts';

const mirrors: Readonly<Record<string, string>> = {
  nestL: 'nestR',
  nestR: 'nestL',
  binL: 'binR',
  binR: 'binL',
};

function read(study: Study): MethodReading {
  const result = readMethod(study, 'm');
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

function reading(
  cycles: readonly CycleText[],
  at: Readonly<Record<string, Place['at']>> = {},
): MethodReading {
  const study = twoHandStudy(cycles);
  const places = study.places.map(({ id, name }): Place => {
    const [mirror, position] = [mirrors[id], at[id]];
    return { id, name, ...(mirror ? { mirror } : {}), ...(position ? { at: position } : {}) };
  });
  return read({ ...study, places });
}

const told = (before: MethodReading, after: MethodReading) =>
  sharedMotions(before, after).map(({ name, hand, before: a, after: b }) => [
    name,
    hand ?? 'both',
    a.pieces.length,
    b.pieces.length,
  ]);

describe('motions that two methods share', () => {
  it('in the same hand where both have it there, otherwise with both hands together', () => {
    const before = reading([{ left: 'UD 9', right: 'TE ring 4, G ring 2, A ring 3' }]);
    const after = reading([{ left: 'TE ring 4, G ring 2, A body 3', right: 'P ring 4, G ring 2, A ring 3' }]);
    expect(told(before, after)).toEqual([
      ['assemble, ring', 'right', 1, 1],
      ['grasp, ring', 'right', 1, 1],
      ['transport empty, ring', 'both', 1, 1],
    ]);
  });

  it('over mirrored routes', () => {
    const before = reading([{ left: 'TE ring nestL>binL 4', right: 'UD 4' }]);
    expect(told(before, reading([{ left: 'UD 5', right: 'TE ring nestR>binR 5' }]))).toEqual([
      ['transport empty, ring', 'both', 1, 1],
    ]);
    expect(told(before, reading([{ left: 'UD 5', right: 'TE ring nestR>box 5' }]))).toEqual([]);
  });

  it('over a similar distance, the nearest one first; another or an unknown one is not shared', () => {
    const at = {
      a: { x: 0, y: 0 },
      b: { x: 300, y: 0 },
      c: { x: 0, y: 325 },
      d: { x: 0, y: 310 },
      e: { x: 0, y: 400 },
    };
    const before = reading([{ left: 'UD 4', right: 'TL ring a>b 4' }], at);
    const both = sharedMotions(
      before,
      reading([{ left: 'UD 8', right: 'TL ring a>c 4, TL ring a>d 4' }], at),
    );
    expect(both.map((motion) => motion.after.distance)).toEqual([310]);
    expect(told(before, reading([{ left: 'UD 4', right: 'TL ring a>e 4' }], at))).toEqual([]);
    expect(told(before, reading([{ left: 'UD 4', right: 'TL ring a>f 4' }], at))).toEqual([]);
    expect(told(before, reading([{ left: 'UD 4', right: 'TL ring 4' }], at))).toEqual([]);
  });

  it('only whole ones: what a cycle cuts at its start or its end shows no length', () => {
    const whole = reading([{ left: 'UD 9', right: 'TE ring 4, G ring 2, A ring 3' }]);
    const study = twoHandStudy([{ left: 'UD 9', right: 'TE ring 4, G ring 2, A ring 3' }]);
    const [method] = study.methods;
    if (method === undefined) throw new Error('no method');
    const cycles = { items: [{ id: 'c1', start: 2 * tenth }], end: 8 * tenth };
    const cut = read({ ...study, methods: [{ ...method, cycles }] });
    expect(told(whole, cut)).toEqual([['grasp, ring', 'right', 1, 1]]);
  });

  it('neither waits nor holds, nor what comes in fewer than half of the cycles', () => {
    const often = { left: 'H body 6', right: 'G ring 2, UD 1, R 1, F 1, A ring 1' };
    const once = { left: 'H body 7', right: 'G ring 2, UD 1, R 1, F 1, A ring 1, I ring 1' };
    const record = reading([often, once, often]);
    expect(told(record, record)).toEqual([
      ['assemble, ring', 'right', 3, 3],
      ['grasp, ring', 'right', 3, 3],
    ]);
    expect(sharedMotions(record, record)[1]?.before).toMatchObject({
      perCycle: [2 * tenth, 2 * tenth, 2 * tenth],
      handTime: 2 * tenth,
    });
  });
});
