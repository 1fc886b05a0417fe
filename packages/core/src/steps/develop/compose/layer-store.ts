import { halfNever } from './cycle-mean.ts';
import { impossible, type Tables } from './tables.ts';

/**
 * Two layers of states in typed arrays: the one that is done with tasks, and the next one, in which of states with the
 * same tasks and last roles one is dropped when another is no later in anything.
 */
export class LayerStore {
  readonly t: Tables;
  protected readonly columns: number;
  protected readonly words: number;
  // Where things lie in a state.
  readonly LAST: number;
  readonly CLOCK: number;
  readonly END: number;
  readonly STAY: number;
  readonly PENDING: number;
  readonly SLOT: number;
  readonly stride: number;
  protected readonly pendingWords: number;
  layer: Int32Array;
  /** Where the states of the layer lie, counted in states. */
  slots: Int32Array = new Int32Array(1);
  layerSize = 0;
  protected next: Int32Array;
  protected nextUsed = 0;
  protected nextAlive = 0;
  protected free: Int32Array = new Int32Array(1024);
  protected freeCount = 0;
  /**
   * `travel`: of states as good in time both are kept when the later one travels less. `evenness`: also when one hand has
   * more to do than in the other.
   */
  protected weighs: 'nothing' | 'travel' | 'evenness' = 'nothing';
  private brief: Int32Array = new Int32Array(1 << 10);
  private readonly gains = new Int32Array(2);
  private readonly mostGain: readonly [number, number];
  protected table: Int32Array = new Int32Array(1 << 12);
  protected buckets = 0;
  protected parents: Int32Array = new Int32Array(1 << 12);
  protected waysTaken: Int32Array = new Int32Array(1 << 12);
  protected nodes = 0;

  constructor(tables: Tables) {
    this.t = tables;
    const { columns, words, stays, slots } = tables;
    this.columns = columns;
    this.words = words;
    this.pendingWords = Math.ceil(slots / 32);
    this.LAST = words + 1;
    this.CLOCK = words + 1 + fixedFields;
    this.END = this.CLOCK + columns;
    this.STAY = this.END + 2 * columns;
    this.PENDING = this.STAY + stays * columns;
    this.SLOT = this.PENDING + this.pendingWords;
    this.stride = this.SLOT + slots * columns;
    const most = (table: Int32Array) =>
      table.reduce((all, gain) => (gain < impossible ? Math.max(all, gain) : all), 0);
    this.mostGain = [most(tables.firstGain[0]), most(tables.firstGain[1])];
    this.layer = new Int32Array(this.stride * 64);
    this.next = new Int32Array(this.stride * 64);
  }

  /** The ways that lead to a node, the first one first. */
  waysTo(node: number): number[] {
    const ways: number[] = [];
    for (let at = node; at > 0; at = this.parents[at] as number) ways.push(this.waysTaken[at] as number);
    return ways.reverse();
  }

  protected clearNext(): void {
    this.nextUsed = 0;
    this.nextAlive = 0;
    this.freeCount = 0;
    this.buckets = 0;
    this.table.fill(0);
  }

  /** No cycle that goes on from the layer is shorter. */
  leastBound(below: number): number {
    let least = below;
    for (let index = 0; index < this.layerSize; index += 1)
      least = Math.min(
        least,
        this.layer[(this.slots[index] as number) * this.stride + this.LAST + BOUND] as number,
      );
    return least;
  }

  protected take(): number {
    if (this.freeCount > 0) {
      this.freeCount -= 1;
      return this.free[this.freeCount] as number;
    }
    const slot = this.nextUsed;
    this.nextUsed += 1;
    while (this.nextUsed * this.stride > this.next.length) this.next = grown(this.next);
    return slot;
  }

  protected release(slot: number): void {
    if (this.freeCount === this.free.length) this.free = grown(this.free);
    this.free[this.freeCount] = slot;
    this.freeCount += 1;
  }

  protected hash(made: number): number {
    const { next } = this;
    let hash = 0;
    for (let index = 0; index <= this.words; index += 1) {
      hash = Math.imul(hash ^ (next[made + index] as number), 0x9e3779b1);
      hash ^= hash >>> 15;
    }
    return hash;
  }

  /** Files the state unless another of its key is as good; drops those that it is as good as. */
  protected keep(slot: number): void {
    const { stride, words } = this;
    const made = slot * stride;
    const mask = this.table.length - 1;
    let at = this.hash(made) & mask;
    for (;;) {
      const head = (this.table[at] as number) - 1;
      if (head < 0) break;
      let same = true;
      for (let index = 0; index <= words; index += 1) {
        if (this.next[head * stride + index] !== this.next[made + index]) {
          same = false;
          break;
        }
      }
      if (same) {
        this.keepAmong(slot, head, at);
        return;
      }
      at = (at + 1) & mask;
    }
    this.table[at] = slot + 1;
    this.sketch(slot, 0);
    this.nextAlive += 1;
    this.buckets += 1;
    if (this.buckets * 2 > this.table.length) this.rehash();
  }

