import { describe, expect, it } from 'vitest';
import { readingsOf } from './reading.ts';
import { type StudyElement, type StudyPlan, studyStandard } from './study-standard.ts';

/** Invented data: screwing hose couplings at a bench, decimal minutes. */
const elements: readonly StudyElement[] = [
  {
    name: 'take body and nut',
    work: 'worker',
    readings: readingsOf([0.1, 0.12, undefined, 0.11, 0.1, 0.9]),
    rating: 110,
  },
  { name: 'screw on', work: 'worker', readings: readingsOf([0.3, 0.32, 0.28, 0.3, 0.31, 0.3]) },
  { name: 'pressure test', work: 'process', readings: readingsOf([0.5, 0.5, 0.5, 0.5, 0.5, 0.5]) },
  { name: 'wipe', work: 'inside', readings: readingsOf([0.2, 0.22, 0.21, 0.2, 0.19, 0.2]), rating: 90 },
  {
    name: 'change box',
    work: 'worker',
    readings: [
      { cycle: 3, time: 1.5 },
      { cycle: 6, time: 1.7 },
    ],
    frequency: 1 / 20,
  },
];
const plan: StudyPlan = {
  scale: '0-100',
  rating: 100,
  allowances: { convention: 'share-of-basic-time', worker: 0.12, process: 0, contingency: 0 },
  confidence: 0.95,
  ratingError: 0.03,
  piecesPerCycle: 1,
  hour: 60,
};

describe('from readings to the standard', () => {
  it('worked by hand with the interruption set aside', () => {
    const judged = elements.map((element, index) =>
      index === 0
        ? {
            ...element,
            readings: element.readings.map((reading) =>
              reading.time === 0.9 ? { ...reading, setAside: 'the belt stopped' } : reading,
            ),
          }
        : element,
    );
    const result = studyStandard(judged, plan);
    if (!result.ok) throw new Error(result.error.map(({ message }) => message).join(' '));
    const { standard, interval, piecesPerHour, rows } = result.value;
    // 0.1075 · 1.1 + 1.81 / 6 + 1.6 / 20, each · 1.12, and 0.5 of the machine; wiping is hidden in it.
    const expected = (0.1075 * 1.1 + 1.81 / 6 + 0.08) * 1.12 + 0.5;
    expect(standard.standard).toBeCloseTo(expected, 12);
    expect(piecesPerHour.rate).toBeCloseTo(60 / expected, 10);
    expect(interval?.interval.low).toBeLessThan(expected);
    expect(rows.map(({ rated }) => rated?.ratedBy)).toEqual([
      'element',
      'study',
      undefined,
      'element',
      'study',
    ]);
    expect(rows[0]?.summary).toMatchObject({ n: 4, missed: 1 });
    expect(result.value.notes.map(({ code }) => code)).toEqual(['define/no-spread']);
  });

  it('an interruption that nobody has judged yet is proposed and counts', () => {
    const result = studyStandard(elements, plan);
    expect(result.ok && result.value.rows[0]?.summary.proposals.map(({ time }) => time)).toEqual([0.9]);
    expect(result.ok && result.value.rows[0]?.summary.n).toBe(5);
  });

  it('every fault is told, each with its place', () => {
    const faulty = [
      { name: 'fill', work: 'worker' as const, readings: readingsOf([0.1, 0, -1, Number.NaN]) },
      { name: 'wipe', work: 'inside' as const, readings: readingsOf([0.1]) },
    ];
    const result = studyStandard(faulty, { ...plan, hour: 0 });
    expect(!result.ok && result.error.map(({ code }) => code)).toEqual([
      'define/number',
      'define/no-process',
      'define/reading-zero',
      'define/reading-negative',
      'define/reading-not-number',
    ]);
  });

  it.each([
    [[], plan, 'define/no-elements'],
    [[{ name: 'fill', work: 'worker', readings: [] }], plan, 'define/no-reading'],
    [[elements[1]], { ...plan, rating: undefined }, 'define/no-rating'],
    [[elements[1]], { ...plan, rating: 400 }, 'define/rating'],
    [
      [elements[1]],
      { ...plan, allowances: { ...plan.allowances, convention: 'share-of-shift', worker: 1 } },
      'define/allowance-shift',
    ],
  ] as const)('bad input is refused (%#)', (given, with_, code) => {
    const result = studyStandard(given as readonly StudyElement[], with_);
    expect(!result.ok && result.error.map((fault) => fault.code)).toEqual([code]);
  });
});
