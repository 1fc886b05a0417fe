import type { Shift, Span } from '@evenhand/core/define';
import { fail, type Micros, micros, ok, type Result } from '@evenhand/core/ground/base';

const minute = 60_000_000;
const dayLength = 24 * 60 * minute;

export interface ShiftPlan {
  /** On a clock that begins with the first day, one after another. */
  readonly shifts: readonly Shift[];
}

/** A moment as a person reads it. */
export interface Day {
  /** From 1; the day on whose calendar page the moment stands. */
  readonly day: number;
  /** HH:MM, with seconds where there are some. */
  readonly clock: string;
}

/** Shifts and breaks of a day, on a number of days. What ends before it begins runs over midnight. */
export function readShifts(shifts: string, breaks: string, days: number): Result<ShiftPlan, string> {
  const [worked, rested] = [readSpans('shifts', shifts), readSpans('breaks', breaks)];
  if (!worked.ok) return worked;
  if (!rested.ok) return rested;
  if (worked.value.length === 0) return fail('--shifts names no shift. Write such as 06:00-14:00.');
  const inside = worked.value.map((shift) => ({
    ...shift,
    breaks: rested.value.flatMap((rest) => within(rest, shift)),
  }));
  const placed = new Set(inside.flatMap((shift) => shift.breaks.map(({ start }) => start % dayLength)));
  const stray = rested.value.find(({ start }) => !placed.has(start));
  if (stray !== undefined) {
    return fail(
      `--breaks: the break at ${momentText(stray.start).clock} lies in no shift as a whole. Correct it or the shifts.`,
    );
  }
  const sorted = [...inside].sort((a, b) => a.start - b.start);
  const all = Array.from({ length: days }, (_, day) => sorted.map((shift) => later(shift, day * dayLength)));
  return ok({ shifts: all.flat() });
}

/** The break in the shift, also when it falls on the day after the shift began. */
function within(rest: Span, shift: Span): Span[] {
  return [0, dayLength]
    .map((by) => move(rest, by))
    .filter(({ start, end }) => start >= shift.start && end <= shift.end);
}

function move({ start, end }: Span, by: number): Span {
  return { start: micros(start + by), end: micros(end + by) };
}

function later(shift: Shift, by: number): Shift {
  return { ...move(shift, by), breaks: shift.breaks.map((rest) => move(rest, by)) };
}

function readSpans(option: string, text: string): Result<readonly Span[], string> {
  const spans: Span[] = [];
  for (const part of text.split(',').filter((item) => item.trim() !== '')) {
    const match = /^(\d{1,2}):(\d{2})\s*[-–]\s*(\d{1,2}):(\d{2})$/.exec(part.trim());
    const [from, to] = [clockOf(match?.[1], match?.[2]), clockOf(match?.[3], match?.[4])];
    if (from === undefined || to === undefined || from === to) {
      return fail(`--${option}: “${part.trim()}” is no stretch of the day. Write such as 06:00-14:00.`);
    }
    spans.push({ start: micros(from), end: micros(to < from ? to + dayLength : to) });
  }
  return ok(spans);
}

function clockOf(hours = '', minutes = ''): number | undefined {
  const [hour, rest] = [Number(hours), Number(minutes)];
  const known = hours !== '' && hour <= 24 && rest < 60 && hour * 60 + rest <= 24 * 60;
  return known ? (hour * 60 + rest) * minute : undefined;
}

export function momentText(moment: Micros): Day {
  const [day, rest] = [Math.floor(moment / dayLength), moment % dayLength];
  const part = (value: number) => String(value).padStart(2, '0');
  const seconds = Math.floor(rest / 1_000_000);
  const clock = `${part(Math.floor(seconds / 3600))}:${part(Math.floor(seconds / 60) % 60)}`;
  return { day: day + 1, clock: seconds % 60 === 0 ? clock : `${clock}:${part(seconds % 60)}` };
}
