import {
  type Assurance,
  momentsOf,
  numbersFromTable,
  observationsNeeded,
  shareLimits,
  shareSeen,
  standardFromSampling,
  standardTime,
} from '@evenhand/core/define';
import { fromUnit } from '@evenhand/core/ground/units';
import { describe, expect, it } from 'vitest';
import { expectCheck, tally, titled, told } from './check.ts';
import * as published from './published-work-sampling.ts';

const { sources } = published;
const times = (multiplier: number): Assurance => ({ kind: 'multiplier', multiplier });
const conventions = { job: 'share-of-basic-time', shift: 'share-of-shift' } as const;

function observed(
  p: number,
  kind: 'of-the-whole' | 'of-the-share',
  amount: number,
  z: number,
  wanted: object,
) {
  const { unrounded, needed } = told(observationsNeeded(p, { kind, amount }, times(z)));
  const all: Record<string, number> = { n: unrounded, nCeil: needed, nRound: Math.round(unrounded) };
  return Object.fromEntries(Object.entries(all).filter(([name]) => name in wanted));
}

describe('number of observations', () => {
  it.each(titled(published.observationNumbers, sources))('$title', ({ check }) => {
    const { p, e, z } = check.inputs;
    expectCheck(check, observed(p, 'of-the-whole', e, z, check.computed));
  });

  it.each(titled(published.relativeObservationNumbers, sources))('$title', ({ check }) => {
    const { p, s, z } = check.inputs;
    expectCheck(check, observed(p, 'of-the-share', s, z, check.computed));
    expect(told(observationsNeeded(p, { kind: 'of-the-whole', amount: s }, times(z))).needed).toBe(81);
  });
});

describe('shares and their limits', () => {
  it.each(titled(published.sharePrecisions, sources))('$title', ({ check }) => {
    const { x, n, z } = check.inputs;
    const { share, halfWidth, standardError, interval } = told(shareSeen(x, n, times(z)));
    expectCheck(check, { p: share, e: halfWidth, lo: interval.low, hi: interval.high, sigma: standardError });
  });

  it.each(titled(published.shareCharts, sources))('$title', ({ check }) => {
    const { pbar, n, k } = check.inputs;
    const { low, high, standardError } = told(shareLimits(pbar, n, k));
    expectCheck(check, { sigma: standardError, ucl: high, lcl: low });
  });
});

describe('standard times from sampling', () => {
  it.each(titled(published.samplingStandards, sources))('$title', ({ check }) => {
    const { totalMin, share, rating, units, allowance, convention } = check.inputs;
    const result = told(
      standardFromSampling({
        time: totalMin,
        share,
        pace: rating,
        pieces: units,
        allowance,
        convention: conventions[convention],
      }),
    );
    expectCheck(check, { ot: result.observed, nt: result.basic, st: result.standard });
  });

  it.each(titled(published.machineWork, sources))('$title', ({ check }) => {
    const { manual, machine, rating, allowance, convention } = check.inputs;
    const result = told(
      standardTime(
        [
          { name: 'by hand', work: 'worker', basic: manual * rating },
          { name: 'machine', work: 'process', basic: machine },
        ],
        { convention: conventions[convention], worker: allowance, process: allowance, contingency: 0 },
      ),
    );
    expectCheck(check, { nt: result.basic, st: result.standard });
  });
});

describe('random times of observation', () => {
  it.each(titled(published.randomTimes, sources))('$title', ({ check }) => {
    const { numbers, periods, want, startMin, step } = check.inputs;
    const start = fromUnit(startMin, 'minutes');
    const end = fromUnit(startMin + periods * step, 'minutes');
    const moments = told(momentsOf([{ start, end, breaks: [] }], fromUnit(step, 'minutes')));
    const kept = numbersFromTable(numbers, moments.length, want);
    const clock = (moment: number) =>
      `${Math.floor(moment / 3.6e9)}:${String((moment / 6e7) % 60).padStart(2, '0')}`;
    const told24 = kept
      .map((number) => moments[number - 1] ?? 0)
      .sort((a, b) => a - b)
      .map(clock);
    expectCheck(check, { kept, times: told24 });
  });
});

it('43 published checks on work sampling ran, four of them wrong prints', () => {
  expect(tally()).toMatchObject({ checks: 43, traps: 4 });
});
