import { ok, type Result } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import type { Interval } from '../../../ground/numerics/index.ts';
import { shorterThan } from '../compose/index.ts';
import { predictWork } from '../predict/index.ts';
import { instanceOf, type Work } from '../work/index.ts';
import type { WorkChange } from './change.ts';
import { allSets, type CombinationSet, setOf } from './combination-sets.ts';
import { type CostRange, type Costs, costOf } from './cost.ts';
import { frontOf } from './front.ts';
import {
  type ChangeWorth,
  type DevelopedMethod,
  type DevelopWish,
  developed,
  savedBetween,
  worthFrom,
} from './worth.ts';

export interface CombinationWish extends DevelopWish {
  /** What changes cost; without any, the number of changes stands for it. */
  readonly costs?: Costs | undefined;
  /** Changes that every combination has. */
  readonly taken?: readonly WorkChange[] | undefined;
  /** Combinations up to which all are tried; 64 when left out. */
  readonly most?: number | undefined;
  /** Combinations of each size that the search goes on from where not all are tried; 4 when left out. */
  readonly beam?: number | undefined;
  /** Called with how many were looked at. */
  readonly onTried?: ((tried: number) => void) | undefined;
}

/** A combination that none of those that cost as much or less is shorter than. */
export interface FrontPoint {
  readonly worth: ChangeWorth;
  /** Undefined where no costs are given. */
  readonly cost: CostRange | undefined;
  /** Saved for a unit beyond the point before it, microseconds, with its 90 % interval; undefined of the first. */
  readonly more: { readonly saved: number; readonly interval: Interval } | undefined;
}

export interface Combinations {
  readonly base: DevelopedMethod;
  /** From the cheapest to the shortest. The first is the work as it is, with what is taken. */
  readonly front: readonly FrontPoint[];
  readonly axis: 'cost' | 'changes';
  /** Changes that were left out because nobody has said what they cost. */
  readonly withoutCost: readonly WorkChange[];
  /** Combinations that were looked at, and those of them that the bound ruled out. */
  readonly tried: number;
  readonly ruledOut: number;
  /** Every combination was looked at and every answer proven. */
  readonly exact: boolean;
  readonly words: string;
}

/** Which changes together: the front of time for a unit against cost. */
export function combinationsOf(
  work: Work,
  changes: readonly WorkChange[],
  wish: CombinationWish,
): Result<Combinations, Finding> {
  const base = developed(work, wish);
  if (!base.ok) return base;
  return ok(new CombinationSearch(work, changes, base.value, wish).run());
}

interface Tried {
  readonly set: CombinationSet;
  readonly effort: number;
  readonly method: DevelopedMethod;
}

/** A combination that was looked at briefly: the time of a method, or what no method is shorter than. */
interface Glanced {
  readonly set: CombinationSet;
  readonly effort: number;
  readonly unitTime: number;
}

class CombinationSearch {
  private readonly work: Work;
  private readonly changes: readonly WorkChange[];
  private readonly base: DevelopedMethod;
  private readonly wish: CombinationWish;
  private readonly costs: Costs;
  private readonly taken: readonly WorkChange[];
  private readonly withoutCost: readonly WorkChange[];
  private tried = 0;
  private ruledOut = 0;
  private proven = true;

  constructor(work: Work, changes: readonly WorkChange[], base: DevelopedMethod, wish: CombinationWish) {
    this.work = work;
    this.base = base;
    this.wish = wish;
    this.costs = wish.costs ?? new Map();
    this.taken = wish.taken ?? [];
    const open = changes.filter(({ id }) => !this.taken.some((other) => other.id === id));
    this.withoutCost = this.costs.size === 0 ? [] : open.filter(({ id }) => !this.costs.has(id));
    this.changes = open.filter((change) => !this.withoutCost.includes(change));
  }

  run(): Combinations {
    const all = allSets(this.work, this.changes, this.taken, this.wish.most ?? 64);
    const found = all === undefined ? this.byBeam() : this.throughAll(all);
    const front = this.pointsOf(
      frontOf(
        found,
        ({ effort }) => effort,
        ({ method }) => method.unitTime,
      ),
    );
    const exact = all !== undefined && this.proven;
    return {
      base: this.base,
      front,
      axis: this.costs.size === 0 ? 'changes' : 'cost',
      withoutCost: this.withoutCost,
      tried: this.tried,
      ruledOut: this.ruledOut,
      exact,
      words: wordsOf(exact, all !== undefined, this.tried, this.ruledOut),
    };
  }

  /** What a combination costs, taken changes apart; the number of its changes where no costs are given. */
  private effortOf({ changes }: CombinationSet): number {
    const own = changes.filter(({ id }) => !this.taken.some((other) => other.id === id));
    return this.costs.size === 0 ? own.length : (costOf(own, this.costs)?.likely ?? 0);
  }

  /** From the cheapest up: what cannot be shorter than the shortest so far is ruled out before it is composed. */
  private throughAll(sets: readonly CombinationSet[]): readonly Tried[] {
    const sorted = sets
      .map((set) => ({ set, effort: this.effortOf(set) }))
      .sort(
        (a, b) =>
          a.effort - b.effort ||
          a.set.changes.length - b.set.changes.length ||
          (a.set.key < b.set.key ? -1 : 1),
      );
    const found: Tried[] = [];
    let least = Number.POSITIVE_INFINITY;
    for (const { set, effort } of sorted) {
      if (this.stopped()) break;
      this.look();
      if (this.isRuledOut(set, least)) continue;
      const method = this.composed(set);
      if (method === undefined) continue;
      if (!method.composed.proven) this.proven = false;
      if (method.unitTime >= least) continue;
      least = method.unitTime;
      found.push({ set, effort, method });
    }
    return found;
  }

