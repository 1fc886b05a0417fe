import { describe, expect, it } from 'vitest';
import { titled } from '../../../../tests/reference/check.ts';
import * as single from '../../../../tests/reference/published-standard-times.ts';
import * as whole from '../../../../tests/reference/published-studies.ts';
import { call } from '../testing/fake-io.ts';

const of = { job: 'basic', shift: 'shift' } as const;

/** One cycle in minutes: a column for each time. */
async function oneCycle(times: readonly number[], ...more: string[]) {
  const names = times.map((_, index) => `e${index + 1}`);
  const text = `cycle,${names.join(',')}\n1,${times.join(',')}\n`;
  const { out } = await call(['define', 'r.csv', '--unit', 'min', '--json', ...more], {
    files: { 'r.csv': text },
  });
  const found = JSON.parse(out);
  expect(found.ok, out).toBe(true);
  return found;
}

/** "e1=90; e2=110" of what stands at each element. */
function each(values: readonly number[], sign = ''): string {
  return values.map((value, index) => `e${index + 1}=${value}${sign}`).join('; ');
}

/** Decimals that a time in whole microseconds leaves of a minute. */
const digits = 7;

describe('evenhand define: published standard times of one element', () => {
  it.each(titled(single.singleStandards, single.sources))('$title', async ({ check }) => {
    const { ot, rating, allowance, convention } = check.inputs;
    const words = ['--rating', `${rating * 100}`, '--allowance', `${allowance * 100}%`];
    const { piece, elements } = await oneCycle([ot], ...words, '--of', of[convention]);
    expect(piece.basic).toBeCloseTo(Number(check.computed.nt), digits);
    expect(piece.standard).toBeCloseTo(Number(check.computed.st), digits);
    expect(elements[0].factor).toBeCloseTo(Number(check.computed.af), digits);
  });
});

describe('evenhand define --work: published standard times of worker and machine', () => {
  it.each(titled(single.machineWork, single.sources))('$title', async ({ check }) => {
    const { manual, machine, rating, allowance, convention, allowOn } = check.inputs;
    const { piece, elements } = await oneCycle(
      [manual, machine],
      ...['--work', 'e2=process', '--rating', `${rating * 100}`, '--allowance', `${allowance * 100}`],
      ...['--process', allowOn === 'all' ? `${allowance * 100}` : '0', '--of', of[convention]],
    );
    expect(elements[1].rated).toBeUndefined();
    expect(piece.basic).toBeCloseTo(Number(check.computed.nt), digits);
    expect(piece.standard).toBeCloseTo(Number(check.computed.st), digits);
  });

  it.each(titled(single.machineWorkTwoAllowances, single.sources))('$title', async ({ check }) => {
    const { manualNT, machine, aW, aM } = check.inputs;
    const { piece } = await oneCycle(
      [manualNT, machine],
      ...['--work', 'e2=process', '--allowance', `${aW * 100}`, '--process', `${aM * 100}`, '--of', 'basic'],
    );
    expect(piece.standard).toBeCloseTo(Number(check.computed.st), digits);
  });
});

describe('evenhand define --every: published studies with elements that are not done once in each cycle', () => {
  const rare = titled(whole.studies, whole.sources).filter(({ check }) =>
    check.inputs.elements.every(({ ot }) => ot !== undefined),
  );
  it('there are some', () =>
    expect(
      rare.filter(({ check }) => check.inputs.elements.some(({ freq = 1 }) => freq !== 1)).length,
    ).toBeGreaterThan(0));

  it.each(rare)('$title', async ({ check }) => {
    const { elements, allowance, convention } = check.inputs;
    const { piece } = await oneCycle(
      elements.map(({ ot = 0 }) => ot),
      ...['--rating', each(elements.map(({ rating }) => rating * 100))],
      ...['--every', each(elements.map(({ freq = 1 }) => 1 / freq))],
      ...['--allowance', `${allowance * 100}%`, '--of', of[convention]],
    );
    expect(piece.basic).toBeCloseTo(Number(check.computed.ntTotal), digits);
    expect(piece.standard).toBeCloseTo(Number(check.computed.stTotal), digits);
  });
});

describe('evenhand define --allowance of single elements: published studies with relaxation of their own', () => {
  it.each(titled(whole.studiesWithOwnRelaxation, whole.sources))('$title', async ({ check }) => {
    const { elements, contingency } = check.inputs;
    const { cycle } = await oneCycle(
      elements.map(({ ot }) => ot),
      ...['--rating', each(elements.map(({ rating }) => rating * 100))],
      ...['--every', each(elements.map(({ freq }) => 1 / freq))],
      ...[
        '--allowance',
        each(
          elements.map(({ ra }) => ra * 100),
          '%',
        ),
      ],
      ...['--of', 'basic', '--contingency', `${contingency * 100}`],
    );
    const { sbtTotal, actualTotal, standard } = check.computed;
    expect(cycle.basic).toBeCloseTo(Number(sbtTotal), digits);
    if (actualTotal !== undefined) expect(cycle.relaxed).toBeCloseTo(Number(actualTotal), digits);
    if (standard !== undefined) expect(cycle.standard).toBeCloseTo(Number(standard), digits);
  });
});

