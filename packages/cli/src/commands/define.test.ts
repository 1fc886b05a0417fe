import { type Study, writeStudy } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { titled } from '../../../../tests/reference/check.ts';
import { sources, studies } from '../../../../tests/reference/published-studies.ts';
import { call } from '../testing/fake-io.ts';
import { smallStudy } from '../testing/small-study.ts';

const table =
  'cycle,fit hose,press ring\n1,4.2,2.1\n2,4.4,\n3,38.5 (part fell),2.3\n4,4.3,2.2\n5,4.1,2.4\n6,4.5,9.0\n';
const define = (text: string, ...more: string[]) =>
  call(['define', 'r.csv', ...more], { files: { 'r.csv': text } });
const asJson = async (text: string, ...more: string[]) =>
  JSON.parse((await define(text, '--json', ...more)).out);
const ofStudy = (study: Study, ...more: string[]) =>
  call(['define', 'a.json', ...more], { files: { 'a.json': writeStudy(study) } });

/** Published studies that print every reading and leave no element out of a cycle on purpose. */
const withReadings = titled(studies, sources).filter(({ check }) =>
  check.inputs.elements.every(({ readings, freq }) => readings !== undefined && freq === undefined),
);

function tableOf(elements: readonly { readonly readings?: readonly number[] }[]): string {
  const longest = Math.max(...elements.map(({ readings = [] }) => readings.length));
  const lines = Array.from({ length: longest }, (_, cycle) =>
    [cycle + 1, ...elements.map(({ readings = [] }) => readings[cycle] ?? '')].join(','),
  );
  return [['cycle', ...elements.map((_, index) => `e${index + 1}`)].join(','), ...lines].join('\n');
}

describe('evenhand define: standard times of published studies', () => {
  it('there are some, in both conventions', () => {
    expect(withReadings.length).toBeGreaterThanOrEqual(4);
    expect(new Set(withReadings.map(({ check }) => check.inputs.convention)).size).toBe(2);
  });

  it.each(withReadings)('$title', async ({ check }) => {
    const { elements, allowance, convention } = check.inputs;
    const rating = elements.map(({ rating: pace }, index) => `e${index + 1}=${pace * 100}`).join('; ');
    const words = ['--rating', rating, '--allowance', `${allowance * 100}%`, '--unit', 'min'];
    const of = convention === 'job' ? 'basic' : 'shift';
    const found = await asJson(tableOf(elements), ...words, '--of', of);
    expect(found.ok, JSON.stringify(found)).toBe(true);
    expect(found.piece.standard).toBeCloseTo(Number(check.computed.stTotal), 9);
    expect(found.piece.basic).toBeCloseTo(Number(check.computed.ntTotal), 9);
    expect(found.piece.anHour).toBeCloseTo(60 / Number(check.computed.stTotal), 7);
    expect(found.allowance.convention).toBe(convention === 'job' ? 'share-of-basic-time' : 'share-of-shift');
  });
});

