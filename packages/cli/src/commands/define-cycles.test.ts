import { describe, expect, it } from 'vitest';
import { titled } from '../../../../tests/reference/check.ts';
import {
  fortyFormulaFromReadings,
  sources,
  studentFromFigures,
  studentFromReadings,
} from '../../../../tests/reference/published-cycles.ts';
import {
  absoluteFromReadings,
  normalFromReadings,
  sources as normalSources,
} from '../../../../tests/reference/published-cycles-normal.ts';
import { call } from '../testing/fake-io.ts';

const cycles = (...more: string[]) => call(['define', 'cycles', ...more]);

interface Form {
  readonly form: string;
  readonly unrounded: number;
  readonly needed: number;
  readonly more: number;
}

async function formOf(form: string, ...more: string[]): Promise<Form> {
  const { out } = await cycles(...more, '--json');
  const found = JSON.parse(out).forms.find((item: Form) => item.form === form);
  expect(found, out).toBeDefined();
  return found;
}

describe('evenhand define cycles: published examples', () => {
  const forty = titled(fortyFormulaFromReadings, sources).filter(({ check }) => check.inputs.k % 20 === 0);
  it('there are some', () => expect(forty.length).toBeGreaterThanOrEqual(3));

  it.each(forty)('40-formula $title', async ({ check }) => {
    // k is the factor 2 over the precision: 40 is ±5 %, 20 is ±10 %.
    const { readings, k } = check.inputs;
    const found = await formOf('population', '--readings', readings.join(','), '--precision', `${200 / k}%`);
    expect(found.unrounded).toBeCloseTo(Number(check.computed.n), 8);
    expect(found.needed).toBe(check.computed.nCeil);
  });

  it.each(titled(studentFromReadings, sources))('t $title', async ({ check }) => {
    const { readings, conf, h } = check.inputs;
    const shares = ['--precision', `${h * 100}%`, '--confidence', `${conf * 100}%`];
    const found = await formOf('student', '--readings', readings.join(' '), ...shares);
    expect(found.unrounded / Number(check.computed.n)).toBeCloseTo(1, 8);
  });

  it.each(titled(studentFromFigures, sources))('t of figures $title', async ({ check }) => {
    const { n, mean, s, conf, h } = check.inputs;
    const pilot = ['--mean', `${mean}`, '--deviation', `${s}`, '--n', `${n}`];
    const found = await formOf(
      'student',
      ...pilot,
      '--precision',
      `${h * 100}%`,
      '--confidence',
      `${conf * 100}`,
    );
    expect(found.unrounded).toBeCloseTo(Number(check.computed.n), 7);
    if (check.computed.more !== undefined) expect(found.more).toBe(check.computed.more);
  });

  /** The books round z: 1.96 stands for 95 %, so the exact z differs in the fifth digit. */
  const ninetyFive = titled(normalFromReadings, normalSources).filter(({ check }) => check.inputs.z === 1.96);
  it.each(ninetyFive)('z $title', async ({ check }) => {
    const { readings, h } = check.inputs;
    const found = await formOf('normal', '--readings', readings.join(','), '--precision', `${h * 100}%`);
    expect(found.unrounded / Number(check.computed.n)).toBeCloseTo(1, 4);
  });

  it.each(titled(absoluteFromReadings, normalSources))('absolute $title', async ({ check }) => {
    const { readings, e } = check.inputs;
    const found = await formOf('normal', '--readings', readings.join(';'), '--absolute', `${e}`);
    expect(found.unrounded / Number(check.computed.n)).toBeCloseTo(1, 4);
    expect(found.needed).toBe(check.computed.nCeil);
  });
});

describe('evenhand define cycles', () => {
  it('prints every form, unrounded and rounded up, and what the pilot reaches already', async () => {
    const { code, out } = await cycles('--readings', '8,7,8,8,7');
    expect(code).toBe(0);
    expect(out).toContain('Pilot: 5 readings, mean 7.6, standard deviation (n − 1) 0.5477');
    expect(out).toMatch(/40-formula \(population deviation\) +2\.000 +6\.648 +7 +2/);
    for (const form of ['z (sample', 't of the pilot', 't iterated']) expect(out).toContain(form);
    // t(4) = 2.776; 2.776 × 0.5477 / √5 = 0.680, 8.9 % of 7.6.
    expect(out).toContain('Known now: ±0.6801, ±8.9 % of the mean');
  });

  it('takes decimal commas where the numbers have something else between them', async () => {
    const { pilot } = JSON.parse((await cycles('--readings', '8,5; 7,5', '--json')).out);
    expect(pilot).toMatchObject({ n: 2, mean: 8 });
    expect(JSON.parse((await cycles('--readings', '8, 7, 9', '--json')).out).pilot).toMatchObject({
      n: 3,
      mean: 8,
    });
  });

  it('equal readings are told to say nothing of the spread', async () => {
    const { code, err } = await cycles('--readings', '5,5,5');
    expect(code).toBe(0);
    expect(err).toContain('All 3 readings are equal');
  });

  it.each<[readonly string[], RegExp]>([
    [[], /A pilot is --readings LIST, or --mean, --deviation and --n together/],
    [['--mean', '5'], /A pilot is/],
    [['--readings', '8'], /Readings that count: 1\. At least 2/],
    [['--readings', '8,0,7'], /number 2 is 0; a reading is above 0/],
    [['--readings=-8,7'], /number 1 is -8; a reading is above 0/],
    [['--readings', '8,x'], /number 2, “x”, is no number/],
    [['--readings', '8,7', '--n', '2'], /two ways to say one thing/],
    [['--readings', '8,7', '--precision', '5', '--absolute', '1'], /two ways to say one thing/],
    [['--readings', '8,7', '--precision', '0.05'], /write 5 or/],
    [['--readings', '8,7', '--confidence', '100'], /--confidence 100 is not between 1 and 99\.9999 %/],
    [['--readings', '8,7', '--absolute', '0'], /The precision must be a number above 0/],
    [['--mean', '0', '--deviation', '1', '--n', '5'], /The mean must be a number above 0/],
    [['--mean', '5', '--deviation', 'x', '--n', '5'], /--deviation x is no number/],
    [['--mean', '5', '--deviation', '1', '--n', '2.5'], /--n 2\.5 is no whole number/],
  ])('%j is refused in words', async (more, words) => {
    const { code, out, err } = await cycles(...more);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(words);
    expect(err).not.toMatch(/NaN|undefined|\{\w+\}/);
  });
});
