import { type DecompositionRow, objectKey, type Proof } from '@evenhand/core/evaluate';
import type { Piece } from '@evenhand/core/examine';
import type { Scene, SceneNode } from '@evenhand/core/ground/scene';
import type { Side } from './film-pair.ts';

/** Where a motion of the decomposition can be seen in one of the methods, in the order of the record. */
export function piecesOfRow(
  proof: Pick<Proof, Side>,
  row: Pick<DecompositionRow, 'kind' | 'object'>,
  side: Side,
): readonly Piece[] {
  const key = objectKey(row.object);
  return proof[side].cycles.flatMap(({ left, right }) =>
    [...left, ...right]
      .filter(({ kind, object }) => kind === row.kind && objectKey(object) === key)
      .sort((a, b) => a.from - b.from),
  );
}

/** The side that shows best what happened to a motion: where it was removed or saved the old method, else the new one. */
export function tellingSide({ before, after, saved }: DecompositionRow): Side {
  if (before.count === 0) return 'after';
  if (after.count === 0) return 'before';
  return saved >= 0 ? 'before' : 'after';
}

/**
 * Which of several places is shown when a motion is asked for: the first in the cycle that is on screen, and on asking
 * again the next one.
 * @returns a position in `pieces`; −1 where there is none
 */
export function nextPlace(pieces: readonly Piece[], shownCycle: number, last: number | undefined): number {
  if (pieces.length === 0) return -1;
  if (last !== undefined) return (last + 1) % pieces.length;
  return Math.max(
    0,
    pieces.findIndex(({ cycle }) => cycle === shownCycle),
  );
}

/** Top and height of each step of the decomposition as it is drawn: the rows with a bar, without the first and the last. */
export function stepAreas(scene: Scene): readonly { readonly top: number; readonly height: number }[] {
  const bars = rowsOf(scene.nodes).flatMap((row) => barOf(row) ?? []);
  return bars.slice(1, -1).map(({ y, height }) => ({ top: y - height / 3, height: height / 0.6 }));
}

function rowsOf(nodes: readonly SceneNode[]): readonly SceneNode[] {
  return nodes.flatMap((node) =>
    node.kind !== 'group' ? [] : node.role === 'row' ? [node] : rowsOf(node.nodes),
  );
}

function barOf(row: SceneNode): { readonly y: number; readonly height: number } | undefined {
  if (row.kind !== 'group') return undefined;
  const layer = row.nodes.find((node) => node.kind === 'group' && node.role === 'layer');
  if (layer?.kind !== 'group') return undefined;
  const bar = layer.nodes.find((node) => node.kind === 'rect');
  return bar?.kind === 'rect' ? bar : undefined;
}
