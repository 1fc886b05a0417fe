import { type SingleBound, singleBounds } from './bounds.ts';
import { greatestMean, halfNever, never } from './cycle-mean.ts';
import { forcedWork, mayBegin } from './hand-work.ts';
import { BOUND, FIRST, FORCED, LayerStore, lastRole, MORE, NODE, REST, TRAVEL, WAY } from './layer-store.ts';
import { impossible, type Tables } from './tables.ts';
import { fullFollowers, leastUntil, type Waiting, waitingOf } from './waiting.ts';

export interface SearchWish {
  /** Only cycles shorter than this are looked for. */
  readonly below: number;
  /** States kept on each layer; the search proves something only when none was dropped. */
  readonly width: number;
  /** States kept in all before it gives up. */
  readonly most: number;
  /** Ways that may be used (1) and tasks that must be done before each, where these are not those of the instance. */
  readonly allowed?: Uint8Array | undefined;
  readonly before?: Int32Array | undefined;
  /**
   * Of the cycles shorter than `below` the one of least travel is wanted instead of the shortest, if it travels less than
   * this.
   */
  readonly travelBelow?: number | undefined;
  /** Called now and then; true ends the search. */
  readonly stop?: (() => boolean) | undefined;
}

export interface SearchResult {
  readonly period: number | undefined;
  /** Ways in the order in which they start. */
  readonly ways: readonly number[] | undefined;
  /** Nothing was dropped: there is no cycle shorter than the one found, or than `below`. */
  readonly complete: boolean;
  /** No cycle of this search is shorter. */
  readonly bound: number;
  readonly states: number;
}

/**
 * Commits one task after the other in the order in which they start; layer d holds what is left of all ways to start d
 * tasks. Because nothing starts before the task committed last, everything that ended earlier is forgotten: a state is
 * the tasks done, the last role of each hand, and three moments (the last start and the end of each hand) seen from every
 * resource that comes again in the next cycle (its column), with what a look or a process still holds back. Of states with
 * the same tasks and last roles one is dropped when another is no later in anything.
 */
export class LayerSearch extends LayerStore {
  private readonly start: Int32Array;
  private readonly finish: Int32Array;
  private readonly forced: readonly [Int32Array, Int32Array];
  private readonly waiting: Waiting | undefined;
  private readonly fullNext: readonly [readonly (readonly number[])[], readonly (readonly number[])[]];
  private readonly begin: readonly [Uint8Array, Uint8Array];
  depth = 0;
  /** What travels as far as this is not followed. */
  protected mostTravel = Number.POSITIVE_INFINITY;
  /** States gone on from, to ask now and then whether to stop. */
  private ticks = 0;

  constructor(tables: Tables) {
    super(tables);
    this.start = new Int32Array(tables.columns);
    this.finish = new Int32Array(tables.columns);
    this.forced = [forcedWork(tables, 0), forcedWork(tables, 1)];
    this.waiting = waitingOf(tables);
    this.fullNext = [fullFollowers(tables, 0), fullFollowers(tables, 1)];
    this.begin = [mayBegin(tables, 0), mayBegin(tables, 1)];
  }

  search(wish: SearchWish): SearchResult {
    const { count } = this.t;
    this.open();
    this.weighs = wish.travelBelow === undefined ? 'nothing' : 'travel';
    let travelBelow = wish.travelBelow ?? Number.POSITIVE_INFINITY;
    this.mostTravel = travelBelow;
    let [below, complete] = [wish.below, true];
    let [kept, bound] = [0, 0];
    while (this.depth < count - 1) {
      if (complete) bound = Math.max(bound, this.leastBound(below));
      const done = this.step(wish, below, kept);
      kept += this.layerSize;
      if (done === 'stopped') return this.result(undefined, false, bound, kept, below);
      if (done === 'dropped') complete = false;
    }
    let best: Ended | undefined;
    this.clearNext();
    for (let index = 0; index < this.layerSize; index += 1) {
      const state = (this.slots[index] as number) * this.stride;
      const found = this.finishAll(state, wish, below, travelBelow);
      if (found === undefined) continue;
      best = found;
      if (this.weighs === 'travel') travelBelow = found.travel;
      else below = found.period;
    }
    return this.result(best, complete, complete ? below : bound, kept, below);
  }

