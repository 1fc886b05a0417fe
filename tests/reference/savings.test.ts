import {
  annuityFactor,
  discountedPayback,
  evenPayback,
  netPresentValue,
  outputGainedFor,
  payback,
  savingFromRates,
  savingFromTimes,
  timeSavedFor,
  yearlySaving,
} from '@evenhand/core/evaluate';
import { describe, expect, it } from 'vitest';
import { expectCheck, tally, titled, told } from './check.ts';
import * as published from './published-savings.ts';

const { sources } = published;

describe('time saved and output gained', () => {
  it.each(titled(published.productivities, sources))('$title', ({ check }) => {
    const { o1, i1, o2, i2 } = check.inputs;
    const { outputGained } = told(savingFromRates(o1 / i1, o2 / i2));
    expectCheck(check, { p1: o1 / i1, p2: o2 / i2, gain: 100 * outputGained });
  });

  it.each(titled(published.savingsFromGain, sources))('$title', ({ check }) => {
    expectCheck(check, { saving: told(timeSavedFor(check.inputs.gain)) });
  });

  it.each(titled(published.gainsFromSaving, sources))('$title', ({ check }) => {
    expectCheck(check, { gain: told(outputGainedFor(check.inputs.saving)) });
  });

  it.each([
    [38, 25, 0.34, 0.52, 2],
    [2, 1, 0.5, 1, 12],
  ])(
    '%d s → %d s saves %d of the time and gives %d more output (common practice, no source)',
    (before, after, saved, gained, decimals) => {
      const { timeSaved, outputGained } = told(savingFromTimes(before, after));
      expect(timeSaved).toBeCloseTo(saved, decimals);
      expect(outputGained).toBeCloseTo(gained, decimals);
    },
  );

  it('485 % more output is 5.85 times as much (common practice, no source)', () => {
    const { times, outputGained } = told(savingFromRates(100, 585));
    expect(outputGained).toBeCloseTo(4.85, 12);
    expect(times).toBeCloseTo(5.85, 12);
    expect(told(timeSavedFor(4.85))).toBeCloseTo(1 - 1 / 5.85, 12);
  });
});

describe('hours and money a year', () => {
  it.each(titled(published.yearlySavings, sources))('$title', ({ check }) => {
    const { out1, out2, demand, ratePerHour } = check.inputs;
    const hour = 3_600_000_000;
    const year = told(
      yearlySaving({
        before: hour / out1,
        after: hour / out2,
        unitsAYear: demand,
        hourlyCost: ratePerHour,
      }),
    );
    expectCheck(check, {
      t1: 60 / out1,
      t2: 60 / out2,
      saved: year.timeAUnit / 60e6,
      minutes: 60 * year.hours,
      money: year.money,
      pct: 100 * year.timeSaved,
      gain: 100 * year.outputGained,
    });
  });
});

describe('payback and net present value', () => {
  it.each(titled(published.presentValues, sources))('$title', ({ check }) => {
    expectCheck(check, { npv: told(netPresentValue(check.inputs, check.inputs.rate)) });
  });

  it.each(titled(published.annuities, sources))('$title', ({ check }) => {
    expectCheck(check, { f: told(annuityFactor(check.inputs.rate, check.inputs.n)) });
  });

  it.each(titled(published.paybacks, sources))('$title', ({ check }) => {
    const { years } = told(payback(check.inputs));
    expectCheck(check, { years: years ?? Number.NaN });
  });

  it.each(titled(published.evenPaybacks, sources))('$title', ({ check }) => {
    const { cost, perYear } = check.inputs;
    const years = told(evenPayback(cost, perYear));
    expectCheck(check, { years });
    const flows = Array.from({ length: 10 }, () => perYear);
    expect(told(payback({ cost, flows })).years).toBeCloseTo(years, 12);
  });

  it.each(titled(published.discountedPaybacks, sources))('$title', ({ check }) => {
    const { years } = told(discountedPayback(check.inputs, check.inputs.rate));
    expectCheck(check, { years: years ?? Number.NaN });
  });
});

it('22 published checks on savings ran, two of them wrong prints', () => {
  expect(tally()).toMatchObject({ checks: 22, traps: 2 });
});
