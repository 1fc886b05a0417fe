import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import {
  fitText,
  groupNode,
  lineNode,
  type PathNode,
  type RectNode,
  type Scene,
  type SceneNode,
  type Stroke,
  textBox,
  textNode,
  wrapText,
} from '../../../ground/scene/index.ts';
import { sources } from '../../../ground/tables/index.ts';
import { numberText } from '../../../ground/units/index.ts';
import type { Work } from '../work/index.ts';
import { cornersOf, roomOf } from './bench-spots.ts';
import { peopleRanges, personText } from './people.ts';
import { dimensions } from './plan-dimensions.ts';
import {
  benchSize,
  clippedPath,
  coordinate,
  type PlanFrame,
  type PlanLook,
  planFrame,
  TextRoom,
} from './plan-frame.ts';
import { type PlacedPlace, placesTable } from './plan-table.ts';
import { titleBlock, titleBlockLeft } from './title-block.ts';
import { handPaths, handTravel, positionsOf, travelOver } from './trips.ts';
import { areaOutline, armReach, type BenchPoint } from './working-areas.ts';

/**
 * The bench from above, to scale on a sheet for the workshop that builds it: places with their numbers and names, where they
 * are in millimetres, the areas of both hands for the smallest person of the choice, and the ways of the hands.
 */
export function benchPlan(work: Work, look: PlanLook): Result<Scene, Finding> {
  const frame = planFrame(work, look);
  if (frame === undefined) {
    const { width, depth } = look.bench ?? benchSize(work);
    return fail(
      finding(
        'develop/plan-too-large',
        {},
        { scale: look.scale, width, depth, paper: look.paper.toUpperCase() },
      ),
    );
  }
  const placed = work.places.filter((place): place is PlacedPlace => place.at !== undefined);
  const off = placed.filter(
    ({ at }) => Math.abs(at.x) > frame.bench.width / 2 || at.y < 0 || at.y > frame.bench.depth,
  );
  const inside = placed.filter((place) => !off.includes(place));
  return ok({
    ...frame.page,
    title: `Plan of the bench: ${work.title}`,
    description: `Scale 1:${look.scale}. ${placed.map(({ name, at }) => `${name} at ${numberText(at.x, 0)}, ${numberText(at.y, 0)} mm`).join('; ')}.`,
    nodes: [
      ...heading(work, look, frame),
      groupNode(
        'layer',
        [
          rect(frame.box.left, frame.box.top, frame.box.right, frame.box.bottom, { ink: 'ink', width: 1 }),
          ...areas(look, frame),
          ...ways(work, look, frame),
          ...placesDrawn(work, inside, frame),
          ...dimensions(
            frame,
            inside.map(({ at }) => at),
          ),
        ],
        'Plan',
      ),
      ...foot(work, look, frame, placed, off),
    ],
  });
}

function heading(work: Work, look: PlanLook, frame: PlanFrame): SceneNode[] {
  const { left, right } = frame;
  const { scale, titleBlock: block } = look;
  const top = 12 * 2.835;
  const demo = work.demo === true ? 'Invented, for demonstration. ' : '';
  const about = `${demo}Scale 1:${scale} when printed at full size. Millimetres: across from the middle, deep from the near edge; the operator is below.`;
  const [end, name, size, step] =
    block === undefined
      ? [right, `Plan of the bench: ${work.title}`, 7.5, 9.5]
      : [titleBlockLeft(frame) - 10, 'Plan of the bench', 6.5, 8];
  return [
    groupNode('heading', [
      textNode(left, top + 12, fitText(name, end - left, 13, 600), { size: 13, weight: 600 }),
    ]),
    groupNode('note', [
      ...wrapText(about, end - left, size, 400, block === undefined ? 2 : 4).map((line, index) =>
        textNode(left, top + 25 + index * step, line, { size, ink: 'soft' }),
      ),
    ]),
    ...titleBlock(work, look, frame, top),
  ];
}

function rect(left: number, top: number, right: number, bottom: number, stroke: Stroke): RectNode {
  return {
    kind: 'rect',
    x: coordinate(left),
    y: coordinate(top),
    width: coordinate(right - left),
    height: coordinate(bottom - top),
    stroke,
  };
}

