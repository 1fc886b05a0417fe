import { type CyclesWish, cyclesNeeded, type Pilot, precisionReached } from '@evenhand/core/define';
import { sampleOf, standardNormalQuantile, studentQuantile } from '@evenhand/core/ground/numerics';
import { describe, expect, it } from 'vitest';
import { expectCheck, tally, titled, told } from './check.ts';
import * as forty from './published-cycles.ts';
import * as normal from './published-cycles-normal.ts';

function pilotOf(readings: readonly number[]): Pilot {
  const { n, mean, deviation = 0 } = sampleOf(readings);
  return { n, mean, deviation };
}

/** k of the 40-formula is the multiplier over the precision: 2 over 5 %. */
function fortyWish(k: number): CyclesWish {
  return {
    form: 'population',
    precision: { kind: 'relative', share: 2 / k },
    assurance: { kind: 'multiplier', multiplier: 2 },
  };
}

function normalWish(z: number, precision: CyclesWish['precision']): CyclesWish {
  return { form: 'normal', precision, assurance: { kind: 'multiplier', multiplier: z } };
}

const relative = (share: number) => ({ kind: 'relative', share }) as const;
const absolute = (amount: number) => ({ kind: 'absolute', amount }) as const;

/** What comes out, and the roundings that some sources use instead of rounding up. */
function roundings(pilot: Pilot, wish: CyclesWish, names: readonly string[]) {
  const { unrounded, needed, more, multiplier } = told(cyclesNeeded(pilot, wish));
  const all: Record<string, number> = {
    n: unrounded,
    nCeil: needed,
    nRound: Math.round(unrounded),
    nFloor: Math.floor(unrounded),
    t: multiplier,
    more,
  };
  return Object.fromEntries(
    names.filter((name) => name in all).map((name) => [name, all[name] ?? Number.NaN]),
  );
}

describe('the 40-formula (population deviation)', () => {
  it.each(titled(forty.fortyFormulaFromReadings, forty.sources))('$title', ({ check }) => {
    const { readings, k } = check.inputs;
    const sumX = readings.reduce((sum, value) => sum + value, 0);
    const sumX2 = readings.reduce((sum, value) => sum + value ** 2, 0);
    const found = roundings(pilotOf(readings), fortyWish(k), Object.keys(check.computed));
    expectCheck(check, { ...found, sumX, sumX2 });
  });

  it.each(titled(forty.fortyFormulaFromSums, forty.sources))('$title', ({ check }) => {
    const { n, sumX, sumX2, k } = check.inputs;
    const deviation = Math.sqrt((sumX2 - sumX ** 2 / n) / (n - 1));
    const pilot = { n, mean: sumX / n, deviation };
    expectCheck(check, roundings(pilot, fortyWish(k), Object.keys(check.computed)));
  });

  it.each(titled(forty.fortyFormulaPlusOne, forty.sources))(
    '$title: one less than the variant that adds one',
    ({ check }) => {
      const { readings, k, e } = check.inputs;
      const pilot = pilotOf(readings);
      const { unrounded, deviation } = told(
        cyclesNeeded(pilot, {
          form: 'population',
          precision: relative(e),
          assurance: { kind: 'multiplier', multiplier: k },
        }),
      );
      expectCheck(check, { mean: pilot.mean, sigmaPop: deviation, n: unrounded + 1 });
      expect(unrounded).not.toBeCloseTo(Number(check.computed.n), 3);
    },
  );
});

describe('the normal distribution (sample deviation)', () => {
  it.each(titled(normal.normalFromFigures, normal.sources))('$title', ({ check }) => {
    const { z, s, mean, h } = check.inputs;
    const found = roundings(
      { n: 30, mean, deviation: s },
      normalWish(z, relative(h)),
      Object.keys(check.computed),
    );
    expectCheck(check, found);
  });

  it.each(titled(normal.normalFromReadings, normal.sources))('$title', ({ check }) => {
    const { readings, z, h } = check.inputs;
    const { mean, deviation = 0, variation = 0 } = sampleOf(readings);
    const found = roundings(pilotOf(readings), normalWish(z, relative(h)), Object.keys(check.computed));
    expectCheck(check, { ...found, mean, s: deviation, cv: variation });
  });

  it.each(titled(normal.absoluteFromFigures, normal.sources))('$title', ({ check }) => {
    const { z, s, e } = check.inputs;
    const pilot = { n: 30, mean: 10, deviation: s };
    expectCheck(check, roundings(pilot, normalWish(z, absolute(e)), Object.keys(check.computed)));
  });

  it.each(titled(normal.absoluteFromReadings, normal.sources))('$title', ({ check }) => {
    const { readings, z, e } = check.inputs;
    const pilot = pilotOf(readings);
    const found = roundings(pilot, normalWish(z, absolute(e)), Object.keys(check.computed));
    expectCheck(check, { ...found, mean: pilot.mean, s: pilot.deviation });
  });

  it.each(titled(normal.normalMultipliers, normal.sources))('$title', ({ check }) => {
    expectCheck(check, { z: standardNormalQuantile(0.5 + check.inputs.conf / 2) });
  });
});

describe('Student’s t with the degrees of freedom of the pilot', () => {
  const wish = (conf: number, h: number): CyclesWish => ({
    form: 'student',
    precision: relative(h),
    assurance: { kind: 'confidence', confidence: conf },
  });

  it.each(titled(forty.studentFromReadings, forty.sources))('$title', ({ check }) => {
    const { readings, conf, h } = check.inputs;
    const pilot = pilotOf(readings);
    const found = roundings(pilot, wish(conf, h), Object.keys(check.computed));
    const errorWithThisN = told(precisionReached(pilot, conf)).share;
    expectCheck(check, {
      ...found,
      mean: pilot.mean,
      s: pilot.deviation,
      cv: pilot.deviation / pilot.mean,
      errorWithThisN,
    });
  });

  it.each(titled(forty.studentFromFigures, forty.sources))('$title', ({ check }) => {
    const { n, mean, s, conf, h } = check.inputs;
    expectCheck(check, roundings({ n, mean, deviation: s }, wish(conf, h), Object.keys(check.computed)));
  });

  it.each(titled(forty.studentMultipliers, forty.sources))('$title', ({ check }) => {
    expectCheck(check, { t: studentQuantile(0.5 + check.inputs.conf / 2, check.inputs.df) });
  });
});

it('46 published checks on the number of cycles ran, one of them a wrong print', () => {
  expect(tally()).toMatchObject({ checks: 46, traps: 1 });
});
