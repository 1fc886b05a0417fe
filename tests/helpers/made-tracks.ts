import type { Hand } from '@evenhand/core/ground/study';
import type { MotionKind } from '@evenhand/core/ground/tables';
import type { HandTrack, Track } from '@evenhand/core/record';

/**
 * Generated two-hand tracks whose truth is known. A task is drawn from a seed: places, a row of motions for each hand,
 * and points where the hands wait for each other. Every cycle of it is worked anew: other times for every motion, other
 * end points, sometimes a pause, an extra or a missing motion. Movements follow the minimum-jerk curve of Flash & Hogan
 * (1985, J. Neurosci. 5:1688) with a sideways bow; a motion of use is a row of small strokes; holding is a little tremor.
 */
export interface MadeKind {
  readonly seed: number;
  readonly cycles: number;
  readonly framesPerSecond: number;
  /** Shortest and longest time of a motion, in seconds. */
  readonly motionSeconds: readonly [number, number];
  /** Motions of a hand in a cycle, least and most. */
  readonly motions: readonly [number, number];
  /** Spread of the natural logarithm of a motion’s time from cycle to cycle. */
  readonly timeSpread: number;
  /** Spread of the end points from cycle to cycle, in pixels of a picture 1280 wide. */
  readonly placeSpread: number;
  /** Spread of what the tracker sees, in pixels. */
  readonly noise: number;
  /** Share of frames in which a hand is not seen, in runs of about a fifth of a second. */
  readonly dropped: number;
  /** Spread of where a person puts a boundary, in seconds. */
  readonly labelSpread: number;
  /** Chances of a pause and of an extra and a missing motion in a cycle, for each hand. */
  readonly pause: number;
  readonly extra: number;
  readonly missing: number;
  /** Whether the track knows the opening of the hand. */
  readonly opening: boolean;
  /** Longest rest between two cycles, in seconds; the hands lie at their resting places meanwhile. */
  readonly between: number;
}

export interface MadeMotion {
  /** Frame at which it begins. */
  readonly start: number;
  readonly kind: MotionKind;
  readonly object: string;
  readonly place: string;
  /** Not one of the task’s motions. */
  readonly extra?: boolean;
}

export interface MadeTrack {
  readonly track: Track;
  readonly framesPerSecond: number;
  readonly left: readonly MadeMotion[];
  readonly right: readonly MadeMotion[];
  /** First frame of each cycle, and the frame at which it has ended. */
  readonly cycles: readonly number[];
  readonly ends: readonly number[];
  readonly unusual: readonly number[];
}

interface Step {
  readonly kind: MotionKind;
  readonly object: string;
  readonly place: number;
  readonly seconds: number;
  /** The other hand’s step with this sign must have ended before this one begins. */
  readonly meet?: number;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

export function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

export function normal(draw: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw());
}

const anyKind: MadeKind = {
  seed: 1,
  cycles: 8,
  framesPerSecond: 30,
  motionSeconds: [0.3, 1.4],
  motions: [7, 13],
  timeSpread: 0.28,
  placeSpread: 22,
  noise: 2.5,
  dropped: 0.01,
  labelSpread: 0.05,
  pause: 0.15,
  extra: 0,
  missing: 0,
  opening: true,
  between: 0,
};

/** A fetch of something and what is done with it: the kinds that follow each other in nearly all handwork. */
function fetchSteps(draw: () => number, places: number, object: string): Omit<Step, 'seconds'>[] {
  const from = 1 + Math.floor(draw() * (places - 1));
  const steps: Omit<Step, 'seconds'>[] = [
    { kind: 'TE', object, place: from },
    { kind: 'G', object, place: from },
    { kind: 'TL', object, place: 0 },
  ];
  const then = draw();
  if (then < 0.35) steps.push({ kind: 'P', object, place: 0 }, { kind: 'A', object, place: 0 });
  else if (then < 0.6) steps.push({ kind: 'P', object, place: 0 });
  else if (then < 0.8) steps.push({ kind: 'U', object, place: 0 });
  steps.push({ kind: 'RL', object, place: 0 });
  return steps;
}