  /** Back to before the first task. */
  open(): void {
    const { t, stride } = this;
    this.layer.fill(0, 0, stride);
    this.layer.fill(never, this.CLOCK, this.PENDING);
    this.slots = new Int32Array(1);
    this.layerSize = 1;
    this.layer[this.LAST + REST] = t.duals.cost.reduce((sum, cost) => sum + cost, 0);
    for (const side of [0, 1] as const)
      this.layer[this.LAST + FORCED + side] = this.forced[side].reduce((sum, work) => sum + work, 0);
    this.nodes = 1;
    this.depth = 0;
  }

  /** One more task after every state of the layer. `before` are the states kept so far. */
  step(wish: SearchWish, below: number, before: number): 'whole' | 'dropped' | 'stopped' {
    this.clearNext();
    for (let index = 0; index < this.layerSize; index += 1) {
      const state = (this.slots[index] as number) * this.stride;
      if ((this.layer[state + this.LAST + BOUND] as number) < below) this.expand(state, wish, below);
      this.ticks += 1;
      if ((this.ticks & 127) !== 0) continue;
      if (before + this.nextAlive > wish.most || wish.stop?.() === true) return 'stopped';
    }
    this.depth += 1;
    return this.closeLayer(wish.width) ? 'dropped' : 'whole';
  }

  /** The period when these ways start in this order; infinite when that cannot be. */
  replay(ways: readonly number[]): number {
    const { stride } = this;
    this.open();
    this.clearNext();
    const slot = this.take();
    for (const [position, way] of ways.entries()) {
      const task = this.t.wayTask[way] as number;
      if (!this.startOf(0, task, way)) return Number.POSITIVE_INFINITY;
      this.build(0, task, way, slot * stride);
      if (this.pendingWords > 0) this.buildPending(0, task, slot * stride);
      if (position < ways.length - 1)
        this.layer.set(this.next.subarray(slot * stride, (slot + 1) * stride), 0);
    }
    return this.periodOf(slot * stride);
  }

  /** Bounds of every cycle that rest on one thing each, the largest first. */
  bounds(): readonly SingleBound[] {
    const sum = (work: Int32Array) => work.reduce((all, one) => all + one, 0);
    return singleBounds(this.t, [sum(this.forced[0]), sum(this.forced[1])]);
  }

  /** No cycle at all is shorter. */
  rootBound(): number {
    return this.bounds()[0]?.bound ?? 0;
  }

  private result(
    best: Ended | undefined,
    complete: boolean,
    bound: number,
    states: number,
    below: number,
  ): SearchResult {
    const least = Math.min(bound, below);
    if (best === undefined) return { period: undefined, ways: undefined, complete, bound: least, states };
    const ways = [...this.waysTo(best.node), best.way];
    return { period: best.period, ways, complete, bound: least, states };
  }

  private expand(state: number, wish: SearchWish, below: number): void {
    const { count, wayFrom } = this.t;
    const { layer, words } = this;
    const before = wish.before ?? this.t.before;
    for (let task = 0; task < count; task += 1) {
      if ((((layer[state + (task >> 5)] as number) >>> (task & 31)) & 1) === 1) continue;
      let open = true;
      for (let word = 0; word < words; word += 1) {
        if (((before[task * words + word] as number) & ~(layer[state + word] as number)) !== 0) open = false;
      }
      if (!open) continue;
      const last = wayFrom[task + 1] as number;
      for (let way = wayFrom[task] as number; way < last; way += 1) {
        if (wish.allowed !== undefined && wish.allowed[way] === 0) continue;
        if (this.startOf(state, task, way)) this.commit(state, task, way, below);
      }
    }
  }

  private finishAll(state: number, wish: SearchWish, limit: number, mostTravel: number): Ended | undefined {
    const { count, wayFrom } = this.t;
    let [below, travelBelow] = [limit, mostTravel];
    let best: Ended | undefined;
    for (let task = 0; task < count; task += 1) {
      if ((((this.layer[state + (task >> 5)] as number) >>> (task & 31)) & 1) === 1) continue;
      for (let way = wayFrom[task] as number; way < (wayFrom[task + 1] as number); way += 1) {
        if (wish.allowed !== undefined && wish.allowed[way] === 0) continue;
        if (!this.startOf(state, task, way)) continue;
        const slot = this.take();
        this.build(state, task, way, slot * this.stride);
        const made = slot * this.stride;
        const period = this.periodOf(made);
        const travel = (this.next[made + this.LAST + TRAVEL] as number) + this.wayBack(made);
        this.release(slot);
        if (period >= below || travel >= travelBelow) continue;
        if (this.weighs === 'travel') travelBelow = travel;
        else below = period;
        best = { period, travel, node: this.layer[state + this.LAST + NODE] as number, way };
      }
    }
    return best;
  }

