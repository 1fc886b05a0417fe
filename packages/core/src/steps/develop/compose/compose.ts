import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { seededRandom } from '../../../ground/numerics/index.ts';
import { type Binding, bindingWords, type SingleBound } from './bounds.ts';
import type { Orders } from './event-graph.ts';
import type { CycleKind, Instance, Schedule, Task } from './instance.ts';
import { LayerSearch, type SearchResult, type SearchWish } from './layer-search.ts';
import { MeetSearch } from './meet-search.ts';
import { chooseFree, freed, jobsOf, listedOrder, near } from './neighbours.ts';
import { begunTogether, scheduleOf } from './schedule.ts';
import { impossible, type Tables, tablesOf } from './tables.ts';
import { TieSearch } from './tie-search.ts';

export interface ComposeWish {
  /** `open` when left out. */
  readonly kind?: CycleKind | undefined;
  readonly seed: number;
  /** Rounds of improvement before the proof is tried; 60 when left out. */
  readonly rounds?: number | undefined;
  /** States that the proof may keep; 400,000 when left out. */
  readonly states?: number | undefined;
  /** Called with every better method and with every better bound. */
  readonly onBetter?: ((composed: Composed) => void) | undefined;
  /** Asked now and then; true ends the search with what there is. */
  readonly stop?: (() => boolean) | undefined;
}

export interface Composed {
  readonly schedule: Schedule;
  /** No method has a shorter period. */
  readonly bound: number;
  readonly proven: boolean;
  /** What binds most by itself. */
  readonly binds: Binding;
  /** What is proven and what the bound rests on. */
  readonly words: string;
  /** `least`: no method of this period travels less. `found`: the best that came up, without a proof. */
  readonly travel: 'least' | 'found';
  /**
   * `most`: no method of this period and travel occupies both hands more alike; among those seen it begins most steps with
   * both hands at once. `found`: the one that came up.
   */
  readonly evenness: 'most' | 'found';
  readonly states: number;
}

/** States that are kept where none are wished for. */
const usualStates = 400_000;
/** Widths of the first search, one after the other until a method is found. */
const widths = [40, 400, 4000] as const;
/** States of a first try of the proof, which is enough for most works of up to eighteen steps. */
const firstTry = 60_000;
/** Tasks up to which a method is looked for in every order at once; beyond them only near the listed order. */
const beamed = 60;
/** Tasks up to which a proof takes less than a search for better methods would. */
const soon = 22;
/** Share of the bound; a gap below it is closed by one search instead of several. Measured: refuting a third of it first costs half of the whole. */
const nearlyClosed = 0.025;
/** Tasks up to which an open cycle is usually proven. */
const provable = 30;

/**
 * The two-hand method of least period: a first method by a narrow search, improved by solving parts of it anew, then
 * proven by a search that drops nothing, as far as its states reach. The same seed gives the same method unless it is
 * stopped.
 */
export function compose(instance: Instance, wish: ComposeWish): Result<Composed, Finding> {
  const longest = instance.tasks.reduce((sum, task) => sum + longestOf(task), 0);
  if (longest > longestCycle) {
    const [slowest] = [...instance.tasks].sort((a, b) => longestOf(b) - longestOf(a));
    return fail(finding('develop/long-cycle', {}, { step: slowest?.name ?? '' }));
  }
  if (instance.tasks.length === 0)
    return fail(finding('develop/no-method', {}, { steps: 'the list of steps, which is empty' }));
  const run = new ComposeRun(tablesOf(instance, wish.kind ?? 'open'), wish);
  return run.compose();
}

/** Of its slowest way with the longest process before it, microseconds. */
function longestOf({ modes, after }: Task): number {
  return Math.max(...modes.map(({ time }) => time)) + Math.max(0, ...after.map(({ lag }) => lag));
}

interface Known {
  readonly period: number;
  readonly ways: readonly number[];
}

