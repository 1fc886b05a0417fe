import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineReportSchema } from '@evenhand/core/define';
import { evaluateReportSchema } from '@evenhand/core/evaluate';
import { type Study, type TimeStudy, writeStudy } from '@evenhand/core/ground/study';
import { allowanceEditions } from '@evenhand/core/ground/tables';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';
import { smallStudy } from '../testing/small-study.ts';

const seconds = (...times: readonly number[]) =>
  times.map((time, index) => ({ cycle: index + 1, us: time * 1_000_000 }));

/** 4.0 at 90 and 5.0 at 110 of 100; machine 10 and 12; inside 3 and 3; a box every 10th cycle, 20 and 30. */
const byWatch: TimeStudy = {
  id: 'watch',
  name: 'By the watch',
  source: { kind: 'readings', method: 'present', timing: 'continuous' },
  unit: 'seconds',
  scale: '0-100',
  rating: 100,
  ratingError: 0,
  confidence: 0.95,
  precision: { kind: 'absolute', us: 500_000 },
  allowances: {
    convention: 'share-of-basic-time',
    relaxation: { kind: 'share', share: 0.1 },
    process: 0.05,
    contingency: 0.02,
  },
  piecesPerCycle: 2,
  elements: [
    {
      id: 'a',
      name: 'load press',
      work: 'worker',
      readings: [
        { cycle: 1, us: 4_000_000, rating: 90 },
        { cycle: 2, us: 5_000_000, rating: 110 },
        { cycle: 3, us: 9_000_000, setAside: 'part fell' },
        { cycle: 4 },
      ],
    },
    { id: 'b', name: 'press cures', work: 'process', readings: seconds(10, 12) },
    { id: 'c', name: 'trim last', work: 'inside', readings: seconds(3, 3) },
    {
      id: 'd',
      name: 'change box',
      work: 'worker',
      occurs: { times: 1, cycles: 10 },
      readings: [
        { cycle: 1, us: 20_000_000 },
        { cycle: 2, us: 30_000_000 },
      ],
    },
  ],
  sittings: [
    { id: 's1', start: 1, operatorCode: 'K1', date: '2026-03-02' },
    { id: 's2', start: 2, operatorCode: 'K2' },
  ],
  foreign: [{ id: 'f', cycle: 2, element: 'a', us: 7_000_000, what: 'spoken to' }],
};
const { sittings: _sittings, foreign: _foreign, ...shared } = byWatch;
const filmStudy: TimeStudy = {
  ...shared,
  id: 'film',
  name: 'By the film',
  source: { kind: 'record', method: 'present' },
  piecesPerCycle: 1,
  elements: [{ id: 'w', name: 'whole cycle', work: 'worker', readings: [] }],
};
const study: Study = { ...smallStudy, timeStudies: [byWatch, filmStudy] };
const ofStudy = (found: Study, ...more: string[]) =>
  call(['define', 'a.json', ...more], { files: { 'a.json': writeStudy(found) } });
const watch = (...more: string[]) => ofStudy(study, '--study', 'watch', ...more);
const table = 'cycle,load,cure,next\n1,4,10,3\n2,5,12,3\n3,6,11,3\n';
const ofTable = (text: string, ...more: string[]) =>
  call(['define', 'r.csv', ...more], { files: { 'r.csv': text } });
const parsed = async (outcome: ReturnType<typeof call>) => JSON.parse((await outcome).out);
const clean = /NaN|undefined|Infinity|\{\w+\}/;

