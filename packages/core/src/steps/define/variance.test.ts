import { describe, expect, it } from 'vitest';
import { seededRandom, studentShare } from '../../ground/numerics/index.ts';
import { lineOf } from './line.ts';
import { varianceBetween } from './variance.ts';

const group = (name: string, ...times: number[]) => ({ name, times });
const told = (...groups: readonly { name: string; times: number[] }[]) => {
  const result = varianceBetween(groups);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

describe('analysis of variance between operators', () => {
  it('worked by hand: 1 2 3 against 3 4 5 has 6 between, 4 within, F = 6', () => {
    const { between, within, ratio, explained } = told(group('A', 1, 2, 3), group('B', 3, 4, 5));
    expect([between.sum, between.degrees, within.sum, within.degrees]).toEqual([6, 1, 4, 4]);
    expect(ratio).toBeCloseTo(6, 12);
    expect(explained).toBeCloseTo(0.6, 12);
  });

  it('of two groups is the t test: F = t², the same chance (a line through places 0 and 1)', () => {
    const { ratio, chance } = told(group('A', 1, 2, 3, 5), group('B', 3, 4, 9));
    const line = lineOf([0, 0, 0, 0, 1, 1, 1], [1, 2, 3, 5, 3, 4, 9]);
    const t = line.slope / line.slopeError;
    expect(ratio).toBeCloseTo(t ** 2, 10);
    expect(chance).toBeCloseTo(2 * studentShare(-Math.abs(t), 5), 10);
  });

  it('the sentence names no person and ranks nobody', () => {
    const { words, differs } = told(group('Anna', 1, 1.1, 0.9), group('Bert', 2, 2.1, 1.9));
    expect(differs).toBe(true);
    expect(words).not.toMatch(/Anna|Bert|fast|slow|best/);
    expect(words).toContain('this says nothing about a person');
  });

  it('alike operators are told apart in about one study of twenty (2,000 made studies, seed 23)', () => {
    const random = seededRandom(23);
    const times = () => Array.from({ length: 8 }, () => random() + random() + random() + 5);
    const count = Array.from({ length: 2000 }, () =>
      told(group('A', ...times()), group('B', ...times()), group('C', ...times())),
    ).filter(({ differs }) => differs).length;
    expect(count).toBeGreaterThan(65);
    expect(count).toBeLessThan(135);
  });

  it('nothing that varies, within or at all, is said in words and not as a number that is none', () => {
    const within = told(group('A', 2, 2), group('B', 3, 3));
    expect(within).toMatchObject({ ratio: undefined, chance: 0, differs: true });
    expect(within.words).toContain('nothing varies within them');
    const all = told(group('A', 2, 2), group('B', 2));
    expect(all).toMatchObject({ chance: undefined, explained: undefined, differs: false });
  });

  it.each([
    [[], 'define/groups'],
    [[group('A', 1, 2)], 'define/groups'],
    [[group('A', 1), group('B', 2)], 'define/groups'],
    [[group('A', 1, 2), group('B')], 'define/group-empty'],
    [[group('A', 1, 2), group('B', 1, Number.NaN)], 'define/group-number'],
  ])('%j is refused', (groups, code) => {
    expect(varianceBetween(groups)).toMatchObject({ ok: false, error: { code } });
  });
});
