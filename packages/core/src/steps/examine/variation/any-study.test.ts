import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import { findElements } from '../elements/index.ts';
import { readMethod } from '../reading/index.ts';
import { repeatedSequences } from '../sequences/index.ts';
import { variationOf } from './variation.ts';

/** Every number anywhere in a value. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

describe('any study that keeps the rules', () => {
  it('gives sequences, elements and variation without a number that is none', () => {
    let read = 0;
    fc.assert(
      fc.property(studyArb, fc.constantFrom('kind', 'kind-object', 'kind-object-place'), (study, by) => {
        for (const { id } of study.methods) {
          const reading = readMethod(study, id, { proposed: true });
          if (!reading.ok) continue;
          read += 1;
          const all = [
            repeatedSequences(reading.value, { by, tolerance: 1 }),
            findElements(reading.value),
            variationOf(reading.value),
          ];
          expect(numbersIn(all).every(Number.isFinite)).toBe(true);
        }
      }),
      { seed: 61, numRuns: 300 },
    );
    expect(read).toBeGreaterThan(100);
  });
});