  /** What most pairs of states are told apart by, kept close together: a state is large and lies far from the next. */
  private sketch(slot: number, following: number): void {
    const { next, columns, brief } = this;
    const made = slot * this.stride;
    if (slot * 4 + 3 >= brief.length) this.brief = grown(brief);
    this.brief[slot * 4] = following;
    this.brief[slot * 4 + 1] = next[made + this.END] as number;
    this.brief[slot * 4 + 2] = next[made + this.END + columns + this.t.handColumn[1]] as number;
    this.brief[slot * 4 + 3] = next[made + this.LAST + FIRST] as number;
  }

  protected keepAmong(slot: number, head: number, at: number): void {
    this.sketch(slot, 0);
    const { stride, brief, gains } = this;
    const [mostLeft, mostRight] = this.mostGain;
    const made = slot * stride;
    const [left, right] = [brief[slot * 4 + 1] as number, brief[slot * 4 + 2] as number];
    const first = brief[slot * 4 + 3] as number;
    let [rest, other] = [0, head + 1];
    while (other > 0) {
      const from = (other - 1) * 4;
      const following = brief[from] as number;
      const [itsLeft, itsRight] = [brief[from + 1] as number, brief[from + 2] as number];
      const its = brief[from + 3] as number;
      // Most states differ in how the work is shared out, so the hands' own ends are looked at first.
      if (
        itsLeft <= left + mostLeft &&
        itsRight <= right + mostRight &&
        this.gainsOf(its, first) &&
        itsLeft <= left + (gains[0] as number) &&
        itsRight <= right + (gains[1] as number) &&
        this.asGood((other - 1) * stride, made)
      ) {
        // What was taken out of the chain before this one stays out: that state is as good as it, too.
        this.release(slot);
        this.rejoin(rest, other, at);
        return;
      }
      if (
        left <= itsLeft + mostLeft &&
        right <= itsRight + mostRight &&
        this.gainsOf(first, its) &&
        left <= itsLeft + (gains[0] as number) &&
        right <= itsRight + (gains[1] as number) &&
        this.asGood(made, (other - 1) * stride)
      ) {
        this.release(other - 1);
        this.nextAlive -= 1;
      } else {
        brief[from] = rest;
        rest = other;
      }
      other = following;
    }
    brief[slot * 4] = rest;
    this.table[at] = slot + 1;
    this.nextAlive += 1;
  }

  /** Puts the part of a chain that was turned round back before the part that was not; what is as good as others comes first. */
  private rejoin(turned: number, rest: number, at: number): void {
    const { brief } = this;
    let [other, tail] = [turned, brief[(rest - 1) * 4] as number];
    while (other > 0) {
      const from = (other - 1) * 4;
      const after = brief[from] as number;
      brief[from] = tail;
      tail = other;
      other = after;
    }
    brief[(rest - 1) * 4] = tail;
    this.table[at] = rest;
  }

  /**
   * Of hands that began with different roles, the one whose way back is longer must have gained that time in its own column;
   * of a closed cycle it may not be longer. False when the two may not be compared; else the gains are set.
   */
  private gainsOf(mine: number, theirs: number): boolean {
    const { t, gains } = this;
    gains[0] = 0;
    gains[1] = 0;
    if (mine === theirs) return true;
    const [a, b] = [lastRole(mine, 0), lastRole(theirs, 0)];
    const [c, d] = [lastRole(mine, 1), lastRole(theirs, 1)];
    const left = a === b ? 0 : (t.firstGain[0][a * t.roles[0] + b] as number);
    const right = c === d ? 0 : (t.firstGain[1][c * t.roles[1] + d] as number);
    if (t.kind === 'closed') return left >= 0 && right >= 0;
    if (left < -(impossible / 2) || right < -(impossible / 2)) return false;
    gains[0] = left;
    gains[1] = right;
    return true;
  }

  protected rehash(): void {
    const old = this.table;
    this.table = new Int32Array(old.length * 4);
    const mask = this.table.length - 1;
    for (const head of old) {
      if (head === 0) continue;
      let at = this.hash((head - 1) * this.stride) & mask;
      while (this.table[at] !== 0) at = (at + 1) & mask;
      this.table[at] = head;
    }
  }

  /** Is one state no later than the other in anything? The gains are set. */
  private asGood(one: number, other: number): boolean {
    const { t, next, columns } = this;
    const [gainL, gainR] = [this.gains[0] as number, this.gains[1] as number];
    const right = t.handColumn[1];
    if (this.weighs === 'evenness') {
      const same = (field: number) => next[one + this.LAST + field] === next[other + this.LAST + field];
      if (!same(MORE) || !same(FIRST)) return false;
    }
    if (this.weighs !== 'nothing') {
      // The way back that is longer counts as travel, too.
      const [mine, theirs] = [
        next[one + this.LAST + TRAVEL] as number,
        next[other + this.LAST + TRAVEL] as number,
      ];
      if (mine > theirs + this.lostTravel(one, other)) return false;
    }
    for (let at = this.CLOCK; at < this.PENDING; at += columns) {
      for (let c = 0; c < columns; c += 1) {
        const value = next[one + at + c] as number;
        const gain = c === 0 ? gainL : c === right ? gainR : 0;
        if (value > halfNever && value > (next[other + at + c] as number) + gain) return false;
      }
    }
    return this.pendingWords === 0 || this.pendingAsGood(one, other, gainL, gainR);
  }

