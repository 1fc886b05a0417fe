import { type FigureAtOnce, figureAtOnce, type Library, type Orders } from '@evenhand/core/develop';
import { readMethod } from '@evenhand/core/examine';
import type { Study, Work } from '@evenhand/core/ground/study';
import { useMemo, useRef } from 'react';
import type { PlainMethod } from '../developed-plain.ts';

/** So many orders of methods are kept to be timed anew; a move of a place seldom asks for an older one. Ours. */
const mostKnown = 8;

export interface AtOnce {
  /** The work as it is shown: changes that are taken, with places where a hand has them. */
  readonly work: Work;
  /** The best known method timed with the places as they are; undefined before any method was found. */
  readonly figure: FigureAtOnce | undefined;
  /** The places have been moved since the composer last answered, so the figure stands without its proof. */
  readonly moved: boolean;
}

/** A figure for the places as they are now, without waiting for the composer. */
export function useAtOnce(
  study: Study,
  methodId: string | undefined,
  work: Work,
  shown: PlainMethod | undefined,
  library?: Library,
): AtOnce {
  const { methods, films, places } = study;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the parts of the study that a reading rests on
  const readings = useMemo(() => {
    const reading = methodId === undefined ? undefined : readMethod(study, methodId);
    return reading?.ok === true ? [reading.value] : [];
  }, [methods, films, places, methodId]);
  const known = useRef<{ readonly steps: string; readonly orders: readonly Orders[] }>({
    steps: '',
    orders: [],
  });
  const answered = useRef<{ readonly shown: PlainMethod; readonly base: Work } | undefined>(undefined);
  if (shown !== undefined && answered.current?.shown !== shown) {
    answered.current = { shown, base: work };
    // Orders are for these steps and no others.
    const steps = JSON.stringify(shown.work.steps);
    const orders = known.current.steps === steps ? known.current.orders : [];
    known.current = { steps, orders: [shown.orders, ...orders].slice(0, mostKnown) };
  }
  const base = answered.current?.base;
  return useMemo(() => {
    if (shown === undefined || base === undefined) return { work, figure: undefined, moved: false };
    const patched = withMoves(shown.work, base, work);
    const figure = figureAtOnce(patched.work, readings, known.current.orders, { library });
    return { work: patched.work, figure, moved: patched.moved };
  }, [shown, base, work, readings, library]);
}

/** The work that was answered with what was moved since; a work whose steps were edited meanwhile stays as answered. */
function withMoves(answered: Work, base: Work, now: Work): { readonly work: Work; readonly moved: boolean } {
  const then = new Map(base.places.map((place) => [place.id, place]));
  const moves = new Map(
    now.places.flatMap((place) => {
      const before = then.get(place.id);
      return before === undefined || before === place ? [] : [[place.id, place] as const];
    }),
  );
  const bench = now.bench === undefined ? {} : { bench: now.bench };
  let moved = false;
  const places = answered.places.map((place) => {
    const next = moves.get(place.id);
    if (next === undefined) return place;
    if (next.at?.x !== place.at?.x || next.at?.y !== place.at?.y) moved = true;
    const { at: _, ...rest } = next;
    return next.at === undefined ? { ...rest } : { ...rest, at: next.at };
  });
  const known = new Set(answered.places.map(({ id }) => id));
  const added = now.places.filter(({ id }) => !known.has(id));
  return { work: { ...answered, ...bench, places: [...places, ...added] }, moved };
}
