import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { intervalUnion } from '../../../../../../tests/oracles/interval-union.ts';
import { overlapOwners } from '../../../../../../tests/oracles/overlap-owners.ts';
import { checkStudy, hands } from '../../../ground/study/index.ts';
import { csvToStudy } from './index.ts';

const options = { title: 'Cut', newId: () => 'cut', overlaps: 'cut' } as const;
const head = 'hand,motion,start_s,end_s,object,cycle';

interface Line {
  readonly hand: 'left' | 'right';
  readonly start: number;
  readonly end: number;
  readonly cycle?: number;
  /** Left out, the line is marked. */
  readonly kind?: 'unmarked';
}

/** Each line carries its own number as its object, so that a piece tells where it comes from. */
const textOf = (lines: readonly Line[]) =>
  [
    head,
    ...lines.map(
      ({ hand, start, end, cycle, kind = 'G' }, index) =>
        `${hand},${kind},${start},${end},${index + 2},${cycle ?? ''}`,
    ),
  ].join('\n');

function cut(lines: readonly Line[]) {
  const made = csvToStudy(textOf(lines), options);
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  const [method] = made.value.study.methods;
  if (method === undefined) throw new Error('no method');
  const notes = made.value.notes.filter(({ code }) => code.startsWith('csv/cut'));
  const pieces = (hand: 'left' | 'right') =>
    method[hand].items.map(({ start, object }, index, items) => ({
      line: Number(object ?? 0),
      start: start / 1e6,
      end: (items[index + 1]?.start ?? method[hand].end) / 1e6,
    }));
  return { method, notes, pieces, study: made.value.study };
}

const left = (start: number, end: number): Line => ({ hand: 'left', start, end });
const unmarked = (start: number, end: number): Line => ({ ...left(start, end), kind: 'unmarked' });

