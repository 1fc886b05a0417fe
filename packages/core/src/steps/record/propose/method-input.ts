import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import {
  type Cycle,
  filmOf,
  type Hand,
  hands,
  itemsBetween,
  type Method,
  type Motion,
  methodClock,
  type Spanned,
  type Study,
  spanAt,
} from '../../../ground/study/index.ts';
import type { Track } from '../tracks/track.ts';
import type { ConfirmedCycle, LabelledStart, Stretch } from './confirmed.ts';

export interface ProposeInput {
  readonly study: Study;
  /** Id of the method whose cycles are to be proposed. */
  readonly method: string;
  readonly track: Track;
  /** Frames of the track a second; needed for a method without a film, ignored for one with a film. */
  readonly framesPerSecond?: number;
}

/** What is known of a motion but for its time. */
export type MotionLabel = Pick<Motion, 'kind' | 'object' | 'from' | 'to'>;

/** A method as the proposer sees it: everything in seconds of real time, motions as labels. */
export interface MethodInput {
  readonly method: Method;
  /** Time of each frame of the track. */
  readonly seconds: Float64Array;
  readonly boundaryAt: (seconds: number) => number;
  readonly timeAt: (boundary: number) => number;
  readonly last: number;
  readonly labels: readonly MotionLabel[];
  readonly confirmed: readonly ConfirmedCycle[];
  /** Stretches in which cycles are sought. */
  readonly free: readonly Stretch[];
  /** Cycles whose bounds a person has marked and whose motions nobody has. */
  readonly given: readonly Stretch[];
  readonly findings: readonly Finding[];
}

const shortest = 0.5;

export function methodInput(input: ProposeInput): Result<MethodInput, readonly Finding[]> {
  const { study, track } = input;
  const method = study.methods.find(({ id }) => id === input.method);
  if (method === undefined) {
    const methods = study.methods.map(({ id }) => id).join(', ') || 'none';
    return fail([finding('propose/no-method', {}, { method: input.method, methods })]);
  }
  const time = timesOf(input, method);
  if (!time.ok) return time;
  const { seconds, timeAt, boundaryAt, last, findings } = time.value;
  const labels = new Labels();
  const marked = spansOf(method).map((cycle) => readCycle(method, cycle, labels, timeAt));
  const confirmed = marked.flatMap(({ confirmed }) => confirmed ?? []);
  const tooShort = confirmed.find(({ start, end }) => end - start < shortest);
  if (tooShort !== undefined) {
    const words = { at: tooShort.start.toFixed(2), seconds: (tooShort.end - tooShort.start).toFixed(2) };
    return fail([finding('propose/short-cycle', {}, words)]);
  }
  const given = marked.flatMap(({ given }) => given ?? []);
  const end = Math.min(seconds[track.frames - 1] ?? 0, timeAt(last));
  const taken = [...confirmed, ...given, ...markedByBoth(method, timeAt)];
  return ok({
    method,
    seconds,
    boundaryAt,
    timeAt,
    last,
    labels: labels.all,
    confirmed,
    given,
    free: without({ start: seconds[0] ?? 0, end }, taken),
    findings,
  });
}

interface Times extends Pick<MethodInput, 'seconds' | 'boundaryAt' | 'timeAt' | 'last' | 'findings'> {}

function timesOf(
  { study, track, framesPerSecond }: ProposeInput,
  method: Method,
): Result<Times, readonly Finding[]> {
  if (method.base.kind === 'micros') {
    if (framesPerSecond === undefined) return fail([finding('propose/no-rate', {}, { method: method.name })]);
    const seconds = Float64Array.from({ length: track.frames }, (_, frame) => frame / framesPerSecond);
    const last = Math.max(
      method.left.end,
      method.right.end,
      method.cycles.end,
      Math.round((track.frames / framesPerSecond) * 1e6),
    );
    return ok({
      seconds,
      timeAt: (boundary: number) => boundary / 1e6,
      boundaryAt: (at: number) => Math.max(0, Math.min(last, Math.round(at * 1e6))),
      last,
      findings: [],
    });
  }
  if (filmOf(study, method) === undefined)
    return fail([finding('propose/no-film', {}, { method: method.name })]);
  const clock = methodClock(study, method);
  const frames = clock.last ?? track.frames;
  const words = { track: track.frames, film: frames };
  if (track.frames > frames || track.frames < frames * 0.9)
    return fail([finding('propose/frames', {}, words)]);
  const seconds = Float64Array.from({ length: track.frames }, (_, frame) => clock.timeOf(frame) / 1e6);
  return ok({
    seconds,
    timeAt: (boundary: number) => clock.timeOf(boundary) / 1e6,
    boundaryAt: (at: number) => nearestFrame(seconds, at),
    last: frames,
    findings: track.frames < frames ? [finding('propose/frames-few', {}, words)] : [],
  });
}

