import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Allowance, allowanceFactor, inConvention, relaxationFrom } from './allowances.ts';

const of = (share: number, convention: Allowance['convention']): Allowance => ({ share, convention });

describe('allowances', () => {
  it('15 % multiplies by 1.15 as a share of basic time, by 1.17647 as a share of the shift', () => {
    expect(allowanceFactor(of(0.15, 'share-of-basic-time'))).toEqual({ ok: true, value: 1.15 });
    const shift = allowanceFactor(of(0.15, 'share-of-shift'));
    expect(shift.ok && shift.value).toBeCloseTo(1.176470588, 9);
  });

  it('the same allowance in the other convention gives the same factor, and back the same share', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.9, noNaN: true }), (share) => {
        const shift = of(share, 'share-of-shift');
        const basic = inConvention(shift, 'share-of-basic-time');
        if (!basic.ok) throw new Error(basic.error.message);
        const [one, other] = [allowanceFactor(shift), allowanceFactor(basic.value)];
        expect(one.ok && other.ok && one.value / other.value).toBeCloseTo(1, 12);
        const back = inConvention(basic.value, 'share-of-shift');
        expect(back.ok && back.value.share).toBeCloseTo(share, 12);
      }),
      { seed: 403, numRuns: 200 },
    );
  });

  it.each([
    [of(1, 'share-of-shift'), 'define/allowance-shift', 'leaves no time for work'],
    [of(1.2, 'share-of-shift'), 'define/allowance-shift', '120.0 % of the shift'],
    [of(-0.1, 'share-of-basic-time'), 'define/number', 'of at least 0'],
    [of(15, 'share-of-basic-time'), 'define/number', 'at most 10'],
    [of(Number.NaN, 'share-of-shift'), 'define/number', 'something that is no number'],
  ])('%j is refused', (allowance, code, words) => {
    for (const result of [allowanceFactor(allowance), inConvention(allowance, 'share-of-basic-time')]) {
      expect(result).toMatchObject({ ok: false, error: { code } });
      expect(!result.ok && result.error.message).toContain(words);
    }
  });

  it('the editions differ for the same rows: 9 % for men, 14 % or 11 % for women', () => {
    const always = [
      { row: 'personal', level: 0 },
      { row: 'basic-fatigue', level: 0 },
    ] as const;
    const percent = (edition: 'kilograms' | 'constant', column: 'men' | 'women') => {
      const result = relaxationFrom(edition, column, always);
      return result.ok ? result.value.percent : result.error.code;
    };
    expect(percent('kilograms', 'men')).toBe(9);
    expect(percent('constant', 'men')).toBe(9);
    expect(percent('kilograms', 'women')).toBe(14);
    expect(percent('constant', 'women')).toBe(11);
  });

  it('a sum from the table names its convention, its edition, its rows and the caution', () => {
    const result = relaxationFrom('pounds', 'one', [{ row: 'load', level: 8 }]);
    expect(result).toMatchObject({
      ok: true,
      value: { share: 0.11, convention: 'share-of-basic-time', edition: 'pounds' },
    });
    expect(result.ok && result.value.parts[0]?.words).toBe('Weight lifted or force used: up to 45 lb');
    expect(result.ok && result.value.caution).toContain('local rules and qualified people');
  });

  it.each([
    [relaxationFrom('pounds', 'women', []), 'define/allowance-column'],
    [relaxationFrom('pounds', 'one', [{ row: 'load', level: 99 }]), 'define/allowance-row'],
    [relaxationFrom('constant', 'men', [{ row: 'noise', level: 0 }]), 'define/allowance-row'],
    [relaxationFrom('kilograms', 'women', [{ row: 'load', level: 9 }]), 'define/allowance-blank'],
    [
      relaxationFrom('pounds', 'one', [
        { row: 'noise', level: 0 },
        { row: 'noise', level: 1 },
      ]),
      'define/allowance-twice',
    ],
  ])('what the table does not have is refused (%#)', (result, code) => {
    expect(result).toMatchObject({ ok: false, error: { code } });
  });
});
