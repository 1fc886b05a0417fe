import { type DecompositionRow, decompositionPicture, pictureSteps, proofOf } from '@evenhand/core/evaluate';
import type { Method, Motion, Study } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../../tests/helpers/plain-study.ts';
import { nextPlace, piecesOfRow, stepAreas, tellingSide } from './row-frames.ts';

type Span = readonly [start: number, kind: Motion['kind'], object?: string];

const row = (hand: string, spans: readonly Span[], end: number) => ({
  items: spans.map(
    ([start, kind, object], index): Motion => ({
      id: `${hand}${index}`,
      start: start * 1e6,
      kind,
      said: 'marked',
      ...(object === undefined ? {} : { object }),
    }),
  ),
  end: end * 1e6,
});

/** Two cycles of 4 s and of 3 s; the ring is written in two ways and means one thing. */
function study(): Study {
  const base = plainStudy();
  const [first] = base.methods;
  if (first === undefined) throw new Error('no method');
  const method = (
    id: string,
    left: readonly Span[],
    right: readonly Span[],
    starts: readonly number[],
    end: number,
  ): Method => ({
    ...first,
    id,
    name: id,
    left: row('l', left, end),
    right: row('r', right, end),
    cycles: {
      items: starts.map((start, index) => ({ id: `c${index}`, start: start * 1e6 })),
      end: end * 1e6,
    },
  });
  const old = method(
    'old',
    [
      [0, 'TE', 'ring'],
      [1, 'H'],
      [4, 'TE', 'Ring '],
      [5, 'H'],
    ],
    [
      [0, 'UD'],
      [1, 'G', 'body'],
      [4, 'G', 'body'],
    ],
    [0, 4],
    8,
  );
  const made = method(
    'new',
    [
      [0, 'TE', 'ring'],
      [3, 'TE', 'ring'],
    ],
    [
      [0, 'G', 'body'],
      [3, 'A', 'body'],
    ],
    [0, 3],
    6,
  );
  return { ...base, methods: [old, made] };
}

function proof() {
  const found = proofOf(study(), { before: 'old', after: 'new' });
  if (!found.ok) throw new Error(found.error.message);
  return found.value;
}

describe('the frames of a row of the decomposition', () => {
  it('finds every place of a motion in the order of the record, however its object is written', () => {
    const found = proof();
    const ring = found.decomposition.rows.find(({ kind }) => kind === 'TE');
    if (ring === undefined) throw new Error('the transport should be a row');
    const places = piecesOfRow(found, ring, 'before').map(({ cycle, from, to }) => [
      cycle,
      from / 1e6,
      to / 1e6,
    ]);
    expect(places).toEqual([
      [0, 0, 1],
      [1, 4, 5],
    ]);
    expect(piecesOfRow(found, ring, 'before')).toHaveLength(ring.before.pieces.length);
  });

  it('begins in the cycle on screen, goes on to the next place and comes round', () => {
    const found = proof();
    const ring = found.decomposition.rows.find(({ kind }) => kind === 'TE');
    const pieces = ring === undefined ? [] : piecesOfRow(found, ring, 'before');
    expect([nextPlace(pieces, 1, undefined), nextPlace(pieces, 7, undefined)]).toEqual([1, 0]);
    expect([nextPlace(pieces, 1, 0), nextPlace(pieces, 1, 1)]).toEqual([1, 0]);
    expect(nextPlace([], 0, undefined)).toBe(-1);
  });

  it('shows what is gone in the old method and what is new in the new one', () => {
    const side = (before: number, after: number, saved: number) =>
      tellingSide({ before: { count: before }, after: { count: after }, saved } as DecompositionRow);
    expect([side(2, 0, 1), side(0, 1, -1), side(1, 1, 1), side(1, 1, -1)]).toEqual([
      'before',
      'after',
      'before',
      'after',
    ]);
  });

  it('has a place for each step of the picture, one below the other', () => {
    const { decomposition } = proof();
    const names = { before: 'old', after: 'new' };
    const scene = decompositionPicture(decomposition, { width: 400, unit: 'seconds', names, most: 3 });
    const areas = stepAreas(scene);
    expect(areas).toHaveLength(pictureSteps(decomposition, 3).length);
    for (const [index, { top, height }] of areas.entries()) {
      expect(height).toBeGreaterThan(0);
      expect(top).toBeGreaterThanOrEqual(
        (areas[index - 1]?.top ?? 0) + (areas[index - 1]?.height ?? 0) - 1e-9,
      );
      expect(top + height).toBeLessThan(scene.height);
    }
  });
});
