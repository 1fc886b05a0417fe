import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import type { Calibration, Film } from '../../../ground/study/index.ts';
import { countText } from '../../../ground/units/index.ts';
import { solve } from './local-fit.ts';
import type { HandTrack, Track } from './track.ts';

export interface PlanePoint {
  readonly x: number;
  readonly y: number;
}

/**
 * From the picture to the bench: millimetres, x to the operator’s right, y away from the operator. A point of the picture
 * that no point of the bench can be seen at (beyond its horizon) becomes NaN. It holds for what lies in the plane of the
 * bench; a hand above it looks nearer to the camera, so lengths and speeds of lifted hands read somewhat too large.
 */
export interface BenchPlane {
  readonly toBench: (point: PlanePoint) => PlanePoint;
  /** Of a rectangle: back from the bench to the picture, for drawing; of a length it is a scale alone. */
  readonly toPicture: (point: PlanePoint) => PlanePoint;
}

const cornerNames = ['near left', 'near right', 'far right', 'far left'] as const;
/** Shorter than this, a slip of one pixel in a click is more than three in a hundred. */
const leastPixels = 30;

/**
 * The plane of the bench from what the analyst has clicked. Findings `track/short-length`, `track/corners-close`,
 * `track/corners-line`, `track/corners-crossed`, `track/corners-turned`.
 * @param film.mirrored the picture is a mirror image, so the corners run the other way round
 */
export function benchPlane(
  calibration: Calibration,
  film: Pick<Film, 'mirrored'> = {},
): Result<BenchPlane, Finding> {
  return calibration.kind === 'length'
    ? planeOfLength(calibration, film.mirrored === true)
    : planeOfRectangle(calibration, film.mirrored === true);
}

function planeOfLength(
  { ends, millimetres }: Extract<Calibration, { kind: 'length' }>,
  mirrored: boolean,
): Result<BenchPlane, Finding> {
  const [a, b] = ends as readonly [PlanePoint, PlanePoint];
  const pixels = Math.hypot(b.x - a.x, b.y - a.y);
  if (!(pixels >= leastPixels))
    return fail(
      finding(
        'track/short-length',
        {},
        { pixels: countText(Math.round(pixels), 'pixel'), least: leastPixels },
      ),
    );
  const scale = millimetres / pixels;
  const side = mirrored ? -scale : scale;
  // A length says nothing of where the operator sits; the lower edge of the picture is taken as near.
  return ok({
    toBench: ({ x, y }) => ({ x: x * side, y: -y * scale }),
    toPicture: ({ x, y }) => ({ x: x / side, y: -y / scale }),
  });
}

function planeOfRectangle(
  { corners, across, away, at }: Extract<Calibration, { kind: 'rectangle' }>,
  mirrored: boolean,
): Result<BenchPlane, Finding> {
  const fault = cornersFault(corners, mirrored);
  if (fault !== undefined) return fail(fault);
  const left = at?.x ?? -across / 2;
  const near = at?.y ?? 0;
  const bench = [
    { x: left, y: near },
    { x: left + across, y: near },
    { x: left + across, y: near + away },
    { x: left, y: near + away },
  ];
  const [out, back] = [homography(corners, bench), homography(bench, corners)];
  if (out === undefined || back === undefined)
    return fail(finding('track/corners-line', {}, { corners: 'Three of the corners' }));
  const sign = Math.sign(weight(out, corners[0] as PlanePoint));
  return ok({
    toBench: (point) =>
      weight(out, point) * sign > 0 ? through(out, point) : { x: Number.NaN, y: Number.NaN },
    toPicture: (point) => through(back, point),
  });
}

/** Four points that cannot be the picture of a rectangle, or not of this one, and why. */
function cornersFault(corners: readonly PlanePoint[], mirrored: boolean): Finding | undefined {
  for (let first = 0; first < 4; first += 1)
    for (let second = first + 1; second < 4; second += 1) {
      const [a, b] = [corners[first] as PlanePoint, corners[second] as PlanePoint];
      if (!(Math.hypot(b.x - a.x, b.y - a.y) >= leastPixels))
        return finding(
          'track/corners-close',
          {},
          { first: cornerNames[first] ?? '', second: cornerNames[second] ?? '', least: leastPixels },
        );
    }
  const turns = corners.map((_, index) => turnAt(corners, index));
  const flat = turns.findIndex((turn) => Math.abs(turn) < 0.035);
  if (flat >= 0) {
    const three = [flat + 3, flat, flat + 1].map((index) => cornerNames[index % 4] ?? '');
    return finding(
      'track/corners-line',
      {},
      { corners: `The corners ${three[0]}, ${three[1]} and ${three[2]}` },
    );
  }
  if (turns.some((turn) => Math.sign(turn) !== Math.sign(turns[0] as number)))
    return finding('track/corners-crossed');
  // Near left, near right, far right, far left runs against the clock in a picture whose y grows downwards.
  if (Math.sign(turns[0] as number) !== (mirrored ? 1 : -1))
    return finding('track/corners-turned', {}, { as: mirrored ? 'a mirror image' : 'no mirror image' });
  return undefined;
}