  private isRuledOut(set: CombinationSet, least: number): boolean {
    if (least === Number.POSITIVE_INFINITY) return false;
    const { kind, states, stop } = this.wish;
    const below = Math.ceil(least * set.work.unitsPerCycle);
    const { schedule, proven } = shorterThan(this.instanceOf(set), { kind, below, states, stop });
    if (schedule !== undefined || !proven) return false;
    this.ruledOut += 1;
    return true;
  }

  private instanceOf({ work }: CombinationSet) {
    return instanceOf(
      work,
      predictWork(work, this.wish.readings, { table: this.wish.table, library: this.wish.library }),
    );
  }

  private composed(set: CombinationSet): DevelopedMethod | undefined {
    if (set.changes.length === 0) return this.base;
    const made = developed(set.work, this.wish);
    return made.ok ? made.value : undefined;
  }

  /** One change more each time, from the shortest and from the front of each size; only the front is composed to the end. */
  private byBeam(): readonly Tried[] {
    const width = this.wish.beam ?? 4;
    const seen = new Set<string>();
    const glanced: Glanced[] = [];
    const start = setOf(this.work, this.taken);
    let level: readonly Glanced[] =
      start === undefined ? [] : [{ set: start, effort: 0, unitTime: this.base.unitTime }];
    // What is taken may only be possible together with something else.
    let sets: readonly (readonly WorkChange[])[] = [this.taken];
    glanced.push(...level);
    for (let size = 1; size <= this.changes.length && sets.length > 0 && !this.stopped(); size += 1) {
      const next: Glanced[] = [];
      const impossible: (readonly WorkChange[])[] = [];
      for (const from of sets) {
        for (const change of this.changes) {
          if (from.includes(change) || this.stopped()) continue;
          const wanted = [...from, change];
          const key = wanted
            .map(({ id }) => id)
            .sort()
            .join(',');
          if (seen.has(key)) continue;
          seen.add(key);
          const set = setOf(this.work, wanted);
          if (set === undefined) {
            // Two units are nothing yet while a hand holds, but may be with a fixture: such beginnings are kept for a while.
            if (size === 1) impossible.push(wanted);
            continue;
          }
          this.look();
          const found = this.glance(set);
          if (found !== undefined) next.push(found);
        }
      }
      level = this.kept(next, width);
      glanced.push(...next);
      sets = [...level.map(({ set }) => set.changes), ...impossible];
    }
    return this.settled(glanced, width);
  }

  /** The shortest, and the front of this size. */
  private kept(found: readonly Glanced[], width: number): readonly Glanced[] {
    const shortest = [...found].sort((a, b) => a.unitTime - b.unitTime || (a.set.key < b.set.key ? -1 : 1));
    const front = frontOf(
      shortest,
      ({ effort }) => effort,
      ({ unitTime }) => unitTime,
    );
    return [...new Set([...shortest.slice(0, width), ...front.slice(0, width)])];
  }

  private glance(set: CombinationSet): Glanced | undefined {
    const instance = this.instanceOf(set);
    for (const width of glanceWidths) {
      const { kind, stop } = this.wish;
      const { schedule } = shorterThan(instance, { kind, below: unlimited, width, states: 0, stop });
      if (schedule !== undefined)
        return { set, effort: this.effortOf(set), unitTime: schedule.period / set.work.unitsPerCycle };
    }
    return undefined;
  }

  /** A glance is a little too long by chance: what is close to the front is composed to the end as well. */
  private settled(glanced: readonly Glanced[], width: number): readonly Tried[] {
    this.proven = false;
    const done = new Map<string, Tried>();
    let left = glanced;
    for (let round = 0; round < 2; round += 1) {
      const front = frontOf(
        left,
        ({ effort }) => effort,
        ({ unitTime }) => unitTime,
      );
      for (const { set, effort } of front.slice(0, 3 * width)) {
        const method = this.composed(set);
        if (method !== undefined) done.set(set.key, { set, effort, method });
      }
      left = left.filter(({ set }) => !done.has(set.key));
      if (this.stopped()) break;
    }
    return [...done.values()];
  }

  private pointsOf(front: readonly Tried[]): readonly FrontPoint[] {
    return front.map(({ set, method }, index): FrontPoint => {
      const before = front[index - 1];
      const own = set.changes.filter(({ id }) => !this.taken.some((other) => other.id === id));
      return {
        worth: worthFrom(this.base, method, set.changes, this.wish),
        cost: this.costs.size === 0 ? undefined : costOf(own, this.costs),
        more: before === undefined ? undefined : savedBetween(before.method, method, this.wish),
      };
    });
  }

  private look(): void {
    this.tried += 1;
    this.wish.onTried?.(this.tried);
  }

  private stopped(): boolean {
    if (this.wish.stop?.() !== true) return false;
    this.proven = false;
    return true;
  }
}

const unlimited = 2 ** 30;
/** Widths of a glance, one after the other until a method is found. */
const glanceWidths = [20, 400] as const;

function wordsOf(exact: boolean, all: boolean, tried: number, ruledOut: number): string {
  if (exact)
    return `All ${tried} combinations that can be made were looked at, ${ruledOut} of them ruled out by their bounds: with these times no other is shorter for as little.`;
  if (all)
    return `${tried} combinations were looked at, ${ruledOut} of them ruled out by their bounds; not every answer is proven, so another may be shorter.`;
  return `There are too many combinations to try them all: ${tried} were looked at, each time from the best so far. Another may be shorter.`;
}
