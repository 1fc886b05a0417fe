import type { SceneNode } from '../../../ground/scene/index.ts';
import { hands } from '../../../ground/study/index.ts';
import { motionFacts } from '../../../ground/tables/index.ts';
import type { ScoreAreas } from './areas.ts';
import { heightOfPlace } from './hand-height.ts';
import { box, pale } from './marks.ts';
import { type Piece, rowPieces } from './pieces.ts';
import { type RowTimes, rowTimes } from './row-times.ts';
import { type TimeScale, timeScale } from './scale.ts';
import type { ScoreGround } from './score-input.ts';

/** The scale of the overview: the whole film over the same width. */
export function overviewScale(
  ground: Pick<ScoreGround, 'whole' | 'pixelRatio'>,
  areas: ScoreAreas,
): TimeScale {
  return timeScale(ground.whole, areas.overview, ground.pixelRatio);
}

/** The whole film in small: both hands' skylines about a middle line, and the marks of the cycles. */
export function overviewNodes(ground: ScoreGround, areas: ScoreAreas): SceneNode[] {
  const { overview } = areas;
  const scale = overviewScale(ground, areas);
  const half = Math.floor((overview.height - 1) / 2);
  const middle = overview.y + half;
  const nodes: SceneNode[] = [];
  for (const hand of hands) {
    const times = rowTimes(ground.method[hand], ground.clock);
    const top =
      hand === 'left'
        ? (from: number, high: number) => middle - from - high
        : (from: number) => middle + 1 + from;
    for (const piece of rowPieces(times, ground.whole, scale.usPerPixel)) {
      column(nodes, scale, piece, times, half - 2, top);
    }
  }
  nodes.push(box(overview.x, middle, overview.width, 1, { ink: 'rule' }));
  const { items } = ground.method.cycles;
  // Marks that stand closer than this would be one grey band.
  if (overview.width / Math.max(1, items.length) < 4) return nodes;
  for (const cycle of items) {
    const x = scale.x(ground.clock.timeOf(cycle.start));
    nodes.push(box(x, overview.y, scale.hair, overview.height, { ink: 'soft', opacity: 0.6 }));
  }
  return nodes;
}

function column(
  nodes: SceneNode[],
  scale: TimeScale,
  piece: Piece,
  row: RowTimes,
  room: number,
  top: (from: number, high: number) => number,
): void {
  const x = scale.cutX(piece.fromUs);
  const width = Math.max(scale.hair, scale.cutX(piece.toUs) - x);
  const { kinds, times, proposed } =
    piece.piece === 'run'
      ? piece
      : {
          kinds: [row.kind[piece.index] ?? 0],
          times: [piece.toUs - piece.fromUs],
          proposed: [row.proposed[piece.index] === 1],
        };
  let exact = 0;
  let from = 0;
  kinds.forEach((place, index) => {
    const facts = motionFacts[place];
    if (facts === undefined || facts.kind === 'unmarked') return;
    const share = (times[index] ?? 0) / (piece.toUs - piece.fromUs);
    exact += room * share * (heightOfPlace[place] ?? 1);
    const to = Math.round(exact / scale.hair) * scale.hair;
    const ink = { colour: facts.colour };
    const fill = proposed[index] === true ? { ink, opacity: pale } : { ink };
    if (to > from) nodes.push(box(x, top(from, to - from), width, to - from, fill));
    from = to;
  });
}
