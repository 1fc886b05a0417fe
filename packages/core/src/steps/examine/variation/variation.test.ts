import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CycleText, tenth, twoHandStudy } from '../../../../../../tests/helpers/two-hand-study.ts';
import { leastAlignment } from '../../../../../../tests/oracles/full-alignment.ts';
import type { ElementMark } from '../../../ground/study/index.ts';
import { type MethodReading, type Piece, type ReadingChoice, readMethod } from '../reading/index.ts';
import { variationOf } from './variation.ts';
import type { Spread, Variation } from './variation-types.ts';

function readingOf(cycles: readonly CycleText[], choice: ReadingChoice = {}): MethodReading {
  const read = readMethod(twoHandStudy(cycles), 'm', choice);
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
}

const lengthOf = (row: string) => (row.match(/\d+/g) ?? []).reduce((sum, length) => sum + Number(length), 0);
/** The left hand waits through the cycle. */
const right = (...rows: readonly string[]): CycleText[] =>
  rows.map((row) => ({ left: `UD ${lengthOf(row)}`, right: row }));
const plain = 'TE ring 3, G ring 1, TL ring 4, P ring 2, A ring 5, RL ring 1';
const told = ({ deviations }: Variation) =>
  deviations.map(({ cycle, pattern, words, time, trace }) => ({
    cycle,
    pattern,
    words,
    time: time / tenth,
    trace: [trace.from / tenth, trace.to / tenth],
  }));

describe('cycles that differ from the typical one', () => {
  it.each([
    ['regrasp', 'TE ring 3, G ring 1, G ring 2, TL ring 4, P ring 2, A ring 5, RL ring 1', 'G ring'],
    [
      'fumble',
      'TE ring 3, G ring 1, RL ring 1, TE ring 1, G ring 1, TL ring 4, P ring 2, A ring 5, RL ring 1',
      undefined,
    ],
    [
      'drop',
      'TE ring 3, G ring 1, TL ring 4, RL ring 1, TE ring 1, G ring 1, TL ring 2, P ring 2, A ring 5, RL ring 1',
      undefined,
    ],
    ['second-reach', 'TE ring 2, TE ring 2, G ring 1, TL ring 4, P ring 2, A ring 5, RL ring 1', 'TE ring'],
    ['search', 'TE ring 3, Sh ring 2, G ring 1, TL ring 4, P ring 2, A ring 5, RL ring 1', 'Sh ring'],
    ['wait', 'TE ring 3, G ring 1, TL ring 4, AD 7, P ring 2, A ring 5, RL ring 1', 'AD'],
    ['hold', 'TE ring 3, G ring 1, TL ring 4, P ring 2, A ring 5, H ring 3, RL ring 1', 'H ring'],
    ['inspect', 'TE ring 3, G ring 1, I ring 2, TL ring 4, P ring 2, A ring 5, RL ring 1', 'I ring'],
    ['more', 'TE ring 3, G ring 1, TL ring 4, P ring 2, A ring 5, U mallet 2, RL ring 1', 'U mallet'],
    [
      'instead',
      'TE ring 3, G ring 1, TL ring 4, P ring 2, U mallet 2, RL ring 1',
      'U mallet; without A ring',
    ],
    ['instead', 'TE ring 3, G ring 1, TL ring 4, P ring 2, A nut 5, RL ring 1', 'A nut; without A ring'],
    ['missing', 'TE ring 3, G ring 1, TL ring 4, A ring 5, RL ring 1', 'P ring'],
  ])('%s: %s', (pattern, row, what) => {
    const found = told(variationOf(readingOf(right(plain, plain, row))));
    expect(found.map((item) => [item.cycle, item.pattern])).toEqual([[2, pattern]]);
    if (what !== undefined) expect(found[0]?.words.endsWith(`: ${what}`)).toBe(true);
  });

  it('are shown where they are: the extra motions, or the motions around the place of a missing one', () => {
    const [extra, missing] = told(
      variationOf(
        readingOf(
          right(
            plain,
            plain,
            'TE ring 3, Sh ring 2, G ring 1, TL ring 4, P ring 2, A ring 5, RL ring 1',
            'TE ring 3, G ring 1, TL ring 4, A ring 5, RL ring 1',
          ),
        ),
      ),
    );
    expect(extra).toMatchObject({ cycle: 2, time: 2, trace: [35, 37] });
    expect(missing).toMatchObject({ cycle: 3, time: 0, trace: [50 + 4, 50 + 13] });
  });

  it('a part that is not marked is neither a missing motion nor a complete cycle', () => {
    const open = 'TE ring 1, G ring 1, – 1, A ring 1, RL ring 1';
    const found = variationOf(readingOf(right(plain, plain, open)));
    expect(found.deviations).toEqual([]);
    expect(found.best.bound?.time).toBe(16 * tenth);
    expect(found.elements.find(({ name }) => name === '4 P ring')?.times).toEqual([
      2 * tenth,
      2 * tenth,
      undefined,
    ]);
  });

  it('are counted by pattern', () => {
    const wait = 'TE ring 3, G ring 1, TL ring 4, AD 7, P ring 2, A ring 5, RL ring 1';
    const { patterns } = variationOf(readingOf(right(plain, plain, plain, wait, wait)));
    expect(patterns).toEqual([
      { pattern: 'wait', name: 'stood idle', count: 2, cycles: [4, 5], time: 14 * tenth },
    ]);
  });
});