function taskOf(kind: MadeKind, draw: () => number) {
  const places: Point[] = [{ x: 640, y: 430 }];
  for (let index = 0; index < 5; index += 1) places.push({ x: 120 + draw() * 1040, y: 100 + draw() * 260 });
  const [least, most] = kind.motionSeconds;
  const timed = (steps: Omit<Step, 'seconds'>[]): Step[] =>
    steps.map((step) => ({ ...step, seconds: least * (most / least) ** draw() }));
  const handSteps = (): Step[] => {
    const wanted = kind.motions[0] + Math.floor(draw() * (kind.motions[1] - kind.motions[0] + 1));
    const steps: Omit<Step, 'seconds'>[] = [];
    for (let part = 0; steps.length < wanted; part += 1)
      steps.push(...fetchSteps(draw, places.length, `part ${part + 1}`));
    return timed(steps);
  };
  const holder = (): Step[] =>
    timed([
      { kind: 'TE', object: 'body', place: 3 },
      { kind: 'G', object: 'body', place: 3 },
      { kind: 'TL', object: 'body', place: 0 },
      { kind: 'H', object: 'body', place: 0 },
      { kind: 'TL', object: 'body', place: 4 },
      { kind: 'RL', object: 'body', place: 4 },
    ]);
  const right = handSteps();
  const left = draw() < 0.5 ? holder() : handSteps();
  if (kind.between > 0) {
    places.push({ x: 640, y: 660 });
    const home = timed([{ kind: 'TE', object: 'nothing', place: places.length - 1 }]);
    right.push(...home);
    left.push(...home);
  }
  return { places, left, right };
}

interface Worked {
  readonly motions: {
    start: number;
    end: number;
    kind: MotionKind;
    object: string;
    to: Point;
    place: string;
    extra?: boolean;
    from: Point;
  }[];
}

export function madeTrack(wish: Partial<MadeKind>): MadeTrack {
  const kind = { ...anyKind, ...wish };
  const draw = random(kind.seed * 7919 + 13);
  const task = taskOf(kind, draw);
  const rest: Readonly<Record<Hand, Point>> = { left: { x: 430, y: 640 }, right: { x: 850, y: 640 } };
  const at: Record<Hand, Point> = { ...rest };
  const worked: Record<Hand, Worked> = { left: { motions: [] }, right: { motions: [] } };
  const starts: number[] = [];
  const ends: number[] = [];
  const unusual: number[] = [];
  let now = 0.8 + draw();
  for (let cycle = 0; cycle < kind.cycles; cycle += 1) {
    starts.push(now);
    const tempo = Math.exp(normal(draw) * 0.1);
    const clock: Record<Hand, number> = { left: now, right: now };
    let odd = false;
    for (const hand of ['left', 'right'] as const) {
      const pauseAt = draw() < kind.pause ? Math.floor(draw() * task[hand].length) : -1;
      const extraAt = draw() < kind.extra ? 1 + Math.floor(draw() * (task[hand].length - 1)) : -1;
      const without = draw() < kind.missing ? 1 + Math.floor(draw() * (task[hand].length - 1)) : -1;
      if (extraAt >= 0 || without >= 0) odd = true;
      task[hand].forEach((step, index) => {
        if (index === without) return;
        const place = task.places[step.place] as Point;
        const to = {
          x: place.x + normal(draw) * kind.placeSpread + (hand === 'left' ? -35 : 35),
          y: place.y + normal(draw) * kind.placeSpread,
        };
        const add = (motion: MotionKind, seconds: number, end: Point, extra: boolean) => {
          worked[hand].motions.push({
            start: clock[hand],
            end: clock[hand] + seconds,
            kind: motion,
            object: step.object,
            place: `place ${step.place}`,
            from: at[hand],
            to: end,
            ...(extra ? { extra } : {}),
          });
          clock[hand] += seconds;
          at[hand] = end;
        };
        if (index === extraAt) {
          const aside = { x: at[hand].x + normal(draw) * 60, y: at[hand].y + normal(draw) * 60 };
          add('Sh', 0.4 + draw() * 0.8, aside, true);
        }
        const still = step.kind !== 'TE' && step.kind !== 'TL';
        const seconds = step.seconds * tempo * Math.exp(normal(draw) * kind.timeSpread);
        add(
          step.kind,
          Math.max(0.1, seconds) + (index === pauseAt ? 0.5 + draw() : 0),
          still ? nudged(at[hand], draw) : to,
          false,
        );
      });
    }
    // The hand that is ready first waits for the other.
    now = Math.max(clock.left, clock.right);
    for (const hand of ['left', 'right'] as const)
      if (clock[hand] < now - 0.02)
        worked[hand].motions.push({
          start: clock[hand],
          end: now,
          kind: 'UD',
          object: 'nothing',
          place: 'rest',
          from: at[hand],
          to: nudged(at[hand], draw),
        });
    if (odd) unusual.push(cycle);
    ends.push(now);
    now += draw() * kind.between;
  }
  const seconds = now + 0.8 + draw();
  const frames = Math.ceil(seconds * kind.framesPerSecond);
  const label = (time: number) => Math.round((time + normal(draw) * kind.labelSpread) * kind.framesPerSecond);
  const rows = { left: labelled(worked.left, label), right: labelled(worked.right, label) };
  const hands = {
    left: seen(worked.left, rest.left, frames, kind, draw),
    right: seen(worked.right, rest.right, frames, kind, draw),
  };
  return {
    track: { source: 'table', frames, width: 1280, height: 720, unit: 'pixels', ...hands },
    framesPerSecond: kind.framesPerSecond,
    ...rows,
    cycles: starts.map((start) => Math.round(start * kind.framesPerSecond)),
    ends: ends.map((end) => Math.round(end * kind.framesPerSecond)),
    unusual,
  };
}

