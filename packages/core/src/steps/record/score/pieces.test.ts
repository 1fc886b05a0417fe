import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { motionKinds } from '../../../ground/tables/index.ts';
import { narrowest, type Piece, rowPieces, runWidth } from './pieces.ts';
import type { RowTimes } from './row-times.ts';

/** Spans in microseconds, one after another from `start`. */
function timesOf(start: number, motions: readonly (readonly [span: number, kind: number])[]): RowTimes {
  const startUs = new Float64Array(motions.length + 1);
  startUs[0] = start;
  motions.forEach(([span], index) => {
    startUs[index + 1] = (startUs[index] ?? 0) + span;
  });
  return {
    count: motions.length,
    startUs,
    kind: Uint8Array.from(motions, ([, kind]) => kind),
    proposed: new Uint8Array(motions.length),
  };
}

const motions = fc.array(
  fc.tuple(
    fc.oneof(fc.integer({ min: 1, max: 900 }), fc.integer({ min: 1, max: 60_000 })),
    fc.nat({ max: motionKinds.length - 1 }),
  ),
  { minLength: 1, maxLength: 300 },
);

/** Time of each kind in the pieces. */
function kindTimes(times: RowTimes, pieces: readonly Piece[]): number[] {
  const sums = motionKinds.map(() => 0);
  for (const piece of pieces) {
    if (piece.piece === 'motion') {
      const kind = times.kind[piece.index] ?? 0;
      sums[kind] = (sums[kind] ?? 0) + piece.toUs - piece.fromUs;
    } else
      piece.kinds.forEach((kind, index) => {
        sums[kind] = (sums[kind] ?? 0) + (piece.times[index] ?? 0);
      });
  }
  return sums;
}

describe('the pieces of a row', () => {
  it('lose no time and no kind at any scale, and follow each other without a gap (seeded property)', () => {
    fc.assert(
      fc.property(
        motions,
        fc.integer({ min: 1, max: 20_000 }),
        fc.integer({ min: 0, max: 9000 }),
        (given, scale, at) => {
          const times = timesOf(at, given);
          const end = times.startUs[times.count] ?? 0;
          const pieces = rowPieces(times, { fromUs: at, toUs: end }, scale);
          const sums = motionKinds.map(() => 0);
          for (const [span, kind] of given) sums[kind] = (sums[kind] ?? 0) + span;
          expect(kindTimes(times, pieces)).toEqual(sums);
          expect(pieces[0]?.fromUs).toBe(at);
          expect(pieces.at(-1)?.toUs).toBe(end);
          for (const [index, piece] of pieces.entries()) {
            expect(piece.fromUs).toBe(pieces[index - 1]?.toUs ?? at);
          }
        },
      ),
      { seed: 4, numRuns: 300 },
    );
  });

  it('are motions from 1.5 px on, and runs of less than 7.5 px below, 4.5 px where at most four fall on a pixel', () => {
    fc.assert(
      fc.property(motions, fc.integer({ min: 1, max: 20_000 }), (given, scale) => {
        const times = timesOf(0, given);
        const crowded = given.length / ((times.startUs[times.count] ?? 0) / scale) > 4;
        for (const piece of rowPieces(times, { fromUs: 0, toUs: 1e9 }, scale)) {
          const width = (piece.toUs - piece.fromUs) / scale;
          if (piece.piece === 'motion') expect(width).toBeGreaterThanOrEqual(narrowest);
          else expect(width).toBeLessThan((crowded ? 2 : 1) * runWidth + narrowest);
        }
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('are only those that touch the view, and the same ones wherever the view begins (seeded property)', () => {
    fc.assert(
      fc.property(motions, fc.integer({ min: 1, max: 20_000 }), fc.nat(), fc.nat(), (given, scale, a, b) => {
        const times = timesOf(0, given);
        const end = times.startUs[times.count] ?? 0;
        const fromUs = a % end;
        const view = { fromUs, toUs: fromUs + 1 + (b % (end - fromUs)) };
        const all = rowPieces(times, { fromUs: 0, toUs: end }, scale);
        // A run at the right side may be cut there: what comes after it cannot be seen.
        const wanted = all
          .filter((piece) => piece.toUs > view.fromUs && piece.fromUs < view.toUs)
          .map(({ fromUs: start }) => start);
        const found = rowPieces(times, view, scale);
        expect(found.map((piece) => piece.fromUs)).toEqual(wanted);
        expect(found.at(-1)?.toUs).toBeGreaterThanOrEqual(view.toUs);
      }),
      { seed: 6, numRuns: 300 },
    );
  });

  it('an empty row has none', () => {
    expect(rowPieces(timesOf(0, []), { fromUs: 0, toUs: 10 }, 1)).toEqual([]);
  });
});