describe('evenhand define --study: a time study of the document', () => {
  it('is worked out with its own ratings, allowances and kinds of work', async () => {
    const json = await parsed(watch('--json'));
    // Basic 4·0.9 = 3.6 and 5·1.1 = 5.5: mean 4.55. Box 25 in 10 cycles: 2.5. Machine 11, inside 3, so the machine counts.
    expect(json.elements[0].rated.basic.mean).toBeCloseTo(4.55, 12);
    expect(json.elements.map(({ perCycle }: { perCycle: number }) => perCycle)).toEqual([4.55, 11, 3, 2.5]);
    expect(json.elements[1].rated).toBeUndefined();
    expect(json.cycle.basic).toBeCloseTo(4.55 + 2.5 + 11, 12);
    // (7.05 · 1.1 + 11 · 1.05) · 1.02, and two pieces a cycle.
    const standard = (7.05 * 1.1 + 11 * 1.05) * 1.02;
    expect(json.cycle.standard).toBeCloseTo(standard, 12);
    expect(json.piece.standard).toBeCloseTo(standard / 2, 12);
    expect(json.piece.anHour).toBeCloseTo((2 * 3600) / standard, 9);
    expect(json).toMatchObject({
      basis: 'time-study',
      timeStudy: { id: 'watch', name: 'By the watch' },
      method: 'present',
      cycles: [1, 2, 3, 4],
      precision: { kind: 'absolute', amount: 0.5 },
      rating: { rated: true, unrated: [] },
      allowance: { share: 0.1, process: 0.05, contingency: 0.02, convention: 'share-of-basic-time' },
      foreign: [{ cycle: 2, element: 'load press', time: 7, what: 'spoken to' }],
    });
    expect(json.allowance.other.share).toBeCloseTo(0.1 / 1.1, 12);
    expect(json.elements[0].summary).toMatchObject({
      n: 2,
      missed: 1,
      setAside: [{ cycle: 3, time: 9, setAside: 'part fell' }],
    });
  });

  it('prints who, what is foreign, which part the cycle waits for, and both conventions', async () => {
    const { code, out } = await watch();
    const text = out.replace(/\s+/g, ' ');
    expect(code).toBe(0);
    expect(text).toContain('By the watch of “Present method”, 2 units a cycle');
    expect(text).toContain('2 sittings: from cycle 1, operator K1, 2026-03-02; from cycle 2, operator K2.');
    expect(text).toMatch(/press cures machine 2 11\.00/);
    expect(text).toMatch(/load press worker 2 4\.50 .+ 100 \(90 to 110\) 4\.55/);
    expect(text).toContain('cycle 2 during “load press”, 7.00 s: spoken to');
    expect(text).toContain('“change box” is done every 10 cycles.');
    expect(text).toContain('machine 11.55 s, inside its run 3.30 s.');
    expect(text).toContain('here it is the machine');
    expect(text).toContain('Relaxation allowance 10.0 %, a share of the basic time');
    expect(text).toContain('The same in the other convention is 9.1 %, a share of the shift');
    expect(text).toContain('Cycles needed for a mean within ±0.50 s at 95.0 %');
    expect(text).toContain('A cycle of 2 units takes 19.69 s.');
    expect(out).not.toMatch(clean);
  });

  it('is found by its name and may be seen in another unit, confidence or precision', async () => {
    const asked = ['--study', 'by the WATCH', '--unit', 'min', '--confidence', '90', '--precision', '10'];
    const json = await parsed(ofStudy(study, ...asked, '--json'));
    expect(json).toMatchObject({
      unit: { id: 'minutes' },
      confidence: 0.9,
      precision: { kind: 'relative', share: 0.1 },
    });
    expect(json.cycle.standard).toBeCloseTo(((7.05 * 1.1 + 11 * 1.05) * 1.02) / 60, 12);
  });

  it('takes its times from the record where it says so', async () => {
    // Cycles of 2.5 and 1.5 s, as the record of the small study has them.
    const json = await parsed(ofStudy(study, '--study', 'film', '--json'));
    expect(json.elements[0].readings.map(({ time }: { time: number }) => time)).toEqual([2.5, 1.5]);
    expect(json.piece.basic).toBeCloseTo(2, 12);
  });

  it('is the first of them when nothing is said of the readings, and which there are is told', async () => {
    const { code, out, err } = await ofStudy(study);
    expect(code).toBe(0);
    expect(err).toContain(
      'The time study watch is taken. --study takes one of: watch (By the watch), film (By the film); --method times a record',
    );
    expect(out).toBe((await watch()).out);
    expect((await ofStudy(study, '--unit', 'min', '--draws', '0')).out).toContain('press cures');
  });

  it('is left for the record of a method where the call speaks of one', async () => {
    const rated = await ofStudy(study, '--rating', '90');
    expect(rated.err).toContain(
      'A record is timed, as --rating speaks of it. The study holds time studies too, for --study: watch',
    );
    expect(rated.out).toContain('whole cycle');
    const chosen = await ofStudy(study, '--method', 'present');
    expect(chosen.out).toContain('whole cycle');
    expect(chosen.err).not.toContain('--study');
    expect((await ofStudy(smallStudy)).err).not.toContain('--study');
  });

  it.each<[readonly string[], RegExp]>([
    [['--study', 'none'], /no time study “none”\. It has: watch \(By the watch\), film \(By the film\)/],
    [['--study', 'watch', '--rating', '90'], /--rating is what the time study “By the watch” says itself/],
    [['--study', 'watch', '--method', 'present'], /--method is what the time study/],
    [['--study', 'watch', '--proposed'], /--proposed is what the time study/],
    [['--study', 'watch', '--relaxation', 'pounds', '--rows', 'personal=0'], /--relaxation is what/],
  ])('%j is refused in words', async (more, words) => {
    const { code, out, err } = await ofStudy(study, ...more);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(words);
    expect(err).not.toMatch(clean);
  });

  it('a study without any, and a table, are told apart', async () => {
    expect((await ofStudy(smallStudy, '--study', 'x')).err).toContain('It has none at all.');
    expect((await ofTable(table, '--study', 'x')).err).toContain('--study is for a study');
  });

  it('what stands in the way of a standard is told with its place in the document', async () => {
    const [load, ...others] = byWatch.elements;
    if (load === undefined) throw new Error('no element');
    const readings = [
      { cycle: 1, us: 4_000_000, rating: 400 },
      { cycle: 2, us: 0 },
    ];
    const wrong: Study = {
      ...smallStudy,
      timeStudies: [filmStudy, { ...byWatch, elements: [{ ...load, readings }, ...others] }],
    };
    const { code, err } = await ofStudy(wrong, '--study', 'watch');
    expect(code).toBe(2);
    expect(err).toMatch(/a\.json: \/timeStudies\/1\/elements\/0\/readings\/0: .+400/);
    expect(err).toContain('a.json: /timeStudies/1/elements/0/readings/1: ');
    expect(err).not.toMatch(clean);
  });
});