function nearestFrame(seconds: Float64Array, at: number): number {
  let low = 0;
  let high = seconds.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((seconds[middle] as number) < at) low = middle + 1;
    else high = middle;
  }
  const before = seconds[low - 1];
  return before !== undefined && at - before < (seconds[low] as number) - at ? low - 1 : low;
}

/** Numbers for motions that are alike in all but their times. */
class Labels {
  readonly all: MotionLabel[] = [];
  private readonly known = new Map<string, number>();

  of({ kind, object, from, to }: Motion): number {
    const key = JSON.stringify([kind, object, from, to]);
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const optional = {
      ...(object === undefined ? {} : { object }),
      ...(from === undefined ? {} : { from }),
      ...(to === undefined ? {} : { to }),
    };
    this.all.push({ kind, ...optional });
    this.known.set(key, this.all.length - 1);
    return this.all.length - 1;
  }
}

/** The cycles that a person has marked; where none is, all that is marked in both hands counts as one. */
function spansOf(method: Method): readonly Spanned<Cycle>[] {
  const cycles = method.cycles.items.flatMap((item, index) =>
    item.said === 'proposed' ? [] : [spanAt(method.cycles, index) as Spanned<Cycle>],
  );
  if (method.cycles.items.length > 0) return cycles;
  const marked = hands.map((hand) =>
    method[hand].items.flatMap((motion, index) => (counts(motion) ? [index] : [])),
  );
  if (marked.some((indexes) => indexes.length === 0)) return [];
  const start = Math.min(
    ...hands.map((hand, side) => method[hand].items[marked[side]?.[0] ?? 0]?.start ?? 0),
  );
  const end = Math.max(
    ...hands.map((hand, side) => spanAt(method[hand], marked[side]?.at(-1) ?? 0)?.end ?? 0),
  );
  return [{ item: { id: 'marked', start }, index: 0, start, end }];
}

function counts(motion: Motion): boolean {
  return motion.kind !== 'unmarked' && motion.said !== 'proposed';
}

interface ReadCycle {
  readonly confirmed?: ConfirmedCycle;
  readonly given?: Stretch;
}

function readCycle(
  method: Method,
  cycle: Spanned<Cycle>,
  labels: Labels,
  timeAt: (boundary: number) => number,
): ReadCycle {
  const rows = hands.map((hand) => itemsBetween(method[hand], cycle.start, cycle.end));
  const marked = rows.map((row) => row.filter(({ item }) => counts(item)));
  // The last cycle of a row may reach over what nobody has marked yet.
  const end = Math.max(cycle.start, ...marked.map((row) => row.at(-1)?.end ?? cycle.start));
  const span = end - cycle.start;
  const share = (row: readonly Spanned<Motion>[]) =>
    row.reduce((sum, item) => sum + item.end - item.start, 0) / Math.max(1, span);
  const [left, right] = marked as [Spanned<Motion>[], Spanned<Motion>[]];
  if (span === 0 || (share(left) + share(right)) / 2 < 0.3 || Math.max(share(left), share(right)) < 0.6) {
    const untouched = left.length === 0 && right.length === 0 && cycle.item.setAside === undefined;
    return untouched ? { given: { start: timeAt(cycle.start), end: timeAt(cycle.end) } } : {};
  }
  const starts = (hand: Hand): LabelledStart[] =>
    itemsBetween(method[hand], cycle.start, end).map(({ item }) => ({
      at: timeAt(item.start),
      label: labels.of(item),
    }));
  return {
    confirmed: { start: timeAt(cycle.start), end: timeAt(end), left: starts('left'), right: starts('right') },
  };
}

function markedByBoth(method: Method, timeAt: (boundary: number) => number): Stretch[] {
  return method.left.items.flatMap((item, index) => {
    const own = spanAt(method.left, index);
    if (own === undefined || !counts(item)) return [];
    return itemsBetween(method.right, own.start, own.end)
      .filter((other) => counts(other.item))
      .map(({ start, end }) => ({ start: timeAt(start), end: timeAt(end) }));
  });
}

/** The whole without what is taken; pieces shorter than half a second are not worth a look. */
function without(whole: Stretch, taken: readonly Stretch[]): Stretch[] {
  const free: Stretch[] = [];
  let from = whole.start;
  for (const { start, end } of [...taken].sort((a, b) => a.start - b.start)) {
    if (start - from >= shortest) free.push({ start: from, end: Math.min(start, whole.end) });
    from = Math.max(from, end);
  }
  if (whole.end - from >= shortest) free.push({ start: from, end: whole.end });
  return free.filter(({ start, end }) => end - start >= shortest);
}
