import {
  readyWatch,
  recentReadings,
  runningElement,
  type WatchChange,
  type WatchCommand,
  type WatchReading,
  type WatchState,
  watchPlan,
  watchStep,
} from '@evenhand/core/define';
import type { Edit } from '@evenhand/core/ground/edit';
import type { Sitting, TimeStudy, TimeStudyReading } from '@evenhand/core/ground/study';
import type { RecordDesk } from '../../record/desk.ts';
import { changeTimeStudy, readingAt, setForeign, setReading, setSittings } from '../define-edits.ts';
import { keepMark, readMark, type WatchMark } from './watch-mark.ts';

export interface WatchShown {
  readonly watch: WatchState;
  /** Elements that are not timed in this run. */
  readonly leftOut: ReadonlySet<string>;
  /** What a rating is of. */
  readonly rates: 'running' | 'last';
  /** The newest first. */
  readonly recent: readonly WatchReading[];
  /** One sentence about the last press. */
  readonly said: string | undefined;
  /** The last whole cycle and its time, unknown when a reading of it was missed. */
  readonly whole: { readonly cycle: number; readonly us: number | undefined } | undefined;
  /** A run that was broken off by closing or loading the page. */
  readonly broken: WatchMark | undefined;
}

/** Who is timed, as it goes into a sitting. */
export interface WatchSitting {
  readonly operatorCode: string;
  readonly date: string;
}

/** How the watch names a foreign element until somebody says what it was. */
export const unnamedForeign = 'foreign element';

/** The stopwatch of one time study: every reading is an edit the moment it is taken, so that closing the window loses none. */
export class BenchWatch {
  readonly #desk: RecordDesk;
  readonly #id: string;
  readonly #listeners = new Set<() => void>();
  /** What the time study held before this run wrote there. */
  readonly #held = new Map<string, TimeStudyReading | null>();
  readonly #foreign = new Map<number, string>();
  #state: WatchShown;

  constructor(desk: RecordDesk, timeStudy: TimeStudy) {
    this.#desk = desk;
    this.#id = timeStudy.id;
    const leftOut = leftOutAtFirst(timeStudy);
    this.#state = {
      watch: ready(timeStudy, leftOut),
      leftOut,
      rates: 'last',
      recent: [],
      said: undefined,
      whole: undefined,
      broken: readMark(timeStudy.id),
    };
  }

  readonly state = (): WatchShown => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Before it begins the watch follows the time study; while it runs, its elements. */
  follow(timeStudy: TimeStudy): void {
    const { watch, leftOut } = this.#state;
    if (watch.phase === 'ready') return this.#set({ watch: ready(timeStudy, leftOut, watch) });
    const plan = planOf(timeStudy, leftOut);
    if (JSON.stringify(plan) !== JSON.stringify(watch.plan)) this.press({ do: 'plan', plan });
  }

  /** @param before elements of the first cycle that were over when the watch begins */
  beginAfter(timeStudy: TimeStudy, before: readonly string[]): void {
    this.#set({ watch: ready(timeStudy, this.#state.leftOut, { done: before }) });
  }

  time(timeStudy: TimeStudy, element: string, isTimed: boolean): void {
    const leftOut = new Set(this.#state.leftOut);
    if (isTimed) leftOut.delete(element);
    else leftOut.add(element);
    this.#set({ leftOut });
    this.follow(timeStudy);
  }

  begin(at: number, sitting: WatchSitting): void {
    this.press({ do: 'begin', at });
    const { watch } = this.#state;
    if (watch.phase !== 'running' || watch.begun !== at) return;
    this.#set({ broken: undefined });
    for (const edit of this.#beginning(watch.cycle, sitting)) this.#dispatch(edit);
  }

  press(command: WatchCommand): void {
    const before = this.#state.watch;
    const step = watchStep(before, command);
    if (step.refused !== undefined) return this.#set({ said: step.refused });
    const { state: watch } = step;
    const said = command.do === 'take-back' ? 'The last press was taken back.' : undefined;
    const recent = recentReadings(watch, 8);
    this.#set({
      watch,
      said,
      recent,
      ...(watch.cycle > before.cycle ? { whole: wholeCycle(before, watch) } : {}),
    });
    for (const change of step.changes) this.#write(change);
    const element = runningElement(watch);
    const going = watch.phase === 'running' || watch.phase === 'paused';
    keepMark(
      this.#id,
      going ? { cycle: watch.cycle, ...(element === undefined ? {} : { element }) } : undefined,
    );
  }

  rate(rating: number | undefined): void {
    const { watch, rates } = this.#state;
    this.press({ do: 'rate', of: watch.last === undefined ? 'running' : rates, rating });
  }

  rateThe(rates: 'running' | 'last'): void {
    this.#set({ rates });
  }

  say(said: string): void {
    this.#set({ said });
  }

  /** What the last foreign element was. */
  nameForeign(id: string, what: string): void {
    const timeStudy = this.#timeStudy();
    if (timeStudy === undefined || what.trim() === '') return;
    const named = (timeStudy.foreign ?? []).map((item) =>
      item.id === id ? { ...item, what: what.trim() } : item,
    );
    this.#dispatch(setForeign(timeStudy, named));
  }

  /** For another run of the watch in the same time study. */
  anew(): void {
    const timeStudy = this.#timeStudy();
    if (timeStudy === undefined) return;
    this.#held.clear();
    this.#foreign.clear();
    this.#set({
      watch: ready(timeStudy, this.#state.leftOut),
      said: undefined,
      recent: [],
      whole: undefined,
    });
  }

  #timeStudy(): TimeStudy | undefined {
    return this.#desk.study.timeStudies?.find(({ id }) => id === this.#id);
  }

  /** Figures typed so far become figures of a watch, and who is timed is noted from this cycle on. */
  #beginning(cycle: number, { operatorCode, date }: WatchSitting): readonly (Edit | undefined)[] {
    const timeStudy = this.#timeStudy();
    if (timeStudy?.source.kind !== 'readings') return [];
    const { source, sittings = [] } = timeStudy;
    const timing = source.timing === 'typed' ? 'continuous' : source.timing;
    const clocked = changeTimeStudy(timeStudy, { source: { ...source, timing } });
    const last = sittings.findLast(({ start }) => start <= cycle);
    const same = last?.operatorCode === operatorCode && last.date === date;
    if (operatorCode === '' || same || sittings.some(({ start }) => start >= cycle)) return [clocked];
    const more: Sitting = { id: crypto.randomUUID(), start: cycle, operatorCode, date };
    return [clocked, setSittings(timeStudy, [...sittings, more])];
  }

  #write(change: WatchChange): void {
    const timeStudy = this.#timeStudy();
    if (timeStudy === undefined) return;
    if (change.kind === 'foreign') return this.#writeForeign(timeStudy, change);
    const element = timeStudy.elements.find(({ id }) => id === change.element);
    if (element === undefined)
      return this.#set({ said: 'The element was taken away meanwhile; the reading has no place.' });
    const key = `${change.element} ${change.cycle}`;
    if (!this.#held.has(key)) this.#held.set(key, readingAt(element, change.cycle) ?? null);
    const to = change.to ?? this.#held.get(key) ?? null;
    this.#dispatch(setReading(timeStudy, element, change.cycle, to));
  }

  #writeForeign(timeStudy: TimeStudy, { count, to }: Extract<WatchChange, { kind: 'foreign' }>): void {
    const others = (timeStudy.foreign ?? []).filter(({ id }) => id !== this.#foreign.get(count));
    if (to === null) {
      this.#foreign.delete(count);
      return this.#dispatch(setForeign(timeStudy, others));
    }
    const id = crypto.randomUUID();
    this.#foreign.set(count, id);
    const { cycle, element, us } = to;
    const entry = { id, cycle, us, what: unnamedForeign, ...(element === undefined ? {} : { element }) };
    this.#dispatch(setForeign(timeStudy, [...others, entry]));
  }

  #dispatch(edit: Edit | undefined): void {
    if (edit !== undefined && !this.#desk.dispatch(edit))
      this.#set({ said: 'The reading could not be written; take it again.' });
  }

  #set(change: Partial<WatchShown>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of [...this.#listeners]) listener();
  }
}