  private lostTravel(one: number, other: number): number {
    const { t, next, LAST } = this;
    let least = 0;
    for (let side = 0; side < 2; side += 1) {
      const hand = side as 0 | 1;
      const a = lastRole(next[one + LAST + FIRST] as number, side);
      const b = lastRole(next[other + LAST + FIRST] as number, side);
      if (a !== b) least += t.firstGain[hand][a * t.roles[hand] + b] as number;
    }
    return least;
  }

  private pendingAsGood(one: number, other: number, gainL: number, gainR: number): boolean {
    const { t, next, columns } = this;
    const right = t.handColumn[1];
    for (let word = 0; word < this.pendingWords; word += 1) {
      let bits = next[one + this.PENDING + word] as number;
      const theirs = next[other + this.PENDING + word] as number;
      while (bits !== 0) {
        const bit = 31 - Math.clz32(bits & -bits);
        bits &= bits - 1;
        const slot = this.SLOT + (word * 32 + bit) * columns;
        const reach = t.slotReach[word * 32 + bit] as number;
        const has = ((theirs >>> bit) & 1) === 1;
        for (let c = 0; c < columns; c += 1) {
          const value = next[one + slot + c] as number;
          if (value <= halfNever) continue;
          const gain = c === 0 ? gainL : c === right ? gainR : 0;
          let limit = (next[other + this.CLOCK + c] as number) - reach;
          if (has) limit = Math.max(limit, next[other + slot + c] as number);
          if (value > limit + gain) return false;
        }
      }
    }
    return true;
  }

  /** Makes the next layer the layer; true when states were dropped because there were more than the width. */
  protected closeLayer(width: number): boolean {
    const { next, stride } = this;
    const kept = this.alive();
    const dropped = kept.length > width;
    const chosen = dropped ? this.best(kept, width) : kept;
    while (this.nodes + chosen.length > this.parents.length) {
      this.parents = grown(this.parents);
      this.waysTaken = grown(this.waysTaken);
    }
    for (let index = 0; index < chosen.length; index += 1) {
      const from = (chosen[index] as number) * stride + this.LAST;
      this.parents[this.nodes] = next[from + NODE] as number;
      this.waysTaken[this.nodes] = next[from + WAY] as number;
      next[from + NODE] = this.nodes;
      this.nodes += 1;
    }
    this.next = this.layer;
    this.layer = next;
    this.slots = chosen;
    this.layerSize = chosen.length;
    return dropped;
  }

  protected alive(): Int32Array {
    const slots = new Int32Array(this.nextAlive);
    const freed = new Uint8Array(this.nextUsed);
    for (let index = 0; index < this.freeCount; index += 1) freed[this.free[index] as number] = 1;
    let count = 0;
    for (let slot = 0; slot < this.nextUsed; slot += 1) {
      if (freed[slot] === 1) continue;
      slots[count] = slot;
      count += 1;
    }
    return slots;
  }

  /** The states of least bound; among equals those whose hands are done earliest. */
  protected best(slots: Int32Array, width: number): Int32Array {
    const { next, stride, columns } = this;
    const [cl, cr] = this.t.handColumn;
    const score = new Float64Array(slots.length);
    for (let index = 0; index < slots.length; index += 1) {
      const state = (slots[index] as number) * stride;
      const ends =
        Math.max(0, next[state + this.END + cl] as number) +
        Math.max(0, next[state + this.END + columns + cr] as number);
      score[index] = (next[state + this.LAST + BOUND] as number) * 2 ** 20 + ends / 2 ** 12;
    }
    const order = Array.from(slots.keys()).sort(
      (a, b) => (score[a] as number) - (score[b] as number) || a - b,
    );
    return Int32Array.from(order.slice(0, width), (index) => slots[index] as number);
  }
}

/** Fields of a state after its done set, counted from the last roles. */
export const [FIRST, REST, FORCED, BOUND, NODE, WAY, TRAVEL, MORE] = [1, 2, 3, 5, 6, 7, 8, 9] as const;
const fixedFields = 10;

/** Roles are kept two to a word, each plus one; −1 stands for a hand that has not begun. */
export function lastRole(packed: number, side: number): number {
  return ((packed >>> (side * 16)) & 0xffff) - 1;
}

function grown(array: Int32Array): Int32Array {
  const more = new Int32Array(array.length * 2);
  more.set(array);
  return more;
}
