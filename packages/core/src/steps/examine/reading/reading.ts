import { fail, type Micros, micros, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import {
  type Cycle,
  endOf,
  type Hand,
  isConfirmedCycle,
  isProposed,
  type Method,
  type MethodClock,
  markedStretch,
  methodClock,
  rowStart,
  type Study,
} from '../../../ground/study/index.ts';
import { type CyclePieces, cyclePieces } from './pieces.ts';

export type { Piece } from './pieces.ts';

/** A stretch of the record behind a figure: where the film has to be looked at. */
export interface Trace {
  /** Position of its cycle in `MethodReading.cycles`, from 0. */
  readonly cycle: number;
  readonly hand: Hand | 'both';
  /** Boundaries of the method: frames of its film, or microseconds. */
  readonly from: number;
  readonly to: number;
}

/** One cycle as it is examined. Times of its pieces run from its own start. */
export interface CycleReading extends CyclePieces {
  /** Position in `MethodReading.cycles`, from 0. */
  readonly position: number;
  /** Number of the cycle in the method, from 1; 0 for the whole record when no cycle is marked. */
  readonly number: number;
  readonly id: string | undefined;
  readonly name: string | undefined;
  readonly setAside: string | undefined;
  readonly from: number;
  readonly to: number;
  readonly duration: Micros;
}

/** A method as the examination reads it. */
export interface MethodReading {
  readonly study: Study;
  readonly method: Method;
  readonly clock: MethodClock;
  readonly cycles: readonly CycleReading[];
  readonly placeName: (id: string) => string;
  readonly choice: ReadingChoice;
  /** What the reader of the figures should know: no cycles marked, parts not marked, proposals left out. */
  readonly notes: readonly Finding[];
}

export interface ReadingChoice {
  /** Numbers of the cycles from 1; left out: all that are not set aside. */
  readonly cycles?: readonly number[] | undefined;
  /**
   * What the program proposed and nobody confirmed counts as well; left out, a cycle of which a part is only proposed is
   * not read, and proposed motions outside the cycles count as not marked.
   */
  readonly proposed?: boolean | undefined;
}

/** Every recorded method of a study that can be read. */
export function readRecords(study: Study): readonly MethodReading[] {
  return study.methods.flatMap(({ id, kind }) => {
    const reading = kind === 'recorded' ? readMethod(study, id) : undefined;
    return reading?.ok === true ? [reading.value] : [];
  });
}

/**
 * Reads the chosen cycles of a method. Without a marked cycle the whole marked stretch is read as one.
 * Fails when there is no such method or cycle, when nothing is marked, and when every cycle is set aside.
 */
export function readMethod(
  study: Study,
  methodId: string,
  choice: ReadingChoice = {},
): Result<MethodReading, Finding> {
  const method = study.methods.find((item) => item.id === methodId);
  if (method === undefined) {
    const known = study.methods.map((item) => item.id).join(', ') || 'no method';
    return fail(finding('record/no-method', {}, { method: methodId, known }));
  }
  const proposed = choice.proposed === true;
  const chosen = chosenSpans(method, choice.cycles, proposed);
  if (!chosen.ok) return chosen;
  const { spans, open } = chosen.value;
  const clock = methodClock(study, method);
  const cycles = spans.map((span, position): CycleReading => {
    const pieces = cyclePieces({ method, clock, span, cycle: position, proposed });
    return { ...span, ...pieces, position, duration: clock.span(span.from, span.to) };
  });
  if (cycles.every((cycle) => cycle.marked.left + cycle.marked.right === 0)) {
    return fail(finding('record/nothing-marked', {}, { method: method.name }));
  }
  const names = new Map(study.places.map((place) => [place.id, place.name]));
  const placeName = (id: string) => names.get(id) ?? id;
  const notes = [...notesOf(method, cycles), ...proposalNotes(cycles, open, proposed)];
  return ok({ study, method, clock, cycles, placeName, choice, notes });
}

type CycleSpan = Pick<CycleReading, 'number' | 'id' | 'name' | 'setAside' | 'from' | 'to'>;

interface Chosen {
  readonly spans: readonly CycleSpan[];
  /** How many of the chosen cycles hold proposals that nobody has confirmed. */
  readonly open: number;
}

function chosenSpans(
  method: Method,
  wanted: readonly number[] | undefined,
  proposed: boolean,
): Result<Chosen, Finding> {
  const { items } = method.cycles;
  if (items.length === 0) return wholeRecord(method, wanted, proposed);
  const unknown = wanted?.find((number) => items[number - 1] === undefined);
  if (unknown !== undefined) {
    return fail(finding('record/no-cycle', {}, { cycle: unknown, count: items.length }));
  }
  const all = items
    .map((cycle, index) => spanOf(method, cycle, index))
    .filter(({ number, setAside }) =>
      wanted === undefined ? setAside === undefined : wanted.includes(number),
    );
  if (all.length === 0) return fail(finding('examine/no-cycle-left', {}, { method: method.name }));
  const confirmed = all.filter(({ number }) => isConfirmedCycle(method, number - 1));
  const open = all.length - confirmed.length;
  if (confirmed.length === 0 && !proposed) {
    return fail(finding('examine/only-proposals', {}, { method: method.name }));
  }
  return ok({ spans: proposed ? all : confirmed, open });
}

function spanOf(method: Method, cycle: Cycle, index: number): CycleSpan {
  const { id, name, setAside, start } = cycle;
  return { number: index + 1, id, name, setAside, from: start, to: endOf(method.cycles, index) };
}

function wholeRecord(
  method: Method,
  wanted: readonly number[] | undefined,
  proposed: boolean,
): Result<Chosen, Finding> {
  if (wanted !== undefined) {
    return fail(finding('record/no-cycle', {}, { cycle: wanted[0] ?? 1, count: 0 }));
  }
  const any = markedStretch(method, () => true);
  if (any === undefined) return fail(finding('record/nothing-marked', {}, { method: method.name }));
  const span = proposed ? any : markedStretch(method, (motion) => !isProposed(motion));
  if (span === undefined) return fail(finding('examine/only-proposals', {}, { method: method.name }));
  const whole = { number: 0, id: undefined, name: undefined, setAside: undefined };
  const from = Math.max(span.from, Math.min(rowStart(method.left), rowStart(method.right)));
  return ok({ spans: [{ ...whole, from, to: span.to }], open: 0 });
}

function notesOf(method: Method, cycles: readonly CycleReading[]): Finding[] {
  const found: Finding[] = [];
  if (cycles[0]?.number === 0) found.push(finding('record/no-cycles', {}, { method: method.name }));
  const open = cycles.filter(
    (cycle) => cycle.marked.left < cycle.duration || cycle.marked.right < cycle.duration,
  );
  if (open.length > 0) {
    const numbers = open.map((cycle) => cycle.number);
    found.push(finding('examine/not-all-marked', {}, { cycles: cycleWords(numbers), count: open.length }));
  }
  return found;
}

/** What is said of proposals: which were left out, or, where they were asked for, that the figures rest on them. */
function proposalNotes(cycles: readonly CycleReading[], open: number, proposed: boolean): Finding[] {
  const count = proposedMotions(cycles);
  if (cycles[0]?.number === 0) {
    if (count === 0) return [];
    return [
      finding(proposed ? 'examine/with-proposed-motions' : 'examine/proposals-left-out', {}, { count }),
    ];
  }
  if (open === 0) return [];
  return proposed
    ? [finding('examine/with-proposals', {}, { count: open, all: cycles.length })]
    : [finding('examine/cycles-left-out', {}, { count: open, all: cycles.length + open })];
}

function proposedMotions(cycles: readonly CycleReading[]): number {
  const pieces = cycles.flatMap(({ left, right }) => [...left, ...right]);
  return new Set(pieces.flatMap(({ motion }) => (motion !== undefined && isProposed(motion) ? [motion] : [])))
    .size;
}

/** A list of more stretches than these is cut, and the number of the others told. */
const mostRuns = 12;

/** "cycle 3", "cycles 1–4, 7", "the whole record"; numbers in any order. */
export function cycleWords(numbers: readonly number[]): string {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  if (sorted[0] === 0) return 'the whole record';
  const runs: [number, number][] = [];
  for (const number of sorted) {
    const run = runs.at(-1);
    if (run !== undefined && run[1] === number - 1) run[1] = number;
    else runs.push([number, number]);
  }
  const words = runs.map(([first, last]) =>
    last === first ? `${first}` : last === first + 1 ? `${first}, ${last}` : `${first}–${last}`,
  );
  const shown = words.slice(0, mostRuns).join(', ');
  const left = runs.slice(mostRuns).reduce((sum, [first, last]) => sum + last - first + 1, 0);
  return `${sorted.length === 1 ? 'cycle' : 'cycles'} ${shown}${left === 0 ? '' : ` and ${left} more`}`;
}

/** The real time between two boundaries of a reading. */
export function traceTime(reading: MethodReading, trace: Pick<Trace, 'from' | 'to'>): Micros {
  return micros(reading.clock.timeOf(trace.to) - reading.clock.timeOf(trace.from));
}
