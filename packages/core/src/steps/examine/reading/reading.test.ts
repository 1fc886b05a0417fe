import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../../../../tests/helpers/plain-study.ts';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import {
  isConfirmedCycle,
  isProposed,
  type Method,
  type Motion,
  type Study,
} from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import { cycleWords, type Piece, type ReadingChoice, readMethod, segmentsOf } from './index.ts';

const row = (
  hand: string,
  motions: readonly (readonly [number, MotionKind, Motion['said']?])[],
  end: number,
) => ({
  items: motions.map(
    ([start, kind, said], index): Motion => ({ id: `${hand}${index}`, start, kind, said: said ?? 'marked' }),
  ),
  end,
});

/** Left 0–10 s: TE, G, hold; right begins at 1 s and ends at 9 s; cycles at 0, 4 (set aside) and 6 s. */
function study(change: Partial<Method> = {}): Study {
  const base = plainStudy();
  const [method] = base.methods;
  if (method === undefined) throw new Error('no method');
  const made: Method = {
    ...method,
    left: row(
      'l',
      [
        [0, 'TE'],
        [3_000_000, 'G'],
        [5_000_000, 'H'],
      ],
      10_000_000,
    ),
    right: row(
      'r',
      [
        [1_000_000, 'A'],
        [5_000_000, 'P', 'proposed'],
        [8_000_000, 'RL'],
      ],
      9_000_000,
    ),
    cycles: {
      items: [
        { id: 'a', start: 0 },
        { id: 'b', start: 4_000_000, setAside: 'spoken to' },
        { id: 'c', start: 6_000_000 },
      ],
      end: 10_000_000,
    },
    ...change,
  };
  return { ...base, methods: [made] };
}

function read(from: Study, choice?: ReadingChoice) {
  const result = readMethod(from, 'm', choice);
  return result.ok ? result.value : result.error.code;
}

const told = (from: Study, choice?: ReadingChoice) => {
  const reading = read(from, choice);
  if (typeof reading === 'string') return reading;
  return reading.cycles.map(({ number, left, right }) => ({
    number,
    left: left.map(({ kind, duration }) => [kind, duration / 1e6]),
    right: right.map(({ kind, duration }) => [kind, duration / 1e6]),
  }));
};

describe('reading a method cycle by cycle', () => {
  const first = {
    number: 1,
    left: [
      ['TE', 3],
      ['G', 1],
    ],
    right: [
      ['unmarked', 1],
      ['A', 3],
    ],
  };
  const codes = (from: Study, choice?: ReadingChoice) => {
    const reading = read(from, choice);
    return typeof reading === 'string' ? reading : reading.notes.map(({ code }) => code);
  };

  it('cuts motions at the cycles, fills what a row does not reach, and leaves cycles with proposals out', () => {
    expect(told(study())).toEqual([first]);
    expect(codes(study())).toEqual(['examine/not-all-marked', 'examine/cycles-left-out']);
    expect(told(study(), { cycles: [1, 3] }), 'also where it is asked for by its number').toEqual([first]);
    expect(told(study(), { cycles: [3] })).toBe('examine/only-proposals');
  });

  it('reads proposals where they are asked for, and says so', () => {
    const reading = read(study(), { proposed: true });
    if (typeof reading === 'string') throw new Error(reading);
    expect(reading.cycles.map(({ number }) => number)).toEqual([1, 3]);
    expect(reading.notes.at(-1)?.message).toBe('With proposals that nobody has confirmed: 1 of 2 cycles.');
  });

  it('a cycle whose own mark or whose end is only proposed is left out', () => {
    const cycles = (items: Method['cycles']['items']) => study({ cycles: { items, end: 4_000_000 } });
    const proposed = { said: 'proposed', confidence: 0.9 } as const;
    expect(codes(cycles([{ id: 'a', start: 0, ...proposed }]))).toBe('examine/only-proposals');
    const ended = cycles([
      { id: 'a', start: 0 },
      { id: 'b', start: 2_000_000 },
      { id: 'c', start: 3_000_000, ...proposed },
    ]);
    expect((told(ended) as { number: number }[]).map(({ number }) => number)).toEqual([1]);
  });

  it('a cycle that is set aside counts when it is asked for, and proposals when they are', () => {
    expect(told(study(), { cycles: [2], proposed: true })).toEqual([
      {
        number: 2,
        left: [
          ['G', 1],
          ['H', 1],
        ],
        right: [
          ['A', 1],
          ['P', 1],
        ],
      },
    ]);
  });

  it('without cycles the whole marked stretch is one, numbered 0', () => {
    const whole = study({ cycles: { items: [], end: 0 } });
    expect(told(whole)).toEqual([
      {
        number: 0,
        left: [
          ['TE', 3],
          ['G', 2],
          ['H', 5],
        ],
        right: [
          ['unmarked', 1],
          ['A', 4],
          ['unmarked', 3],
          ['RL', 1],
          ['unmarked', 1],
        ],
      },
    ]);
    expect(told(whole, { cycles: [1] })).toBe('record/no-cycle');
  });

  it('says what is missing', () => {
    expect(readMethod(study(), 'other')).toMatchObject({ ok: false, error: { code: 'record/no-method' } });
    expect(told(study(), { cycles: [1, 9] })).toBe('record/no-cycle');
    expect(told(plainStudy())).toBe('record/nothing-marked');
    const aside = { items: [{ id: 'a', start: 0, setAside: 'a visitor' }], end: 10_000_000 };
    expect(told(study({ cycles: aside }))).toBe('examine/no-cycle-left');
  });

  it.each([
    [[3], 'cycle 3'],
    [[4, 1, 2, 3, 7], 'cycles 1–4, 7'],
    [[1, 2], 'cycles 1, 2'],
    [[0], 'the whole record'],
    [
      Array.from({ length: 20 }, (_, k) => 2 * k + 1),
      'cycles 1, 3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23 and 8 more',
    ],
  ])('%j in words', (numbers, words) => expect(cycleWords(numbers)).toBe(words));
});

