import { type Random, seededRandom } from '../../../ground/numerics/index.ts';
import { assignmentCost, type QuadraticAssignment } from './quadratic-assignment.ts';

export interface TabuWish {
  readonly seed: number;
  /** Assignments drawn by chance from which it starts anew. */
  readonly starts: number;
  /** Moves from each start. */
  readonly moves: number;
  /** Where the first start begins. */
  readonly known?: ArrayLike<number> | undefined;
  readonly stop?: (() => boolean) | undefined;
}

/**
 * A good assignment by tabu search with terms drawn by chance (robust tabu search, Taillard 1991, from memory), from several
 * starts. Two items change spots or one goes to a free spot, the best change that was not undone lately, even where it costs.
 * Broken rules cost more than everything else together. Undefined when none that keeps the rules was met.
 */
export function tabuAssignment(problem: QuadraticAssignment, wish: TabuWish): Int32Array | undefined {
  const random = seededRandom(wish.seed);
  const costs = costsOf(problem);
  let best: Int32Array | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let start = 0; start < wish.starts && wish.stop?.() !== true; start += 1) {
    const from =
      start === 0 && wish.known !== undefined
        ? Int32Array.from(wish.known)
        : drawn(problem.items, problem.spots, random);
    const found = oneRun(problem, costs, from, wish, random);
    const cost = assignmentCost(problem, found);
    if (cost < least) {
      least = cost;
      best = found;
    }
  }
  return best;
}

interface Costs {
  /** Flow there and back as one, where distances are the same both ways. */
  readonly pair: (item: number, spot: number, other: number, otherSpot: number) => number;
  readonly own: Float64Array;
}

function costsOf({ items, spots, flow, distance, linear, conflict }: QuadraticAssignment): Costs {
  let total = 1;
  const longest = distance.reduce((most, value) => Math.max(most, value), 0);
  for (const value of flow) total += value * longest;
  for (const value of linear) if (value !== Number.POSITIVE_INFINITY) total += Math.abs(value);
  const own = linear.map((value, index) => {
    const [item, spot] = [Math.floor(index / spots), index % spots];
    const self = (flow[item * items + item] as number) * (distance[spot * spots + spot] as number);
    return self + (value === Number.POSITIVE_INFINITY ? total : value);
  });
  const pair = (item: number, spot: number, other: number, otherSpot: number) =>
    (flow[item * items + other] as number) * (distance[spot * spots + otherSpot] as number) +
    (flow[other * items + item] as number) * (distance[otherSpot * spots + spot] as number) +
    (conflict?.(item, spot, other, otherSpot) === true ? total : 0);
  return { pair, own };
}

function drawn(items: number, spots: number, random: Random): Int32Array {
  const list = Int32Array.from({ length: spots }, (_, index) => index);
  for (let index = spots - 1; index > 0; index -= 1) {
    const other = Math.floor(random() * (index + 1));
    [list[index], list[other]] = [list[other] as number, list[index] as number];
  }
  return list.slice(0, items);
}

function oneRun(
  { items, spots }: QuadraticAssignment,
  { own, pair }: Costs,
  spotOf: Int32Array,
  { moves, stop }: TabuWish,
  random: Random,
): Int32Array {
  const itemAt = new Int32Array(spots).fill(-1);
  spotOf.forEach((spot, item) => {
    itemAt[spot] = item;
  });
  const freeAgain = new Int32Array(items * spots);
  // What each item would cost on each spot with all others where they are, kept up to date move by move.
  const table = own.slice();
  const add = (moved: number, spot: number, sign: 1 | -1) => {
    for (let item = 0; item < items; item += 1) {
      if (item === moved) continue;
      for (let to = 0; to < spots; to += 1) {
        const at = item * spots + to;
        table[at] = (table[at] as number) + sign * pair(item, to, moved, spot);
      }
    }
  };
  spotOf.forEach((spot, item) => {
    add(item, spot, 1);
  });
  const change = (item: number, to: number): number => {
    const from = spotOf[item] as number;
    const other = itemAt[to] as number;
    const alone = (table[item * spots + to] as number) - (table[item * spots + from] as number);
    if (other < 0) return alone;
    return (
      alone +
      (table[other * spots + from] as number) -
      (table[other * spots + to] as number) -
      pair(item, to, other, to) -
      pair(other, from, item, from) +
      pair(item, to, other, from) +
      pair(item, from, other, to)
    );
  };
  let [sum, least] = [0, 0];
  let best = spotOf.slice();
  for (let turn = 1; turn <= moves; turn += 1) {
    if ((turn & 63) === 0 && stop?.() === true) break;
    let [gain, chosen, target] = [Number.POSITIVE_INFINITY, -1, -1];
    for (let item = 0; item < items; item += 1) {
      for (let to = 0; to < spots; to += 1) {
        const [from, other] = [spotOf[item] as number, itemAt[to] as number];
        if (to === from || (other >= 0 && other < item)) continue;
        const delta = change(item, to);
        const barred =
          (freeAgain[item * spots + to] as number) > turn &&
          (other < 0 || (freeAgain[other * spots + from] as number) > turn);
        if (delta < gain && (!barred || sum + delta < least - 1e-9))
          [gain, chosen, target] = [delta, item, to];
      }
    }
    if (chosen < 0) continue;
    const [from, other] = [spotOf[chosen] as number, itemAt[target] as number];
    const term = () => turn + Math.ceil(spots * (0.9 + 0.2 * random()));
    freeAgain[chosen * spots + from] = term();
    if (other >= 0) freeAgain[other * spots + target] = term();
    add(chosen, from, -1);
    add(chosen, target, 1);
    if (other >= 0) {
      add(other, target, -1);
      add(other, from, 1);
      spotOf[other] = from;
    }
    spotOf[chosen] = target;
    itemAt[target] = chosen;
    itemAt[from] = other;
    sum += gain;
    if (sum < least - 1e-9) {
      least = sum;
      best = spotOf.slice();
    }
  }
  return best;
}