describe('evenhand define: a table of readings', () => {
  it('prints the study sheet', async () => {
    const { code, out, err } = await define(table, '--rating', '110', '--allowance', '15', '--of', 'shift');
    expect(code).toBe(0);
    // 4.2, 4.4, 4.3, 4.1, 4.5: mean 4.3, deviation √(0.1/4) = 0.158, t(4) = 2.776, so ± 0.196; basic 4.3 × 1.1.
    expect(out).toMatch(/fit hose +5 +4\.30 +4\.30 +0\.16 +3\.7 % +4\.10 to 4\.50 +110 +4\.73/);
    expect(out).toContain('set aside: cycle 3, 38.50 s: part fell');
    expect(out).toContain('1 reading missed');
    expect(out).toMatch(/1 outlier proposed\. .+All of them\s+count\./s);
    expect(out).toContain('The reading 9.00 s in cycle 6 lies above');
    expect(out).toMatch(/a share of the shift: standard time = basic time ÷ \(1 −\s+allowance\)/);
    expect(out).toContain('Rated on the 0–100 standard scale (BS 3138); standard is 100.');
    for (const form of ['40-formula', 'z (sample', 't iterated']) expect(out).toContain(form);
    expect(out).toMatch(/Standard time +\d+\.\d\d s a unit, 95 % interval/);
    expect(out).toContain('pieces an hour at standard');
    expect(err).toContain('“press ring” has no reading in 1 of 6 cycles');
    expect(out + err).not.toMatch(/NaN|undefined|Infinity|\{\w+\}/);
  });

  it('a proposed outlier counts, in the sum and in n', async () => {
    const { elements } = await asJson(table);
    expect(elements[1].summary).toMatchObject({ n: 5, missed: 1 });
    expect(elements[1].summary.mean).toBeCloseTo((2.1 + 2.3 + 2.2 + 2.4 + 9) / 5, 12);
    expect(elements[0].summary.setAside).toEqual([{ cycle: 3, time: 38.5, setAside: 'part fell' }]);
  });

  it('without a rating says that the pace was not rated; without an allowance that there is none', async () => {
    const { out } = await define(table);
    expect(out).toContain('The pace was not rated: 100, standard on the 0–100 standard scale');
    expect(out).toContain('Allowance      none was given');
    expect((await asJson(table)).rating).toEqual({
      rated: false,
      scale: '0-100',
      standard: 100,
      unrated: ['fit hose', 'press ring'],
      error: 0,
    });
    expect((await define(table, '--rating', 'fit hose=90')).out).toContain(
      'The pace of elements without a rating was not rated',
    );
    expect((await define(table, '--scale', '60-80')).out).toContain(
      'was not rated: 80, standard on the 60–80',
    );
  });

  it('an element of every tenth cycle counts a tenth', async () => {
    const [all, tenth] = [await asJson(table), await asJson(table, '--every', 'press ring=10')];
    expect(tenth.piece.basic).toBeCloseTo(4.3 + all.elements[1].summary.mean / 10, 12);
    expect((await define(table, '--every', 'press ring=10')).out).toContain(
      '“press ring” is done every 10 cycles.',
    );
  });

  it('an error of the rating widens the interval', async () => {
    const [without, carried] = [await asJson(table), await asJson(table, '--error', '5')];
    expect(carried.piece.standard).toBe(without.piece.standard);
    expect(carried.cycle.interval.ratingError).toBeCloseTo(0.05 * without.piece.basic, 9);
    expect(carried.cycle.interval.samplingError).toBeCloseTo(without.cycle.interval.samplingError, 12);
  });

  it('one cycle has no spread and no interval, and says so', async () => {
    const { code, out, err } = await define('cycle,a\n1,4');
    expect(code).toBe(0);
    expect(err).toContain('define/one-reading');
    expect(err).toContain('define/no-interval');
    expect(out).toContain('without an interval');
    expect(out).toContain('Fewer than three readings: no drift can be judged.');
    expect(out).not.toMatch(/NaN|undefined/);
    expect((await define('cycle,a\n1,4\n2,4\n3,4\n4,4')).err).toContain('All 4 readings are equal');
  });

  it.each<[readonly string[], RegExp]>([
    [['--rating', '0'], /rating of .+ cannot be used: 0\./],
    [['--rating', '400'], /ratings above 0 and up to 200 are taken/],
    [['--rating', 'other=90'], /--rating names “other”, which is no element/],
    [['--rating', 'fast'], /neither a number nor NAME=NUMBER/],
    [['--scale', '0-200'], /--scale 0-200 is not known/],
    [['--allowance', '15'], /must be said what the allowance is a share of/],
    [['--allowance', '100', '--of', 'shift'], /100\.0 % of the shift, which leaves no time for work/],
    [['--allowance', '0.15', '--of', 'basic'], /is a percentage: write 15/],
    [['--allowance=-5', '--of', 'basic'], /The allowance must be a number of at least 0/],
    [['--of', 'day'], /--of day is not known/],
    [['--confidence', '100'], /--confidence 100 is not between 1 and 99\.9999 %/],
    [['--confidence', '0.95'], /write 95/],
    [['--precision', '0'], /--precision 0 is not above 0 and below 100/],
    [['--unit', 'jiffies'], /--unit jiffies is not known/],
    [['--zeros', 'drop'], /--zeros drop is not known; it can be aside/],
    [['--every', 'press ring=0'], /--every 0 is not above 0/],
    [['--method', 'present'], /--method is for a study/],
    [['--skip', 'clip'], /The column “clip” cannot be skipped/],
    [['--cycles', '9'], /no cycle 9 in the table/],
  ])('%j is refused in words', async (more, words) => {
    const { code, out, err } = await define(table, ...more);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(words);
    expect(err).not.toMatch(/NaN|undefined|\{\w+\}/);
  });

  it('bad cells are told by file, line and column, with --json as well', async () => {
    const bad = 'cycle,a\n1,0\n2,-4\n3,fast\n4,5';
    const { code, err } = await define(bad);
    expect(code).toBe(2);
    for (const line of [2, 3, 4]) expect(err).toContain(`r.csv: line ${line}, column 2: `);
    const json = JSON.parse((await define(bad, '--json')).out);
    expect(json).toMatchObject({ ok: false, findings: [{ where: { line: 2 } }, { where: { line: 3 } }, {}] });
  });

  it('reads standard input', async () => {
    const { code, out } = await call(['define', '-', '--json'], { stdin: table });
    expect([code, JSON.parse(out).title]).toEqual([0, 'standard input']);
  });
});

