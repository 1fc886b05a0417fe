import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CycleText, tenth, twoHandStudy } from '../../../../../../tests/helpers/two-hand-study.ts';
import type { ElementMark, Study } from '../../../ground/study/index.ts';
import { type MethodReading, type ReadingChoice, readMethod } from '../reading/index.ts';
import { elementPieces, elementTraces, findElements } from './find-elements.ts';

function readingOf(study: Study, choice: ReadingChoice = {}): MethodReading {
  const read = readMethod(study, 'm', choice);
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
}

const right = (...rows: readonly string[]): CycleText[] => rows.map((row) => ({ left: 'UD 1', right: row }));
/** Marks at tenths of a second. */
const mark = (name: string, at: number, hand: 'left' | 'right' = 'right'): ElementMark => ({
  id: name,
  name,
  hand,
  at: at * tenth,
});
const model = 'TE ring 2, G ring 1, TL ring 3, P ring 2, A ring 4, RL ring 1, TE nut 3, G nut 1, A nut 5';
const marks = [mark('fetch', 0), mark('fit', 6), mark('nut', 13)];

function timesOf(cycles: readonly CycleText[], list = marks, choice: ReadingChoice = {}) {
  const found = findElements(readingOf(twoHandStudy(cycles), choice), list);
  return {
    times: found.elements.map(({ spans }) =>
      spans.map(({ time }) => (time === undefined ? undefined : time / tenth)),
    ),
    status: found.elements.map(({ breaks }) => breaks.map((item) => item.status)),
    codes: found.findings.map(({ code, message }) => [code, message] as const),
    found,
  };
}
const codesOf = ({ codes }: ReturnType<typeof timesOf>) => codes.map(([code]) => code);