  /** Earliest start seen from each column, into `start`; false when what a hand carries does not fit. */
  protected startOf(state: number, task: number, way: number): boolean {
    const { t, layer, start, columns } = this;
    if (t.backward) start.fill(never);
    else for (let c = 0; c < columns; c += 1) start[c] = layer[state + this.CLOCK + c] as number;
    for (let side = 0; side < 2; side += 1) {
      const hand = side as 0 | 1;
      const role = t.wayRole[hand][way] as number;
      const last = lastRole(layer[state + this.LAST] as number, side);
      const end = state + this.END + side * columns;
      if (role >= 0) {
        if (last < 0) {
          if (this.begin[hand][role] === 0) return false;
          const own = t.handColumn[hand];
          if ((start[own] as number) < 0) start[own] = 0;
        } else {
          const setup = t.setup[hand][last * t.roles[hand] + role] as number;
          if (setup >= impossible) return false;
          this.raise(end, setup);
        }
      }
    }
    const slot = t.lagSlot[task] as number;
    if (slot >= 0) this.raisePending(state, slot);
    const look = t.look[task] as number;
    if (look >= 0) {
      const others = t.apart[look] as Int32Array;
      for (let index = 0; index < others.length; index += 1)
        this.raisePending(state, others[index] as number);
      const own = t.eyesColumn[task] as number;
      if (own >= 0 && (start[own] as number) < t.eyesFirst) start[own] = t.eyesFirst;
    }
    const claims = t.claims[task] as readonly number[];
    for (let index = 0; index < claims.length; index += 1) {
      const own = claims[index] as number;
      if ((start[own] as number) < 0) start[own] = 0;
    }
    return true;
  }

  private raise(at: number, add: number): void {
    const { layer, start, columns } = this;
    for (let c = 0; c < columns; c += 1) {
      const value = (layer[at + c] as number) + add;
      if (value > (start[c] as number) && value > halfNever) start[c] = value;
    }
  }

  private raisePending(state: number, slot: number): void {
    const bits = this.layer[state + this.PENDING + (slot >> 5)] as number;
    if (((bits >>> (slot & 31)) & 1) === 1) this.raise(state + this.SLOT + slot * this.columns, 0);
  }

  private commit(state: number, task: number, way: number, below: number): void {
    const slot = this.take();
    const made = slot * this.stride;
    this.build(state, task, way, made);
    const bound = this.boundOf(made);
    const { next } = this;
    const far = (next[made + this.LAST + TRAVEL] as number) >= this.mostTravel;
    if (bound >= below || far || this.stuck(made)) {
      this.release(slot);
      return;
    }
    if (this.pendingWords > 0) this.buildPending(state, task, made);
    next[made + this.LAST + BOUND] = Math.max(bound, this.layer[state + this.LAST + BOUND] as number);
    next[made + this.LAST + NODE] = this.layer[state + this.LAST + NODE] as number;
    next[made + this.LAST + WAY] = way;
    this.keep(slot);
  }

  /** The state after a task that starts at `start`. */
  protected build(state: number, task: number, way: number, made: number): void {
    const { t, layer, next, start, columns, words, LAST } = this;
    for (let index = 0; index < this.SLOT; index += 1) next[made + index] = layer[state + index] as number;
    next[made + (task >> 5)] = (next[made + (task >> 5)] as number) | (1 << (task & 31));
    next[made + LAST + REST] = (next[made + LAST + REST] as number) - (t.duals.cost[task] as number);
    this.finishAfter(made, t.wayTime[way] as number);
    for (let side = 0; side < 2; side += 1) {
      const hand = side as 0 | 1;
      const at = made + LAST + FORCED + side;
      next[at] = (next[at] as number) - (this.forced[hand][task] as number);
      const role = t.wayRole[hand][way] as number;
      if (role < 0) continue;
      const shift = side * 16;
      const from = lastRole(next[made + LAST] as number, side);
      const move = from < 0 ? 0 : (t.setup[hand][from * t.roles[hand] + role] as number);
      next[made + LAST + TRAVEL] = (next[made + LAST + TRAVEL] as number) + move;
      const busy = move + (t.wayTime[way] as number);
      next[made + LAST + MORE] = (next[made + LAST + MORE] as number) + (side === 0 ? busy : -busy);
      if ((((next[made + LAST] as number) >>> shift) & 0xffff) === 0)
        next[made + LAST + FIRST] = (next[made + LAST + FIRST] as number) | ((role + 1) << shift);
      next[made + LAST] = ((next[made + LAST] as number) & ~(0xffff << shift)) | ((role + 1) << shift);
      const stands = (t.roleClass[hand][role] as number) + 1;
      next[made + words] = ((next[made + words] as number) & ~(0xffff << shift)) | (stands << shift);
      this.put(made + this.END + side * columns, 0);
    }
    const moment = t.backward ? this.finish : start;
    for (let c = 0; c < columns; c += 1) next[made + this.CLOCK + c] = moment[c] as number;
    if (this.waiting !== undefined) this.standStill(made, this.waiting);
    // From behind the clock stays as it is: raised on both sides it would be counted twice where they meet.
    if (!t.backward) this.raiseClock(made);
    const stay = t.eyesStay[task] as number;
    if (stay >= 0) this.putMost(made + this.STAY + stay * columns, t.eyesLast);
    const releases = t.releases[task] as readonly number[];
    for (let index = 0; index < releases.length; index += 1)
      this.put(made + this.STAY + (releases[index] as number) * columns, 0);
  }

