import { fail, type Micros, micros, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import {
  filmOf,
  type Hand,
  isConfirmedCycle,
  isProposed,
  itemsBetween,
  type Method,
  type MethodClock,
  type Motion,
  methodClock,
  proposedBetween,
  rowStart,
  type Study,
} from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import { timeText } from '../../../ground/units/index.ts';
import { describeMotion } from './motion-words.ts';

/** One motion of a hand within the charted cycle; times run from the start of the chart. */
export interface ChartMotion {
  readonly hand: Hand;
  readonly kind: MotionKind;
  readonly start: Micros;
  readonly end: Micros;
  readonly duration: Micros;
  readonly description: string;
  /** The motion began before the cycle, or goes on after it; only the part inside is charted and counted. */
  readonly cutStart: boolean;
  readonly cutEnd: boolean;
}

/** What stands in the title block. A field that nobody filled in is undefined. */
export interface ChartHeader {
  readonly operation: string;
  readonly part?: string | undefined;
  readonly number?: string | undefined;
  readonly department?: string | undefined;
  readonly film?: string | undefined;
  readonly method: string;
  readonly analyst?: string | undefined;
  readonly operatorCode?: string | undefined;
  readonly date?: string | undefined;
  /** "Cycle 3 of 8", or what is charted when no cycle is marked. */
  readonly span: string;
  /** Where the chart begins and ends in the method's own count: "frames 120 to 310". */
  readonly reading: string;
}

export interface ChartFacts {
  readonly header: ChartHeader;
  readonly duration: Micros;
  readonly left: readonly ChartMotion[];
  readonly right: readonly ChartMotion[];
  /** Number of the charted cycle from 1; undefined when no cycle is marked. */
  readonly cycle: number | undefined;
  /** Invented data, to be said on the sheet. */
  readonly demo: boolean;
  /** What the reader of the chart should know: parts not marked, no cycles, a cycle set aside. */
  readonly notes: readonly Finding[];
}

export interface ChartChoice {
  /**
   * Number of the cycle from 1; left out, the first typical one in which nothing is only proposed, the first typical one
   * when there is none, or the whole row when no cycle is marked.
   */
  readonly cycle?: number | undefined;
  /** The date as it shall be printed. The chart knows no clock. */
  readonly date?: string | undefined;
}

/**
 * What a chart of one cycle says, before anything is laid out.
 * Fails when there is no such method or cycle, and when neither hand has anything in the chosen span.
 */
export function chartFacts(
  study: Study,
  methodId: string,
  choice: ChartChoice = {},
): Result<ChartFacts, Finding> {
  const method = study.methods.find((item) => item.id === methodId);
  if (method === undefined) {
    const known = study.methods.map((item) => item.id).join(', ') || 'no method';
    return fail(finding('record/no-method', {}, { method: methodId, known }));
  }
  const clock = methodClock(study, method);
  const span = chooseSpan(method, choice.cycle);
  if (!span.ok) return span;
  const { from, to, cycle } = span.value;
  const names = new Map(study.places.map((place) => [place.id, place.name]));
  const motions = (hand: Hand) => handMotions(method, hand, from, to, clock, names);
  const [left, right] = [motions('left'), motions('right')];
  if ([...left, ...right].every((motion) => motion.kind === 'unmarked')) {
    return fail(finding('record/nothing-marked', {}, { method: method.name }));
  }
  return ok({
    header: header(study, method, span.value, clock, choice.date),
    duration: clock.span(from, to),
    left,
    right,
    cycle,
    demo: study.demo === true,
    notes: [...proposalNote(method, span.value), ...notes(method, cycle, left, right)],
  });
}

/** Whoever charts a cycle with proposals has it said on the sheet, for its totals rest on them. */
function proposalNote(method: Method, { from, to, cycle }: ChartSpan): Finding[] {
  const count = proposedBetween(method, from, to);
  const bound = cycle !== undefined && !isConfirmedCycle(method, cycle - 1);
  return count === 0 && !bound ? [] : [finding('record/chart-with-proposals', {}, { count })];
}

interface ChartSpan {
  readonly from: number;
  readonly to: number;
  readonly cycle: number | undefined;
}

function chooseSpan(method: Method, wanted: number | undefined): Result<ChartSpan, Finding> {
  const { cycles } = method;
  const typical = cycles.items.findIndex((cycle) => cycle.setAside === undefined);
  const confirmed = cycles.items.findIndex(
    (cycle, index) => cycle.setAside === undefined && isConfirmedCycle(method, index),
  );
  const index = wanted === undefined ? Math.max(0, confirmed < 0 ? typical : confirmed) : wanted - 1;
  const cycle = cycles.items[index];
  if (cycle !== undefined) {
    const to = cycles.items[index + 1]?.start ?? cycles.end;
    return ok({ from: cycle.start, to, cycle: index + 1 });
  }
  if (wanted !== undefined) {
    return fail(finding('record/no-cycle', {}, { cycle: wanted, count: cycles.items.length }));
  }
  return markedSpan(method);
}

/** From the first to the last motion that somebody marked, in either hand. */
function markedSpan(method: Method): Result<ChartSpan, Finding> {
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const row of [method.left, method.right]) {
    for (const span of itemsBetween(row, rowStart(row), row.end)) {
      if (span.item.kind === 'unmarked') continue;
      from = Math.min(from, span.start);
      to = Math.max(to, span.end);
    }
  }
  return to > from
    ? ok({ from, to, cycle: undefined })
    : fail(finding('record/nothing-marked', {}, { method: method.name }));
}