function areas({ reach }: PlanLook, frame: PlanFrame): SceneNode[] {
  const { smallest } = peopleRanges[reach.people];
  return (['maximum', 'normal'] as const).flatMap((area) =>
    (['left', 'right'] as const).map((hand): PathNode => {
      const outline = areaOutline(armReach(smallest, hand, reach), area, 73);
      const stroke: Stroke =
        area === 'normal' ? { ink: 'soft', width: 0.6 } : { ink: 'soft', width: 0.6, dash: [4, 2] };
      return { kind: 'path', d: clippedPath(frame, outline), stroke };
    }),
  );
}

/** The right hand's ways are drawn through, the left hand's dashed; what is gone often is drawn thicker. */
function ways(work: Work, look: PlanLook, { x, y }: PlanFrame): SceneNode[] {
  if (look.trips === undefined) return [];
  return handPaths(look.trips, positions(work, look)).map(({ from, to, bend, trip }): PathNode => {
    // A quadratic curve as a cubic one: its control points lie two thirds of the way to the bend.
    const control = (end: BenchPoint) => ({
      x: end.x + ((bend.x - end.x) * 2) / 3,
      y: end.y + ((bend.y - end.y) * 2) / 3,
    });
    const points = [from, control(from), control(to), to].map(
      (point) => `${coordinate(x(point.x))} ${coordinate(y(point.y))}`,
    );
    const width = 0.5 + 0.4 * Math.min(4, trip.perCycle);
    return {
      kind: 'path',
      d: `M ${points[0]} C ${points.slice(1).join(' ')}`,
      stroke: { ink: 'accent', width, ...(trip.hand === 'left' ? { dash: [3, 2] } : {}) },
    };
  });
}

function positions(work: Work, { elsewhere }: PlanLook): (place: string) => BenchPoint | undefined {
  const known = positionsOf(work);
  return (place) => known(place) ?? elsewhere?.(place);
}

function placesDrawn(work: Work, places: readonly PlacedPlace[], frame: PlanFrame): SceneNode[] {
  const { x, y, length } = frame;
  const room = new TextRoom();
  const boxes = places.map((place) => {
    const room = roomOf(place);
    const [half, deep] = [length(room.x) / 2, length(room.y) / 2];
    const [middle, centre] = [x(place.at.x), y(place.at.y)];
    return {
      place,
      middle,
      centre,
      left: middle - half,
      right: middle + half,
      top: centre - deep,
      bottom: centre + deep,
    };
  });
  const drawn = boxes.flatMap(({ left, top, right, bottom, place, middle, centre }): SceneNode[] => {
    const stroke: Stroke = {
      ink: 'ink',
      width: 0.8,
      // A place whose size nobody gave is drawn as one that is taken.
      ...(place.size === undefined ? { dash: [2, 1.5] } : {}),
    };
    const outline =
      (place.angle ?? 0) === 0
        ? rect(left, top, right, bottom, stroke)
        : ({ kind: 'path', d: closedPath(frame, cornersOf(place)), stroke } satisfies PathNode);
    const number = textNode(middle, centre + 3, String(work.places.indexOf(place) + 1), {
      size: 8,
      weight: 600,
      align: 'middle',
    });
    return [{ ...outline, fill: { ink: 'paper', opacity: 0.75 } }, ...room.place([number])];
  });
  for (const box of boxes) room.block(box);
  const names = boxes.flatMap(({ place, middle, centre, left, right, top, bottom }) =>
    room.place([
      textNode(middle, top - 2.5, place.name, { size: 6.5, align: 'middle' }),
      textNode(middle, bottom + 7, place.name, { size: 6.5, align: 'middle' }),
      textNode(right + 3, centre + 2, place.name, { size: 6.5 }),
      textNode(left - 3, centre + 2, place.name, { size: 6.5, align: 'end' }),
    ]),
  );
  // Ways of the hands must not run through the names.
  const grounds = names.flatMap((node): SceneNode[] => {
    if (node.kind !== 'text') return [];
    const box = textBox(node);
    return [
      {
        kind: 'rect',
        x: coordinate(box.left - 1),
        y: coordinate(box.top + 0.5),
        width: coordinate(box.right - box.left + 2),
        height: coordinate(box.bottom - box.top - 1),
        fill: { ink: 'paper', opacity: 0.85 },
      },
    ];
  });
  return [...drawn, ...grounds, ...names];
}