describe('the typical cycle', () => {
  it('has the motions that occur most often, and the middle length of these', () => {
    const longer = plain.replace('A ring 5', 'A ring 9');
    const odd = 'TE ring 1, RL ring 1';
    const { typical } = variationOf(
      readingOf(right(odd, plain, longer, plain.replace('A ring 5', 'A ring 6'))),
    );
    expect(typical.right).toMatchObject({ number: 4, alike: 3 });
    expect(typical.right?.words).toContain('In 3 of 4 cycles');
  });

  it('is one that is marked throughout where there is any', () => {
    const open = 'TE ring 3, – 1, TL ring 4';
    const { typical } = variationOf(readingOf(right(open, open, plain)));
    expect(typical.right).toMatchObject({ number: 3, alike: 1 });
  });

  it('is the one that differs least from the others where no two are alike', () => {
    const { typical } = variationOf(
      readingOf(right('TE 1, G 1, I 1', 'TE 1, G 1, P 1, TL 1', 'TE 1, G 1, TL 1', 'TE 1, G 1, TL 1, RL 1')),
    );
    expect(typical.right).toMatchObject({ number: 3, alike: 1 });
  });

  it('a hand that nobody marked has none', () => {
    const found = variationOf(readingOf([{ left: '', right: plain }]));
    expect(found.typical.left).toBeUndefined();
    expect(found.best).toMatchObject({ number: undefined });
    expect(found.best.reason).toContain('marked throughout in both hands');
    expect(found.quartiles.bound?.words).toContain('the only one that is marked throughout');
  });
});

describe('bounds of practice, worked out by hand', () => {
  // Four cycles of two motions: TE 1, 2, 3, 4 and A 9, 6, 7, 8; by type 7 the lower quartiles are 1.75 and 6.75.
  const rows = ['TE 1, A 9', 'TE 2, A 6', 'TE 3, A 7', 'TE 4, A 8'];
  const marks: ElementMark[] = [
    { id: 'a', name: 'reach', hand: 'right', at: 0 },
    { id: 'b', name: 'assemble', hand: 'right', at: tenth },
  ];

  it('spread of each motion: mean, quartiles, least and most', () => {
    const { elements, basis, cycles } = variationOf(readingOf(right(...rows)));
    expect(basis).toBe('motions');
    const reach = elements.find(({ name }) => name === '1 TE')?.spread;
    const figures = (spread: Spread | undefined) =>
      [spread?.least, spread?.lowerQuartile, spread?.median, spread?.upperQuartile, spread?.most].map(
        (value) => (value ?? 0) / tenth,
      );
    expect(figures(reach)).toEqual([1, 1.75, 2.5, 3.25, 4]);
    expect(reach?.sample.mean).toBe(2.5 * tenth);
    expect(reach?.sample.variation).toBeCloseTo(Math.sqrt(5 / 3) / 2.5, 12);
    expect(figures(cycles)).toEqual([8, 9.5, 10, 10.5, 12]);
  });

  it('the best cycle seen is cycle 2 with 8, the cycle of lower quartiles takes 8.5', () => {
    const found = variationOf(readingOf(right(...rows)));
    expect([found.best.number, found.best.bound?.time]).toEqual([2, 8 * tenth]);
    expect(found.quartiles.bound?.time).toBe(8.5 * tenth);
    expect(found.quartiles.bound?.words).toContain('typical cycle of the right hand, which works more');
    expect(found.quartiles.bound?.words).toContain('No cycle was seen');
  });

  it('the same by named elements', () => {
    const found = variationOf(readingOf(right(...rows)), { marks });
    expect([found.basis, found.elements.map(({ name }) => name)]).toEqual([
      'elements',
      ['reach', 'assemble'],
    ]);
    expect(found.quartiles.bound?.time).toBe(8.5 * tenth);
    expect(found.quartiles.bound?.traces).toHaveLength(2);
  });

  it('a cycle without the hold or the search of the others is complete', () => {
    const held = 'TE 1, Sh 1, H 2, A 9';
    const found = variationOf(readingOf(right(held, held, 'TE 1, A 9')));
    expect([found.best.number, found.best.bound?.time]).toEqual([3, 10 * tenth]);
  });

  it('a shorter cycle that lacks a motion, or is set aside, is not the best', () => {
    const found = variationOf(readingOf(right(...rows, 'A 4', 'TE 1, A 9')));
    expect([found.best.number, found.best.bound?.time]).toEqual([2, 8 * tenth]);
    const study = twoHandStudy(right(...rows));
    const [method] = study.methods;
    if (method === undefined) throw new Error('no method');
    const items = method.cycles.items.map((cycle, index) =>
      index === 1 ? { ...cycle, setAside: 'spoken to' } : cycle,
    );
    const aside = { ...study, methods: [{ ...method, cycles: { ...method.cycles, items } }] };
    const read = readMethod(aside, 'm', { cycles: [1, 2, 3, 4] });
    expect(read.ok && variationOf(read.value).best.number).toBe(1);
  });
});

