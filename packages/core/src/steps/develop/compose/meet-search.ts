import { backwardTables } from './backward.ts';
import { greatestMean, halfNever } from './cycle-mean.ts';
import { LayerSearch, type SearchResult, type SearchWish } from './layer-search.ts';
import { BOUND, FIRST, lastRole, NODE } from './layer-store.ts';
import { impossible, setBit, type Tables } from './tables.ts';

/**
 * Searches an open cycle from both ends. How the work is shared out between the hands makes most of the states, and their
 * number grows with every task; two searches of half the depth and a joining of what meets have far fewer. Each of the
 * first tasks in the order of starts is met by what is best after it, so nothing is lost.
 */
export class MeetSearch {
  private readonly t: Tables;
  private readonly fore: LayerSearch;
  private readonly back: LayerSearch;
  private readonly judge: LayerSearch;
  private readonly matrix: Float64Array;

  constructor(tables: Tables) {
    if (tables.kind === 'closed') throw new RangeError('a closed cycle is searched from its beginning only');
    this.t = tables;
    this.fore = new LayerSearch(tables);
    this.back = new LayerSearch(backwardTables(tables));
    this.judge = new LayerSearch(tables);
    this.matrix = new Float64Array(tables.columns ** 2);
  }

  search(wish: SearchWish): SearchResult {
    const { fore, back, t } = this;
    fore.open();
    back.open();
    const { before } = wish;
    const wishBack = before === undefined ? wish : { ...wish, before: turnedOrder(t, before) };
    let [states, bound, whole] = [0, 0, true];
    while (fore.depth + back.depth < t.count) {
      const side = fore.layerSize <= back.layerSize ? fore : back;
      const done = side.step(side === fore ? wish : wishBack, wish.below, states);
      if (done === 'dropped') whole = false;
      if (done === 'stopped')
        return {
          period: undefined,
          ways: undefined,
          complete: false,
          bound: Math.min(bound, wish.below),
          states,
        };
      states += side.layerSize;
      if (whole) bound = Math.max(bound, side.leastBound(wish.below));
    }
    const { best, joined } = this.join(wish);
    const complete = joined && whole;
    if (best === undefined)
      return { period: undefined, ways: undefined, complete, bound: complete ? wish.below : bound, states };
    return { ...best, complete, bound: complete ? best.period : Math.min(bound, best.period), states };
  }

  private join({ below, stop }: Pick<SearchWish, 'below' | 'stop'>) {
    let best: { readonly period: number; readonly ways: readonly number[] } | undefined;
    let least = below;
    const byTasks = this.backByTasks();
    const { fore } = this;
    for (let index = 0; index < fore.layerSize; index += 1) {
      const one = (fore.slots[index] as number) * fore.stride;
      if ((index & 255) === 255 && stop?.() === true) return { best, joined: false };
      if ((fore.layer[one + fore.LAST + BOUND] as number) >= least) continue;
      const group = byTasks.get(this.tasksOf(fore, one, false));
      if (group === undefined) continue;
      const [left, right] = [fore.layer[one + fore.END] as number, this.rightEnd(fore, one)];
      // The left hand's rest grows along the group, so what comes after the last that fits does not fit either.
      for (let at = lastBelow(group.left, least - left); at >= 0; at -= 1) {
        // None of those before it leaves the right hand less.
        if ((group.leastRight[at] as number) + right >= least) break;
        const other = group.states[at] as number;
        if (!this.mayBeShorter(one, other, least) || this.periodAcross(one, other) >= least) continue;
        const ways = this.waysOf(one, other);
        const period = this.judge.replay(ways);
        if (period >= least) continue;
        least = period;
        best = { period, ways };
      }
    }
    return { best, joined: true };
  }

  private rightEnd({ layer, END }: LayerSearch, state: number): number {
    return layer[state + END + this.t.columns + 1] as number;
  }

  private waysOf(one: number, other: number): number[] {
    const { fore, back } = this;
    const after = back.waysTo(back.layer[other + back.LAST + NODE] as number);
    return [...fore.waysTo(fore.layer[one + fore.LAST + NODE] as number), ...after.reverse()];
  }