function closedPath({ x, y }: PlanFrame, points: readonly BenchPoint[]): string {
  const steps = points.map(
    (point, index) => `${index === 0 ? 'M' : 'L'} ${coordinate(x(point.x))} ${coordinate(y(point.y))}`,
  );
  return `${steps.join(' ')} Z`;
}

/** Scale bar, table of places, travel, and what the areas rest on. */
function foot(
  work: Work,
  look: PlanLook,
  frame: PlanFrame,
  placed: readonly PlacedPlace[],
  off: readonly PlacedPlace[],
): SceneNode[] {
  const { left, right, box, page } = frame;
  const top = box.bottom + 34;
  const bottom = page.height - 30;
  const words = [
    ...travelWords(work, look),
    areaWords(look),
    ...(off.length === 0 ? [] : [`Not on this bench: ${off.map(({ name }) => name).join(', ')}.`]),
    ...(placed.some(({ size }) => size === undefined)
      ? ['A dashed outline: nobody gave the size, so one is taken.']
      : []),
    ...unplaced(work),
  ];
  const lines = words.flatMap((text) => wrapText(text, right - left, 7, 400, 3));
  const noteTop = bottom - lines.length * 9;
  return [
    ...scaleBar(left, top, frame),
    ...placesTable(work, look, placed, { left, right, top: top + 14, bottom: noteTop - 6 }),
    groupNode(
      'note',
      lines.map((line, index) => textNode(left, noteTop + 8 + index * 9, line, { size: 7 })),
    ),
  ];
}

function scaleBar(left: number, top: number, { length }: PlanFrame): SceneNode[] {
  const step = length(100);
  return [
    groupNode('layer', [
      ...[0, 1, 2].map((mark) => lineNode(left + mark * step, top - 3, left + mark * step, top, 0.7, 'ink')),
      lineNode(left, top, left + 2 * step, top, 0.7, 'ink'),
      textNode(left + 2 * step + 4, top + 1, '200 mm', { size: 6.5 }),
    ]),
  ];
}

function travelWords(work: Work, look: PlanLook): string[] {
  const { trips, day } = look;
  if (trips === undefined) return [];
  const { left, right, unmeasured } = handTravel(trips, positions(work, look));
  const cycle = `Ways of the hands in straight lines: left ${numberText(left / 1000, 2)} m, right ${numberText(right / 1000, 2)} m a cycle`;
  const whole =
    day === undefined
      ? ''
      : `, together ${numberText(travelOver(left + right, day.period, day.worked) / 1000, 1)} km in ${numberText(day.worked / 3_600_000_000, 1)} h of work`;
  const lost =
    unmeasured > 0 ? `; ${numberText(unmeasured, 1)} ways a cycle without a position are left out` : '';
  return [`${cycle}${whole}${lost}. Left hand dashed, right hand drawn through, more often thicker.`];
}

function areaWords({ reach }: PlanLook): string {
  const { smallest } = peopleRanges[reach.people];
  const height =
    reach.surface === undefined
      ? 'at the height of the elbow'
      : reach.surface.from === 'floor'
        ? `${numberText(reach.surface.mm, 0)} mm above the floor`
        : `${numberText(reach.surface.mm, 0)} mm from the height of the elbow`;
  return `Areas of each hand for ${personText(smallest)}, ${reach.posture}, surface ${height}: drawn through the sweep of the forearm, dashed that of the straight arm (${sources['ansur-2'].reference}; arm of two links, ours). A hint, no limit for a person: try it with those who work there; local rules and qualified people decide.`;
}

function unplaced({ places }: Work): string[] {
  const names = places.filter(({ at }) => at === undefined).map(({ name }) => name);
  return names.length === 0 ? [] : [`Without a position, so not drawn: ${names.join(', ')}.`];
}