class ComposeRun {
  private readonly t: Tables;
  private readonly wish: ComposeWish;
  private readonly engine: LayerSearch;
  /** Searches from both ends where that can be done. */
  private readonly whole: LayerSearch | MeetSearch;
  private readonly random: () => number;
  private readonly jobs: readonly (readonly number[])[];
  private best: Known | undefined;
  private bound: number;
  private states = 0;
  private leastTravel = false;
  private mostEven = false;
  private readonly single: readonly SingleBound[];

  constructor(tables: Tables, wish: ComposeWish) {
    this.t = tables;
    this.wish = wish;
    this.engine = new LayerSearch(tables);
    this.whole = tables.kind === 'open' ? new MeetSearch(tables) : this.engine;
    this.random = seededRandom(wish.seed);
    this.jobs = jobsOf(tables);
    this.single = this.engine.bounds();
    this.bound = this.single[0]?.bound ?? 0;
  }

  compose(): Result<Composed, Finding> {
    this.firstMethod();
    const { best } = this;
    if (best === undefined) {
      return fail(finding('develop/no-method', {}, { steps: stuckSteps(this.t) }));
    }
    this.proveAndImprove();
    this.settleTies();
    return ok(this.told(this.best ?? best));
  }

  /** Proofs and improvements in turn, until it is proven or the states are spent. */
  private proveAndImprove(): void {
    const { states: most = usualStates, rounds = 60 } = this.wish;
    if (this.t.count > provable) this.improve(rounds);
    let [spent, budget, closedTried] = [0, Math.min(most, firstTry), false];
    for (;;) {
      spent += this.prove(budget);
      if (this.done() || spent >= most) break;
      // A proof that is near finds what is shorter by itself.
      const small = this.t.count <= soon;
      if (!small && !closedTried && this.t.kind === 'open') this.startFromClosed();
      closedTried = true;
      this.improve(small ? Math.min(rounds, 20) : rounds);
      // Where a proof is within reach it gets all there is at once; else methods and bounds take turns.
      budget = this.t.count <= provable ? most - spent : Math.min(most - spent, budget * 4);
    }
  }

  /** Of all methods of the least period one that travels least, by a second search where that is quick. */
  private settleTies(): void {
    const { best } = this;
    if (best === undefined || best.period > this.bound || this.t.count > tied) return;
    const schedule = this.scheduleOf(best.ways);
    const found = this.search(
      {
        below: best.period + 1,
        width: Number.POSITIVE_INFINITY,
        most: tieStates,
        travelBelow: schedule.travel,
      },
      this.engine,
    );
    this.leastTravel = found.complete;
    if (found.period !== undefined && found.ways !== undefined) this.settle(found.ways);
    if (found.complete) this.settleEvenness();
  }

  /** Of all methods of least period and travel one whose hands are occupied most alike; of those one that begins most steps together. */
  private settleEvenness(): void {
    const { best } = this;
    if (best === undefined) return;
    const { complete, found } = new TieSearch(this.t).mostEven({
      below: best.period + 1,
      travelBelow: this.scheduleOf(best.ways).travel + 1,
      most: tieStates,
      stop: this.wish.stop,
    });
    this.mostEven = complete && found.length > 0;
    const ranked = found.map((ways) => ({ ways, together: begunTogether(this.scheduleOf(ways)) }));
    ranked.sort((a, b) => b.together - a.together);
    if (ranked[0] !== undefined) this.settle(ranked[0].ways);
  }

  private settle(ways: readonly number[]): void {
    this.best = { period: Math.min(this.best?.period ?? unlimited, this.engine.replay(ways)), ways };
    this.tell();
  }

  private done(): boolean {
    return (this.best !== undefined && this.best.period <= this.bound) || this.wish.stop?.() === true;
  }

  private search(wish: SearchWish, engine: LayerSearch | MeetSearch = this.whole): SearchResult {
    const found = engine.search({ ...wish, stop: this.wish.stop });
    this.states += found.states;
    return found;
  }