  /** The done set, or of a search from behind its complement, as a number or, of very many tasks, a text. */
  private tasksOf({ layer }: LayerSearch, state: number, turned: boolean): number | string {
    const { count, words } = this.t;
    const word = (index: number) => {
      const rest = count - index * 32;
      const all = rest >= 32 ? -1 : (1 << rest) - 1;
      const bits = layer[state + index] as number;
      return (turned ? ~bits & all : bits) >>> 0;
    };
    if (words === 1) return word(0);
    if (count <= 52) return word(1) * 2 ** 32 + word(0);
    return Array.from({ length: words }, (_, index) => word(index)).join();
  }

  private backByTasks(): Map<number | string, Group> {
    const { back } = this;
    const found = new Map<number | string, number[]>();
    for (let index = 0; index < back.layerSize; index += 1) {
      const state = (back.slots[index] as number) * back.stride;
      const key = this.tasksOf(back, state, true);
      const list = found.get(key);
      if (list === undefined) found.set(key, [state]);
      else list.push(state);
    }
    const leftOf = (state: number) => back.layer[state + back.END] as number;
    return new Map(
      [...found].map(([key, list]) => {
        const states = list.sort((a, b) => leftOf(a) - leftOf(b) || a - b);
        let least = Number.POSITIVE_INFINITY;
        const leastRight = states.map((state) => {
          least = Math.min(least, this.rightEnd(back, state));
          return least;
        });
        return [key, { states, left: states.map(leftOf), leastRight }];
      }),
    );
  }

  /** A quick look at each hand by itself. */
  private mayBeShorter(one: number, other: number, below: number): boolean {
    const { fore, back, t } = this;
    for (let side = 0; side < 2; side += 1) {
      const hand = side as 0 | 1;
      const last = lastRole(fore.layer[one + fore.LAST] as number, side);
      const next = lastRole(back.layer[other + back.LAST] as number, side);
      if (last < 0 || next < 0) continue;
      const setup = t.setup[hand][last * t.roles[hand] + next] as number;
      if (setup >= impossible) return false;
      const wrap = this.wrapOf(hand, one, other);
      if (wrap >= impossible) return false;
      const at = side * t.columns + side;
      const ends =
        (fore.layer[one + fore.END + at] as number) + (back.layer[other + back.END + at] as number);
      if (ends + setup + wrap >= below) return false;
    }
    return true;
  }

  private wrapOf(hand: 0 | 1, one: number, other: number): number {
    const { fore, back, t } = this;
    let first = lastRole(fore.layer[one + fore.LAST + FIRST] as number, hand);
    let last = lastRole(back.layer[other + back.LAST + FIRST] as number, hand);
    if (first < 0) first = lastRole(back.layer[other + back.LAST] as number, hand);
    if (last < 0) last = lastRole(fore.layer[one + fore.LAST] as number, hand);
    return first < 0 || last < 0 ? 0 : (t.wrap[hand][last * t.roles[hand] + first] as number);
  }

  /** The period that the two halves have together, or less: what is told exactly only by running through it. */
  private periodAcross(one: number, other: number): number {
    const { fore, back, t, matrix } = this;
    const { columns } = t;
    matrix.fill(Number.NEGATIVE_INFINITY);
    this.across(one + fore.CLOCK, other + back.CLOCK, 0);
    for (let side = 0; side < 2; side += 1) {
      const hand = side as 0 | 1;
      const last = lastRole(fore.layer[one + fore.LAST] as number, side);
      const next = lastRole(back.layer[other + back.LAST] as number, side);
      const [end, begin] = [one + fore.END + side * columns, other + back.END + side * columns];
      if (last >= 0 && next >= 0) {
        this.across(end, begin, t.setup[hand][last * t.roles[hand] + next] as number);
      } else if (next >= 0) this.from(side, begin);
      if (last >= 0) this.acrossLater(last, hand, end, other);
    }
    for (let stay = 0; stay < t.stays; stay += 1)
      this.from(t.stayColumn[stay] as number, other + back.STAY + stay * columns);
    this.acrossLooks(one, other);
    for (let side = 0; side < 2; side += 1) {
      const hand = side as 0 | 1;
      const wrap = this.wrapOf(hand, one, other);
      if (wrap >= impossible) return Number.POSITIVE_INFINITY;
      const ended = lastRole(back.layer[other + back.LAST] as number, side) < 0;
      if (!ended)
        for (let c = 0; c < columns; c += 1)
          matrix[c * columns + side] = (matrix[c * columns + side] as number) + wrap;
      else if (lastRole(fore.layer[one + fore.LAST] as number, side) >= 0)
        this.to(side, one + fore.END + side * columns, wrap);
    }
    for (let stay = 0; stay < t.stays; stay += 1)
      this.to(t.stayColumn[stay] as number, one + fore.STAY + stay * columns, 0);
    return Math.ceil(greatestMean(matrix, columns) - 1e-6);
  }

