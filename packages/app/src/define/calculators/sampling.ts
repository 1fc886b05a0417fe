import { observationTimes, type SampledDay, type Shift, type Span } from '@evenhand/core/define';
import { fail, micros, ok, type Result } from '@evenhand/core/ground/base';
import { short } from '../readings/cell-text.ts';
import { linesIn } from './calculator-input.ts';

const minute = 60_000_000;
const day = 24 * 60 * minute;

/** “06:00-14:00, 14:00–22:00”; a span that ends before it begins runs into the next day. */
export function readSpans(text: string, what: string): Result<readonly Span[], string> {
  const spans: Span[] = [];
  for (const part of text.split(/[,;\n]+/).map((each) => each.trim())) {
    if (part === '') continue;
    const match = /^(\d{1,2})[:.](\d{2})\s*(?:-|–|to)\s*(\d{1,2})[:.](\d{2})$/.exec(part);
    const [fromHour, fromMinute, toHour, toMinute] = (match ?? []).slice(1).map(Number) as number[];
    if (
      match === null ||
      Math.max(fromHour as number, toHour as number) > 24 ||
      Math.max(fromMinute as number, toMinute as number) > 59
    ) {
      return fail(
        `“${short(part)}” is no ${what}. Write it as 06:00–14:00, several with commas between them.`,
      );
    }
    const start = ((fromHour as number) * 60 + (fromMinute as number)) * minute;
    const end = ((toHour as number) * 60 + (toMinute as number)) * minute;
    spans.push({ start: micros(start), end: micros(end > start ? end : end + day) });
  }
  return ok(spans);
}

/** The shifts of so many days, each with the breaks that lie within it. */
export function shiftsOf(
  shifts: readonly Span[],
  breaks: readonly Span[],
  days: number,
): Result<readonly Shift[], string> {
  if (shifts.length === 0) return fail('Write at least one shift, such as 06:00–14:00.');
  const sorted = [...shifts].sort((a, b) => a.start - b.start);
  const taken = new Set<Span>();
  const one = sorted.map((shift) => {
    const own = breaks.flatMap((rest) => {
      for (const later of [0, day]) {
        const moved = { start: micros(rest.start + later), end: micros(rest.end + later) };
        if (moved.start < shift.start || moved.end > shift.end) continue;
        taken.add(rest);
        return [moved];
      }
      return [];
    });
    return { ...shift, breaks: own };
  });
  const lost = breaks.find((rest) => !taken.has(rest));
  if (lost !== undefined) return fail(`The break ${clock(lost.start)}–${clock(lost.end)} lies in no shift.`);
  return ok(
    Array.from({ length: days }, (_, at) => at).flatMap((at) =>
      one.map((shift) => ({
        ...moved(shift, at * day),
        breaks: shift.breaks.map((rest) => moved(rest, at * day)),
      })),
    ),
  );
}

function moved({ start, end }: Span, by: number): Span {
  return { start: micros(start + by), end: micros(end + by) };
}

export interface Round {
  readonly day: number;
  readonly times: readonly string[];
}

/** Random observation times, day by day, as a clock shows them. */
export function rounds(
  shifts: readonly Shift[],
  wish: { readonly count: number; readonly stepMinutes: number; readonly seed: number },
): Result<readonly Round[], string> {
  const { count, stepMinutes, seed } = wish;
  const drawn = observationTimes(shifts, { count, step: micros(stepMinutes * minute), seed });
  if (!drawn.ok) return fail(drawn.error.message);
  const byDay = new Map<number, string[]>();
  for (const time of drawn.value) {
    const at = shifts.filter(({ start }) => start <= time).at(-1)?.start ?? time;
    const number = Math.floor(at / day) + 1;
    byDay.set(number, [...(byDay.get(number) ?? []), clock(time)]);
  }
  return ok([...byDay].map(([number, times]) => ({ day: number, times })));
}

function clock(time: number): string {
  const minutes = Math.floor((time % day) / minute);
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}

/** Lines with a name, how often it was seen and how many observations there were. */
export function readDays(text: string): Result<readonly SampledDay[], string> {
  const days: SampledDay[] = [];
  for (const { line, cells } of linesIn(text.replaceAll(',', '\t'))) {
    const numbers = cells.slice(-2).map(Number);
    const [seen, count] = numbers;
    const whole = numbers.length === 2 && numbers.every((each) => Number.isSafeInteger(each) && each >= 0);
    if (!whole || seen === undefined || count === undefined) {
      return fail(
        `Line ${line}: “${short(cells.join(' '))}” should be a name, how often it was seen, and how many observations there were.`,
      );
    }
    if (seen > count || count === 0) {
      return fail(`Line ${line}: it was seen ${seen} times in ${count} observations. Correct one of them.`);
    }
    days.push({ name: cells.slice(0, -2).join(' ') || `day ${days.length + 1}`, seen, count });
  }
  return days.length === 0 ? fail('Paste at least one line, such as: Monday 12 80.') : ok(days);
}
