import { fail, type Micros, micros, ok, type Result } from '../../ground/base/index.ts';
import { type Finding, finding } from '../../ground/findings/index.ts';
import { seededRandom } from '../../ground/numerics/index.ts';
import { firstFault, rangeFault } from './inputs.ts';

export interface Span {
  readonly start: Micros;
  readonly end: Micros;
}

/** A shift on a clock of its own choice, such as microseconds since midnight of the first day. */
export interface Shift extends Span {
  readonly breaks: readonly Span[];
}

/**
 * The moments at which an observation may fall: one step after the start of a shift, two steps after it, and so on to its
 * end, without those in a break (a break holds its start, not its end).
 * @param shifts in order of time
 * @param step above 0
 */
export function momentsOf(shifts: readonly Shift[], step: Micros): Result<readonly Micros[], Finding> {
  const fault = rangeFault('The step between moments', step, { above: 0 }) ?? shiftsFault(shifts);
  if (fault !== undefined) return fail(fault);
  const steps = shifts.reduce((sum, { start, end }) => sum + Math.floor((end - start) / step), 0);
  if (steps > mostMoments) {
    return fail(
      finding(
        'define/number',
        {},
        {
          what: 'The number of steps in the shifts',
          found: String(steps),
          range: `at most ${mostMoments} (take a coarser step)`,
        },
      ),
    );
  }
  const moments: Micros[] = [];
  for (const { start, end, breaks } of shifts) {
    for (let moment = start + step; moment <= end; moment += step) {
      const resting = breaks.some((rest) => moment >= rest.start && moment < rest.end);
      if (!resting) moments.push(micros(moment));
    }
  }
  return ok(moments);
}

/** A year of shifts to the second. */
const mostMoments = 10_000_000;

/**
 * Numbers as they are read from a table of random numbers: those outside 1 to `most` are passed over, repeats too, until
 * `count` are found. In the order in which they came.
 */
export function numbersFromTable(table: Iterable<number>, most: number, count: number): readonly number[] {
  const kept = new Set<number>();
  if (count <= 0) return [];
  for (const number of table) {
    if (Number.isSafeInteger(number) && number >= 1 && number <= most) kept.add(number);
    if (kept.size === count) break;
  }
  return [...kept];
}

/**
 * Random observation times, each moment at most once, in order of time. The same seed gives the same times.
 * @param count how many, 1 or more
 * @param seed a whole number
 */
export function observationTimes(
  shifts: readonly Shift[],
  { count, step, seed }: { readonly count: number; readonly step: Micros; readonly seed: number },
): Result<readonly Micros[], Finding> {
  const fault = firstFault(
    rangeFault('The number of observations', count, { least: 1, whole: true }),
    rangeFault('The seed', seed, { whole: true }),
  );
  if (fault !== undefined) return fail(fault);
  const moments = momentsOf(shifts, step);
  if (!moments.ok) return moments;
  const there = moments.value.length;
  if (count > there) return fail(finding('define/too-few-moments', {}, { wanted: count, there }));
  return ok(drawn(moments.value, count, seed).sort((a, b) => a - b));
}

/** The first moments of a shuffle (Fisher and Yates, Durstenfeld's form, from memory): each choice is as likely. */
function drawn(moments: readonly Micros[], count: number, seed: number): Micros[] {
  const random = seededRandom(seed);
  const pool = [...moments];
  for (let index = 0; index < count; index++) {
    const other = index + Math.floor(random() * (pool.length - index));
    const [a, b] = [pool[index], pool[other]];
    if (a === undefined || b === undefined) break;
    [pool[index], pool[other]] = [b, a];
  }
  return pool.slice(0, count);
}

function shiftsFault(shifts: readonly Shift[]): Finding | undefined {
  let before = Number.NEGATIVE_INFINITY;
  for (const [index, { start, end, breaks }] of shifts.entries()) {
    const place = index + 1;
    if (!(end > start) || start < before) return finding('define/shift-order', {}, { place });
    const wrong = breaks.some((rest) => !(rest.end > rest.start) || rest.start < start || rest.end > end);
    if (wrong) return finding('define/break-outside', {}, { place });
    before = end;
  }
  return undefined;
}