  /** Paths through a moment of the first half and one of the second. */
  private across(end: number, begin: number, add: number): void {
    const { fore, back, matrix } = this;
    const { columns } = this.t;
    for (let c = 0; c < columns; c += 1) {
      const value = fore.layer[end + c] as number;
      if (value <= halfNever) continue;
      for (let k = 0; k < columns; k += 1) {
        const rest = back.layer[begin + k] as number;
        if (rest > halfNever && value + rest + add > (matrix[c * columns + k] as number))
          matrix[c * columns + k] = value + rest + add;
      }
    }
  }

  /** Paths that begin in the second half. */
  private from(column: number, begin: number): void {
    const { back, matrix } = this;
    const { columns } = this.t;
    for (let k = 0; k < columns; k += 1) {
      const value = back.layer[begin + k] as number;
      if (value > halfNever)
        matrix[column * columns + k] = Math.max(matrix[column * columns + k] as number, value);
    }
  }

  /** Paths that end in the first half. */
  private to(column: number, end: number, add: number): void {
    const { fore, matrix } = this;
    const { columns } = this.t;
    for (let c = 0; c < columns; c += 1) {
      const value = fore.layer[end + c] as number;
      if (value > halfNever)
        matrix[c * columns + column] = Math.max(matrix[c * columns + column] as number, value + add);
    }
  }

  /** What a hand did last may hold back later tasks of the other one. */
  private acrossLater(last: number, hand: 0 | 1, end: number, other: number): void {
    const { back, t } = this;
    const slot = back.t.lagSlot[t.roleTask[hand][last] as number] as number;
    if (slot >= 0 && this.isPending(back, other, slot))
      this.across(end, other + back.SLOT + slot * t.columns, 0);
  }

  private acrossLooks(one: number, other: number): void {
    const { fore, back, t } = this;
    for (let look = 0; look < t.looks; look += 1) {
      if (!this.isPending(fore, one, look)) continue;
      for (const later of t.apart[look] ?? []) {
        if (!this.isPending(back, other, later)) continue;
        const [end, begin] = [one + fore.SLOT + look * t.columns, other + back.SLOT + later * t.columns];
        this.across(end, begin, -t.gazeGap);
      }
    }
  }

  private isPending({ layer, PENDING }: LayerSearch, state: number, slot: number): boolean {
    return (((layer[state + PENDING + (slot >> 5)] as number) >>> (slot & 31)) & 1) === 1;
  }
}

/** States from behind with the same tasks, those first whose left hand has least left. */
interface Group {
  readonly states: readonly number[];
  readonly left: readonly number[];
  /** The least that the right hand has left in a state or one before it. */
  readonly leastRight: readonly number[];
}

/** Position of the last number below a limit in a list that does not fall, −1 for none. */
function lastBelow(sorted: readonly number[], limit: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] as number) < limit) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** What must be done before each task, told as what must be done after each. */
function turnedOrder({ count, words }: Tables, before: Int32Array): Int32Array {
  const after = new Int32Array(before.length);
  for (let task = 0; task < count; task += 1) {
    for (let earlier = 0; earlier < count; earlier += 1) {
      const bits = before[task * words + (earlier >> 5)] as number;
      if (((bits >>> (earlier & 31)) & 1) === 1) setBit(after, earlier * words, task);
    }
  }
  return after;
}
