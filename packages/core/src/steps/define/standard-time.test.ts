import { describe, expect, it } from 'vitest';
import { type AllowancePlan, outputIn, standardTime, type TimedElement } from './standard-time.ts';

const plan: AllowancePlan = { convention: 'share-of-basic-time', worker: 0.1, process: 0.2, contingency: 0 };
const outside: TimedElement = { name: 'load', work: 'worker', basic: 2 };
const machine: TimedElement = { name: 'press', work: 'process', basic: 5 };
const inside = (basic: number): TimedElement => ({ name: 'look over', work: 'inside', basic });

const told = (elements: readonly TimedElement[], with_: AllowancePlan = plan) => {
  const result = standardTime(elements, with_);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

describe('standard time', () => {
  it('inside work costs nothing while the machine lasts longer, and sets the cycle when it does not', () => {
    expect(told([outside, machine]).standard).toBeCloseTo(2.2 + 6, 12);
    expect(told([outside, machine, inside(5)])).toMatchObject({ notes: [] });
    expect(told([outside, machine, inside(5)]).standard).toBeCloseTo(2.2 + 6, 12);
    const longer = told([outside, machine, inside(6)]);
    expect(longer.standard).toBeCloseTo(2.2 + 6.6, 12);
    expect(longer.notes.map(({ code }) => code)).toEqual(['define/inside-longer']);
  });

  it('an element of every fifth cycle counts a fifth of its time', () => {
    expect(
      told([outside, { name: 'change box', work: 'worker', basic: 10, frequency: 1 / 5 }]).basic,
    ).toBeCloseTo(4, 12);
  });

  it('contingency comes on top of the sum with its relaxation', () => {
    const { relaxed, contingency, standard } = told([outside], { ...plan, contingency: 0.05 });
    expect([relaxed, contingency, standard].map((value) => Number(value.toFixed(12)))).toEqual([
      2.2, 0.11, 2.31,
    ]);
  });

  it('every result names its convention in words', () => {
    expect(told([outside]).words).toContain('basic time × (1 + allowance)');
    expect(told([outside], { ...plan, convention: 'share-of-shift' }).words).toContain('share of the shift');
  });

  it.each([
    ['no element', [], plan, 'define/no-elements'],
    ['no time', [{ ...outside, basic: 0 }], plan, 'define/number'],
    ['a frequency of 0', [{ ...outside, frequency: 0 }], plan, 'define/number'],
    ['inside work without a machine', [inside(2)], plan, 'define/no-process'],
    [
      'the whole shift',
      [outside],
      { ...plan, convention: 'share-of-shift', worker: 1 },
      'define/allowance-shift',
    ],
    [
      'the whole shift for one element',
      [{ ...outside, relaxation: 1 }],
      { ...plan, convention: 'share-of-shift' },
      'define/allowance-shift',
    ],
    ['a contingency in percent', [outside], { ...plan, contingency: 5 }, 'define/number'],
  ] as const)('%s is refused', (_title, elements, given, code) => {
    expect(standardTime(elements, given)).toMatchObject({ ok: false, error: { code } });
  });
});

describe('output', () => {
  it('whole pieces are those that fit: 53 of 8.96 minutes in a shift of 480, not 54', () => {
    expect(outputIn(480, 8.96)).toMatchObject({ ok: true, value: { whole: 53 } });
    expect(outputIn(60, 0.5, 2)).toEqual({ ok: true, value: { rate: 240, whole: 240 } });
    expect(outputIn(60, 0)).toMatchObject({ ok: false, error: { code: 'define/number' } });
    expect(outputIn(60, 1e-300)).toMatchObject({ ok: false, error: { code: 'define/number' } });
  });
});