describe('evenhand define: machine-paced and inside work in a table', () => {
  it('the cycle waits for the longer of machine and inside work', async () => {
    const work = ['--work', 'Cure=process; next=inside', '--allowance', '10', '--process', '5'];
    const json = await parsed(ofTable(table, ...work, '--of', 'basic', '--json'));
    expect(json.elements.map(({ work: kind }: { work: string }) => kind)).toEqual([
      'worker',
      'process',
      'inside',
    ]);
    // Load 5 · 1.1 and the machine 11 · 1.05; the 3 inside are hidden.
    expect(json.cycle.standard).toBeCloseTo(5.5 + 11.55, 12);
    expect(json.cycle.parts.inside).toBeCloseTo(3.3, 12);
    const long = await parsed(ofTable(table.replaceAll(',3\n', ',13\n'), ...work, '--of', 'basic', '--json'));
    expect(long.cycle.standard).toBeCloseTo(5.5 + 14.3, 12);
    expect(long.notes.map(({ code }: { code: string }) => code)).toContain('define/inside-longer');
  });

  it.each<[readonly string[], RegExp]>([
    [['--work', 'next=inside'], /next/],
    [['--work', 'cure=machine'], /“machine” of “cure” is not known; it can be worker, process, inside/],
    [['--work', 'oven=process'], /--work names “oven”, which is no element\. There are: load; cure; next/],
    [['--work', 'process'], /--work: “process” is not NAME=WORK/],
    [['--work', 'cure=process; CURE=inside'], /--work names “CURE” twice/],
    [['--process', '5'], /must be said what the allowance is a share of/],
    [['--process', '100', '--of', 'shift'], /100\.0 % of the shift/],
  ])('%j is refused in words', async (more, words) => {
    const { code, out, err } = await ofTable(table, ...more);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(words);
    expect(err).not.toMatch(clean);
  });
});