describe('elements named in one cycle are found in the others', () => {
  it('by the motions that begin them, whatever is more or fewer elsewhere (worked out by hand)', () => {
    const { times, status, codes } = timesOf(
      right(
        model,
        // One fumble more in "fetch" (2 + 1 + 1 + 2 + 1 + 3), no release in "fit", a wait at the end.
        'TE ring 2, G ring 1, RL ring 1, TE ring 2, G ring 1, TL ring 3, P ring 2, A ring 4, TE nut 3, G nut 1, A nut 5, UD 2',
      ),
    );
    expect(times).toEqual([
      [6, 10],
      [7, 6],
      [9, 11],
    ]);
    expect(status.flat()).toEqual(['start', 'start', 'found', 'found', 'found', 'found']);
    expect(codes).toEqual([]);
  });

  it('between its neighbours when the motion itself is missing, and not at all when they do not meet', () => {
    const result = timesOf(
      right(
        model,
        'TE ring 2, G ring 1, TL ring 3, A ring 4, RL ring 1, TE nut 3, G nut 1, A nut 5',
        'TE ring 2, G ring 1, TL ring 3, I ring 2, A ring 4, RL ring 1, TE nut 3, G nut 1, A nut 5',
      ),
    );
    expect(result.times).toEqual([
      [6, 6, undefined],
      [7, 5, undefined],
      [9, 9, 9],
    ]);
    expect(result.status[1]).toEqual(['found', 'between', 'missing']);
    expect(codesOf(result)).toEqual(['examine/element-between', 'examine/element-missing']);
    expect(result.codes[0]?.[1]).toContain('In cycle 2 the motion of the right hand');
    const around = result.found.elements[1]?.breaks[2]?.around?.map((piece) => piece?.kind);
    expect(around).toEqual(['TL', 'A']);
    expect(result.found.elements[1]?.sample?.n).toBe(2);
  });

  it('between its neighbours also when the motion before it is missing too, but not when the whole element is', () => {
    const three = 'TE ring 2, G ring 1, TL ring 3, P ring 2, A ring 4, RL ring 1';
    const list = [mark('fetch', 0), mark('fit', 6), mark('leave', 12)];
    const short = 'TE ring 2, G ring 1, A ring 4, RL ring 1';
    const { times, status } = timesOf(right(three, short, 'TE ring 2, G ring 1, TL ring 3, RL ring 1'), list);
    expect(status[1]).toEqual(['found', 'between', 'missing']);
    expect(times).toEqual([
      [6, 3, undefined],
      [6, 4, undefined],
      [1, 1, 1],
    ]);
  });

  it('with another object the same motion is taken and it is said', () => {
    const result = timesOf(right(model, model.replace('TE nut', 'TE bolt').replace('G nut', 'G bolt')));
    expect(result.status[2]).toEqual(['found', 'similar']);
    expect(codesOf(result)).toEqual(['examine/element-similar']);
  });

  it('between two equal motions the one at the more similar part of the cycle', () => {
    const rows = right('TE 2, G 2, TE 2, G 2, TE 2, G 2', 'TE 2, G 2, H 4, TE 2, G 2');
    const result = timesOf(rows, [mark('first', 0), mark('last', 8)]);
    expect(result.times).toEqual([
      [8, 8],
      [4, 4],
    ]);
  });

  it('marks of both hands share one line of time; where their order differs the times beside them are not known', () => {
    const cycles = [
      { left: 'TE 2, G 3, TL 5', right: 'TE 4, G 2, TL 4' },
      { left: 'TE 5, G 1, TL 4', right: 'TE 4, G 2, TL 4' },
    ];
    const result = timesOf(cycles, [mark('a', 0, 'left'), mark('b', 2, 'left'), mark('c', 4), mark('d', 6)]);
    expect(result.times).toEqual([
      [2, undefined],
      [2, undefined],
      [2, undefined],
      [4, 4],
    ]);
    expect(codesOf(result)).toEqual(['examine/element-order', 'examine/element-order']);
  });

  it('the stretch before the first mark is shown as such, so that the cycle is covered', () => {
    const { found, times } = timesOf(right(model, model), [mark('fit', 6)]);
    expect(found.elements.map(({ name, mark: own }) => [name, own === undefined])).toEqual([
      ['before the first element', true],
      ['fit', false],
    ]);
    expect(times).toEqual([
      [6, 6],
      [16, 16],
    ]);
  });

  it('the model cycle need not count itself', () => {
    const study = twoHandStudy(right(model, model, model));
    const found = findElements(readingOf(study, { cycles: [2, 3] }), marks);
    expect(found.model).toBe(1);
    expect(found.elements[0]?.spans.map(({ time }) => time)).toEqual([6 * tenth, 6 * tenth]);
  });

  it('reads the elements of the method when none are given, and none is no fault', () => {
    const study = twoHandStudy(right(model, model));
    expect(findElements(readingOf(study))).toMatchObject({ model: undefined, elements: [], findings: [] });
    const [method] = study.methods;
    if (method === undefined) throw new Error('no method');
    const named = { ...study, methods: [{ ...method, elements: marks }] };
    expect(findElements(readingOf(named)).elements.map(({ name }) => name)).toEqual(['fetch', 'fit', 'nut']);
  });

  it('traces and motions of an element are those of its stretch', () => {
    const reading = readingOf(twoHandStudy(right(model, model)));
    const [fetch] = findElements(reading, marks).elements;
    if (fetch === undefined) throw new Error('no element');
    expect(elementTraces(fetch)[1]).toEqual({ cycle: 1, hand: 'both', from: 22 * tenth, to: 28 * tenth });
    const span = fetch.spans[1];
    const pieces = span === undefined ? [] : elementPieces(reading, span);
    expect(pieces.map(({ kind }) => kind)).toEqual(['UD', 'unmarked', 'TE', 'G', 'TL']);
  });
});

describe('marks that cannot be used are named', () => {
  const cycles = right(model, model);

  it.each([
    ['in no cycle', mark('late', 1000), 'examine/element-no-cycle'],
    ['in another cycle', mark('second', 30), 'examine/element-other-cycle'],
    ['where nothing is marked', mark('open', 5, 'left'), 'examine/element-not-marked'],
    ['where another begins', { ...mark('twin', 6), id: 'twin' }, 'examine/element-same-start'],
  ] as const)('%s', (_, stray, code) => {
    const result = timesOf(cycles, [...marks, stray]);
    expect(codesOf(result)).toEqual([code]);
    expect(result.codes[0]?.[1]).toContain(`“${stray.name}”`);
    expect(result.times).toEqual(timesOf(cycles).times);
  });

  it('inside a motion: taken from its start, and said', () => {
    const result = timesOf(cycles, [mark('fetch', 0), mark('fit', 7), mark('nut', 13)]);
    expect(codesOf(result)).toEqual(['examine/element-inside-motion']);
    expect(result.codes[0]?.[1]).toContain('(P ring) in cycle 1');
    expect(result.times).toEqual(timesOf(cycles).times);
  });
});

