import type { StepMotion, Work, WorkPlace, WorkStep } from '../work/index.ts';

/** Where the work is done, millimetres: the middle of the places where something is changed. */
export function middleOf(work: Work): { readonly x: number; readonly y: number } | undefined {
  const used = workedAt(work);
  const at = work.places.flatMap((place) => (used.has(place.id) && place.at !== undefined ? [place.at] : []));
  return at.length === 0
    ? undefined
    : {
        x: at.reduce((sum, { x }) => sum + x, 0) / at.length,
        y: at.reduce((sum, { y }) => sum + y, 0) / at.length,
      };
}

/** Places where something is changed. */
export function workedAt(work: Work): ReadonlySet<string> {
  return new Set(
    work.steps
      .filter(({ motions }) => motions.some(({ kind }) => ['A', 'P', 'U', 'DA'].includes(kind)))
      .map(({ place }) => place),
  );
}

/** Whether any of the motions asks for the eyes. */
export function looked(motions: readonly StepMotion[], without?: StepMotion['kind']): boolean {
  return motions.some(({ kind }) => kind !== without && ['Sh', 'F', 'St', 'P', 'PP', 'I'].includes(kind));
}

/** Undefined when none of the steps has such a motion. */
export function withoutMotions(
  work: Work,
  kinds: readonly StepMotion['kind'][],
  of: (step: WorkStep) => boolean = () => true,
): Work | undefined {
  let found = false;
  const steps = work.steps.map((step): WorkStep => {
    const motions = step.motions.filter(({ kind }) => !kinds.includes(kind));
    if (motions.length === step.motions.length || !of(step)) return step;
    found = true;
    const [only] = step.motions;
    // A step of nothing else would leave what follows it without what it carries.
    if (motions.length === 0 && only !== undefined)
      return { ...step, motions: [{ ...only, us: 0 }], eyes: false };
    return { ...step, motions, eyes: step.eyes && looked(motions) };
  });
  return found ? { ...work, steps } : undefined;
}

/**
 * The places that fit are brought to a distance from the middle of the work, in their direction, where they stand farther
 * away than that, or than `within`.
 */
export function broughtTo(
  work: Work,
  radius: number,
  fits: (place: WorkPlace) => boolean,
  {
    more = () => ({}),
    within = radius,
  }: { readonly more?: (place: WorkPlace) => Partial<WorkPlace>; readonly within?: number } = {},
): Work | undefined {
  const middle = middleOf(work);
  if (middle === undefined) return undefined;
  let moved = false;
  const places = work.places.map((place): WorkPlace => {
    if (place.at === undefined || place.stays === true || !fits(place)) return place;
    const [dx, dy] = [place.at.x - middle.x, place.at.y - middle.y];
    const away = Math.hypot(dx, dy);
    if (away <= within) return place;
    moved = true;
    const at = {
      x: Math.round(middle.x + (dx / away) * radius),
      y: Math.round(middle.y + (dy / away) * radius),
    };
    return { ...place, ...more(place), at };
  });
  return moved ? { ...work, places } : undefined;
}

/**
 * The work without some steps; what followed one of them follows what came before it, machine times added up. Links to a
 * step that another one stands for go to that one.
 * @param gap microseconds that pass where a step was
 */
export function withoutSteps(
  work: Work,
  gone: ReadonlySet<string>,
  {
    gap = 0,
    instead = new Map(),
  }: { readonly gap?: number; readonly instead?: ReadonlyMap<string, string> } = {},
): Work | undefined {
  const stepOf = new Map(work.steps.map((step) => [step.id, step]));
  const linksOf = (step: WorkStep, seen: ReadonlySet<string>): readonly { step: string; lag: number }[] =>
    (step.follows ?? []).flatMap(({ step: before, lag = 0 }) => {
      const stands = instead.get(before);
      if (stands !== undefined) return [{ step: stands, lag }];
      const removed = stepOf.get(before);
      if (!gone.has(before) || removed === undefined) return [{ step: before, lag }];
      if (seen.has(before)) return [];
      return linksOf(removed, new Set([...seen, before])).map((link) => ({
        step: link.step,
        lag: link.lag + lag + gap,
      }));
    });
  const kept = work.steps.filter(({ id }) => !gone.has(id));
  if (kept.length === 0) return undefined;
  const steps = kept.map((step): WorkStep => {
    // A step that stands for others follows what they followed.
    const alike = [...instead].flatMap(([id, by]) => (by === step.id ? (stepOf.get(id) ?? []) : []));
    return linked(
      step,
      [step, ...alike].flatMap((item) => linksOf(item, new Set())),
    );
  });
  const spot = (id: string) => instead.get(id) ?? id;
  const spots = (work.spots ?? []).map((item) => ({
    ...item,
    claimedBy: spot(item.claimedBy),
    releasedBy: spot(item.releasedBy),
  }));
  if (spots.some(({ claimedBy, releasedBy }) => gone.has(claimedBy) || gone.has(releasedBy)))
    return undefined;
  const [seen, single] = [new Set<string>(), [] as typeof spots];
  for (const item of spots) {
    const key = `${item.claimedBy} ${item.releasedBy}`;
    if (!seen.has(key)) single.push(item);
    seen.add(key);
  }
  return { ...work, steps, ...(work.spots === undefined ? {} : { spots: single }) };
}

/** Each step is followed once, with the longest of its lags, and never by itself. */
function linked(step: WorkStep, links: readonly { readonly step: string; readonly lag: number }[]): WorkStep {
  const { follows: _, ...rest } = step;
  const longest = new Map<string, number>();
  for (const link of links) {
    if (link.step !== step.id) longest.set(link.step, Math.max(link.lag, longest.get(link.step) ?? 0));
  }
  if (longest.size === 0) return rest;
  return {
    ...rest,
    follows: [...longest].map(([before, lag]) => (lag === 0 ? { step: before } : { step: before, lag })),
  };
}

/** What makes steps of several units, or of one, the same work: motions, loads and what is held. */
export function likenessOf({ motions, before, after, held, hand }: WorkStep): string {
  return JSON.stringify([
    motions.map(({ kind, object, us }) => [kind, object, us]),
    before,
    after,
    held?.object,
    held?.by,
    held?.becomes,
    hand === 'both',
  ]);
}

/** The step and the same step of the other units. */
export function alikeIn(work: Work, id: string): readonly WorkStep[] {
  const own = work.steps.find((step) => step.id === id);
  if (own === undefined) return [];
  const key = likenessOf(own);
  return work.steps.filter((step) => step.id === id || (step.unit !== own.unit && likenessOf(step) === key));
}

/** An id that is not taken yet. */
export function freshId(taken: ReadonlySet<string>, wish: string): string {
  if (!taken.has(wish)) return wish;
  for (let number = 2; ; number += 1) if (!taken.has(`${wish}-${number}`)) return `${wish}-${number}`;
}
