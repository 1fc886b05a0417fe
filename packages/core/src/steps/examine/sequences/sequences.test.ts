import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CycleText, tenth, twoHandStudy } from '../../../../../../tests/helpers/two-hand-study.ts';
import {
  everyRepeatedRun,
  nearOccurrences,
  type OracleMotion,
} from '../../../../../../tests/oracles/repeated-runs.ts';
import { type MethodReading, readMethod, segmentsOf } from '../reading/index.ts';
import type { RepeatedRun, SequenceChoice } from './run.ts';
import { repeatedSequences } from './sequences.ts';

/** The last motion is there so that something is marked in every record. */
function readingOf(cycles: readonly CycleText[]): MethodReading {
  const read = readMethod(twoHandStudy([...cycles, { left: 'I 1', right: 'I 1' }]), 'm');
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
}

const brief = (runs: readonly RepeatedRun[]) =>
  runs.map(({ words, count, total }) => [words, count, total / tenth]);

const kinds = ['TE', 'G', 'TL', '–'] as const;
const objects = ['ring', 'body'] as const;
const rowArb = (most: number) =>
  fc
    .array(fc.tuple(fc.constantFrom(...kinds), fc.constantFrom(...objects), fc.integer({ min: 1, max: 9 })), {
      minLength: 1,
      maxLength: most,
    })
    .map((motions) => motions.map(([kind, object, length]) => `${kind} ${object} ${length}`).join(', '));
const cyclesArb = fc.oneof(
  fc.array(fc.record({ left: rowArb(14), right: rowArb(8) }), { minLength: 1, maxLength: 4 }),
  // The same few motions over and over, so that occurrences overlap.
  fc
    .tuple(rowArb(3), fc.integer({ min: 2, max: 7 }), rowArb(2))
    .map(([part, times, right]) => [{ left: Array(times).fill(part).join(', '), right }]),
);

/** The rows as the oracle takes them: cut at every cycle and wherever nothing is marked. */
function oracleRows(reading: MethodReading, row: 'left' | 'right' | 'both'): OracleMotion[][] {
  const rows: OracleMotion[][] = [[]];
  const word = ({ kind, object }: { kind: string; object: string | undefined }) =>
    kind === 'unmarked' ? undefined : `${kind} ${object}`;
  for (const cycle of reading.cycles) {
    const motions =
      row === 'both'
        ? segmentsOf(cycle).map(({ left, right, duration }) => {
            const [a, b] = [word(left), word(right)];
            return { word: a === undefined || b === undefined ? undefined : `${a} | ${b}`, time: duration };
          })
        : cycle[row].map((piece) => ({ word: word(piece), time: piece.duration }));
    for (const { word: name, time } of motions) {
      if (name === undefined) rows.push([]);
      else rows.at(-1)?.push({ word: name, time });
    }
    rows.push([]);
  }
  return rows;
}