describe('evenhand define: the first column of a table', () => {
  it('is told when its numbers are taken as cycles and may be times', async () => {
    const { code, err } = await ofTable('fit hose,press\n4,2\n9,2.5\n6,2.4\n');
    expect(code).toBe(0);
    expect(err).toContain('r.csv: line 1, column 1: The first column, “fit hose”, is taken as the numbers');
    expect((await ofTable('Cycle,press\n4,2\n9,2.5\n')).err).not.toContain('first column');
    expect((await ofTable('Stück,press\n4,2\n5,2.5\n')).err).not.toContain('first column');
  });
});

describe('evenhand define: readings rated one by one in a table', () => {
  const rated = 'cycle,load,rating of Load,cure\n1,4,90,10\n2,5,110,12\n3,6,,11\n';

  it('each counts with its own rating, else with that of the element', async () => {
    const json = await parsed(ofTable(rated, '--rating', 'load=120; cure=100', '--json'));
    expect(json.elements.map(({ name }: { name: string }) => name)).toEqual(['load', 'cure']);
    expect(json.elements[0].rated).toMatchObject({ ratedBy: 'mixed', ratings: { least: 90, most: 120 } });
    expect(json.elements[0].rated.basic.mean).toBeCloseTo((3.6 + 5.5 + 7.2) / 3, 12);
    expect(json.elements[0].readings[0]).toEqual({ cycle: 1, time: 4, rating: 90 });
  });

  it('an element with a reading that nobody rated is named', async () => {
    const json = await parsed(ofTable(rated, '--json'));
    expect(json.rating).toMatchObject({ rated: false, unrated: ['load', 'cure'] });
    const all = await parsed(ofTable(rated.replace('6,,11', '6,100,11'), '--json'));
    expect(all.rating.unrated).toEqual(['cure']);
  });

  it.each<[string, RegExp]>([
    [rated.replace('110', 'fast'), /r\.csv: line 3, column 3: “fast” is no rating of “load”/],
    [rated.replace('110', '-5'), /line 3, column 3: “-5” is no rating/],
    [rated.replace('rating of Load', 'rating of oven'), /line 1, column 3: .+“oven”, which is no element/],
    [rated.replace('110', '400'), /“load” in cycle 2 cannot be used: 400/],
  ])('%j is refused in words', async (text, words) => {
    const { code, out, err } = await ofTable(text);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(words);
    expect(err).not.toMatch(clean);
  });
});

