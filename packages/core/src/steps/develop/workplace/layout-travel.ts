import type { Hand } from '../../../ground/study/index.ts';
import type { Instance, Mode } from '../compose/index.ts';
import type { Work } from '../work/index.ts';
import type { LayoutSpace } from './bench-spots.ts';
import type { ReachChoice } from './people.ts';
import { areaOf } from './working-areas.ts';

/** Which spots each movable place may still take; one each in a whole layout. */
export type Domains = readonly (readonly number[])[];

/** What the composer is to solve for any layout, without asking for the times of each layout anew. */
export interface LayoutTravel {
  /**
   * The instance of a layout; of an open layout one whose every move is the least among the layouts that are left, so that no
   * method of any of them is shorter. Undefined when a step is left without a hand that reaches it.
   */
  readonly instanceFor: (domains: Domains) => Instance | undefined;
}

const hands = ['left', 'right'] as const;

/**
 * Times of moves between all pairs of spots, taken from instances of sample layouts: item i stands on spot (a·i + b) modulo a
 * prime, which over all a and b puts every two items on every two spots exactly once.
 */
export function layoutTravel(
  work: Work,
  space: LayoutSpace,
  reach: ReachChoice,
  instanceAt: (work: Work) => Instance,
): LayoutTravel {
  const { items, spots } = space;
  const [places, count] = [work.places.length, spots.length];
  const itemOf = work.places.map(({ id }) => items.findIndex((item) => item.id === id));
  const located = (place: number, spot: number) =>
    (itemOf[place] as number) < 0 ? place : places + (itemOf[place] as number) * count + spot;
  const size = places + items.length * count;
  const time = Array.from({ length: 4 }, () => new Int32Array(size * size));
  const apart = new Uint8Array(size * size);
  const prime = primeFrom(Math.max(count, items.length, 2));
  let base: Instance | undefined;
  for (let a = 1; a < prime; a += 1) {
    for (let b = 0; b < prime; b += 1) {
      const spotOf = items.map((_, item) => (a * item + b) % prime);
      const real = Int32Array.from(spotOf, (spot, item) =>
        spot < count ? spot : (space.now[item] as number),
      );
      const sample = instanceAt(space.moved(real));
      base ??= sample;
      const at = work.places.map((_, place) => {
        const spot = spotOf[itemOf[place] as number] ?? 0;
        return spot < count ? located(place, spot) : -1;
      });
      record(sample, at, size, time, apart);
    }
  }
  const start = base ?? instanceAt(work);
  const reached = hands.map((hand) => {
    const table = new Uint8Array(size);
    const judge = (place: number, spot: number) => {
      const { name, at: own } = work.places[place] ?? { name: '', at: undefined };
      const at = (itemOf[place] as number) < 0 ? own : spots[spot]?.at;
      return at === undefined || areaOf({ name, at }, hand, reach).reached ? 1 : 0;
    };
    work.places.forEach((_, place) => {
      for (let spot = 0; spot < ((itemOf[place] as number) < 0 ? 1 : count); spot += 1)
        table[located(place, spot)] = judge(place, spot);
    });
    return table;
  });
  return {
    instanceFor: (domains) => {
      const spotsOf = (place: number) => domains[itemOf[place] as number] ?? [0];
      const locations = work.places.map((_, place) => spotsOf(place).map((spot) => located(place, spot)));
      const together = (from: number, a: number, to: number, b: number): boolean => {
        const [one, other] = [itemOf[from] as number, itemOf[to] as number];
        if (from === to) return a === b;
        if (one < 0 || other < 0) return true;
        const [spot, otherSpot] = [spotsOf(from)[a] as number, spotsOf(to)[b] as number];
        return spot !== otherSpot && !space.conflict(one, spot, other, otherSpot);
      };
      const pairs = (visit: (from: number, to: number, one: number, other: number) => void) =>
        locations.forEach((list, from) => {
          locations.forEach((others, to) => {
            list.forEach((one, a) => {
              others.forEach((other, b) => {
                if (together(from, a, to, b)) visit(from, to, one, other);
              });
            });
          });
        });
      const least = time.map(() => new Int32Array(places * places).fill(2 ** 29));
      const far = new Uint8Array(places * places).fill(1);
      pairs((from, to, one, other) => {
        const at = from * places + to;
        least.forEach((table, index) => {
          table[at] = Math.min(table[at] as number, time[index]?.[one * size + other] as number);
        });
        if (apart[one * size + other] === 0) far[at] = 0;
      });
      return withTables(start, places, least, far, (hand, place) =>
        (locations[place] ?? []).some((location) => reached[hand === 'left' ? 0 : 1]?.[location] === 1),
      );
    },
  };
}

function record(
  { travel, apart, loads }: Instance,
  at: readonly number[],
  size: number,
  time: readonly Int32Array[],
  apartAt: Uint8Array,
): void {
  at.forEach((one, from) => {
    at.forEach((other, to) => {
      if (one < 0 || other < 0) return;
      const where = one * size + other;
      hands.forEach((hand, side) => {
        (time[side * 2] as Int32Array)[where] = travel(hand, from, to, 0);
        (time[side * 2 + 1] as Int32Array)[where] = loads.length > 1 ? travel(hand, from, to, 1) : 0;
      });
      apartAt[where] = apart(from, to) ? 1 : 0;
    });
  });
}

function withTables(
  base: Instance,
  places: number,
  least: readonly Int32Array[],
  far: Uint8Array,
  reaches: (hand: Hand, place: number) => boolean,
): Instance | undefined {
  const can = ({ left, right }: Mode) =>
    (left === undefined || reaches('left', left.place)) &&
    (right === undefined || reaches('right', right.place));
  const tasks = base.tasks.map((task) => ({ ...task, modes: task.modes.filter(can) }));
  if (tasks.some(({ modes }) => modes.length === 0)) return undefined;
  return {
    ...base,
    tasks,
    travel: (hand, from, to, load) =>
      least[(hand === 'left' ? 0 : 2) + (load === 0 ? 0 : 1)]?.[from * places + to] ?? 0,
    apart: (one, other) => far[one * places + other] === 1,
  };
}

function primeFrom(least: number): number {
  for (let number = least; ; number += 1) {
    let divisor = 2;
    while (divisor * divisor <= number && number % divisor !== 0) divisor += 1;
    if (divisor * divisor > number) return number;
  }
}