describe('overlaps in one hand, cut', () => {
  it.each<[string, Line[], [number, number, number][], [string, number, string][]]>([
    [
      'an earlier motion ends where a later one starts',
      [left(0, 5), left(4, 8)],
      [
        [2, 0, 4],
        [3, 4, 8],
      ],
      [
        [
          'csv/cut-end',
          2,
          'line 2 was cut by 1 s. It ends at 4 s, where the one on line 3 begins, and not at 5 s.',
        ],
      ],
    ],
    [
      'an outer motion is split around one inside and goes on',
      [left(0, 10), left(3, 5)],
      [
        [2, 0, 3],
        [3, 3, 5],
        [2, 5, 10],
      ],
      [
        [
          'csv/cut-split',
          2,
          'line 2 was cut by 2 s. It stops at 3 s, where the one on line 3 begins, and goes on at 5 s.',
        ],
      ],
    ],
    [
      'of two that begin together the shorter comes first',
      [left(0, 10), left(0, 4)],
      [
        [3, 0, 4],
        [2, 4, 10],
      ],
      [['csv/cut-start', 2, 'line 2 was cut by 4 s. It begins at 4 s and not at 0 s']],
    ],
    [
      'of two that are the same the first is gone, and is named',
      [left(1, 4), left(1, 4)],
      [[3, 1, 4]],
      [
        [
          'csv/cut-whole',
          2,
          'line 2 was cut by 3 s. Nothing is left of it, because the one on line 3 begins at 1 s too',
        ],
      ],
    ],
    [
      'one that others fill from its start to its end is gone',
      [left(0, 4), left(0, 2), left(2, 4)],
      [
        [3, 0, 2],
        [4, 2, 4],
      ],
      [['csv/cut-whole', 2, 'line 2 was cut by 4 s.']],
    ],
    [
      'two one after the other inside are one cut',
      [left(0, 10), left(3, 5), left(5, 7)],
      [
        [2, 0, 3],
        [3, 3, 5],
        [4, 5, 7],
        [2, 7, 10],
      ],
      [
        [
          'csv/cut-split',
          2,
          'line 2 was cut by 4 s. It stops at 3 s, where the one on line 3 begins, and goes on at 7 s.',
        ],
      ],
    ],
    [
      'three at once: the last begun has the time, the first goes on after all',
      [left(0, 10), left(2, 6), left(4, 8)],
      [
        [2, 0, 2],
        [3, 2, 4],
        [4, 4, 8],
        [2, 8, 10],
      ],
      [
        ['csv/cut-split', 2, 'line 2 was cut by 6 s.'],
        ['csv/cut-end', 3, 'line 3 was cut by 2 s.'],
      ],
    ],
  ])('%s', (_, lines, wanted, told) => {
    const { pieces, notes } = cut(lines);
    expect(pieces('left').map(({ line, start, end }) => [line, start, end])).toEqual(wanted);
    expect(notes.map(({ code, where }) => [code, where.line])).toEqual(
      told.map(([code, line]) => [code, line]),
    );
    for (const [index, [, , words]] of told.entries()) expect(notes[index]?.message).toContain(words);
    expect(notes.every(({ message }) => message.startsWith('The left hand did two things at once'))).toBe(
      true,
    );
  });

  it.each<[string, Line[], [number, number, number][], [string, number, string][]]>([
    [
      'inside a motion is gone, and is named',
      [left(0, 10), unmarked(2, 8)],
      [[2, 0, 10]],
      [
        [
          'csv/cut-covered',
          3,
          'line 3 was cut by 6 s in the left hand. Nothing is left of it, because motions fill the time from 2 s to 8 s, the one on line 2 first.',
        ],
      ],
    ],
    [
      'that begins within a motion begins where that ends',
      [left(0, 3), unmarked(2, 5)],
      [
        [2, 0, 3],
        [3, 3, 5],
      ],
      [
        [
          'csv/cut-late',
          3,
          'line 3 was cut by 1 s in the left hand. It begins at 3 s and not at 2 s, where the motion on line 2 runs already.',
        ],
      ],
    ],
    [
      'around motions is split and cut like any other',
      [unmarked(0, 10), left(2, 4), left(8, 12)],
      [
        [2, 0, 2],
        [3, 2, 4],
        [2, 4, 8],
        [4, 8, 12],
      ],
      [
        ['csv/cut-split', 2, 'line 2 was cut by 2 s. It stops at 2 s, where the one on line 3 begins'],
        ['csv/cut-end', 2, 'line 2 was cut by 2 s. It ends at 8 s, where the one on line 4 begins'],
      ],
    ],
    [
      'under a motion that ends first comes up between it and the next, and is told twice',
      [left(0, 3), unmarked(1, 9), left(5, 9)],
      [
        [2, 0, 3],
        [3, 3, 5],
        [4, 5, 9],
      ],
      [
        ['csv/cut-late', 3, 'It begins at 3 s and not at 1 s'],
        ['csv/cut-end', 3, 'line 3 was cut by 4 s. It ends at 5 s'],
      ],
    ],
    [
      'among its like is cut as motions are',
      [unmarked(0, 5), unmarked(3, 6)],
      [
        [2, 0, 3],
        [3, 3, 6],
      ],
      [['csv/cut-end', 2, 'line 2 was cut by 2 s.']],
    ],
  ])('what is not marked takes no time from what is: a line %s', (_, lines, wanted, told) => {
    const { pieces, notes } = cut(lines);
    expect(pieces('left').map(({ line, start, end }) => [line, start, end])).toEqual(wanted);
    expect(notes.map(({ code, where }) => [code, where.line])).toEqual(
      told.map(([code, line]) => [code, line]),
    );
    for (const [index, [, , words]] of told.entries()) expect(notes[index]?.message).toContain(words);
  });

  it('what does not overlap is left alone, in one hand and between the two', () => {
    const { notes, pieces } = cut([left(0, 2), { hand: 'right', start: 1, end: 3 }, left(2, 3)]);
    expect(notes).toEqual([]);
    expect(pieces('left').map(({ line }) => line)).toEqual([2, 4]);
  });

  it('a motion that goes on after one of the next cycle does not begin its own cycle again', () => {
    const { method } = cut([
      { ...left(0, 10), cycle: 1 },
      { ...left(4, 6), cycle: 2 },
    ]);
    expect(method.cycles.items.map(({ start }) => start / 1e6)).toEqual([0, 4]);
  });

  const lineArb = fc
    .tuple(
      fc.constantFrom('left' as const, 'right' as const),
      fc.nat(30),
      fc.integer({ min: 1, max: 12 }),
      fc.constantFrom('G', 'G', 'unmarked'),
    )
    .map(
      ([hand, start, time, kind]): Line => ({
        hand,
        start,
        end: start + time,
        ...(kind === 'unmarked' ? { kind } : {}),
      }),
    );

  it('law: every moment goes to the line that the definition says, the rows have no hole, the losses told add up', () => {
    fc.assert(
      fc.property(fc.array(lineArb, { minLength: 1, maxLength: 14 }), (lines) => {
        const { study, pieces, notes } = cut(lines);
        expect(checkStudy(study)).toEqual([]);
        for (const hand of hands) {
          const own = lines.flatMap((line, index) =>
            line.hand === hand ? [{ ...line, line: index + 2, isMarked: line.kind === undefined }] : [],
          );
          const row = pieces(hand);
          const owners = overlapOwners(own, 50);
          const found = owners.map(
            (_, moment) => row.find(({ start, end }) => start <= moment && moment < end)?.line ?? 0,
          );
          expect(found).toEqual(owners);
          for (const [index, { start, end }] of row.entries()) {
            expect(end).toBeGreaterThan(start);
            expect(row[index + 1]?.start ?? end).toBe(end);
          }
          const union = owners.filter((line) => line > 0).length;
          const marked = row.reduce((sum, { line, start, end }) => sum + (line > 0 ? end - start : 0), 0);
          expect(marked).toBe(union);
          const told = notes
            .filter(({ where }) => where.hand === hand)
            .reduce((sum, { message }) => sum + Number(/was cut by ([\d.]+) s/.exec(message)?.[1]), 0);
          expect(own.reduce((sum, { start, end }) => sum + end - start, 0) - told).toBe(union);
        }
      }),
      { seed: 31, numRuns: 500 },
    );
  });

  it('law: marked time is the union of the marked intervals to the microsecond, and no row has a hole', () => {
    const seconds = (time: number) => (time / 1e6).toFixed(6);
    const fine = fc.tuple(fc.nat(9_000_000), fc.integer({ min: 1, max: 4_000_000 }), fc.boolean());
    fc.assert(
      fc.property(fc.array(fine, { minLength: 1, maxLength: 25 }), (drawn) => {
        const lines = drawn.map(([start, time, isMarked]) => ({ start, end: start + time, isMarked }));
        const text = lines.map(
          ({ start, end, isMarked }) =>
            `right,${isMarked ? 'H' : 'unmarked'},${seconds(start)},${seconds(end)}`,
        );
        const made = csvToStudy(['hand,motion,start_s,end_s', ...text].join('\n'), options);
        const row = made.ok ? made.value.study.methods[0]?.right : undefined;
        if (row === undefined) throw new Error('the table was not read');
        const items = row.items.map((item, index) => ({
          ...item,
          end: row.items[index + 1]?.start ?? row.end,
        }));
        const marked = items.filter(({ kind }) => kind !== 'unmarked');
        const sum = marked.reduce((total, { start, end }) => total + end - start, 0);
        expect(sum).toBe(intervalUnion(lines.filter(({ isMarked }) => isMarked)));
        expect(items.every(({ start, end }) => end > start)).toBe(true);
        expect([items[0]?.start, row.end]).toEqual([
          Math.min(...lines.map(({ start }) => start)),
          Math.max(...lines.map(({ end }) => end)),
        ]);
      }),
      { seed: 33, numRuns: 300 },
    );
  });

  it('the same lines in another order of the text give the same marked time', () => {
    fc.assert(
      fc.property(fc.array(lineArb, { minLength: 1, maxLength: 10 }), (lines) => {
        const marked = (order: readonly Line[]) => {
          const { pieces } = cut(order);
          return hands.map((hand) =>
            pieces(hand)
              .flatMap(({ line, start, end }) => (line > 0 ? [end - start] : []))
              .reduce((a, b) => a + b, 0),
          );
        };
        expect(marked(lines.toReversed())).toEqual(marked(lines));
      }),
      { seed: 32, numRuns: 100 },
    );
  });
});
