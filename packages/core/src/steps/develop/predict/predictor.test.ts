import { describe, expect, it } from 'vitest';
import { ballistic, movementLaws } from '../../../ground/tables/index.ts';
import type { WorkPlace } from '../work/index.ts';
import type { MotionWanted } from './from-cells.ts';
import type { Cell } from './observed.ts';
import { burstPace, predictorFrom } from './predictor.ts';
import { parseTimeTable } from './time-table.ts';

const at = (id: string, x: number): WorkPlace => ({ id, name: id, kind: 'bin', at: { x, y: 0 }, width: 400 });
/** So wide that the square-root law decides: 100 mm take 50.02 + 16.464 × 10 = 214.66 ms, 400 mm 379.3 ms. */
const places = [at('a', 0), at('b', 100), at('c', 400), at('d', 900)];
const cell = (facts: Partial<Cell> & Pick<Cell, 'times'>): Cell => ({
  kind: 'G',
  object: 'ring',
  hand: 'right',
  from: 'a',
  to: 'a',
  method: 'm',
  ...facts,
});
const wanted = (facts: Partial<MotionWanted>): MotionWanted => ({
  kind: 'G',
  object: 'ring',
  hand: 'right',
  from: 'a',
  to: 'a',
  ...facts,
});
const move = (from: string, to: string, more: Partial<MotionWanted> = {}) =>
  wanted({ kind: 'TL', from, to, ...more });

function calibrationShared(cells: readonly Cell[]): number | undefined {
  return predictorFrom(cells, places).calibration.pace?.shared;
}

describe('where a predicted time comes from', () => {
  const cells = [
    cell({ times: [300_000, 320_000, 340_000] }),
    cell({ kind: 'TL', from: 'a', to: 'b', times: [400_000, 440_000] }),
    cell({ kind: 'TE', from: 'b', to: 'c', times: [600_000, 640_000] }),
  ];
  const { predict, calibration } = predictorFrom(cells, places);

  it('the motion itself as it was measured: the mean, with Student’s interval of the mean', () => {
    const found = predict(wanted({}));
    expect(found.us).toBe(320_000);
    expect(found.source).toEqual({ kind: 'measured', n: 3, where: 'here' });
    // s = 20,000, t(2; 90 %) = 2.91999: 320,000 · e^±(2.91999 × 0.0625 ÷ √3)
    const half = (2.919986 * 0.0625) / Math.sqrt(3);
    expect(found.high / 320_000).toBeCloseTo(Math.exp(half), 5);
    expect(found.low / 320_000).toBeCloseTo(Math.exp(-half), 5);
    expect(found.words).toBe('measured in the record, 3 times');
  });

  it('else as the other hand did it, and the interval is wider', () => {
    const found = predict(wanted({ hand: 'left' }));
    expect(found.us).toBe(320_000);
    expect(found.words).toContain('with the other hand');
    expect(found.high).toBeGreaterThan(predict(wanted({})).high);
  });

  it('else the same object at another place, and the interval is wider still', () => {
    const found = predict(wanted({ from: 'c', to: 'c' }));
    expect(found.source).toEqual({ kind: 'measured', n: 3, where: 'elsewhere' });
    expect(found.high).toBeGreaterThan(predict(wanted({ hand: 'left' })).high);
  });

  it('what the factor of a kind errs by is common to that kind, and no other kind errs with it', () => {
    const own = [
      ...cells,
      cell({ object: 'nut', times: [200_000, 220_000] }),
      cell({ kind: 'TL', from: 'b', to: 'c', times: [500_000, 560_000] }),
    ];
    const known = predictorFrom(own, places);
    const names = (one: MotionWanted) => known.predict(one).errors.map(({ name }) => name);
    const [grasp, clip] = [names(wanted({ object: 'bolt' })), names(wanted({ object: 'clip' }))];
    const [far, back] = [names(move('a', 'd')), names(move('d', 'b'))];
    expect(grasp.filter((name) => clip.includes(name))).toHaveLength(1);
    expect(far.filter((name) => back.includes(name))).toHaveLength(1);
    expect(grasp.filter((name) => far.includes(name))).toEqual([]);
    expect(known.predict(move('a', 'd')).shared).toBe(0);
    // A kind without a factor of its own errs with the pace, as all such kinds do.
    expect(known.predict(wanted({ kind: 'TE', from: 'a', to: 'd' })).shared).toBe(calibrationShared(own));
  });

  it('a move that was not measured goes by the law at the pace of the record', () => {
    const found = predict(move('a', 'c'));
    // One loaded move alone gives no factor of its own; the pace is that of both moves.
    const law = (distance: number) => (ballistic.a + ballistic.b * Math.sqrt(distance)) * 1000;
    const pace = Math.sqrt((420_000 / law(100)) * (620_000 / law(300)));
    expect(calibration.pace?.factor).toBeCloseTo(pace, 10);
    expect(found.us).toBe(Math.round(law(400) * pace));
    expect(found.source).toMatchObject({ kind: 'law', law: 'move', calibrated: true });
    expect(found.words).toContain('at the pace of the record (2 motions)');
  });

  it('a measured move whose bin was put elsewhere is brought to the new distance by the law', () => {
    const { predict: after } = predictorFrom(cells, [at('a', 0), at('b', 400)], { recorded: places });
    const found = after(move('a', 'b'));
    expect(found.us).toBe(
      Math.round((420_000 * (ballistic.a + ballistic.b * 20)) / (ballistic.a + ballistic.b * 10)),
    );
    expect(found.words).toContain('brought to the other distance');
  });

  it('a place without a position has no distance: the time stands in for one, and says so with a wide interval', () => {
    const found = predict(move('a', 'nowhere'));
    expect(found.words).toContain('with a distance that is not known');
    expect(found.high / found.low).toBeGreaterThan(
      predict(move('a', 'c')).high / predict(move('a', 'c')).low,
    );
  });

  it('a heavy part takes longer to carry, an empty hand does not', () => {
    const { predict: fresh } = predictorFrom([], places, { pace: burstPace });
    const light = fresh(move('a', 'c'));
    expect(fresh(move('a', 'c', { weight: 453.6 })).us / light.us).toBeCloseTo(1.0474, 4);
    expect(fresh(move('a', 'c', { kind: 'TE', weight: 453.6 })).us).toBe(light.us);
  });

  it('without any record a law stands alone at a working pace nobody measured, wider than at any measured pace', () => {
    const found = predictorFrom([], places).predict(wanted({ kind: 'P' }));
    expect(found.us).toBe(Math.round(movementLaws.fit.time({ distance: 0, width: 1 }) * 1000 * 1.3));
    expect(found.source).toMatchObject({ kind: 'law', calibrated: false });
    expect(found.words).toContain('nobody has measured');
  });

  it('the spread between the hands is the record’s own where it tells', () => {
    const pair = (object: string, left: number, right: number) => [
      cell({ object, hand: 'left', times: [left, left * 1.01] }),
      cell({ object, hand: 'right', times: [right, right * 1.01] }),
    ];
    const far = [...pair('x', 400, 800), ...pair('y', 900, 400), ...pair('z', 300, 700)];
    const near = [...pair('x', 400, 402), ...pair('y', 900, 899), ...pair('z', 300, 301)];
    const width = (known: readonly Cell[]) => {
      const found = predictorFrom([...known, cell({ times: [500, 505, 510] })], places).predict(
        wanted({ hand: 'left' }),
      );
      return Math.log(found.high / found.low);
    };
    expect(width(far)).toBeGreaterThan(5 * width(near));
  });
});