describe('evenhand define: a study', () => {
  it('times the whole cycle where no element is named', async () => {
    // Cycles of 2.5 and 1.5 s: mean 2, deviation √0.5.
    const { code, out } = await ofStudy(smallStudy, '--json');
    const json = JSON.parse(out);
    expect(code).toBe(0);
    expect(json).toMatchObject({ basis: 'cycle', method: 'present', cycles: [1, 2], piece: { basic: 2 } });
    expect(json.elements[0].summary.deviation).toBeCloseTo(Math.SQRT1_2, 12);
    expect(json.notes.map(({ code: id }: { code: string }) => id)).toContain('define/whole-cycle');
  });

  it('gives the time of a unit where a cycle makes several', async () => {
    const { out } = await ofStudy(smallStudy, '--method', 'better');
    expect(out).toContain('Standard time  1.00 s a unit, without an interval');
    expect(out).toContain('Output         3600.0 pieces an hour');
    expect(out).toContain('A cycle of 2 units takes 2.00 s.');
  });

  it('a cycle that is set aside is a reading set aside with its reason', async () => {
    const [method, ...others] = smallStudy.methods;
    if (method === undefined) throw new Error('no method');
    const items = method.cycles.items.map((item) =>
      item.id === 'c2' ? { ...item, setAside: 'spoken to' } : item,
    );
    const study = { ...smallStudy, methods: [{ ...method, cycles: { ...method.cycles, items } }, ...others] };
    const { out } = await ofStudy(study);
    expect(out).toContain('set aside: cycle 2, 1.50 s: spoken to');
    expect(out).toMatch(/whole cycle +1 +2\.50/);
  });

  it.each<[readonly string[], RegExp]>([
    [['--method', 'other'], /other/],
    [['--cycles', '3'], /no cycle 3/],
    [['--skip', 'a'], /--skip is for a table of readings/],
    [['--zeros', 'aside'], /--zeros is for a table of readings/],
  ])('%j is refused in words', async (more, words) => {
    const { code, out, err } = await ofStudy(smallStudy, ...more);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(words);
  });

  it('a file that is not there and a text that is no study are told', async () => {
    expect((await call(['define', 'none.csv'])).err).toContain('none.csv cannot be read');
    expect((await call(['define', 'a.json'], { files: { 'a.json': '{' } })).err).toContain(
      'This is not JSON',
    );
  });
});