describe('evenhand define --draws: the check beside the interval', () => {
  const define = (...more: string[]) =>
    call(['define', 'r.csv', ...more], { files: { 'r.csv': 'cycle,fit hose\n1,4\n2,6\n' } });
  const drawsOf = async (...more: string[]) => JSON.parse((await define('--json', ...more)).out).cycle.draws;

  it('draws whole cycles with replacement: of 4 and 6 the means 4, 5 and 6 come once, twice and once in four (by hand)', async () => {
    const agreed = ['--allowance', '10', '--of', 'basic'];
    const wide = await drawsOf('--draws', '5000', ...agreed);
    expect(wide).toMatchObject({ draws: 5000, seed: 1, repeated: 0 });
    expect(wide.interval.low).toBeCloseTo(4.4, 9);
    expect(wide.interval.high).toBeCloseTo(6.6, 9);
    expect(wide.deviation / (1.1 * Math.SQRT1_2)).toBeCloseTo(1, 1);
    const narrow = await drawsOf('--draws', '5000', '--confidence', '40', ...agreed);
    expect(narrow.interval.low).toBeCloseTo(5.5, 9);
    expect(narrow.interval.high).toBeCloseTo(5.5, 9);
  });

  it('the same seed gives the same draws, another one others', async () => {
    expect(await drawsOf('--seed', '9')).toEqual(await drawsOf('--seed', '9'));
    expect((await drawsOf('--seed', '9')).deviation).not.toBe((await drawsOf('--seed', '10')).deviation);
  });

  it('is printed for a piece, with its method, and left out when it is not wanted', async () => {
    const { out } = await define('--pieces', '2', '--draws', '500', '--seed', '3');
    expect(out.replace(/\s+/g, ' ')).toContain(
      'As a check, 2.00 s to 3.00 s: 500 draws of whole cycles with replacement from seed 3',
    );
    expect((await define('--draws', '0')).out).not.toContain('As a check');
    expect(await drawsOf('--draws', '0')).toBeUndefined();
  });
});

describe('evenhand define --pieces', () => {
  it('a cycle of a table makes several', async () => {
    const { piece, piecesPerCycle, cycle } = await oneCycle([3], '--pieces', '2,5');
    expect(piecesPerCycle).toBe(2.5);
    expect(piece.standard).toBeCloseTo(cycle.standard / 2.5, 12);
    expect(piece.anHour).toBeCloseTo(50, 9);
  });
});

describe('evenhand define: what is said of elements, pieces and draws', () => {
  it('an element with an allowance of its own keeps it beside a printed table', async () => {
    const table = ['--relaxation', 'pounds', '--rows', 'personal=0', '--of', 'basic'];
    const found = await oneCycle([2, 4], ...table, '--allowance', 'e2=20');
    expect(found.elements.map(({ relaxation }: { relaxation?: number }) => relaxation)).toEqual([
      undefined,
      0.2,
    ]);
    expect(found.cycle.standard).toBeCloseTo(2 * 1.05 + 4 * 1.2, 12);
  });

  it('is printed with the convention', async () => {
    const files = { 'r.csv': 'cycle,lift,place\n1,4,2\n2,5,2.2\n' };
    const words = ['--allowance', '12; lift=18', '--of', 'shift', '--every', 'place=0.5'];
    const text = (await call(['define', 'r.csv', ...words], { files })).out.replace(/\s+/g, ' ');
    expect(text).toContain('Relaxation allowance 12.0 %, a share of the shift');
    expect(text).toContain('Of single elements, in the same convention: “lift” 18.0 %.');
    expect(text).toContain('“place” is done 2 times in a cycle.');
    const own = await call(['define', 'r.csv', '--allowance', 'lift=18', '--of', 'shift'], { files });
    expect(own.out).not.toContain('none was given');
  });

  it.each<[readonly string[], RegExp]>([
    [['--allowance', ' '], /--allowance says nothing\. Write such as 12, or "12; NAME=18"/],
    [['--allowance', '12; e1=much', '--of', 'basic'], /--allowance much is no percentage/],
    [['--allowance', 'e1=0.18', '--of', 'basic'], /--allowance 0\.18 is a percentage: write 18/],
    [['--allowance', 'lift=18', '--of', 'basic'], /--allowance names “lift”, which is no element/],
    [['--allowance', 'e1=18'], /must be said what the allowance is a share of/],
    [['--allowance', 'e1=100', '--of', 'shift'], /The allowance of “e1” is 100\.0 % of the shift/],
    [['--allowance', '=18', '--of', 'basic'], /no name stands before “=18”/],
    [['--allowance', '5', '--of', 'basic', '--relaxation', 'pounds', '--rows', 'personal=0'], /two ways/],
    [['--pieces', '0'], /--pieces 0 is not above 0/],
    [['--pieces', 'two'], /--pieces two is no number/],
    [['--draws', '5'], /--draws 5 is neither 0 nor a number from 100 to 100000/],
    [['--draws', '-5'], /--draws/],
    [['--seed', '1.5'], /--seed 1\.5 is no whole number/],
  ])('%j is refused in words', async (more, words) => {
    const { code, out, err } = await call(['define', 'r.csv', ...more], {
      files: { 'r.csv': 'cycle,e1\n1,4\n2,5\n' },
    });
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(words);
    expect(err).not.toMatch(/NaN|undefined|\{\w+\}/);
  });
});
