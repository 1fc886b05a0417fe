import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import {
  filmOf,
  type Hand,
  hands,
  type Method,
  type Motion,
  methodClock,
  type Study,
} from '../../../ground/study/index.ts';
import type { Track } from '../tracks/track.ts';
import type { ConfirmedCycle, Stretch } from './confirmed.ts';
import type { ProposedSpan } from './proposal.ts';
import { readCycles, shortest } from './read-cycles.ts';
import { leastSight, type Sight, sightOf } from './sight.ts';

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
  readonly sight: Sight;
  readonly boundaryAt: (seconds: number) => number;
  readonly timeAt: (boundary: number) => number;
  readonly last: number;
  readonly labels: readonly MotionLabel[];
  readonly confirmed: readonly ConfirmedCycle[];
  /** Stretches in which cycles are sought. */
  readonly free: readonly Stretch[];
  /** Cycles whose bounds a person has marked and whose motions nobody has. */
  readonly given: readonly Stretch[];
  /** Cycles in which proposals stand beside what is confirmed, in boundaries: they stay as they are. */
  readonly kept: readonly ProposedSpan[];
  readonly findings: readonly Finding[];
}

export function methodInput(input: ProposeInput): Result<MethodInput, readonly Finding[]> {
  const { study, track } = input;
  const method = study.methods.find(({ id }) => id === input.method);
  if (method === undefined) {
    const methods = study.methods.map(({ id }) => id).join(', ') || 'none';
    return fail([finding('propose/no-method', {}, { method: input.method, methods })]);
  }
  if (method.kind === 'composed') return fail([finding('propose/composed', {}, { method: method.name })]);
  const time = timesOf(input, method);
  if (!time.ok) return time;
  const { seconds, timeAt, boundaryAt, last, findings } = time.value;
  const labels = new Labels();
  const read = readCycles(method, { timeAt, labelOf: (motion) => labels.of(motion) });
  const { given, kept, taken } = read;
  const sight = sightOf(track, seconds);
  const unseen = read.confirmed.filter((cycle) => hands.every((hand) => !shows(sight, cycle, hand)));
  if (unseen.length > 0 && unseen.length === read.confirmed.length)
    return fail([...findings, ...unseen.map(unseenFinding('propose/cycles-unseen'))]);
  const confirmed = read.confirmed.filter((cycle) => !unseen.includes(cycle));
  const tooShort = confirmed.find(({ start, end }) => end - start < shortest);
  if (tooShort !== undefined) {
    const words = { at: tooShort.start.toFixed(2), seconds: (tooShort.end - tooShort.start).toFixed(2) };
    return fail([finding('propose/short-cycle', {}, words)]);
  }
  const end = Math.min(seconds[track.frames - 1] ?? 0, timeAt(last));
  return ok({
    method,
    seconds,
    sight,
    boundaryAt,
    timeAt,
    last,
    labels: labels.all,
    confirmed,
    given,
    kept,
    free: without({ start: seconds[0] ?? 0, end }, taken),
    findings: [...findings, ...read.findings, ...unseen.map(unseenFinding('propose/cycle-unseen'))],
  });
}

/** Whether a hand is seen enough in a cycle for others to be found after it. */
function shows(sight: Sight, { start, end }: Stretch, hand: Hand): boolean {
  return sight(hand, (start + end) / 2, (end - start) / 2) >= leastSight;
}

function unseenFinding(code: 'propose/cycle-unseen' | 'propose/cycles-unseen') {
  return ({ start, end }: Stretch): Finding =>
    finding(code, {}, { from: start.toFixed(1), to: end.toFixed(1) });
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
      findings: rateFindings(method, track.frames / framesPerSecond, framesPerSecond),
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

/** A track and rows that differ much in length are mostly told apart by a wrong rate. */
function rateFindings(method: Method, seconds: number, rate: number): Finding[] {
  const rows = Math.max(method.left.end, method.right.end) / 1e6;
  if (rows > seconds * 0.9 && rows < seconds * 1.1) return [];
  const words = { rate, track: seconds.toFixed(1), rows: rows.toFixed(1), method: method.name };
  return [finding('propose/rate', {}, words)];
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
