import { ok, type Result } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import { type Orders, ordersOf } from '../compose/index.ts';
import type { Work, WorkPlace } from '../work/index.ts';
import {
  type ArrangeWish,
  areaOf,
  arrangeSpots,
  benchSize,
  figureAtOnce,
  type LayoutSpace,
  layoutSpace,
  type MovedPlace,
  movedBetween,
  type ReachChoice,
  reachOfBench,
  roomOf,
} from '../workplace/index.ts';
import type { WorkChange } from './change.ts';
import { changedBy } from './rules.ts';
import { type DevelopedMethod, type DevelopWish, developed } from './worth.ts';

/** Best places of a work with changes. Times in microseconds. */
export interface ArrangedChanges {
  /** Places of the work itself, before its changes. */
  readonly moved: readonly MovedPlace[];
  /** What then stands elsewhere once the changes are made, places that came with them included. */
  readonly follows: readonly MovedPlace[];
  /** With the changes made again after the move. */
  readonly method: DevelopedMethod;
  readonly words: string;
  readonly spots: number;
}

export interface ArrangedChangesWish extends Omit<ArrangeWish, 'onBetter'> {
  readonly onBetter?: ((method: DevelopedMethod) => void) | undefined;
}

/** States and rounds of the composer for each layout that is judged by it. Ours. */
const composerStates = 60_000;
const composerRounds = 12;
/** Layouts that looked best by known orders and are composed anew before the search ends. Ours. */
const secondLooks = 6;
/** So many orders of methods are timed at every layout. Ours. */
const mostOrders = 6;
/** Microseconds; what is nearer is no improvement. */
const noticeable = 1;

interface Layout {
  readonly spotOf: Int32Array;
  readonly changed: Work;
  /** For a unit, in an order that is known. */
  readonly unitTime: number;
}

/**
 * Better places of a work with changes taken. The changes are made again for every layout, so that places that came with a
 * change follow as they will when the places are moved. One place is moved, or two are exchanged, at a time as long as that
 * is shorter: layouts are timed in known orders and the best of them composed. Nothing is proven of the pair. Undefined when
 * the changes cannot be made together.
 */
export function arrangedWith(
  work: Work,
  changes: readonly WorkChange[],
  wish: ArrangedChangesWish,
): Result<ArrangedChanges, Finding> | undefined {
  const present = changedBy(work, changes);
  if (present === undefined) return undefined;
  const first = composed(present, wish);
  if (!first.ok) return first;
  const reach = reachOfBench(work.bench);
  const spots = arrangeSpots(work, wish.step);
  const reached = ({ name }: WorkPlace, at: { readonly x: number; readonly y: number }) =>
    isReached({ name, at }, reach);
  const space = layoutSpace(work, { reach, spots, bench: benchSize(work) }, reached);
  const search = new Descent(space, changes, present, reach, wish);
  const { method, spotOf } = search.from(first.value);
  const moved = movedBetween(work, space.moved(spotOf));
  const words =
    space.items.length === 0
      ? 'No place of the work may be moved: all of its bins, tools and exits are marked as staying.'
      : search.ended
        ? 'The time was up before the search ended; other places may do better still.'
        : 'Found by moving one place or exchanging two at a time, with the changes made again each time; other places may do better still.';
  const follows = movedBetween(present, method.work);
  return ok({ moved, follows, method, words, spots: spots.length });
}

class Descent {
  readonly #space: LayoutSpace;
  readonly #changes: readonly WorkChange[];
  readonly #wish: ArrangedChangesWish;
  readonly #orders: Orders[] = [];
  readonly #allowed: (changed: Work) => boolean;
  ended = false;

  constructor(
    space: LayoutSpace,
    changes: readonly WorkChange[],
    present: Work,
    reach: ReachChoice,
    wish: ArrangedChangesWish,
  ) {
    this.#space = space;
    this.#changes = changes;
    this.#wish = wish;
    this.#allowed = allowedAfter(present, reach);
  }

