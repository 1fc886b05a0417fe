import { fitText, groupNode, type SceneNode, textNode } from '../../../ground/scene/index.ts';
import { numberText } from '../../../ground/units/index.ts';
import type { Work, WorkPlace } from '../work/index.ts';
import type { PlanLook } from './plan-frame.ts';
import { areaOf, type BenchPoint } from './working-areas.ts';

/** A place whose position is known. */
export type PlacedPlace = WorkPlace & { readonly at: BenchPoint };

interface Room {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const rowHeight = 9;

/** Number, name, position, size and area of each place, in as many columns as are needed. */
export function placesTable(
  work: Work,
  look: PlanLook,
  placed: readonly PlacedPlace[],
  room: Room,
): SceneNode[] {
  const rows = Math.max(1, Math.floor((room.bottom - room.top) / rowHeight) - 1);
  const columns = Math.min(3, Math.max(1, Math.ceil(placed.length / rows)));
  const width = (room.right - room.left) / columns;
  const shown = placed.slice(0, rows * columns);
  const rest = placed.length - shown.length;
  const nodes = Array.from({ length: columns }, (_, column): SceneNode => {
    const left = room.left + column * width;
    const list = shown.slice(column * rows, (column + 1) * rows);
    const line = (cells: readonly string[], y: number, head: boolean): SceneNode =>
      groupNode(
        head ? 'head-row' : 'row',
        cells.map((cell, index) => {
          const at = left + (tableStops[index] as number) * width;
          const space =
            (((tableStops[index + 1] ?? 1) as number) - (tableStops[index] as number)) * width - 3;
          return groupNode('cell', [
            textNode(at, y, fitText(cell, space, 6.5, head ? 600 : 400), {
              size: 6.5,
              weight: head ? 600 : 400,
            }),
          ]);
        }),
      );
    return groupNode(
      'table',
      [
        line(['', 'place', 'across', 'deep', 'size', 'left hand', 'right hand'], room.top + 7, true),
        ...list.map((place, row) =>
          line(cellsOf(work, look, place), room.top + 7 + (row + 1) * rowHeight, false),
        ),
      ],
      'Places',
    );
  });
  const more =
    rest > 0
      ? [
          textNode(room.right, room.bottom + 2, `and ${rest} more places, which stand in the work file`, {
            size: 6.5,
            align: 'end',
          }),
        ]
      : [];
  return [...nodes, ...more];
}

/** Where the columns of the table begin, as shares of its width. */
const tableStops = [0, 0.05, 0.36, 0.46, 0.55, 0.7, 0.85] as const;

function cellsOf(work: Work, { reach }: PlanLook, place: PlacedPlace): readonly string[] {
  const { at, size } = place;
  const area = (hand: 'left' | 'right') => {
    const found = areaOf(place, hand, reach).smallest.area;
    return found === 'beyond' ? 'out of reach' : found;
  };
  return [
    String(work.places.indexOf(place) + 1),
    place.name,
    numberText(at.x, 0),
    numberText(at.y, 0),
    size === undefined ? 'not given' : `${numberText(size.x, 0)} × ${numberText(size.y, 0)}`,
    area('left'),
    area('right'),
  ];
}