/** Watches run on while another desk of the study is looked at. */
const watches = new WeakMap<RecordDesk, Map<string, BenchWatch>>();

export function watchOf(desk: RecordDesk, timeStudy: TimeStudy): BenchWatch {
  const known = watches.get(desk) ?? new Map<string, BenchWatch>();
  watches.set(desk, known);
  const watch = known.get(timeStudy.id) ?? new BenchWatch(desk, timeStudy);
  known.set(timeStudy.id, watch);
  return watch;
}

function planOf({ elements }: TimeStudy, leftOut: ReadonlySet<string>) {
  return watchPlan(elements.filter(({ id }) => !leftOut.has(id)));
}

function ready(timeStudy: TimeStudy, leftOut: ReadonlySet<string>, start: { done?: readonly string[] } = {}) {
  const plan = planOf(timeStudy, leftOut);
  const { source } = timeStudy;
  const timing = source.kind === 'readings' && source.timing === 'repetitive' ? 'repetitive' : 'continuous';
  const done = plan.order.filter((id) => start.done?.includes(id));
  return readyWatch(plan, timing, { cycle: nextCycle(timeStudy, plan.order), done });
}

/** Work inside machine time runs beside the machine: one watch cannot read both, so it is left for a run of its own. */
function leftOutAtFirst({ elements }: TimeStudy): ReadonlySet<string> {
  const inside = elements.filter(({ work }) => work === 'inside');
  return new Set(inside.length === elements.length ? [] : inside.map(({ id }) => id));
}

/** The cycle after the last one in which one of these elements has a reading. */
export function nextCycle({ elements }: TimeStudy, order: readonly string[]): number {
  return elements
    .filter(({ id }) => order.includes(id))
    .reduce((next, { readings }) => Math.max(next, (readings.at(-1)?.cycle ?? 0) + 1), 1);
}

/** The cycle that the last press ended. */
function wholeCycle({ cycle, inCycle }: WatchState, { last }: WatchState): WatchShown['whole'] {
  const all = [
    ...inCycle.filter(({ element }) => element !== last?.element),
    ...(last === undefined ? [] : [last]),
  ];
  const times = all.map(({ reading }) => reading.us);
  const us = times.reduce(
    (sum, time) => (sum === undefined || time === undefined ? undefined : sum + time),
    0,
  );
  return { cycle, us };
}
