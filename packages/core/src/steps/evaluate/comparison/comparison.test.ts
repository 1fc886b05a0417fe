import { describe, expect, it } from 'vitest';
import { type PacedMethod, pacedStudy } from '../../../../../../tests/helpers/paced-study.ts';
import type { Comparison, MoneyCase, Study } from '../../../ground/study/index.ts';
import { type ComparisonFacts, comparisonOf } from './comparison.ts';

const motions = [
  'TE ring bench>bin 5',
  'G ring 3',
  'TL ring bin>bench 6',
  'P ring 5',
  'A ring 7',
  'Sh collar 8',
];
const method = (cycles: number, more: Partial<PacedMethod> = {}): PacedMethod => ({
  motions,
  pace: 1,
  cycles,
  ...more,
});
const noise = { motion: 0.1, cycle: 0.03 };
const shorter = motions.slice(0, 5);
const money: MoneyCase = {
  currency: '€',
  basis: 'measured',
  unitsAYear: 100_000,
  hourlyCost: 36,
  cost: 5000,
  years: 3,
  discountRate: 0,
};

function facts(study: Study, given: MoneyCase | undefined, more: Partial<Comparison> = {}): ComparisonFacts {
  const found = comparisonOf(study, {
    id: 'c',
    before: { method: 'before' },
    after: { method: 'after' },
    confidence: 0.95,
    ...(given === undefined ? {} : { money: given }),
    ...more,
  });
  if (!found.ok) throw new Error(found.error.message);
  return found.value;
}

describe('a comparison with its money', () => {
  const study = pacedStudy(method(12), method(12, { motions: shorter, pace: 0.85 }), noise, 3);

  it('is reckoned with the means of the cycles that count: hours × cost, by hand', () => {
    const { proof, money: found } = facts(study, money);
    const { before, after } = proof.difference;
    const hours = ((before.sample.mean - after.sample.mean) * 100_000) / 3_600_000_000;
    expect(found?.outlook?.likely.yearly.hours).toBeCloseTo(hours, 9);
    expect(found?.outlook?.likely.netPresentValue).toBeCloseTo(3 * 36 * hours - 5000, 6);
    expect(found?.basis).toBe('Reckoned with the saving as measured.');
  });

  it('its low and high carry the interval of the time saved, where the case has no range of its own', () => {
    const { proof, money: found } = facts(study, money);
    const { timeSaved, before } = proof.difference;
    const bar = found?.outlook?.tornado.find(({ field }) => field === 'after');
    expect(bar?.low.value).toBeCloseTo(before.sample.mean * (1 - (timeSaved?.high ?? 0)), 6);
    expect(bar?.high.value).toBeCloseTo(before.sample.mean * (1 - (timeSaved?.low ?? 0)), 6);
    const own = facts(study, { ...money, ranges: { after: { low: 1_000_000, high: 3_200_000 } } });
    expect(own.money?.outlook?.tornado.find(({ field }) => field === 'after')).toMatchObject({
      low: { value: 1_000_000 },
      high: { value: 3_200_000 },
    });
  });

  it('at equal pace less is saved where the new record ran faster, and the basis says so', () => {
    const measured = facts(study, money);
    const equal = facts(study, { ...money, basis: 'equal-pace' });
    expect(equal.money?.basis).toBe('Reckoned with the saving at equal pace.');
    const value = ({ money: found }: ComparisonFacts) => found?.outlook?.likely.yearly.hours ?? Number.NaN;
    expect(value(equal)).toBeLessThan(value(measured));
    expect(equal.money?.outlook?.likely.yearly.timeSaved).toBeCloseTo(
      equal.proof.pace.equal?.saving.timeSaved ?? Number.NaN,
      9,
    );
  });

  it('without a shared motion it falls back to what was measured, and says that', () => {
    const apart = pacedStudy(method(9), method(9, { motions: ['U pen 5', 'I lid 6'] }), noise, 5);
    const { money: found } = facts(apart, { ...money, basis: 'equal-pace' });
    expect(found?.basis).toMatch(/^Reckoned with the saving as measured: the methods share no motion/);
  });

  it('a case that cannot be reckoned takes nothing from the proof, and says why', () => {
    const { proof, money: found } = facts(study, { ...money, ranges: { cost: { low: 9000, high: 9500 } } });
    expect(proof.claim.sentence).toMatch(/saved/);
    expect(found?.outlook).toBeUndefined();
    expect(found?.fault?.code).toBe('evaluate/range-order');
  });

  it('one cycle of each has no interval, so the saving has no range', () => {
    const one = facts(pacedStudy(method(1), method(1, { motions: shorter }), noise, 6), money);
    expect(one.money?.outlook?.tornado).toEqual([]);
    expect(one.money?.outlook?.low.netPresentValue).toBe(one.money?.outlook?.likely.netPresentValue);
  });

  it('cycles that are chosen are those that count, and what is not there is refused', () => {
    const chosen = facts(study, undefined, { before: { method: 'before', cycles: [2, 3] } });
    expect(chosen.proof.before.cycles.map(({ number }) => number)).toEqual([2, 3]);
    expect(chosen.money).toBeUndefined();
    const wrong = comparisonOf(study, {
      id: 'c',
      before: { method: 'before' },
      after: { method: 'gone' },
      confidence: 0.95,
    });
    expect(wrong.ok ? '' : wrong.error.message).toContain('gone');
  });
});