  private take({ period, ways }: SearchResult): boolean {
    if (
      period === undefined ||
      ways === undefined ||
      period >= (this.best?.period ?? Number.POSITIVE_INFINITY)
    )
      return false;
    this.best = { period, ways };
    this.tell();
    return true;
  }

  private raise(bound: number): void {
    if (bound <= this.bound) return;
    this.bound = bound;
    this.tell();
  }

  private tell(): void {
    if (this.best !== undefined) this.wish.onBetter?.(this.told(this.best));
  }

  private firstMethod(): void {
    if (this.t.count > 12) this.listedMethod();
    if (this.t.count > beamed && this.best !== undefined) return;
    for (const width of widths) {
      if (this.best !== undefined && this.wish.stop?.() === true) return;
      const wish = { below: this.best?.period ?? unlimited, width, most: Number.POSITIVE_INFINITY };
      const found = this.search(wish, this.engine);
      this.take(found);
      if (found.complete && this.best !== undefined) this.raise(this.best.period);
      if (found.complete) return;
      if (this.best !== undefined) break;
    }
    if (this.t.count > 12) this.widen();
  }

  /** A method at once, however many steps there are: in the order in which they are listed, then near that order. */
  private listedMethod(): void {
    const order = listedOrder(this.t);
    for (const [span, width] of [
      [1, 100],
      [6, 20],
    ] as const) {
      const below = this.best?.period ?? unlimited;
      const part = near(this.t, order, span);
      this.take(this.engine.search({ below, width, most: Number.POSITIVE_INFINITY, ...part }));
    }
  }

  /** Wider searches for something better than what is known. */
  private widen(): void {
    for (const width of [100, 300, 1000]) {
      const { best } = this;
      if (best === undefined || this.done()) return;
      this.take(this.search({ below: best.period, width, most: Number.POSITIVE_INFINITY }));
    }
  }

  /**
   * Searches that drop nothing, for periods a little above the bound, then a little more: a search costs the more the
   * further its limit lies above the bound, so a limit that is refuted is cheap, and the first that is kept gives the best.
   */
  private prove(most: number): number {
    let spent = 0;
    let above = 0;
    while (this.best !== undefined && !this.done() && spent < most) {
      const { bound, best } = this;
      above = above === 0 ? Math.max(bound * 0.004, (best.period - bound) / 3) : above * 2;
      // What is within reach and nearly closed is not asked twice.
      const near = this.t.count <= provable && best.period - bound < nearlyClosed * bound;
      const limit = near || best.period - bound < 1.5 * above ? best.period : Math.ceil(bound + above);
      const found = this.search({ below: limit, width: Number.POSITIVE_INFINITY, most: most - spent });
      spent += found.states + 1;
      this.take(found);
      this.raise(
        found.complete ? Math.min(limit, this.best.period) : Math.min(found.bound, this.best.period),
      );
      // What is left after a search that was broken off would be spent on the same again.
      if (!found.complete) return most;
    }
    return spent;
  }

  /**
   * A good closed cycle is found sooner, because its hands keep together, and every closed cycle can be done open as well.
   * Where the open cycle is out of reach of a proof, a share of the states goes into the closed one.
   */
  private startFromClosed(): void {
    const { seed, rounds = 60, stop, states = usualStates } = this.wish;
    const share = this.t.count > provable ? Math.floor(states / 5) : 0;
    const run = new ComposeRun(tablesOf(this.t.instance, 'closed'), { seed, rounds, states: share, stop });
    run.firstMethod();
    if (share > 0) run.proveAndImprove();
    else run.improve(rounds);
    this.states += run.states;
    if (run.best === undefined) return;
    const { ways } = run.best;
    this.take({ period: this.engine.replay(ways), ways, complete: false, bound: 0, states: 0 });
  }

