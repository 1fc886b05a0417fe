import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cyclesByTrial } from '../../../../../tests/oracles/cycles-by-trial.ts';
import {
  assuranceOf,
  type CyclesForm,
  type CyclesWish,
  cyclesNeeded,
  precisionReached,
} from './cycles-needed.ts';

const pilot = { n: 10, mean: 0.3, deviation: 0.03 };
const wish = (form: CyclesForm, share = 0.05): CyclesWish => ({
  form,
  precision: { kind: 'relative', share },
  assurance: { kind: 'confidence', confidence: 0.95 },
});

describe('cycles needed', () => {
  it('at 95 % and ±5 % the population form is (40·√(n·Σx² − (Σx)²)/Σx)², the 40-formula as it is printed', () => {
    const times = [8, 7, 8, 8, 7, 9];
    const [n, sum, squares] = [6, 47, 371];
    expect(times.reduce((total, time) => total + time * time, 0)).toBe(squares);
    const mean = sum / n;
    const deviation = Math.sqrt((squares - n * mean * mean) / (n - 1));
    const assurance = assuranceOf('population', 0.95);
    const needed = cyclesNeeded({ n, mean, deviation }, { ...wish('population'), assurance });
    expect(needed.ok && needed.value.unrounded).toBeCloseTo(
      ((40 * Math.sqrt(n * squares - sum * sum)) / sum) ** 2,
      9,
    );
    expect(assuranceOf('population', 0.9)).toEqual({ kind: 'confidence', confidence: 0.9 });
    expect(assuranceOf('normal', 0.95)).toEqual({ kind: 'confidence', confidence: 0.95 });
  });

  it('t iterated is the number that trying one after another finds', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.6, noNaN: true }),
        fc.double({ min: 0.02, max: 0.5, noNaN: true }),
        fc.constantFrom(0.8, 0.9, 0.95, 0.99),
        (variation, share, confidence) => {
          const result = cyclesNeeded(
            { n: 8, mean: 2, deviation: 2 * variation },
            {
              form: 'student-iterated',
              precision: { kind: 'relative', share },
              assurance: { kind: 'confidence', confidence },
            },
          );
          const tried = cyclesByTrial(2 * variation, 2 * share, confidence, 5000);
          fc.pre(Number.isFinite(tried));
          expect(result.ok && result.value.needed).toBe(tried);
        },
      ),
      { seed: 401, numRuns: 300 },
    );
  });

  it('relative and absolute precision say the same of the same half width', () => {
    const relative = cyclesNeeded(pilot, wish('normal'));
    const absolute = cyclesNeeded(pilot, {
      ...wish('normal'),
      precision: { kind: 'absolute', amount: 0.015 },
    });
    expect(relative.ok && absolute.ok && relative.value.unrounded / absolute.value.unrounded).toBeCloseTo(
      1,
      12,
    );
  });

  it('the 40-formula is the normal form with the population deviation: (n − 1)/n of it, a quarter less from five readings', () => {
    const five = { ...pilot, n: 5 };
    const [population, sample] = [cyclesNeeded(five, wish('population')), cyclesNeeded(five, wish('normal'))];
    expect(population.ok && sample.ok && population.value.unrounded / sample.value.unrounded).toBeCloseTo(
      0.8,
      12,
    );
  });

  it('as many as are needed reach the precision, one fewer does not', () => {
    const result = cyclesNeeded(pilot, wish('student-iterated'));
    const needed = result.ok ? result.value.needed : 0;
    const share = (n: number) => {
      const reached = precisionReached({ ...pilot, n });
      return reached.ok ? reached.value.share : Number.NaN;
    };
    expect(share(needed)).toBeLessThanOrEqual(0.05);
    expect(share(needed - 1)).toBeGreaterThan(0.05);
    expect(result.ok && result.value.more).toBe(needed - 10);
  });

  it('equal readings need none by the formula, and that is told as a limit', () => {
    for (const form of ['population', 'normal', 'student', 'student-iterated'] as const) {
      const result = cyclesNeeded({ n: 5, mean: 3, deviation: 0 }, wish(form));
      expect(result).toMatchObject({ ok: true, value: { unrounded: 0, more: 0 } });
      expect(result.ok && result.value.notes.map(({ code }) => code)).toEqual(['define/no-spread']);
    }
  });

  it.each([
    ['one reading', { ...pilot, n: 1 }, wish('normal'), 'define/too-few-readings', 'Readings that count: 1.'],
    [
      'no mean',
      { ...pilot, mean: Number.NaN },
      wish('normal'),
      'define/number',
      'The mean must be a number above 0',
    ],
    ['a mean of 0', { ...pilot, mean: 0 }, wish('normal'), 'define/number', '0 was given'],
    ['a precision of 0', pilot, wish('normal', 0), 'define/number', 'The precision as a share'],
    ['a precision in percent', pilot, wish('normal', 5), 'define/number', 'below 1'],
    [
      'a confidence in percent',
      pilot,
      { ...wish('student'), assurance: { kind: 'confidence', confidence: 95 } } as CyclesWish,
      'define/number',
      'The confidence must be a number of at least 0.01 and at most 0.999999; 95 was given.',
    ],
    [
      'a printed z with t',
      pilot,
      { ...wish('student'), assurance: { kind: 'multiplier', multiplier: 1.96 } } as CyclesWish,
      'define/multiplier-with-t',
      'Give the confidence instead',
    ],
    [
      'a precision too fine',
      { ...pilot, deviation: 1e9 },
      wish('student-iterated', 1e-9),
      'define/too-many-cycles',
      'less',
    ],
    [
      'a precision too fine for z',
      { ...pilot, deviation: 1e14 },
      wish('normal'),
      'define/too-many-cycles',
      'less',
    ],
  ])('%s is told', (_title, given, asked, code, words) => {
    const result = cyclesNeeded(given, asked);
    expect(result).toMatchObject({ ok: false, error: { code } });
    expect(!result.ok && result.error.message).toContain(words);
  });
});
