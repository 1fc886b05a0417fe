import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../../../../tests/helpers/plain-study.ts';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import type { Method, Motion, Study } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import { cycleWords, type ReadingChoice, readMethod, segmentsOf } from './index.ts';

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
  it('cuts motions at the cycles, fills what a row does not reach, and leaves proposals out', () => {
    expect(told(study())).toEqual([
      {
        number: 1,
        left: [
          ['TE', 3],
          ['G', 1],
        ],
        right: [
          ['unmarked', 1],
          ['A', 3],
        ],
      },
      {
        number: 3,
        left: [['H', 4]],
        right: [
          ['unmarked', 2],
          ['RL', 1],
          ['unmarked', 1],
        ],
      },
    ]);
    const reading = read(study());
    expect(typeof reading === 'string' ? [] : reading.notes.map(({ code }) => code)).toEqual([
      'examine/not-all-marked',
      'examine/proposals-left-out',
    ]);
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

describe('laws on random studies', () => {
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
