import { describe, expect, it } from 'vitest';
import { numberOf, numbersIn } from './calculator-input.ts';
import { figuresOf } from './learning-figures.ts';
import { pointsFor, readPoints } from './learning-points.ts';
import { readDays, readSpans, rounds, shiftsOf } from './sampling.ts';

const taken = <Value>(result: { ok: true; value: Value } | { ok: false; error: string }): Value => {
  if (!result.ok) throw new Error(result.error);
  return result.value;
};

describe('numbers that are pasted', () => {
  it('stand between blanks, lines and semicolons, with a point or a comma', () => {
    expect(numbersIn('1 2,5\n3.5;4\t')).toEqual({ ok: true, value: [1, 2.5, 3.5, 4] });
  });

  it('are refused by the place of the first that is none', () => {
    expect(numbersIn('1 2 x3 4')).toEqual({ ok: false, error: '“x3”, the 3rd entry, is no number.' });
  });

  it('of a field are refused with its name and what it may be', () => {
    expect(numberOf('', 'The share', { above: 0 })).toEqual({
      ok: false,
      error: 'The share is a number above 0; nothing is written.',
    });
    expect(numberOf('12,5 %', 'The share')).toEqual({ ok: true, value: 12.5 });
  });
});

describe('random rounds', () => {
  const spans = (text: string) => taken(readSpans(text, 'shift'));

  it('fall into the shifts of every day and into no break', () => {
    const shifts = taken(shiftsOf(spans('06:00–14:00'), spans('09:00-09:15, 11:30 to 12:00'), 5));
    const plan = taken(rounds(shifts, { count: 400, stepMinutes: 1, seed: 3 }));
    const times = plan.flatMap((each) => each.times);
    expect(times).toHaveLength(400);
    expect(plan.map(({ day }) => day)).toEqual([1, 2, 3, 4, 5]);
    for (const time of times) {
      expect(time > '06:00' && time <= '14:00').toBe(true);
      expect(time >= '09:00' && time < '09:15').toBe(false);
      expect(time >= '11:30' && time < '12:00').toBe(false);
    }
  });

  it('of a night shift go past midnight and keep its break', () => {
    const shifts = taken(shiftsOf(spans('22:00–06:00'), spans('02:00–02:30'), 2));
    const plan = taken(rounds(shifts, { count: 300, stepMinutes: 1, seed: 1 }));
    const times = plan.flatMap((each) => each.times);
    expect(times.every((time) => time > '22:00' || time <= '06:00')).toBe(true);
    expect(times.some((time) => time >= '02:00' && time < '02:30')).toBe(false);
    expect(times.some((time) => time < '06:00')).toBe(true);
  });

  it('say what is wrong with a shift or a break', () => {
    expect(readSpans('six to two', 'shift')).toMatchObject({ ok: false });
    expect(readSpans('06:75–14:00', 'shift')).toMatchObject({ ok: false });
    const outside = shiftsOf(spans('06:00–14:00'), spans('15:00–15:15'), 1);
    expect(outside.ok ? '' : outside.error).toBe('The break 15:00–15:15 lies in no shift.');
  });
});

describe('counts of days', () => {
  it('have a name, how often it was seen and how many observations there were', () => {
    expect(readDays('Monday 12 80\nshift 1\t9\t80\n7;70\nTuesday,3,40')).toEqual({
      ok: true,
      value: [
        { name: 'Monday', seen: 12, count: 80 },
        { name: 'shift 1', seen: 9, count: 80 },
        { name: 'day 3', seen: 7, count: 70 },
        { name: 'Tuesday', seen: 3, count: 40 },
      ],
    });
  });

  it('are refused by their line', () => {
    expect(readDays('Monday 12 80\nTuesday 90 80')).toMatchObject({
      ok: false,
      error: expect.stringContaining('Line 2: it was seen 90 times in 80'),
    });
    expect(readDays('Monday')).toMatchObject({ ok: false, error: expect.stringContaining('Line 1') });
  });
});

describe('learning', () => {
  const wanted = { unit: '2', from: '1', to: '2', reach: '' };
  const figures = (model: 'unit' | 'cumulative-average') =>
    Object.fromEntries(
      figuresOf({ model, first: 100, rate: 0.8 }, wanted).map(([words, figure]) => [words, taken(figure)]),
    );

  it('of 80 % from 100: unit 2 takes 80 in the unit model, 60 in the average model (by definition of the models)', () => {
    expect(figures('unit')).toEqual({
      'Time of unit 2': '80.000',
      'All units up to 2': '180.000',
      'Average up to unit 2': '90.000',
      'Units 1 to 2 together': '180.000',
    });
    expect(figures('cumulative-average')).toEqual({
      'Time of unit 2': '60.000',
      'All units up to 2': '160.000',
      'Average up to unit 2': '80.000',
      'Units 1 to 2 together': '160.000',
    });
  });

  it('times of units and averages are turned into one another only where every unit is there', () => {
    const times = taken(readPoints('100\n60\n50'));
    const averages = taken(pointsFor('cumulative-average', 'units', times));
    expect(averages.map(({ time }) => time)).toEqual([100, 80, 70]);
    expect(taken(pointsFor('unit', 'averages', averages)).map(({ time }) => time)).toEqual([100, 60, 50]);
    expect(pointsFor('cumulative-average', 'units', taken(readPoints('1 100\n4 60')))).toMatchObject({
      ok: false,
      error: expect.stringContaining('every unit from 1 on'),
    });
    expect(pointsFor('unit', 'units', times)).toEqual({ ok: true, value: times });
  });

  it('a line that is no time is refused by its number', () => {
    expect(readPoints('1 9.8\n2 -4')).toMatchObject({ ok: false, error: 'Line 2: a time is above 0.' });
    expect(readPoints('1 9.8 3')).toMatchObject({ ok: false });
    expect(readPoints('0 5')).toMatchObject({ ok: false });
  });
});
