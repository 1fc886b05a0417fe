import { defineFiguresSchema } from '@evenhand/core/define';
import { describe, expect, it } from 'vitest';
import { titled } from '../../../../tests/reference/check.ts';
import { sources as fitSources, fits } from '../../../../tests/reference/published-learning.ts';
import {
  samplingStandards,
  shareCharts,
  sources,
} from '../../../../tests/reference/published-work-sampling.ts';
import { call } from '../testing/fake-io.ts';

const define = (...words: string[]) => call(['define', ...words]);
const asJson = async (...words: string[]) => JSON.parse((await define(...words, '--json')).out);
const clean = /NaN|undefined|Infinity|\{\w+\}/;

describe('evenhand define cycles, sampling and learning: the published schema', () => {
  it.each<[string, number]>([
    ['cycles --readings 8,7,8,8,7', 0],
    ['cycles --readings 8,8,8', 0],
    ['cycles --mean 0.30 --deviation 0.03 --n 10 --absolute 0.01', 0],
    ['cycles --readings 8', 2],
    ['cycles --readings 8,0', 2],
    ['sampling --share 30', 0],
    ['sampling --seen 150 --count 600 --multiplier 2', 0],
    ['sampling --seen 0 --count 20', 0],
    [
      'sampling --daily 12/100;9/96 --over 480 --pieces 40 --rating 90 --allowance 10 --allowance-of shift',
      0,
    ],
    ['sampling --times 4 --shifts 06:00-14:00 --days 2 --seed 7', 0],
    ['sampling --seen 9 --count 3', 2],
    ['sampling --seen 0 --count 20 --over 480 --pieces 40', 2],
    ['learning --model unit --first 100 --rate 80 --unit 20 --batch 11-20 --reach 40', 0],
    ['learning --model average --points 1=100;2=80;4=64 --unit 8', 0],
    ['learning --model unit --points 1=100;2=80;4=64', 0],
    ['learning --model unit --first 100 --rate 80', 2],
    ['learning --model unit --points 1=100;2=80', 2],
  ])('define %s keeps to it', async (words, wanted) => {
    const { code, out } = await define(...words.split(' '), '--json');
    expect(code).toBe(wanted);
    const read = defineFiguresSchema.safeParse(JSON.parse(out));
    expect(read.success ? [] : read.error.issues).toEqual([]);
    expect(JSON.parse(out).ok).toBe(wanted === 0);
    expect(out).not.toMatch(/NaN|null|Infinity/);
  });
});

describe('evenhand define sampling --over: published standard times from sampling', () => {
  it.each(titled(samplingStandards, sources))('$title', async ({ check }) => {
    const { totalMin, share, rating, units, allowance, convention } = check.inputs;
    const words = ['--share', `${share * 100}%`, '--over', `${totalMin}`, '--pieces', `${units}`];
    const of = convention === 'job' ? 'basic' : 'shift';
    const more = ['--rating', `${rating * 100}`, '--allowance', `${allowance * 100}%`, '--allowance-of', of];
    const { piece } = await asJson('sampling', ...words, ...more);
    expect(piece.basic).toBeCloseTo(Number(check.computed.nt), 9);
    expect(piece.standard).toBeCloseTo(Number(check.computed.st), 9);
    expect(piece.interval).toBeUndefined();
  });

  it('carries the sampling error of a share that was seen', async () => {
    const { piece, seen } = await asJson(
      'sampling',
      '--seen',
      '70',
      '--count',
      '200',
      '--over',
      '400',
      '--pieces',
      '150',
    );
    // 400 · 0.35 ÷ 150, and the ends of the share in its place.
    expect(piece.standard).toBeCloseTo((400 * 0.35) / 150, 12);
    expect(piece.interval.low).toBeCloseTo((400 * seen.interval.low) / 150, 12);
    expect(piece.interval.high).toBeCloseTo((400 * seen.interval.high) / 150, 12);
    expect(piece.rated).toBe(false);
  });

  it('is printed with the convention, and says when the pace was not rated', async () => {
    const words = ['sampling', '--seen', '70', '--count', '200', '--over', '400', '--pieces', '150'];
    const { out } = await define(...words, '--allowance', '10', '--allowance-of', 'shift');
    const text = out.replace(/\s+/g, ' ');
    expect(text).toContain('Standard time 1.0370 a piece, 95 % interval');
    expect(text).toContain('a share of the shift: standard time = basic time ÷ (1 − allowance)');
    expect(text).toContain('The pace was not rated');
    expect(out).not.toMatch(clean);
  });
});