function nudged(at: Point, draw: () => number): Point {
  return { x: at.x + normal(draw) * 8, y: at.y + normal(draw) * 8 };
}

function labelled(worked: Worked, label: (time: number) => number): MadeMotion[] {
  const motions: MadeMotion[] = [];
  for (const { start, kind, object, place, extra } of worked.motions) {
    const at = Math.max(label(start), (motions.at(-1)?.start ?? -1) + 1);
    motions.push({ start: at, kind, object, place, ...(extra === undefined ? {} : { extra }) });
  }
  return motions;
}

function seen(
  { motions }: Worked,
  rest: Point,
  frames: number,
  kind: MadeKind,
  draw: () => number,
): HandTrack {
  const x = new Float32Array(frames);
  const y = new Float32Array(frames);
  const opening = new Float32Array(frames);
  const presence = new Float32Array(frames).fill(0.95);
  const bows = motions.map(() => normal(draw) * 0.12);
  const strokes = motions.map(() => ({
    size: 6 + draw() * 22,
    rate: 1.5 + draw() * 2.5,
    turn: draw() * 6.28,
  }));
  let wanderX = 0;
  let wanderY = 0;
  let index = 0;
  let open = 0.6;
  for (let frame = 0; frame < frames; frame += 1) {
    const time = frame / kind.framesPerSecond;
    while (index < motions.length - 1 && time >= (motions[index + 1]?.start ?? 0)) index += 1;
    const motion = motions[index];
    let px = rest.x;
    let py = rest.y;
    let wanted = 0.6;
    if (motion !== undefined && time >= motion.start && time < motion.end) {
      const share = (time - motion.start) / (motion.end - motion.start);
      const moved = share ** 3 * (10 - 15 * share + 6 * share * share);
      const side = (bows[index] as number) * Math.sin(Math.PI * moved);
      px = motion.from.x + (motion.to.x - motion.from.x) * moved - (motion.to.y - motion.from.y) * side;
      py = motion.from.y + (motion.to.y - motion.from.y) * moved + (motion.to.x - motion.from.x) * side;
      const stroke = strokes[index] as (typeof strokes)[number];
      if (motion.kind === 'U' || motion.kind === 'A' || motion.kind === 'Sh') {
        const swing =
          Math.sin(2 * Math.PI * stroke.rate * (time - motion.start)) *
          stroke.size *
          Math.sin(Math.PI * share);
        px += swing * Math.cos(stroke.turn);
        py += swing * Math.sin(stroke.turn);
      }
      wanted =
        motion.kind === 'TE' || motion.kind === 'Sh'
          ? 0.75
          : motion.kind === 'RL'
            ? 0.8
            : motion.kind === 'UD'
              ? 0.5
              : 0.25;
    } else if (motion !== undefined && time >= motion.end) {
      px = motion.to.x;
      py = motion.to.y;
    } else if (motion !== undefined) {
      px = motion.from.x;
      py = motion.from.y;
    }
    open += (wanted - open) * Math.min(1, 8 / kind.framesPerSecond);
    wanderX = wanderX * 0.97 + normal(draw) * kind.noise * 0.25;
    wanderY = wanderY * 0.97 + normal(draw) * kind.noise * 0.25;
    x[frame] = px + wanderX + normal(draw) * kind.noise;
    y[frame] = py + wanderY + normal(draw) * kind.noise;
    opening[frame] = open + normal(draw) * 0.05;
  }
  const run = Math.max(1, Math.round(kind.framesPerSecond / 5));
  for (let frame = 0; frame < frames; frame += 1) {
    if (draw() >= kind.dropped / run) continue;
    for (let gone = frame; gone < Math.min(frames, frame + run); gone += 1) {
      x[gone] = Number.NaN;
      y[gone] = Number.NaN;
      opening[gone] = Number.NaN;
      presence[gone] = 0;
    }
  }
  return { x, y, ...(kind.opening ? { opening } : {}), presence };
}