  from(first: DevelopedMethod): { readonly method: DevelopedMethod; readonly spotOf: Int32Array } {
    let [method, spotOf] = [first, this.#space.now];
    this.#know(first);
    for (let next = this.#better(spotOf, method); next !== undefined; next = this.#better(spotOf, method)) {
      ({ method, spotOf } = next);
      this.#wish.onBetter?.(method);
    }
    return { method, spotOf };
  }

  /** The first of the layouts that look best whose method is shorter; undefined when none is. */
  #better(from: Int32Array, { unitTime }: DevelopedMethod) {
    const near = this.#near(from).sort((a, b) => a.unitTime - b.unitTime);
    const shorter = near.filter((layout) => layout.unitTime < unitTime - noticeable).length;
    for (const { changed, spotOf } of near.slice(0, Math.max(shorter, secondLooks))) {
      if (this.#over()) return undefined;
      const made = composed(changed, this.#wish);
      if (!made.ok || made.value.unitTime >= unitTime - noticeable) continue;
      this.#know(made.value);
      return { method: made.value, spotOf };
    }
    return undefined;
  }

  /** Every layout in which one place stands elsewhere, or two have changed places, timed in the orders that are known. */
  #near(from: Int32Array): Layout[] {
    const { items, spots, allowed, conflict } = this.#space;
    const found: Layout[] = [];
    const look = (spotOf: Int32Array, changedItems: readonly number[]) => {
      if (this.#over()) return;
      const fits = changedItems.every((item) => {
        const spot = spotOf[item] ?? -1;
        return (
          allowed(item, spot) &&
          items.every((_, other) => other === item || !conflict(item, spot, other, spotOf[other] ?? -1))
        );
      });
      const layout = fits ? this.#timed(spotOf) : undefined;
      if (layout !== undefined) found.push(layout);
    };
    items.forEach((_, item) => {
      if ((from[item] ?? -1) < 0) return;
      spots.forEach((_spot, spot) => {
        if (spot !== from[item]) look(from.with(item, spot), [item]);
      });
      for (let other = item + 1; other < items.length; other += 1) {
        const [a, b] = [from[item] ?? -1, from[other] ?? -1];
        if (a >= 0 && b >= 0) look(from.with(item, b).with(other, a), [item, other]);
      }
    });
    return found;
  }

  #timed(spotOf: Int32Array): Layout | undefined {
    const changed = changedBy(this.#space.moved(spotOf), this.#changes);
    if (changed === undefined || !this.#allowed(changed)) return undefined;
    const { readings, table, library } = this.#wish;
    const figure = figureAtOnce(changed, readings, this.#orders, { table, library });
    return figure === undefined ? undefined : { spotOf, changed, unitTime: figure.unitTime };
  }

  #know({ instance, composed: { schedule } }: DevelopedMethod): void {
    this.#orders.unshift(ordersOf(instance, schedule));
    this.#orders.length = Math.min(this.#orders.length, mostOrders);
  }

  #over(): boolean {
    this.ended ||= this.#wish.stop?.() === true;
    return this.ended;
  }
}

function composed(work: Work, wish: ArrangedChangesWish): Result<DevelopedMethod, Finding> {
  const { readings, table, library, kind, seed, stop } = wish;
  const how: DevelopWish = { readings, table, library, kind, seed, stop };
  return developed(work, { ...how, rounds: composerRounds, states: composerStates });
}

const isReached = (
  place: { readonly name: string; readonly at: { readonly x: number; readonly y: number } },
  reach: ReachChoice,
) => areaOf(place, 'left', reach).reached || areaOf(place, 'right', reach).reached;

/** Changes put places where they will; a layout may not add an overlap, or a place out of reach, to those there are. */
function allowedAfter(present: Work, reach: ReachChoice): (changed: Work) => boolean {
  const faultsOf = ({ places }: Work) =>
    new Set(
      places.flatMap((place, index) => {
        const { at, id, name } = place;
        if (at === undefined) return [];
        const overlaps = places
          .slice(index + 1)
          .flatMap((other) => (overlap(place, other) ? [`${id} ${other.id}`] : []));
        return isReached({ name, at }, reach) ? overlaps : [...overlaps, id];
      }),
    );
  const known = faultsOf(present);
  return (changed) => [...faultsOf(changed)].every((fault) => known.has(fault));
}

function overlap(one: WorkPlace, other: WorkPlace): boolean {
  if (one.at === undefined || other.at === undefined) return false;
  const [size, room] = [roomOf(one), roomOf(other)];
  return (
    Math.abs(one.at.x - other.at.x) < (size.x + room.x) / 2 &&
    Math.abs(one.at.y - other.at.y) < (size.y + room.y) / 2
  );
}
