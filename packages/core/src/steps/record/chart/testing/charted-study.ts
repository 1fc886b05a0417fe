import {
  emptyStudy,
  type Film,
  type Method,
  type Motion,
  type Study,
} from '../../../../ground/study/index.ts';
import type { MotionKind } from '../../../../ground/tables/index.ts';

/** Kind, length in frames, and what else is known of the motion. */
export type ShortMotion = readonly [
  kind: MotionKind,
  frames: number,
  more?: Partial<Pick<Motion, 'object' | 'from' | 'to'>>,
];

export interface ShortStudy {
  readonly left: readonly ShortMotion[];
  readonly right: readonly ShortMotion[];
  /** First frames of the cycles, and the end of the last; none leaves the method without cycles. */
  readonly cycles?: readonly number[];
  /** Number of a cycle from 1, and why it is not typical. */
  readonly setAside?: Readonly<Record<number, string>>;
  readonly framesPerSecond?: number;
  readonly demo?: boolean;
}

/** A study with one film at a constant rate and one method, `m`, written down in short. */
export function chartedStudy(short: ShortStudy): Study {
  const frames = Math.max(sum(short.left), sum(short.right), ...(short.cycles ?? []), 1);
  return {
    ...emptyStudy('study', 'Hinges'),
    ...(short.demo === undefined ? {} : { demo: short.demo }),
    operation: {
      name: 'Screw hinges',
      part: 'Hinge',
      number: '12',
      department: 'Fitting',
      analyst: 'Analyst 3',
    },
    places: [
      { id: 'bin', name: 'screw bin' },
      { id: 'jig', name: 'jig' },
    ],
    films: [film(frames, short.framesPerSecond ?? 30)],
    methods: [method(short)],
  };
}

function sum(motions: readonly ShortMotion[]): number {
  return motions.reduce((frames, motion) => frames + motion[1], 0);
}

function film(frames: number, framesPerSecond: number): Film {
  return {
    id: 'f',
    sha256: '0'.repeat(64),
    name: 'hinges.mp4',
    bytes: 1,
    container: 'mp4',
    codec: 'avc1',
    width: 640,
    height: 360,
    rotation: 0,
    frameTimes: { ticksPerSecond: framesPerSecond, start: 0, steps: [{ repeat: frames, deltas: [1] }] },
    clock: { kind: 'identity' },
    operatorCode: 'P7',
  };
}

function method(short: ShortStudy): Method {
  const cycles = short.cycles ?? [];
  return {
    id: 'm',
    name: 'Present method',
    kind: 'recorded',
    base: { kind: 'frames', film: 'f' },
    unitsPerCycle: 1,
    left: row(short.left, 'l'),
    right: row(short.right, 'r'),
    cycles: {
      items: cycles.slice(0, -1).map((start, index) => {
        const setAside = short.setAside?.[index + 1];
        return { id: `c${index + 1}`, start, ...(setAside === undefined ? {} : { setAside }) };
      }),
      end: cycles.at(-1) ?? Math.max(sum(short.left), sum(short.right)),
    },
  };
}

function row(motions: readonly ShortMotion[], name: string): Method['left'] {
  let start = 0;
  const items = motions.map(([kind, frames, more], index): Motion => {
    const motion: Motion = { id: `${name}${index}`, start, kind, said: 'marked', ...more };
    start += frames;
    return motion;
  });
  return { items, end: start };
}