describe('repeated sequences', () => {
  it('are those, as often and as dear, that a trial of every stretch finds', () => {
    fc.assert(
      fc.property(cyclesArb, fc.constantFrom('left', 'right', 'both'), (cycles, row) => {
        const reading = readingOf(cycles);
        const expected = everyRepeatedRun(oracleRows(reading, row)).map(({ words, count, total }) =>
          JSON.stringify([words.join(', '), count, total / tenth]),
        );
        const { byCount, byCost } = repeatedSequences(reading, { top: 10_000 })[row];
        const found = (runs: readonly RepeatedRun[]) =>
          brief(runs)
            .map((run) => JSON.stringify(run))
            .sort();
        expect(found(byCount)).toEqual([...expected].sort());
        expect(found(byCost)).toEqual([...expected].sort());
      }),
      { seed: 21, numRuns: 400 },
    );
  });

  it('a short list is the beginning of the long one', () => {
    fc.assert(
      fc.property(cyclesArb, fc.integer({ min: 1, max: 4 }), (cycles, top) => {
        const reading = readingOf(cycles);
        const all = repeatedSequences(reading, { top: 10_000 }).left;
        const few = repeatedSequences(reading, { top }).left;
        expect(brief(few.byCount)).toEqual(brief(all.byCount.slice(0, top)));
        expect(brief(few.byCost)).toEqual(brief(all.byCost.slice(0, top)));
        const figure = all.byCost.map(({ total }) => total);
        expect(figure).toEqual([...figure].sort((a, b) => b - a));
      }),
      { seed: 22, numRuns: 300 },
    );
  });

  it('with tolerance count the places that a trial of every place finds', () => {
    fc.assert(
      fc.property(cyclesArb, (cycles) => {
        const reading = readingOf(cycles);
        const rows = oracleRows(reading, 'left');
        const sizes = (choice: SequenceChoice) =>
          repeatedSequences(reading, { top: 10_000, ...choice }).left.byCount;
        expect(sizes({ tolerance: 1 })).toHaveLength(sizes({}).length);
        for (const { words, length, occurrences, total } of sizes({ tolerance: 1 })) {
          if (length < 3) continue;
          const expected = nearOccurrences(rows, words.split(', '));
          expect(occurrences.map(({ likeness }) => likeness)).toEqual(
            expected.map(({ likeness }) => likeness),
          );
          const time = expected.flatMap(({ row, at, length: long }) =>
            (rows[row] ?? []).slice(at, at + long).map((motion) => motion.time),
          );
          expect(total).toBe(time.reduce((sum, value) => sum + value, 0));
        }
      }),
      { seed: 23, numRuns: 300 },
    );
  });

  it('never take more time than the cycles have, and show where they are', () => {
    fc.assert(
      fc.property(cyclesArb, fc.constantFrom(0 as const, 1 as const), (cycles, tolerance) => {
        const reading = readingOf(cycles);
        const whole = reading.cycles.reduce((sum, { duration }) => sum + duration, 0);
        const found = repeatedSequences(reading, { tolerance });
        for (const row of ['left', 'right', 'both'] as const) {
          for (const run of found[row].byCost) {
            expect(run.total).toBeLessThanOrEqual(whole);
            const spans = run.occurrences.map(({ from, to, time }) => [to - from, time]);
            for (const [span, time] of spans) expect(span).toBe(time);
            run.occurrences.slice(1).forEach(({ from }, index) => {
              expect(from).toBeGreaterThanOrEqual(run.occurrences[index]?.to ?? 0);
            });
          }
        }
      }),
      { seed: 24, numRuns: 200 },
    );
  });

  it('are found in a record written down by hand', () => {
    const left = 'TE ring 2, G ring 1, TL ring 3, H body 9, TE ring 3, G ring 1, TL ring 2';
    const found = repeatedSequences(readingOf([{ left, right: 'UD 21' }])).left;
    expect(brief(found.byCount)).toEqual([['TE ring, G ring, TL ring', 2, 12]]);
    const [run] = found.byCost;
    expect(run?.sample.mean).toBe(6 * tenth);
    expect(run?.mostInACycle).toBe(2);
    expect(run?.occurrences.map(({ from, to }) => [from / tenth, to / tenth])).toEqual([
      [0, 6],
      [15, 21],
    ]);
  });

  it('do not run from one cycle into the next, nor over a part that is not marked', () => {
    const found = repeatedSequences(
      readingOf([
        { left: 'A 1, B 1'.replace('B', 'RL'), right: 'H 2' },
        { left: 'TE 1, – 1, G 1', right: 'H 3' },
        { left: 'A 1, RL 1', right: 'H 2' },
        { left: 'TE 1, – 1, G 1', right: 'H 3' },
      ]),
    );
    expect(brief(found.left.byCount)).toEqual([['A, RL', 2, 4]]);
  });

  it('tell objects and places apart only when asked to', () => {
    const reading = readingOf([
      { left: 'TE ring bin>front 1, G ring 1, TE body bin>front 1, G body 1', right: 'H 4' },
      { left: 'TE ring rack>front 1, G ring 1', right: 'H 2' },
    ]);
    const words = (by: SequenceChoice['by']) => brief(repeatedSequences(reading, { by }).left.byCount);
    expect(words('kind')).toEqual([['TE, G', 3, 6]]);
    expect(words('kind-object')).toEqual([['TE ring, G ring', 2, 4]]);
    expect(words('kind-object-place')).toEqual([]);
  });

  it('of the same motion 1,200 times: n of them fit side by side ⌊1200 ÷ n⌋ times, and a long stretch is counted as well', () => {
    const left = Array(1200).fill('TL 1').join(', ');
    const found = repeatedSequences(readingOf([{ left, right: 'H 1200' }]), { top: 2000 }).left.byCount;
    expect(found).toHaveLength(599);
    for (const { length, count, total } of found) {
      expect([count, total]).toEqual([Math.floor(1200 / length), count * length * tenth]);
    }
  });

  it('a ranking of no runs is a fault of the program', () => {
    const reading = readingOf([{ left: 'A 1', right: 'A 1' }]);
    expect(() => repeatedSequences(reading, { top: 0 })).toThrow('1 run or more, got 0');
  });
});
