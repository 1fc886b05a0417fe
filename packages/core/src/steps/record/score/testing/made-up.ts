import {
  emptyStudy,
  encodeFrameTimes,
  type Film,
  type Method,
  type MethodClock,
  type Motion,
  methodClock,
} from '../../../../ground/study/index.ts';
import type { MotionKind } from '../../../../ground/tables/index.ts';
import type { ScoreInput } from '../score-input.ts';

type Given = readonly [start: number, kind: MotionKind, more?: Partial<Motion>];

export function row(prefix: string, end: number, given: readonly Given[]): Method['left'] {
  const items = given.map(([start, kind, more], index) => ({
    id: `${prefix}${index}`,
    start,
    kind,
    said: 'marked' as const,
    ...more,
  }));
  return { items, end };
}

export function composed(parts: Partial<Method>): Method {
  const empty = { items: [], end: 0 };
  return {
    id: 'm',
    name: 'Made up',
    kind: 'composed',
    base: { kind: 'micros' },
    unitsPerCycle: 1,
    left: empty,
    right: empty,
    cycles: empty,
    ...parts,
  };
}

/** The clock of a film with these frame times (ticks of a millisecond) and this scene clock. */
export function filmed(
  ticks: readonly number[],
  endTick: number,
  parts: Partial<Method>,
  clock: Film['clock'] = { kind: 'identity' },
): { readonly method: Method; readonly clock: MethodClock } {
  const film: Film = {
    id: 'f',
    sha256: '0'.repeat(64),
    name: 'made up',
    bytes: 1,
    container: 'mp4',
    codec: 'avc',
    width: 4,
    height: 3,
    rotation: 0,
    frameTimes: encodeFrameTimes(ticks, endTick, 1000),
    clock,
  };
  const method = composed({ kind: 'recorded', base: { kind: 'frames', film: 'f' }, ...parts });
  const study = { ...emptyStudy('s', 'Made up'), films: [film], methods: [method] };
  return { method, clock: methodClock(study, method) };
}

/** The clock of a composed method: a boundary is its own time. */
export function plainClock(method: Method): MethodClock {
  return methodClock({ ...emptyStudy('s', 'Made up'), methods: [method] }, method);
}

/**
 * A score whose time area is exactly 1000 CSS pixels wide (78 for the headings and 10 at the right beside it) and 340
 * high: cycles 22, each hand 118, axis 30, overview 40.
 */
export function scoreOf(
  method: Method,
  more: Partial<ScoreInput> & Pick<ScoreInput, 'view'>,
  clock = plainClock(method),
): ScoreInput {
  return {
    method,
    clock,
    whole: more.view,
    width: 1088,
    height: 340,
    pixelRatio: 1,
    unit: 'seconds',
    playhead: 0,
    ...more,
  };
}
