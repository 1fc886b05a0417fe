import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nextPlace } from './next-place.ts';
import { commonStarts, suffixArray } from './suffix-array.ts';

/** All suffixes compared with one another, letter by letter. */
function sortedSuffixes(text: readonly number[]): number[] {
  const compare = (a: number, b: number) => {
    for (let step = 0; ; step += 1) {
      const [left, right] = [text[a + step], text[b + step]];
      if (left === undefined || right === undefined) return left === right ? 0 : left === undefined ? -1 : 1;
      if (left !== right) return left - right;
    }
  };
  return text.map((_, at) => at).sort(compare);
}

function inCommon(text: readonly number[], a: number, b: number): number {
  let length = 0;
  while (text[a + length] === text[b + length] && (text[a + length] ?? 0) !== 0) length += 1;
  return length;
}

const textArb = fc.oneof(
  fc.array(fc.nat(1), { maxLength: 60 }),
  fc.array(fc.nat(3), { maxLength: 60 }),
  fc.array(fc.nat(20), { maxLength: 60 }),
  fc
    .tuple(fc.array(fc.nat(2), { minLength: 1, maxLength: 5 }), fc.nat(12))
    .map(([part, times]) => Array.from({ length: times }, () => part).flat()),
);

describe('the suffixes of a text', () => {
  it('stand in the order and have in common what a comparison of all of them says', () => {
    fc.assert(
      fc.property(textArb, (letters) => {
        const text = Int32Array.from(letters);
        const order = suffixArray(text, 21);
        expect([...order]).toEqual(sortedSuffixes(letters));
        const common = commonStarts(text, order);
        [...order].forEach((at, index) => {
          const before = index === 0 ? undefined : order[index - 1];
          expect(common[index]).toBe(before === undefined ? 0 : inCommon(letters, before, at));
        });
      }),
      { seed: 11, numRuns: 600 },
    );
  });

  it('of “banana” are a, ana, anana, banana, na, nana (the textbook case, from memory)', () => {
    const text = Int32Array.from([2, 1, 3, 1, 3, 1]);
    expect([...suffixArray(text, 4)]).toEqual([5, 3, 1, 0, 4, 2]);
  });
});

describe('the next place', () => {
  it('is what a walk through the stretch finds', () => {
    fc.assert(
      fc.property(
        fc.array(fc.nat(70), { minLength: 1, maxLength: 40 }),
        fc.nat(40),
        fc.nat(40),
        fc.nat(200),
        (values, a, b, limit) => {
          const [first, end] = [Math.min(a, b, values.length), Math.min(Math.max(a, b), values.length)];
          const inside = values.slice(first, end).filter((value) => value >= limit);
          const next = nextPlace(Int32Array.from(values));
          const least = inside.length === 0 ? -1 : Math.min(...inside);
          expect(next.atOrAfter(first, end, limit)).toBe(least);
        },
      ),
      { seed: 12, numRuns: 500 },
    );
  });
});