  /**
   * The other side of a task. Searching backward it is the start that may not come after what was committed before, so
   * the clock, which then is the earliest start so far seen from the end, bears on that side.
   */
  private finishAfter(made: number, time: number): void {
    const { t, next, start, finish, columns } = this;
    for (let c = 0; c < columns; c += 1) {
      const value = start[c] as number;
      finish[c] = value > halfNever ? value + time : never;
      if (t.backward) finish[c] = Math.max(finish[c] as number, next[made + this.CLOCK + c] as number);
    }
  }

  private put(at: number, add: number): void {
    const { next, finish, columns } = this;
    for (let c = 0; c < columns; c += 1) {
      const value = finish[c] as number;
      next[at + c] = value > halfNever ? value + add : never;
    }
  }

  private putMost(at: number, add: number): void {
    const { next, finish, columns } = this;
    for (let c = 0; c < columns; c += 1) {
      const value = finish[c] as number;
      if (value > halfNever && value + add > (next[at + c] as number)) next[at + c] = value + add;
    }
  }

  /** A full hand is not ready before what it carries can be used. */
  private standStill(made: number, waiting: Waiting): void {
    const { next, columns } = this;
    const last = next[made + this.LAST] as number;
    for (let side = 0; side < 2; side += 1) {
      const [hand, other] = [side as 0 | 1, (1 - side) as 0 | 1];
      const [own, their] = [lastRole(last, hand), lastRole(last, other)];
      if (own < 0 || their < 0) continue;
      const follow = waiting.follow[hand][own];
      if (follow === undefined) continue;
      const wait = this.leastWait(made, waiting, follow, own, their, other);
      if (!Number.isFinite(wait)) continue;
      const [at, from] = [made + this.END + hand * columns, made + this.END + other * columns];
      for (let c = 0; c < columns; c += 1) {
        const value = next[from + c] as number;
        if (value > halfNever && value + wait > (next[at + c] as number)) next[at + c] = value + wait;
      }
    }
  }

  /** From the end of the other hand's last role until this hand may leave its own; −Infinity when it need not wait. */
  private leastWait(
    made: number,
    waiting: Waiting,
    follow: readonly number[],
    own: number,
    their: number,
    other: 0 | 1,
  ): number {
    const { t, next, words } = this;
    const hand = (1 - other) as 0 | 1;
    let least = Number.POSITIVE_INFINITY;
    for (let index = 0; index < follow.length; index += 1) {
      const way = follow[index] as number;
      const task = t.wayTask[way] as number;
      if ((((next[made + (task >> 5)] as number) >>> (task & 31)) & 1) === 1) continue;
      let most = Number.NEGATIVE_INFINITY;
      for (let word = 0; word < words; word += 1) {
        let bits = (t.before[task * words + word] as number) & ~(next[made + word] as number);
        while (bits !== 0) {
          const earlier = word * 32 + 31 - Math.clz32(bits & -bits);
          bits &= bits - 1;
          most = Math.max(most, leastUntil(t, waiting, earlier, other, their));
        }
      }
      const setup = t.setup[hand][own * t.roles[hand] + (t.wayRole[hand][way] as number)] as number;
      least = Math.min(least, most - setup);
    }
    return least;
  }

