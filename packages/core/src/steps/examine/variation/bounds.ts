import { roundMicros } from '../../../ground/base/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import { countText } from '../../../ground/units/index.ts';
import { type CycleReading, cycleWords, type Trace } from '../reading/index.ts';
import type { BoundOrReason, Deviation, ElementVariation, Variation } from './variation-types.ts';

/** A cycle can be complete without these: they do not bring the work on. Our own choice. */
const dispensable: ReadonlySet<MotionKind> = new Set(['Sh', 'F', 'St', 'H', 'Pn', 'UD', 'AD', 'R']);

/** Positions of the cycles that lack a motion of the typical one which a complete cycle must have. */
export function lackingCycles(deviations: readonly Deviation[]): ReadonlySet<number> {
  const lacks = ({ missing }: Deviation) => missing.some(({ kind }) => !dispensable.has(kind));
  return new Set(deviations.filter(lacks).map(({ cycle }) => cycle));
}

/**
 * The shortest cycle that counts, is marked throughout in both hands and has every motion of the typical cycle that
 * brings the work on.
 * @param lacking positions of cycles that lack one
 */
export function bestCycle(cycles: readonly CycleReading[], lacking: ReadonlySet<number>): Variation['best'] {
  const complete = cycles.filter(
    ({ position, setAside, marked, duration }) =>
      setAside === undefined &&
      marked.left === duration &&
      marked.right === duration &&
      !lacking.has(position),
  );
  const [first, ...rest] = complete;
  if (first === undefined) {
    const reason =
      'No cycle is marked throughout in both hands, counts, and has every motion of the typical one that brings the work on.';
    return { reason, number: undefined };
  }
  const best = rest.reduce((least, cycle) => (cycle.duration < least.duration ? cycle : least), first);
  const { position, from, to } = best;
  const words = `The shortest of ${countText(complete.length, 'complete cycle')} seen: ${cycleWords([best.number])}. Complete means marked throughout in both hands, not set aside, and with every motion of the typical cycle but searches, choices, holds, plans and waits. It has been done once, on the film; that it can be done all day is not shown.`;
  const traces: Trace[] = [{ cycle: position, hand: 'both', from, to }];
  return { bound: { time: best.duration, words, traces }, number: best.number };
}

const caveat =
  'No cycle was seen in which all of them were so short together, and their times need not be independent; it is a mark to work towards, not a time standard.';

/** Named elements tile the cycle on one line of time, so the sum of their lower quartiles is a time. */
export function quartilesOfElements(elements: readonly ElementVariation[]): BoundOrReason {
  const unknown = elements.find(({ spread }) => spread === undefined);
  if (elements.length === 0 || unknown !== undefined) {
    const which = unknown === undefined ? 'There is no element' : `“${unknown.name}” was found in no cycle`;
    return { reason: `${which}, so the elements do not add up to a cycle.` };
  }
  const words = `Each of ${countText(elements.length, 'element')} at its own lower quartile, a time that a quarter of its readings keep within, added up (each was found in ${countText(fewest(elements), 'cycle')} or more). The elements follow one another on one line of time, so the sum is a time of the whole cycle. ${caveat}`;
  return { bound: { time: quartileSum(elements), words, traces: quartileTraces(elements) } };
}

/**
 * Without named elements: the motions of one hand follow one another and fill its cycle, so the sum of their lower
 * quartiles is a time. The hand that works more is taken, because the waits of the other one give way with it.
 * @param elements motions of the typical cycle of each hand that is marked throughout there
 * @param work time that each hand works in all cycles
 */
export function quartilesOfMotions(
  elements: readonly ElementVariation[],
  work: Readonly<Record<Hand, number>>,
): BoundOrReason {
  const rows = hands
    .map((hand) => ({ hand, motions: elements.filter((element) => element.hand === hand) }))
    .filter(({ motions }) => motions.length > 0)
    .map((row) => ({ ...row, time: quartileSum(row.motions) }))
    .sort((a, b) => work[b.hand] - work[a.hand] || b.time - a.time);
  const [busier] = rows;
  if (busier === undefined) {
    return {
      reason: 'No cycle is marked throughout in either hand, so its motions do not add up to a cycle.',
    };
  }
  const { hand, motions, time } = busier;
  const choice = rows.length === 2 ? 'which works more' : 'the only one that is marked throughout';
  const words = `Each of the ${countText(motions.length, 'motion')} in the typical cycle of the ${hand} hand, ${choice}, at its own lower quartile, a time that a quarter of its readings keep within, added up, its waits and holds with it (each was found in ${countText(fewest(motions), 'cycle')} or more). The motions of one hand follow one another, so the sum is a time; whether the other hand keeps up is not asked. ${caveat}`;
  return { bound: { time, words, traces: quartileTraces(motions) } };
}

function quartileSum(elements: readonly ElementVariation[]) {
  return roundMicros(elements.reduce((sum, { spread }) => sum + (spread?.lowerQuartile ?? 0), 0));
}

function fewest(elements: readonly ElementVariation[]): number {
  return elements.reduce(
    (least, { spread }) => Math.min(least, spread?.sample.n ?? 0),
    Number.POSITIVE_INFINITY,
  );
}

/** For each element the reading that comes nearest to its lower quartile; of several the first. */
function quartileTraces(elements: readonly ElementVariation[]): Trace[] {
  return elements.flatMap(({ times, traces, spread }) => {
    const known = times.filter((time) => time !== undefined);
    const away = (index: number) => Math.abs((known[index] ?? 0) - (spread?.lowerQuartile ?? 0));
    const best = [...known.keys()].reduce((least, index) => (away(index) < away(least) ? index : least), 0);
    const trace = traces[best];
    return trace === undefined ? [] : [trace];
  });
}