const motionArb = fc
  .tuple(
    fc.constantFrom('TE', 'G', 'TL', 'RL'),
    fc.constantFrom('ring', 'body'),
    fc.integer({ min: 1, max: 9 }),
  )
  .map((words) => words.join(' '));
const rowArb = fc.array(motionArb, { minLength: 1, maxLength: 12 }).map((row) => row.join(', '));
const cyclesArb = fc.array(fc.record({ left: rowArb, right: rowArb }), { minLength: 1, maxLength: 6 });

/** Half a motion for another object, a whole one for each extra or missing; in halves. */
function deviationCost(deviations: Variation['deviations']): number {
  const isOther = (extra: readonly Piece[], missing: readonly Piece[]) =>
    extra.length === 1 && missing.length === 1 && extra[0]?.kind === missing[0]?.kind;
  return deviations.reduce(
    (sum, { extra, missing }) => sum + (isOther(extra, missing) ? 1 : 2 * (extra.length + missing.length)),
    0,
  );
}

describe('laws of variation', () => {
  it('what is told of a cycle costs what the best of all alignments with the typical one costs', () => {
    const filled = fc.array(rowArb, { minLength: 1, maxLength: 6 }).map((rows) => right(...rows));
    fc.assert(
      fc.property(filled, (cycles) => {
        const reading = readingOf(cycles);
        const { deviations, typical } = variationOf(reading, { marks: [] });
        const motions = (position: number | undefined) =>
          reading.cycles[position ?? -1]?.right.map(({ kind, object }) => ({ kind, object, start: 0 })) ?? [];
        for (const { position } of reading.cycles) {
          const own = deviations.filter(({ cycle, hand }) => cycle === position && hand === 'right');
          const [cost] = leastAlignment(motions(typical.right?.cycle), motions(position));
          expect(deviationCost(own)).toBe(cost);
        }
      }),
      { seed: 51, numRuns: 200 },
    );
  });

  it('every time is one of its cycle, the bounds lie between the least and the most of everything', () => {
    fc.assert(
      fc.property(cyclesArb, fc.nat(60), (cycles, at) => {
        const reading = readingOf(cycles);
        const mark = { id: 'e', name: 'e', hand: 'left', at: at * tenth } as const;
        const found = variationOf(reading, { marks: [mark] });
        for (const { times, traces, spread } of found.elements) {
          const known = times.filter((time) => time !== undefined);
          expect([traces.length, spread?.sample.n ?? 0]).toEqual([known.length, known.length]);
          times.forEach((time, cycle) => {
            expect(time ?? 0).toBeLessThanOrEqual(reading.cycles[cycle]?.duration ?? 0);
          });
        }
        const sum = (of: 'least' | 'most') =>
          found.elements.reduce((all, { spread }) => all + (spread?.[of] ?? 0), 0);
        const time = found.quartiles.bound?.time;
        if (time !== undefined) {
          expect(time).toBeLessThanOrEqual(sum('most'));
          if (found.basis === 'elements') expect(time).toBeGreaterThanOrEqual(sum('least'));
        }
        if (found.best.bound !== undefined) {
          expect(found.best.bound.time).toBeGreaterThanOrEqual(found.cycles.least);
        }
      }),
      { seed: 52, numRuns: 200 },
    );
  });

  it('the order of the cycles does not change what is said of the elements', () => {
    const lengths = fc.array(fc.integer({ min: 1, max: 900 }), { minLength: 4, maxLength: 4 });
    const odd = fc.tuple(lengths, fc.constantFrom('', 'Sh ring 3, ', 'RL ring 1, TE ring 2, G ring 1, '));
    const text = ([[a, b, c, d], more]: readonly [readonly number[], string]) =>
      `TE ring ${a}, G ring ${b}, ${more}TL ring ${c}, A ring ${d}`;
    fc.assert(
      fc.property(
        fc.array(odd, { minLength: 3, maxLength: 8 }),
        fc.array(lengths, { minLength: 9, maxLength: 9 }),
        (some, most) => {
          const rows = [...some.map(text), ...most.map((list) => text([list, '']))];
          const spreads = (list: readonly string[]) =>
            variationOf(readingOf(right(...list))).elements.map(({ spread }) => spread);
          expect(spreads([...rows].reverse())).toEqual(spreads(rows));
        },
      ),
      { seed: 53, numRuns: 100 },
    );
  });
});