describe('evenhand define sampling --daily: the p-chart', () => {
  // 1,500 days alike in size, which together have seen the published share.
  it.each(titled(shareCharts, sources))('$title', async ({ check }) => {
    const { pbar, n } = check.inputs;
    const days = 1500;
    const seen = Math.round(pbar * n * days);
    expect(seen / (n * days)).toBeCloseTo(pbar, 12);
    const list = Array.from({ length: days }, (_, day) => {
      const before = Math.floor((day * seen) / days);
      return `${Math.floor(((day + 1) * seen) / days) - before}/${n}`;
    });
    const { chart } = await asJson('sampling', '--daily', list.join(';'));
    expect(chart.share).toBeCloseTo(pbar, 12);
    expect(chart.days[0].high).toBeCloseTo(Number(check.computed.ucl), 9);
    expect(chart.days[0].low).toBeCloseTo(Number(check.computed.lcl), 9);
  });

  it('names the day that lies outside, and takes all days together for the share', async () => {
    const { out } = await define('sampling', '--daily', '12/100; 9/96; 40/100');
    // 61 of 296; ± 3·√(0.2061·0.7939/100) = 0.1213.
    expect(out).toContain('Seen 61 times in 296 observations: 20.61 %');
    expect(out).toMatch(/day 3 +40 +100 +40\.00 % +8\.47 % +32\.74 % +outside/);
    expect(out).toContain('Outside: day 3.');
    expect((await define('sampling', '--daily', '12/100; 13/100')).out).toContain('No day lies outside');
  });
});

describe('evenhand define learning --points: a fit', () => {
  it.each(titled(fits, fitSources))('$title', async ({ check }) => {
    const { x, y } = check.inputs;
    const points = x.map((unit, index) => `${unit}=${y[index]}`).join('; ');
    const found = await asJson('learning', '--model', 'unit', '--points', points, '--unit', '20');
    expect(found.first / Number(check.computed.a)).toBeCloseTo(1, 9);
    expect(found.rate).toBeCloseTo(Number(check.computed.r), 9);
    expect(found.exponent).toBeCloseTo(Number(check.computed.b), 9);
    expect(found.fit.explained).toBeCloseTo(Number(check.computed.r2), 9);
    expect(found.unit.time).toBeCloseTo(found.first * 20 ** found.exponent, 9);
  });

  it('prints the model, the rate and its interval', async () => {
    const { code, out } = await define('learning', '--model', 'unit', '--points', '1=15;2=12;3=10,53;4=9.6');
    expect(code).toBe(0);
    expect(out).toContain('Unit model (Crawford)');
    expect(out).toMatch(/Fitted through 4 points: rate 95 % interval \d\d\.\d % to \d\d\.\d % \(Student/);
    expect(out).not.toMatch(clean);
  });
});

describe('evenhand define sampling and learning: bad input', () => {
  it.each<[readonly string[], RegExp]>([
    [['sampling', '--daily', '12'], /“12” is not SEEN\/COUNT/],
    [['sampling', '--daily', '120/100'], /120/],
    [['sampling', '--daily', '0/0'], /number of observations must be/],
    [['sampling', '--daily', ';'], /--daily names no day/],
    [['sampling', '--daily', '1/9', '--seen', '1', '--count', '9'], /two ways to say one thing/],
    [['sampling', '--over', '480'], /needs --over TIME and --pieces N/],
    [['sampling', '--share', '30', '--rating', '90'], /--rating is for the standard time of a piece/],
    [['sampling', '--over', '480', '--pieces', '4'], /needs the share/],
    [['sampling', '--share', '30', '--over', '0', '--pieces', '4'], /The time must be/],
    [['sampling', '--share', '30', '--over', '480', '--pieces', '0'], /number of pieces must be/],
    [['sampling', '--share', '30', '--over', '480', '--pieces', '4', '--rating', '400'], /rating .+must be/],
    [
      ['sampling', '--share', '30', '--over', '480', '--pieces', '4', '--allowance', '10'],
      /--allowance-of basic .+ or --allowance-of shift/,
    ],
    [
      [
        'sampling',
        '--share',
        '30',
        '--over',
        '9',
        '--pieces',
        '4',
        '--allowance',
        '100',
        '--allowance-of',
        'shift',
      ],
      /100\.0 % of the shift/,
    ],
    [['learning', '--model', 'unit', '--points', '1=100;2=80'], /three/],
    [['learning', '--model', 'unit', '--points', '1=100;2=80;x=3'], /“x=3” is not a unit from 1/],
    [['learning', '--model', 'unit', '--points', '1=100;2=80;4=0'], /“4=0” is not a unit from 1/],
    [['learning', '--model', 'unit', '--points', '1;2'], /“1” is not UNIT=TIME/],
    [['learning', '--model', 'unit', '--points', '1=3', '--rate', '80'], /--points and --rate are two ways/],
    [['learning', '--model', 'unit', '--first', '9', '--rate', '80', '--confidence', '90'], /is for a fit/],
  ])('%j is refused in words', async (words, told) => {
    const { code, out, err } = await define(...words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(told);
    expect(err).not.toMatch(clean);
  });
});