describe('a time table that its owner loads', () => {
  const text =
    'kind,object,distance_mm,us,spread\nG,,,150000,0.05\nG,ring,,200000,\nTL,,100,300000,0.1\nTL,,300,400000,0.2\n';
  const table = parseTimeTable(text, 'own.csv');
  if (!table.ok) throw new Error('table');
  const { predict } = predictorFrom([], places, { table: table.value });

  it('gives the time of an object before that of any object', () => {
    expect(predict(wanted({})).us).toBe(200_000);
    expect(predict(wanted({ object: 'nut' })).us).toBe(150_000);
    expect(predict(wanted({})).source).toEqual({ kind: 'table', name: 'own.csv' });
  });

  it('finds a move on the line between two distances, and leaves what is beyond them to the law', () => {
    expect(predict(move('b', 'a')).us).toBe(300_000);
    // 100 to 300 mm with 300 between a at 100 and c at 400: 300 mm exactly.
    expect(predict(move('b', 'c')).us).toBe(400_000);
    const half = predictorFrom([], [at('a', 0), at('h', 150)], { table: table.value }).predict(
      move('a', 'h'),
    );
    expect(half.us).toBe(325_000);
    expect(half.errors[0]?.spread).toBeCloseTo(0.125, 10);
    expect(predict(move('a', 'd')).source.kind).toBe('law');
  });

  it('stands behind what the record measured', () => {
    const both = predictorFrom([cell({ times: [310_000, 330_000] })], places, { table: table.value });
    expect(both.predict(wanted({})).source.kind).toBe('measured');
  });

  it.each([
    ['object,us\nx,1', 'the column kind is missing'],
    ['kind,us,tmu\nG,1,2', '“tmu” is no column'],
    ['kind,us\nQQ,100', 'Line 2 of the time table cannot be read: “QQ” is no kind of motion'],
    ['kind,us\n\nG,-5', 'Line 3 of the time table cannot be read: “-5” is no time'],
    ['kind,us\nTE,100', 'a move needs its distance'],
    ['kind,us,distance_mm\nTE,100,far', '“far” is no distance'],
    ['kind,us,spread\nG,100,9', '“9” is no spread'],
    ['kind,us\nG,100,5', 'it has 3 fields where 2 are named'],
    ['kind,us\n', 'it is empty'],
  ])('%j is refused in words', (bad, words) => {
    const found = parseTimeTable(bad, 'bad.csv');
    expect(found.ok).toBe(false);
    expect(found.ok ? '' : found.error.map(({ message }) => message).join(' ')).toContain(words);
  });
});