describe('evenhand define: relaxation from the published table', () => {
  const asked = [
    '--relaxation',
    'pounds',
    '--rows',
    'personal=0; basic-fatigue=0; Posture=very awkward, lying or stretched',
  ];

  it(`adds the figures that the edition prints (${allowanceEditions.pounds.source})`, async () => {
    // Printed: personal 5, basic fatigue 4, very awkward posture 7.
    const json = await parsed(ofTable(table, ...asked, '--json'));
    expect(json.allowance).toMatchObject({
      share: 0.16,
      convention: 'share-of-basic-time',
      table: { edition: 'pounds', column: 'one' },
    });
    expect(json.allowance.table.parts.map(({ percent }: { percent: number }) => percent)).toEqual([5, 4, 7]);
    expect(json.cycle.standard).toBeCloseTo(json.cycle.basic * 1.16, 12);
    const { out } = await ofTable(table, ...asked);
    expect(out).toContain('Source: W. J. Stevenson');
    expect(out.replace(/\s+/g, ' ')).toContain('local rules and qualified people settle that');
  });

  it('is turned into a share of the shift, which gives the same standard', async () => {
    const json = await parsed(ofTable(table, ...asked, '--of', 'shift', '--json'));
    expect(json.allowance.convention).toBe('share-of-shift');
    expect(json.allowance.share).toBeCloseTo(0.16 / 1.16, 12);
    expect(json.cycle.standard).toBeCloseTo(json.cycle.basic * 1.16, 12);
  });

  it('takes the column that was said', async () => {
    const rows = ['--relaxation', 'kilograms', '--rows', 'personal=0', '--json'];
    const share = async (column: string) =>
      (await parsed(ofTable(table, ...rows, '--column', column))).allowance.share;
    expect([await share('men'), await share('women')]).toEqual([0.05, 0.07]);
  });

  it.each<[readonly string[], RegExp]>([
    [['--relaxation', 'kg'], /kg is no edition.+pounds: Table with.+kilograms: Table with.+constant: /s],
    [['--relaxation', 'pounds'], /--rows must say.+posture \(Posture\): 0 a little awkward, 1 awkward, bent/],
    [['--relaxation', 'pounds', '--rows', 'list'], /monotony \(Monotony\): 0 low, 1 medium, 2 high/],
    [['--relaxation', 'pounds', '--rows', 'mood=1'], /--rows names “mood”, which is no row/],
    [
      ['--relaxation', 'pounds', '--rows', 'standing=3'],
      /“3” is no level of “standing”\. standing \(Standing\): 0/,
    ],
    [['--relaxation', 'pounds', '--rows', 'standing'], /“standing” is not ROW=LEVEL/],
    [['--relaxation', 'pounds', '--rows', 'personal=0', '--column', 'men'], /has one column/],
    [['--relaxation', 'kilograms', '--rows', 'personal=0'], /give --column men or --column women/],
    [['--relaxation', 'kilograms', '--rows', 'personal=0', '--column', 'one'], /--column one is not in/],
    [['--relaxation', 'kilograms', '--rows', 'load=9', '--column', 'women'], /prints no figure for “Weight/],
    [
      ['--relaxation', 'pounds', '--rows', 'personal=0', '--allowance', '9', '--of', 'basic'],
      /two ways to say/,
    ],
    [['--rows', 'personal=0'], /--rows says what applies of a printed table/],
  ])('%j is refused in words', async (more, words) => {
    const { code, out, err } = await ofTable(table, ...more);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(words);
    expect(err).not.toMatch(clean);
  });
});

describe('what define and evaluate print as JSON', () => {
  const demoFile = fileURLToPath(
    new URL('../../../../examples/couplings/couplings.evenhand.json', import.meta.url),
  );
  const demo = { files: { 'a.json': readFileSync(demoFile, 'utf8'), 'r.csv': table } };
  const issues = (schema: typeof defineReportSchema | typeof evaluateReportSchema, out: string) => {
    const read = schema.safeParse(JSON.parse(out));
    return read.success ? [] : read.error.issues;
  };

  it.each<[string, number]>([
    ['a.json --study bench-watch', 0],
    ['a.json --study bench-film', 0],
    ['a.json --method present --rating 95 --allowance 12 --of shift --error 5', 0],
    ['a.json --method improved --cycles 1', 0],
    ['r.csv --work cure=process;next=inside --relaxation kilograms --column women --rows standing=0', 0],
    ['a.json --study other', 2],
    ['a.json --rating 400', 2],
    ['r.csv --cycles 9', 2],
    ['gone.csv', 2],
  ])('define %s keeps to the published schema', async (words, wanted) => {
    const { code, out } = await call(['define', ...words.split(' '), '--json'], demo);
    expect(code).toBe(wanted);
    expect(issues(defineReportSchema, out)).toEqual([]);
    expect(JSON.parse(out).ok).toBe(wanted === 0);
    expect(out).not.toMatch(/NaN|null|Infinity/);
  });

  it.each<[string, number]>([
    ['--before present --after improved', 0],
    ['--comparison present-improved', 0],
    ['--before present --after other', 2],
    ['--before present --after present', 2],
    ['--comparison other', 2],
  ])('evaluate %s keeps to the published schema', async (words, wanted) => {
    const { code, out } = await call(['evaluate', 'a.json', ...words.split(' '), '--json'], demo);
    expect(code).toBe(wanted);
    expect(issues(evaluateReportSchema, out)).toEqual([]);
    expect(JSON.parse(out).ok).toBe(wanted === 0);
  });
});