  /** Frees some tasks, keeps order and way of all others, and solves that; again and again. */
  private improve(rounds: number): void {
    let idle = 0;
    for (let round = 0; round < rounds && idle < patience && !this.done(); round += 1) {
      const known = this.best;
      if (known === undefined || this.t.count < 3) return;
      if (this.t.count > 12 && this.random() < 0.5) {
        idle = this.improveNear(known) ? 0 : idle + 1;
        continue;
      }
      const size = 6 + Math.floor(this.random() * (this.t.count > 24 ? 11 : 7));
      const free = chooseFree(this.t, this.jobs, known.ways, size, this.random);
      const part = freed(this.t, known.ways, free);
      const better = this.take(this.search({ below: known.period, width: 300, most: 4000, ...part }));
      idle = better ? 0 : idle + 1;
    }
  }

  /** Any way and any hand, but every task near its place in the order of the known cycle. */
  private improveNear({ period, ways }: Known): boolean {
    const order = ways.map((way) => this.t.wayTask[way] as number);
    const part = near(this.t, order, 3 + Math.floor(this.random() * 8));
    const width = this.random() < 0.5 ? 60 : 300;
    const wish = { below: period, width, most: Number.POSITIVE_INFINITY, ...part };
    return this.take(this.search(wish, this.engine));
  }

  private told({ period, ways }: Known): Composed {
    const schedule = this.scheduleOf(ways);
    const proven = period <= this.bound;
    const single = this.single[0] ?? { binding: { kind: 'order' as const }, bound: 0 };
    return {
      schedule,
      bound: Math.min(this.bound, schedule.period),
      proven,
      binds: single.binding,
      words: bindingWords(single, schedule.period, proven),
      travel: this.leastTravel ? 'least' : 'found',
      evenness: this.mostEven ? 'most' : 'found',
      states: this.states,
    };
  }

  private scheduleOf(ways: readonly number[]): Schedule {
    const schedule = scheduleOf(this.t.instance, ordersOfWays(this.t, ways));
    if (schedule === undefined) throw new Error('the search committed an order that cannot be kept');
    return schedule;
  }
}

const unlimited = 2 ** 30;
/** Times are reckoned in 32 bits with room for sums, so all steps one after the other may take eight minutes. */
const longestCycle = 480_000_000;
/** Tasks up to which, and states with which, the second search for least travel is tried. */
const [tied, tieStates] = [14, 20_000];
/** Rounds without anything better after which the proof is tried. */
const patience = 20;

/** Ways in the order in which they start, as orders of hands and eyes. */
export function ordersOfWays(t: Tables, ways: readonly number[]): Orders {
  const modes: number[] = [];
  for (const way of ways) {
    const task = t.wayTask[way] as number;
    modes[task] = way - (t.wayFrom[task] as number);
  }
  const of = (side: 0 | 1) =>
    ways.filter((way) => (t.wayRole[side][way] as number) >= 0).map((way) => t.wayTask[way] as number);
  const eyes = ways
    .map((way) => t.wayTask[way] as number)
    .filter((task) => t.instance.tasks[task]?.eyes !== undefined);
  return { kind: t.kind, modes, left: of(0), right: of(1), eyes };
}

/** Steps that no order can bring in: they wait for each other, or ask for a load that nothing leaves in that hand. */
function stuckSteps(t: Tables): string {
  const { tasks } = t.instance;
  const circle = tasks.filter((_, task) => waitsForItself(t, task));
  const unreached = tasks.filter((_, task) => {
    for (let way = t.wayFrom[task] as number; way < (t.wayFrom[task + 1] as number); way += 1) {
      const reached = ([0, 1] as const).every((side) => {
        const role = t.wayRole[side][way] as number;
        return role < 0 || (t.leastIn[side][role] as number) < impossible;
      });
      if (reached) return false;
    }
    return true;
  });
  const named = [circle, unreached, tasks].find((list) => list.length > 0) ?? tasks;
  return named
    .slice(0, 8)
    .map(({ name }) => `“${name}”`)
    .join(', ');
}

function waitsForItself({ instance }: Tables, task: number): boolean {
  const found = new Set(instance.tasks[task]?.after.map(({ task: before }) => before));
  for (const before of found) for (const more of instance.tasks[before]?.after ?? []) found.add(more.task);
  return found.has(task);
}