/** The study as it would be if nobody had proposed anything: cycles with proposals set aside, proposed motions unmarked. */
function cutToConfirmed(from: Study, id: string): Study {
  const plain = (motion: Motion): Motion =>
    isProposed(motion) ? { ...motion, kind: 'unmarked', said: 'marked' } : motion;
  const methods = from.methods.map((method): Method => {
    if (method.id !== id) return method;
    const items = method.cycles.items.map((cycle, index) =>
      isConfirmedCycle(method, index) ? cycle : { ...cycle, setAside: 'proposed' },
    );
    return {
      ...method,
      left: { ...method.left, items: method.left.items.map(plain) },
      right: { ...method.right, items: method.right.items.map(plain) },
      cycles: { ...method.cycles, items },
    };
  });
  return { ...from, methods };
}

describe('laws on random studies', () => {
  it('a study with proposals reads as the same study cut to what is confirmed', () => {
    let read = 0;
    fc.assert(
      fc.property(studyArb, fc.constantFrom('filmed', 'plain'), (any, id) => {
        const plain = (study: Study) => {
          const result = readMethod(study, id);
          if (!result.ok) return undefined;
          read += 1;
          const times = (pieces: readonly Piece[]) => pieces.map(({ kind, from, to }) => [kind, from, to]);
          return result.value.cycles.map(({ number, left, right }) => [number, times(left), times(right)]);
        };
        expect(plain(any)).toEqual(plain(cutToConfirmed(any, id)));
      }),
      { seed: 33, numRuns: 150 },
    );
    expect(read).toBeGreaterThan(50);
  });

  it('pieces and segments fill every cycle without a gap, in boundaries and in real time', () => {
    fc.assert(
      fc.property(studyArb, fc.constantFrom('filmed', 'plain'), fc.boolean(), (any, id, proposed) => {
        const result = readMethod(any, id, { proposed });
        if (!result.ok) {
          expect(result.error.message).not.toMatch(/\{\w+\}/);
          return;
        }
        for (const cycle of result.value.cycles) {
          for (const parts of [cycle.left, cycle.right, segmentsOf(cycle)]) {
            expect(parts[0]?.from).toBe(cycle.from);
            expect(parts.at(-1)?.to).toBe(cycle.to);
            parts.forEach((part, index) => {
              if (index > 0) expect(part.from).toBe(parts[index - 1]?.to);
              expect(part.duration).toBe(result.value.clock.span(part.from, part.to));
            });
            expect(parts.reduce((sum, part) => sum + part.duration, 0)).toBe(cycle.duration);
          }
        }
      }),
      { seed: 31, numRuns: 300 },
    );
  });
});