/** Sine of the turn at a corner: below 0 against the clock as seen on the screen, 0 on a line. */
function turnAt(corners: readonly PlanePoint[], index: number): number {
  const [before, here, after] = [corners[(index + 3) % 4], corners[index], corners[(index + 1) % 4]] as [
    PlanePoint,
    PlanePoint,
    PlanePoint,
  ];
  const [ax, ay, bx, by] = [here.x - before.x, here.y - before.y, after.x - here.x, after.y - here.y];
  return (ax * by - ay * bx) / (Math.hypot(ax, ay) * Math.hypot(bx, by));
}

/** The nine numbers of a projective map, the last one 1. */
type Map9 = readonly number[];

/**
 * The projective map that takes four points to four others. Source: R. Hartley, A. Zisserman, Multiple View Geometry in
 * Computer Vision, 2nd ed. (2004), section 4.1, with the last element fixed at 1; places are scaled to about 1 first.
 */
function homography(from: readonly PlanePoint[], to: readonly PlanePoint[]): Map9 | undefined {
  const a = scaling(from);
  const b = scaling(to);
  const rows = from.flatMap((point, index) => {
    const { x, y } = a.scaled(point);
    const goal = b.scaled(to[index] as PlanePoint);
    return [
      [x, y, 1, 0, 0, 0, -x * goal.x, -y * goal.x, goal.x],
      [0, 0, 0, x, y, 1, -x * goal.y, -y * goal.y, goal.y],
    ];
  });
  const solved = solve(rows);
  return solved === undefined ? undefined : multiply(b.back, multiply([...solved, 1], a.map));
}

/** Moves points to their middle and to a size of about 1, so that the equations keep their digits. */
function scaling(points: readonly PlanePoint[]) {
  const x = points.reduce((sum, point) => sum + point.x, 0) / points.length;
  const y = points.reduce((sum, point) => sum + point.y, 0) / points.length;
  const size = points.reduce((sum, point) => sum + Math.hypot(point.x - x, point.y - y), 0) / points.length;
  return {
    scaled: (point: PlanePoint) => ({ x: (point.x - x) / size, y: (point.y - y) / size }),
    map: [1 / size, 0, -x / size, 0, 1 / size, -y / size, 0, 0, 1],
    back: [size, 0, x, 0, size, y, 0, 0, 1],
  };
}

function multiply(a: Map9, b: Map9): Map9 {
  return Array.from({ length: 9 }, (_, index) => {
    const [row, column] = [Math.floor(index / 3) * 3, index % 3];
    return [0, 1, 2].reduce((sum, k) => sum + (a[row + k] as number) * (b[k * 3 + column] as number), 0);
  });
}

function weight(map: Map9, { x, y }: PlanePoint): number {
  return (map[6] as number) * x + (map[7] as number) * y + (map[8] as number);
}

function through(map: Map9, point: PlanePoint): PlanePoint {
  const w = weight(map, point);
  const { x, y } = point;
  return {
    x: ((map[0] as number) * x + (map[1] as number) * y + (map[2] as number)) / w,
    y: ((map[3] as number) * x + (map[4] as number) * y + (map[5] as number)) / w,
  };
}

/** The track in millimetres on the bench; one that is so already stays as it is. Places beyond the horizon are missing. */
export function trackOnBench(track: Track, plane: BenchPlane): Track {
  if (track.unit === 'millimetres') return track;
  return {
    ...track,
    unit: 'millimetres',
    ...(track.left === undefined ? {} : { left: handOnBench(track.left, plane) }),
    ...(track.right === undefined ? {} : { right: handOnBench(track.right, plane) }),
  };
}

function handOnBench(hand: HandTrack, plane: BenchPlane): HandTrack {
  const x = new Float32Array(hand.x.length);
  const y = new Float32Array(hand.y.length);
  const presence = hand.presence.slice();
  for (let frame = 0; frame < x.length; frame += 1) {
    const point = plane.toBench({ x: hand.x[frame] as number, y: hand.y[frame] as number });
    x[frame] = point.x;
    y[frame] = point.y;
    if (Number.isNaN(point.x)) presence[frame] = 0;
  }
  return { ...hand, x, y, presence };
}
