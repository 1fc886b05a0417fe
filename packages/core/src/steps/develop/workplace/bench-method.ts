import { fail, micros, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import { timeText } from '../../../ground/units/index.ts';
import type { CycleKind, Instance, Schedule } from '../compose/index.ts';
import { shorterThan } from '../compose/index.ts';
import type { Work } from '../work/index.ts';
import { goodLayout } from './alternate.ts';
import { type LayoutLimits, type LayoutSpace, layoutSpace } from './bench-spots.ts';
import { noLayout, whyNone } from './best-places.ts';
import { type Domains, type LayoutTravel, layoutTravel } from './layout-travel.ts';
import { areaOf } from './working-areas.ts';

export interface BenchWish {
  readonly limits: LayoutLimits;
  /** The work at any layout as the problem that the composer solves. Moves may depend on places only where they begin and end. */
  readonly instanceAt: (work: Work) => Instance;
  /** `open` when left out. */
  readonly kind?: CycleKind | undefined;
  readonly seed: number;
  /** Layouts from which layout and method are improved in turn; 5 when left out. */
  readonly starts?: number | undefined;
  /** Layouts, whole or begun, that the proof may look at; 3,000 when left out. */
  readonly layouts?: number | undefined;
  /** States of the composer for each of them; 60,000 when left out. */
  readonly states?: number | undefined;
  readonly onBetter?: ((found: { readonly work: Work; readonly schedule: Schedule }) => void) | undefined;
  readonly stop?: (() => boolean) | undefined;
}

/** A layout with the method for it. */
export interface BenchMethod {
  readonly work: Work;
  readonly instance: Instance;
  readonly schedule: Schedule;
  /** No layout of these limits has a method of a shorter period. */
  readonly bound: number;
  readonly proven: boolean;
  /** Layouts, whole or begun, that the proof looked at. */
  readonly layouts: number;
  readonly words: string;
}

/**
 * Layout and method together. Least travel is not the least cycle, so both are improved in turn from several layouts, then
 * places are exchanged and moved with the composer as judge; and then the layouts are gone through as a tree, a branch left
 * as soon as even its least moves allow no method shorter than the best so far. The same seed gives the same answer.
 */
export function benchMethod(work: Work, wish: BenchWish): Result<BenchMethod, Finding> {
  const { limits, instanceAt, kind = 'open', onBetter } = wish;
  const space = layoutSpace(work, limits, ({ id, name }, at) =>
    usable(work, id, (hand) => areaOf({ name, at }, hand, limits.reach).reached),
  );
  const refused = whyNone(space, work, limits);
  if (refused !== undefined) return fail(refused);
  const travel = layoutTravel(work, space, limits.reach, instanceAt);
  const all: Domains = space.items.map((_, item) =>
    space.spots.flatMap((__, spot) => (space.allowed(item, spot) ? [spot] : [])),
  );
  if (travel.instanceFor(all) === undefined) return fail(finding('develop/steps-out-of-reach'));
  let best: { readonly spotOf: readonly number[]; readonly schedule: Schedule } | undefined;
  const take = (spotOf: readonly number[], schedule: Schedule) => {
    if (best !== undefined && schedule.period >= best.schedule.period) return;
    best = { spotOf, schedule };
    onBetter?.({ work: space.moved(spotOf), schedule });
  };
  goodLayout(work, space, travel, { ...wish, kind }, take);
  const first = best?.schedule.period;
  const proof = new LayoutTree(space, travel, { ...wish, kind }, take, first ?? never);
  const open = proof.run(all);
  const found = best as unknown as
    | { readonly spotOf: readonly number[]; readonly schedule: Schedule }
    | undefined;
  if (found === undefined) return fail(noLayout(space, open === Number.POSITIVE_INFINITY));
  const { period } = found.schedule;
  const proven = open >= period;
  const bound = proven ? period : Math.ceil(open);
  const better = space.moved(found.spotOf);
  // The modes are those that are within reach; the numbers of a schedule go with them.
  const instance = travel.instanceFor(found.spotOf.map((spot) => [spot])) ?? instanceAt(better);
  return ok({
    work: better,
    ...wholeModes(instanceAt(better), instance, found.schedule),
    bound,
    proven,
    layouts: proof.looked,
    words: proven
      ? 'On these spots, with hands that reach their places, no layout has a shorter method for this work with these times: the pair is proven.'
      : `Layout and method were found together; the pair is not proven. ${
          bound === 0
            ? 'The time was too short to say how short a cycle can be on these spots.'
            : `On these spots no pair has a cycle shorter than ${timeText(micros(bound), 'seconds')}.`
        }`,
  });
}

/** Some hand that a step asks for reaches the place. */
function usable(work: Work, place: string, reached: (hand: Hand) => boolean): boolean {
  return work.steps.every((step) => {
    const right = step.rightPlace ?? step.place;
    if (step.hand === 'both') {
      return (step.place !== place || reached('left')) && (right !== place || reached('right'));
    }
    if (step.place !== place) return true;
    return step.hand === 'either' ? reached('left') || reached('right') : reached(step.hand);
  });
}

/** Names the ways of the schedule by their numbers in the whole instance, which has also those that are out of reach. */
function wholeModes(
  whole: Instance,
  within: Instance,
  schedule: Schedule,
): { readonly instance: Instance; readonly schedule: Schedule } {
  const placed = schedule.placed.map((item) => {
    const mode = within.tasks[item.task]?.modes[item.mode];
    const found = whole.tasks[item.task]?.modes.findIndex(
      (other) => JSON.stringify(other) === JSON.stringify(mode),
    );
    return { ...item, mode: Math.max(0, found ?? 0) };
  });
  return { instance: whole, schedule: { ...schedule, placed } };
}

const never = Number.MAX_SAFE_INTEGER;

/** Has a life: the best period and the count of layouts change while it goes down. */
class LayoutTree {
  looked = 0;
  private readonly space: LayoutSpace;
  private readonly travel: LayoutTravel;
  private readonly wish: BenchWish & { readonly kind: CycleKind };
  private readonly take: (spotOf: readonly number[], schedule: Schedule) => void;
  private below: number;

  constructor(
    space: LayoutSpace,
    travel: LayoutTravel,
    wish: BenchWish & { readonly kind: CycleKind },
    take: (spotOf: readonly number[], schedule: Schedule) => void,
    below: number,
  ) {
    this.space = space;
    this.travel = travel;
    this.wish = wish;
    this.take = take;
    this.below = below;
  }

  /** The least period that what was left open may still have; infinite when nothing was. */
  run(all: Domains): number {
    return this.node(all, 0);
  }

  private node(domains: Domains, inherited: number): number {
    const { layouts = 3000, states = 60_000, stop, kind } = this.wish;
    if (domains.some((list) => list.length === 0)) return Number.POSITIVE_INFINITY;
    if (inherited >= this.below) return Number.POSITIVE_INFINITY;
    if (this.looked >= layouts || stop?.() === true) return inherited;
    this.looked += 1;
    const instance = this.travel.instanceFor(domains);
    if (instance === undefined) return Number.POSITIVE_INFINITY;
    const item = this.nextItem(domains);
    // A branch that is not refuted soon is cheaper to go into than to refute.
    const effort = item === undefined ? { states } : { states: Math.ceil(states / 15), width: 0 };
    const found = shorterThan(instance, { kind, below: this.below, ...effort, stop });
    if (found.schedule === undefined && found.proven) return Number.POSITIVE_INFINITY;
    const bound = Math.max(inherited, found.bound);
    if (item === undefined) {
      if (found.schedule !== undefined) {
        this.below = Math.min(this.below, found.schedule.period);
        this.take(
          domains.map(([spot]) => spot ?? 0),
          found.schedule,
        );
      }
      return found.proven ? Number.POSITIVE_INFINITY : bound;
    }
    let open = Number.POSITIVE_INFINITY;
    for (const spot of this.ordered(domains, item)) {
      open = Math.min(open, this.node(this.fixed(domains, item, spot), bound));
    }
    return open;
  }

  /** The place with the fewest spots left among those that have more than one. */
  private nextItem(domains: Domains): number | undefined {
    let chosen: number | undefined;
    domains.forEach((list, item) => {
      if (list.length > 1 && list.length < (domains[chosen ?? -1]?.length ?? Number.POSITIVE_INFINITY))
        chosen = item;
    });
    return chosen;
  }

  /** Spots near the places that stay first: good layouts early make the rest short. */
  private ordered(domains: Domains, item: number): readonly number[] {
    const { spots } = this.space;
    const away = (spot: number) => {
      const { x, y } = spots[spot]?.at ?? { x: 0, y: 0 };
      return Math.hypot(x, y - 200);
    };
    return [...(domains[item] ?? [])].sort((a, b) => away(a) - away(b) || a - b);
  }

  private fixed(domains: Domains, item: number, spot: number): Domains {
    return domains.map((list, other) =>
      other === item
        ? [spot]
        : list.filter((its) => its !== spot && !this.space.conflict(item, spot, other, its)),
    );
  }
}
