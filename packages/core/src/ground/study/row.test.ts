import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { endOf, findItem, itemAt, itemsBetween, rowStart } from './row.ts';

const rowArb = fc
  .uniqueArray(fc.nat(60), { minLength: 1, maxLength: 12 })
  .map((at) => [...at].sort((a, b) => a - b))
  .map((at) => ({
    items: at.slice(0, -1).map((start, index) => ({ id: `i${index}`, start })),
    end: at.at(-1) ?? 0,
  }));
const seeded = { seed: 99, numRuns: 300 };

describe('a row', () => {
  it('covers every boundary from its start to its end exactly once', () => {
    fc.assert(
      fc.property(rowArb, (row) => {
        for (let at = 0; at < 62; at += 1) {
          const slow = row.items.filter((item, index) => item.start <= at && at < endOf(row, index));
          const found = itemAt(row, at);
          expect(slow.length).toBe(at >= rowStart(row) && at < row.end ? 1 : 0);
          expect(found?.item.id).toBe(slow[0]?.id);
        }
      }),
      seeded,
    );
  });

  it('cut to a window keeps just what lies inside it', () => {
    fc.assert(
      fc.property(rowArb, fc.nat(61), fc.nat(61), (row, from, to) => {
        const found = itemsBetween(row, from, to);
        const slow = row.items
          .map((item, index) => ({
            id: item.id,
            start: Math.max(from, item.start),
            end: Math.min(to, endOf(row, index)),
          }))
          .filter(({ start, end }) => end > start);
        expect(found.map(({ item, start, end }) => ({ id: item.id, start, end }))).toEqual(slow);
      }),
      seeded,
    );
  });

  it('finds an item by its id with the end that the next start gives it', () => {
    const row = {
      items: [
        { id: 'a', start: 3 },
        { id: 'b', start: 7 },
      ],
      end: 9,
    };
    expect(findItem(row, 'a')).toMatchObject({ start: 3, end: 7, index: 0 });
    expect(findItem(row, 'b')).toMatchObject({ start: 7, end: 9 });
    expect(findItem(row, 'c')).toBeUndefined();
    expect(rowStart({ items: [], end: 9 })).toBe(9);
  });
});
