import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sampleOf, seededRandom, standardNormalQuantile } from '../../../ground/numerics/index.ts';
import { type Difference, type DifferenceWish, differenceOf } from './difference.ts';
import { moreCycles } from './more-cycles.ts';
import { oneOf } from './odds.ts';
import { meanDifference } from './welch.ts';

const old = [8.2, 7.6, 7.9, 8.4, 7.7, 8.0, 9.1, 7.5].map((seconds) => seconds * 1e6);
const fresh = [5.1, 4.7, 5.0, 4.9, 5.6, 4.8].map((seconds) => seconds * 1e6);

function between(before: readonly number[], after: readonly number[], wish?: DifferenceWish): Difference {
  const result = differenceOf({ name: 'Old', times: before }, { name: 'New', times: after }, wish);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

function logNormal(seed: number, mean: number, deviation: number, count: number): number[] {
  const random = seededRandom(seed);
  return Array.from(
    { length: count },
    () =>
      mean * Math.exp(deviation * standardNormalQuantile((random() * 0x1_0000_0000 + 0.5) / 0x1_0000_0000)),
  );
}

describe('the difference of two means', () => {
  it('of Student’s sleep data (Student 1908, Biometrika 6; as R 4 prints it in its help on t.test, from memory)', () => {
    const first = sampleOf([0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0]);
    const second = sampleOf([1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4]);
    const found = meanDifference(first, second, 0.95);
    expect((found?.value ?? 0) / (found?.error ?? 0)).toBeCloseTo(-1.8608, 4);
    expect(found?.degrees).toBeCloseTo(17.776, 3);
    expect(found?.chance).toBeCloseTo(0.07939, 5);
    expect(found?.interval.low).toBeCloseTo(-3.3654832, 7);
    expect(found?.interval.high).toBeCloseTo(0.2054832, 7);
  });

  it('on logarithms and on times (invented cycles, a second way: SciPy 1.17, ttest_ind without equal variances)', () => {
    const { ratio, chance, savedInterval } = between(old, fresh);
    expect(ratio?.value).toBeCloseTo(0.623_280_321_071_573_3, 12);
    expect(ratio?.interval.low).toBeCloseTo(0.578_763_85, 8);
    expect(ratio?.interval.high).toBeCloseTo(0.671_220_84, 8);
    expect(ratio?.degrees).toBeCloseTo(11.043_419_852_460_719, 9);
    expect(chance).toBeCloseTo(2.189_009_971_752_85e-8, 14);
    expect((savedInterval?.low ?? 0) / 1e6).toBeCloseTo(2.540_329_485_047_306, 9);
    expect((savedInterval?.high ?? 0) / 1e6).toBeCloseTo(3.526_337_181_619_36, 9);
    const wide = between(old, fresh, { confidence: 0.99 }).ratio?.interval;
    expect(Math.log(wide?.low ?? 0)).toBeCloseTo(-0.577_291_471_554_090_6, 9);
    expect(Math.log(wide?.high ?? 0)).toBeCloseTo(-0.368_226_344_100_921_6, 9);
  });

  it('tells time saved and output gained apart, and their intervals from one ratio', () => {
    const found = between(old, fresh);
    const { timeSaved, outputGained } = found;
    expect(found.saving.timeSaved).toBeCloseTo(1 - sampleOf(fresh).mean / sampleOf(old).mean, 12);
    for (const end of ['low', 'high'] as const)
      expect(outputGained?.[end]).toBeCloseTo(1 / (1 - (timeSaved?.[end] ?? 0)) - 1, 12);
    expect(found.verdict).toBe('shorter');
    expect(found.odds).toBe(
      'If both methods took equally long, chance alone would give a difference as large as this in fewer than 1 of 1,000,000 such studies.',
    );
    expect(between(fresh, old).verdict).toBe('longer');
  });

  it('95 of 100 intervals hold the true ratio, and one in twenty of two equal methods is called different', () => {
    let [held, called] = [0, 0];
    const studies = 600;
    for (let seed = 1; seed <= studies; seed += 1) {
      const before = logNormal(seed, 7e6, 0.1, 8);
      const after = logNormal(seed + 10_000, 5e6, 0.16, 6);
      const found = between(before, after, { draws: 100 }).ratio?.interval;
      if (found !== undefined && found.low <= 5 / 7 && 5 / 7 <= found.high) held += 1;
      const same = between(before, logNormal(seed + 20_000, 7e6, 0.16, 6), { draws: 100 });
      if (same.verdict !== 'open') called += 1;
    }
    // Three standard errors of a share of 0.95 of 600 are 0.027.
    expect(Math.abs(held / studies - 0.95)).toBeLessThan(0.027);
    expect(Math.abs(called / studies - 0.05)).toBeLessThan(0.027);
  });
});

describe('drawing again', () => {
  it('gives the same for the same seed, and nearly the interval by Welch with many cycles', () => {
    const before = logNormal(3, 7e6, 0.1, 200);
    const after = logNormal(4, 5e6, 0.1, 200);
    const found = between(before, after, { draws: 4000, seed: 7 });
    expect(between(before, after, { draws: 4000, seed: 7 }).drawn).toEqual(found.drawn);
    expect(between(before, after, { draws: 4000, seed: 8 }).drawn).not.toEqual(found.drawn);
    const [drawn, ratio] = [found.drawn?.ratio, found.ratio?.interval];
    const width = (ratio?.high ?? 0) - (ratio?.low ?? 0);
    expect(Math.abs((drawn?.low ?? 0) - (ratio?.low ?? 0))).toBeLessThan(0.2 * width);
    expect(Math.abs((drawn?.high ?? 0) - (ratio?.high ?? 0))).toBeLessThan(0.2 * width);
    expect(found.drawn?.shorter).toBe(1);
  });
});

describe('drawing two cycles again', () => {
  it('gives their four means as often as counting says', () => {
    // From 1 s and 3 s come 1, 2, 2 and 3 s, so one draw in four is longer than 2.5 s; then the other one is shorter.
    const { drawn } = between([1e6, 3e6], [2.5e6, 2.5e6], { draws: 20_000 });
    expect(Math.abs((drawn?.shorter ?? 0) - 0.25)).toBeLessThan(0.01);
    expect([drawn?.saved.low, drawn?.saved.high]).toEqual([-1.5e6, 0.5e6]);
  });
});

describe('further cycles', () => {
  const [four, five] = [
    [8.2, 7.6, 7.9, 8.4],
    [7.9, 7.3, 8.1, 8.0, 7.6],
  ].map((times) => times.map((seconds) => seconds * 1e6)) as [number[], number[]];

  it('that would settle an open difference (invented cycles, a second way: SciPy 1.17, counted up one by one)', () => {
    const found = between(four, five);
    expect(found.verdict).toBe('open');
    expect(found.chance).toBeCloseTo(0.323_390_741_458_872, 9);
    expect(found.more?.ofEach).toBe(27);
    expect(found.more?.words).toMatch(/27 further cycles of each method would settle it in 80 of 100/);
    expect(found.odds).toMatch(/in about 1 of 3 such studies: the difference is not shown\.$/);
  });

  it('settle about the promised share of studies', () => {
    const [spread, ratio] = [0.1, 0.93];
    const part = { n: 4, deviation: spread };
    const wish = { confidence: 0.95, power: 0.8 };
    const { ofEach = 0 } = moreCycles(Math.log(ratio), part, part, wish);
    let settled = 0;
    for (let seed = 1; seed <= 400; seed += 1) {
      const before = logNormal(seed, 7e6, spread, 4 + ofEach);
      const after = logNormal(seed + 5000, 7e6 * ratio, spread, 4 + ofEach);
      if (between(before, after, { draws: 100 }).verdict === 'shorter') settled += 1;
    }
    // Three standard errors of a share of 0.8 of 400 are 0.06.
    expect(Math.abs(settled / 400 - 0.8)).toBeLessThan(0.06);
  });

  it('say so when no sensible number would', () => {
    const found = between([1e6, 1.1e6, 1.2e6], [1e6, 1.1e6, 1.200_001e6]);
    expect(found.more?.ofEach).toBeUndefined();
    expect(found.more?.words).toMatch(/not even 100,000 further cycles/);
  });
});

describe('limits that are told', () => {
  it('one cycle, and equal cycles, give a difference without an interval', () => {
    for (const [before, after, code] of [
      [[7e6], fresh, 'evaluate/one-cycle'],
      [[7e6, 7e6, 7e6], [5e6, 5e6], 'evaluate/no-spread'],
    ] as const) {
      const found = between(before, after);
      expect(found).toMatchObject({ verdict: 'unknown', chance: undefined, ratio: undefined });
      expect(found).toMatchObject({ timeSaved: undefined, savedInterval: undefined, drawn: undefined });
      expect(found.saved).toBeGreaterThan(0);
      expect(found.notes.map((note) => note.code)).toContain(code);
      expect(found.odds).toMatch(/cannot be told/);
    }
  });

  it('one of the two without spread is still compared, and said to be so', () => {
    const found = between([7e6, 7e6, 7e6], fresh);
    expect(found.verdict).toBe('shorter');
    expect(found.ratio?.degrees).toBeCloseTo(fresh.length - 1, 9);
    expect(found.notes.map(({ code }) => code)).toEqual(['evaluate/no-spread', 'evaluate/few-cycles']);
  });

  it.each([
    [[], [1], {}, 'evaluate/no-cycle'],
    [[1e6, 0], [1e6], {}, 'evaluate/cycle-time'],
    [[1e6], [-5], {}, 'evaluate/cycle-time'],
    [[1e6], [Number.NaN], {}, 'evaluate/cycle-time'],
    [[1e6], [Number.POSITIVE_INFINITY], {}, 'evaluate/cycle-time'],
    [[1e6], [1e6], { confidence: 1 }, 'evaluate/number'],
    [[1e6], [1e6], { draws: 1.5 }, 'evaluate/number'],
    [[1e6], [1e6], { seed: 0.5 }, 'evaluate/number'],
    [[1e6], [1e6], { power: 0.3 }, 'evaluate/number'],
  ])('%j and %j with %j are refused in words', (before, after, wish, code) => {
    const result = differenceOf({ name: 'Old', times: before }, { name: 'New', times: after }, wish);
    expect(result).toMatchObject({ ok: false, error: { code } });
    expect(result.ok ? '' : result.error.message).not.toMatch(/\{\w+\}|NaN|Infinity/);
  });

  it('any cycles give finite figures or a finding, never a number that is none', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1, max: 1e9 }), { maxLength: 6 }),
        fc.array(fc.double({ min: 1e-3, max: 1e12, noNaN: true }), { maxLength: 6 }),
        (before, after) => {
          const result = differenceOf(
            { name: 'a', times: before },
            { name: 'b', times: after },
            { draws: 100 },
          );
          const numbers: number[] = [];
          JSON.stringify(result, (_, value) => {
            if (typeof value === 'number') numbers.push(value);
            return value;
          });
          expect(numbers.every(Number.isFinite)).toBe(true);
        },
      ),
      { seed: 41, numRuns: 300 },
    );
  });
});

it.each([
  [0.9, 'more than half of all'],
  [0.42, 'about 4 of 10'],
  [0.2, 'about 1 of 5'],
  [0.031, 'about 1 of 32'],
  [0.000_234, 'about 1 of 4,300'],
  [1e-9, 'fewer than 1 of 1,000,000'],
])('a chance of %d is “%s”', (chance, words) => expect(oneOf(chance)).toBe(words));