  /** Nothing can start before one of the hands can be where it is wanted next. */
  private raiseClock(made: number): void {
    const { t, next, columns } = this;
    const last = next[made + this.LAST] as number;
    const [left, right] = [lastRole(last, 0), lastRole(last, 1)];
    if (left < 0 || right < 0) return;
    const [one, other] = [t.leastOut[0][left] as number, t.leastOut[1][right] as number];
    for (let c = 0; c < columns; c += 1) {
      const a = (next[made + this.END + c] as number) + one;
      const b = (next[made + this.END + columns + c] as number) + other;
      const least = Math.min(a, b);
      if (least > (next[made + this.CLOCK + c] as number) && least < impossible / 2)
        next[made + this.CLOCK + c] = least;
    }
  }

  /** What still holds back a later task after the clock; all else is forgotten. */
  private buildPending(state: number, task: number, made: number): void {
    const { t, layer, next, columns, words } = this;
    const look = t.look[task] as number;
    for (let word = 0; word < this.pendingWords; word += 1) {
      let bits = layer[state + this.PENDING + word] as number;
      while (bits !== 0) {
        const slot = word * 32 + 31 - Math.clz32(bits & -bits);
        bits &= bits - 1;
        const [from, to] = [state + this.SLOT + slot * columns, made + this.SLOT + slot * columns];
        for (let c = 0; c < columns; c += 1) next[to + c] = layer[from + c] as number;
      }
    }
    if (look >= 0) this.putPending(made, look, t.gazeGap);
    const lags = t.lags[task] as Tables['lags'][number];
    for (let index = 0; index < lags.length; index += 1) {
      const { slot, lag } = lags[index] as (typeof lags)[number];
      this.putPending(made, slot, lag);
    }
    for (let word = 0; word < this.pendingWords; word += 1) {
      let bits = next[made + this.PENDING + word] as number;
      while (bits !== 0) {
        const slot = word * 32 + 31 - Math.clz32(bits & -bits);
        bits &= bits - 1;
        if (this.bindsLater(made, slot, words)) continue;
        next[made + this.PENDING + word] = (next[made + this.PENDING + word] as number) & ~(1 << (slot & 31));
      }
    }
  }

  private putPending(made: number, slot: number, add: number): void {
    const { next, columns } = this;
    const [at, bit] = [made + this.PENDING + (slot >> 5), 1 << (slot & 31)];
    if (((next[at] as number) & bit) === 0) {
      next[at] = (next[at] as number) | bit;
      this.put(made + this.SLOT + slot * columns, add);
    } else this.putMost(made + this.SLOT + slot * columns, add);
  }

  private bindsLater(made: number, slot: number, words: number): boolean {
    const { t, next, columns } = this;
    const members = t.slotMembers[slot] as readonly number[];
    if (members.length > 0) {
      let open = false;
      for (let index = 0; index < members.length; index += 1) {
        const task = members[index] as number;
        if ((((next[made + (task >> 5)] as number) >>> (task & 31)) & 1) === 0) open = true;
      }
      if (!open) return false;
    } else {
      let left = 0;
      for (let word = 0; word < words; word += 1)
        left |= (t.lookers[slot * words + word] as number) & ~(next[made + word] as number);
      if (left === 0) return false;
    }
    let binds = false;
    const reach = t.slotReach[slot] as number;
    for (let c = 0; c < columns; c += 1) {
      const at = made + this.SLOT + slot * columns + c;
      if ((next[at] as number) + reach > (next[made + this.CLOCK + c] as number)) binds = true;
      else next[at] = never;
    }
    return binds;
  }

