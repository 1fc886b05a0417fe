import { type Micros, micros } from '../base/index.ts';
import { sceneClock } from './scene-clock.ts';
import type { Film, Method, Study } from './schema.ts';

/** What a method's boundaries mean in real time. */
export interface MethodClock {
  /** Real time of a boundary, whole microseconds. */
  readonly timeOf: (boundary: number) => Micros;
  /** Real time from one boundary to another. */
  readonly span: (from: number, to: number) => Micros;
  /** The boundary shown at a real time. */
  readonly boundaryAt: (time: number) => number;
  /** Largest boundary there can be: the number of frames, or undefined without a film. */
  readonly last: number | undefined;
  readonly unit: 'frames' | 'micros';
}

export function filmOf(study: Study, method: Method): Film | undefined {
  const { base } = method;
  return base.kind === 'frames' ? study.films.find((film) => film.id === base.film) : undefined;
}

const cache = new WeakMap<Film, MethodClock>();

/** @throws RangeError when the method names a film that the study does not have */
export function methodClock(study: Study, method: Method): MethodClock {
  if (method.base.kind === 'micros') return plainClock;
  const film = filmOf(study, method);
  if (film === undefined) throw new RangeError(`no film ${method.base.film}`);
  const known = cache.get(film);
  if (known !== undefined) return known;
  const scene = sceneClock(film);
  const made: MethodClock = {
    timeOf: scene.realOf,
    span: (from, to) => micros(scene.realOf(to) - scene.realOf(from)),
    boundaryAt: scene.frameAtReal,
    last: scene.frames,
    unit: 'frames',
  };
  cache.set(film, made);
  return made;
}

const plainClock: MethodClock = {
  timeOf: micros,
  span: (from, to) => micros(to - from),
  boundaryAt: (time) => Math.max(0, Math.round(time)),
  last: undefined,
  unit: 'micros',
};
