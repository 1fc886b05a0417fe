import { describe, expect, it } from 'vitest';
import { ratingScales } from '../../ground/tables/index.ts';
import { basicTime, basicTimes, convertRating, ratingFault } from './rating.ts';
import { readingsOf } from './reading.ts';

const readings = readingsOf([20, 25, 40]);

describe('basic time', () => {
  it('is the observed time at standard, longer when the pace was above it: 20 s at 125 is 25 s on 0–100, 20 s at 100 is 25 s on 60–80', () => {
    expect(basicTime(20, 125, '0-100')).toEqual({ ok: true, value: 25 });
    expect(basicTime(20, 100, '60-80')).toEqual({ ok: true, value: 25 });
    expect(basicTime(20, 80, '60-80')).toEqual({ ok: true, value: 20 });
  });

  it('takes the rating of the reading, else of the element, else of the study', () => {
    const rated = readings.map((reading, index) => (index === 0 ? { ...reading, rating: 125 } : reading));
    const ratings = (source: { element?: number; study?: number }) => {
      const result = basicTimes('fill', rated, { scale: '0-100', ...source });
      return result.ok
        ? [result.value.ratedBy, ...result.value.readings.map(({ rating }) => rating)]
        : result.error.code;
    };
    expect(ratings({ element: 100, study: 80 })).toEqual(['mixed', 125, 100, 100]);
    expect(ratings({ study: 80 })).toEqual(['mixed', 125, 80, 80]);
    expect(ratings({})).toBe('define/no-rating');
  });

  it('readings rated one by one by a rater who is right vary less in basic than in observed time', () => {
    const right = readings.map((reading) => ({ ...reading, rating: 2500 / (reading.time ?? 1) }));
    const result = basicTimes('fill', right, { scale: '0-100' });
    expect(result.ok && result.value.basic.variation).toBeCloseTo(0, 12);
    expect(result.ok && result.value.observed.variation).toBeGreaterThan(0.3);
    expect(result.ok && result.value.ratings).toMatchObject({ least: 62.5, most: 125, n: 3 });
    expect(result.ok && result.value.ratedBy).toBe('reading');
  });

  it('every scale has its upper figure a third above the lower one, 133 being rounded', () => {
    for (const { standard, normal } of Object.values(ratingScales)) {
      expect(Math.abs(standard / normal - 4 / 3)).toBeLessThan(0.005);
    }
    expect(convertRating(60, ratingScales['60-80'], ratingScales['0-100'])).toBe(75);
    expect(() => convertRating(0, { standard: 100 }, { standard: 80 })).toThrow(RangeError);
  });

  it.each([0, -10, 400, 201, Number.NaN])(
    'a rating of %d is refused with the scale and its limits',
    (rating) => {
      const fault = ratingFault('“fill” in cycle 2', rating, '0-100');
      expect(fault?.code).toBe('define/rating');
      expect(fault?.message).toContain('The rating of “fill” in cycle 2 cannot be used');
      expect(fault?.message).toContain('standard is 100, and ratings above 0 and up to 200');
      expect(basicTimes('fill', readings, { scale: '0-100', study: rating })).toMatchObject({ ok: false });
    },
  );

  it('a time that is none, no reading and a wrong confidence are refused', () => {
    expect(basicTime(0, 100, '0-100')).toMatchObject({ error: { code: 'define/number' } });
    expect(basicTimes('fill', [], { scale: '0-100', study: 100 })).toMatchObject({
      error: { code: 'define/no-reading' },
    });
    expect(basicTimes('fill', readings, { scale: '0-100', study: 100 }, 95)).toMatchObject({
      error: { code: 'define/number' },
    });
  });
});