  /** No cycle that goes on from here is shorter. */
  private boundOf(made: number): number {
    const { t, next, columns } = this;
    const last = next[made + this.LAST] as number;
    const first = next[made + this.LAST + FIRST] as number;
    const rest = next[made + this.LAST + REST] as number;
    const [left, right] = [lastRole(last, 0), lastRole(last, 1)];
    const [cl, cr] = t.handColumn;
    const clock = made + this.CLOCK;
    let [endL, endR, moreL, moreR, goesL, goesR, backL, backR] = [0, 0, 0, 0, 0, 0, 0, 0];
    if (left >= 0) {
      endL = next[made + this.END + cl] as number;
      moreL = (t.duals.leave[0][left] as number) + (t.duals.enter[0][lastRole(first, 0)] as number);
      goesL = Math.max(endL, (next[clock + cl] as number) - (t.mostOut[0][left] as number));
      backL = t.leastIn[0][lastRole(first, 0)] as number;
    } else if (t.kind === 'closed') goesL = Math.max(0, next[clock] as number);
    if (right >= 0) {
      endR = next[made + this.END + columns + cr] as number;
      moreR = (t.duals.leave[1][right] as number) + (t.duals.enter[1][lastRole(first, 1)] as number);
      goesR = Math.max(endR, (next[clock + cr] as number) - (t.mostOut[1][right] as number));
      backR = t.leastIn[1][lastRole(first, 1)] as number;
    } else if (t.kind === 'closed') goesR = Math.max(0, next[clock] as number);
    let together = goesL + goesR + moreL + moreR + rest;
    if (cr === 1 && left >= 0 && right >= 0) {
      const crossL = Math.max(
        next[made + this.END + 1] as number,
        (next[clock + 1] as number) - (t.mostOut[0][left] as number),
      );
      const crossR = Math.max(
        next[made + this.END + columns] as number,
        (next[clock] as number) - (t.mostOut[1][right] as number),
      );
      together = Math.max(together, crossL + crossR + moreL + moreR + rest);
    }
    const one = Math.min(endR + moreR, endL + moreL) + rest;
    const forced = made + this.LAST + FORCED;
    return Math.max(
      Math.min(Math.ceil(together / 2), one),
      endL + backL + (next[forced] as number),
      endR + backR + (next[forced + 1] as number),
    );
  }

  /** Both hands are full, and there is nothing to be done with what they carry. */
  private stuck(made: number): boolean {
    const { t, next, words } = this;
    const last = next[made + this.LAST] as number;
    const [left, right] = [lastRole(last, 0), lastRole(last, 1)];
    if (left < 0 || right < 0 || t.full[0][left] === 0 || t.full[1][right] === 0) return false;
    for (let side = 0; side < 2; side += 1) {
      const ways = (this.fullNext[side] as (typeof this.fullNext)[0])[side === 0 ? left : right] as number[];
      for (let index = 0; index < ways.length; index += 1) {
        const way = ways[index] as number;
        const task = t.wayTask[way] as number;
        if ((((next[made + (task >> 5)] as number) >>> (task & 31)) & 1) === 1) continue;
        let open = true;
        for (let word = 0; word < words; word += 1)
          if (((t.before[task * words + word] as number) & ~(next[made + word] as number)) !== 0)
            open = false;
        const [one, other] = [t.wayRole[0][way] as number, t.wayRole[1][way] as number];
        const fits =
          (one < 0 || (t.setup[0][left * t.roles[0] + one] as number) < impossible) &&
          (other < 0 || (t.setup[1][right * t.roles[1] + other] as number) < impossible);
        if (open && fits) return false;
      }
    }
    return true;
  }

  /** What both hands travel from the end of a cycle to where they begin. */
  private wayBack(made: number): number {
    const { t, next } = this;
    let travel = 0;
    for (let side = 0; side < 2; side += 1) {
      const hand = side as 0 | 1;
      const from = lastRole(next[made + this.LAST] as number, side);
      const to = lastRole(next[made + this.LAST + FIRST] as number, side);
      if (from >= 0) travel += t.wrap[hand][from * t.roles[hand] + to] as number;
    }
    return travel;
  }

  /** The period of a whole cycle, whole microseconds; infinite when a hand cannot begin anew. */
  protected periodOf(made: number): number {
    const { t, next, columns } = this;
    const matrix = new Float64Array(columns * columns).fill(Number.NEGATIVE_INFINITY);
    const add = (row: number, to: number, more: number) => {
      for (let from = 0; from < columns; from += 1) {
        const value = next[row + from] as number;
        const at = from * columns + to;
        if (value > halfNever) matrix[at] = Math.max(matrix[at] as number, value + more);
      }
    };
    const [last, first] = [next[made + this.LAST] as number, next[made + this.LAST + FIRST] as number];
    for (let side = 0; side < 2; side += 1) {
      const hand = side as 0 | 1;
      const [from, to] = [lastRole(last, side), lastRole(first, side)];
      if (from < 0) continue;
      const back = t.wrap[hand][from * t.roles[hand] + to] as number;
      if (back >= impossible) return Number.POSITIVE_INFINITY;
      add(made + this.END + side * columns, t.handColumn[hand], back);
    }
    for (let stay = 0; stay < t.stays; stay += 1)
      add(made + this.STAY + stay * columns, t.stayColumn[stay] as number, 0);
    return Math.ceil(greatestMean(matrix, columns) - 1e-6);
  }
}

interface Ended {
  readonly period: number;
  readonly travel: number;
  readonly node: number;
  readonly way: number;
}