function handMotions(
  method: Method,
  hand: Hand,
  from: number,
  to: number,
  clock: MethodClock,
  names: ReadonlyMap<string, string>,
): ChartMotion[] {
  const row = method[hand];
  const zero = clock.timeOf(from);
  const since = (boundary: number) => micros(clock.timeOf(boundary) - zero);
  const charted = itemsBetween(row, from, to).map(({ item, index, start, end }): ChartMotion => {
    const whole = row.items[index + 1]?.start ?? row.end;
    return {
      hand,
      kind: item.kind,
      start: since(start),
      end: since(end),
      duration: clock.span(start, end),
      description: describe(item, names),
      cutStart: item.kind !== 'unmarked' && item.start < from,
      cutEnd: item.kind !== 'unmarked' && whole > to,
    };
  });
  return fillEdges(charted, hand, micros(clock.span(from, to)));
}

function describe(motion: Motion, names: ReadonlyMap<string, string>): string {
  const name = (place: string | undefined) => (place === undefined ? undefined : (names.get(place) ?? place));
  const { kind, object, from, to } = motion;
  const words = describeMotion({ kind, object, from: name(from), to: name(to) });
  return isProposed(motion) ? `${words} (proposed)` : words;
}

/** Where a row begins after the cycle or ends before it, the rest is shown as not marked: both hands end at one reading. */
function fillEdges(motions: readonly ChartMotion[], hand: Hand, duration: Micros): ChartMotion[] {
  const filled = (start: number, end: number): ChartMotion[] =>
    end > start
      ? [
          {
            hand,
            kind: 'unmarked',
            start: micros(start),
            end: micros(end),
            duration: micros(end - start),
            description: describeMotion({ kind: 'unmarked' }),
            cutStart: false,
            cutEnd: false,
          },
        ]
      : [];
  return [
    ...filled(0, motions[0]?.start ?? duration),
    ...motions,
    ...filled(motions.at(-1)?.end ?? duration, duration),
  ];
}

function header(
  study: Study,
  method: Method,
  span: ChartSpan,
  clock: MethodClock,
  date: string | undefined,
): ChartHeader {
  const { operation } = study;
  const film = filmOf(study, method);
  return {
    operation: operation.name,
    part: operation.part,
    number: operation.number,
    department: operation.department,
    film: film?.name,
    method: method.name,
    analyst: operation.analyst,
    operatorCode: film?.operatorCode,
    date,
    span:
      span.cycle === undefined
        ? 'All that is marked'
        : `Cycle ${span.cycle} of ${method.cycles.items.length}`,
    reading:
      clock.unit === 'frames'
        ? `frames ${span.from} to ${span.to}`
        : `${timeText(clock.timeOf(span.from), 'seconds')} to ${timeText(clock.timeOf(span.to), 'seconds')}`,
  };
}

function notes(
  method: Method,
  cycle: number | undefined,
  left: readonly ChartMotion[],
  right: readonly ChartMotion[],
): Finding[] {
  const found: Finding[] = [];
  if (cycle === undefined) found.push(finding('record/no-cycles', {}, { method: method.name }));
  const aside = cycle === undefined ? undefined : method.cycles.items[cycle - 1]?.setAside;
  if (aside !== undefined && cycle !== undefined) {
    found.push(finding('record/cycle-set-aside', {}, { cycle, reason: aside }));
  }
  for (const motions of [left, right]) {
    const open = motions.filter((motion) => motion.kind === 'unmarked');
    const time = open.reduce((sum, motion) => sum + motion.duration, 0);
    const hand = open[0]?.hand;
    if (hand !== undefined) {
      const words = { hand, time: timeText(micros(time), 'seconds') };
      found.push(
        cycle === undefined
          ? finding('record/unmarked-in-span', { hand }, words)
          : finding('record/unmarked-in-cycle', { hand }, { ...words, cycle }),
      );
    }
  }
  return found;
}