/** Cycles made of three parts whose first motions are always there; the others may be missing, and strange ones come in. */
const parts = [
  ['TE ring', 'G ring', 'TL ring'],
  ['P ring', 'A ring', 'RL ring'],
  ['TE nut', 'G nut', 'A nut'],
] as const;
const lengthArb = fc.integer({ min: 1, max: 9 });
const partArb = (motions: readonly string[]) =>
  fc
    .tuple(
      fc.array(fc.tuple(fc.boolean(), fc.nat(3), lengthArb, lengthArb), { minLength: 3, maxLength: 3 }),
      fc.constantFrom('I gauge', 'U file'),
    )
    .map(([choices, strange]) =>
      motions.flatMap((motion, index) => {
        const [absent, more, length, extra] = choices[index] ?? [false, 1, 1, 1];
        const own = index > 0 && absent ? [] : [[motion, length] as const];
        return more === 0 ? [...own, [strange, extra] as const] : own;
      }),
    );
const cycleArb = fc.tuple(partArb(parts[0]), partArb(parts[1]), partArb(parts[2]));
const plain = parts.map((part) => part.map((motion) => [motion, 2] as const));
type Parts = readonly (readonly (readonly [string, number])[])[];
const rowOf = (cycle: Parts) =>
  cycle
    .flat()
    .map(([motion, length]) => `${motion} ${length}`)
    .join(', ');
const known = (cycle: Parts) => cycle.map((part) => part.reduce((sum, [, length]) => sum + length, 0));
const plainMarks = [mark('a', 0), mark('b', 6), mark('c', 12)];

describe('laws of elements', () => {
  it('in made cycles every element has the length it was made with', () => {
    fc.assert(
      fc.property(fc.array(cycleArb, { minLength: 1, maxLength: 6 }), (cycles) => {
        const all: Parts[] = [plain, ...cycles];
        const { times } = timesOf(right(...all.map(rowOf)), plainMarks);
        expect(times).toEqual([0, 1, 2].map((index) => all.map((cycle) => known(cycle)[index])));
      }),
      { seed: 41, numRuns: 300 },
    );
  });

  it('their times never add up to more than the cycle, and to all of it where all were found', () => {
    const anyRow = fc
      .array(
        fc.tuple(
          fc.constantFrom('TE', 'G', 'TL', '–'),
          fc.constantFrom('ring', 'nut'),
          fc.integer({ min: 1, max: 5 }),
        ),
        { minLength: 1, maxLength: 10 },
      )
      .map((list) => `A 1, ${list.map((words) => words.join(' ')).join(', ')}`);
    const cyclesArb = fc.array(fc.record({ left: anyRow, right: anyRow }), { minLength: 1, maxLength: 5 });
    const marksArb = fc.array(fc.tuple(fc.nat(40), fc.boolean()), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(cyclesArb, marksArb, (cycles, places) => {
        const reading = readingOf(twoHandStudy(cycles));
        const list = places.map(([at, left], index) => mark(`e${index}`, at, left ? 'left' : 'right'));
        const { elements } = findElements(reading, list);
        for (const cycle of reading.cycles) {
          const times = elements.map(({ spans }) => spans[cycle.position]?.time);
          const sum = times.reduce<number>((all, time) => all + (time ?? 0), 0);
          expect(sum).toBeLessThanOrEqual(cycle.duration);
          for (const time of times) expect(time ?? 0).toBeGreaterThanOrEqual(0);
          if (elements.length > 0 && times.every((time) => time !== undefined)) {
            expect(sum).toBe(cycle.duration);
          }
        }
      }),
      { seed: 42, numRuns: 300 },
    );
  });

  it('the order of the cycles does not change what is said of an element', () => {
    fc.assert(
      fc.property(fc.array(cycleArb, { minLength: 2, maxLength: 6 }), (cycles) => {
        const samples = (list: readonly Parts[]) =>
          timesOf(right(...list.map(rowOf)), plainMarks).found.elements.map(({ sample }) => sample);
        expect(samples([plain, ...[...cycles].reverse()])).toEqual(samples([plain, ...cycles]));
      }),
      { seed: 43, numRuns: 100 },
    );
  });
});
