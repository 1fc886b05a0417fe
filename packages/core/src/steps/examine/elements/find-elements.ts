import { micros } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { sampleOf } from '../../../ground/numerics/index.ts';
import type { ElementMark } from '../../../ground/study/index.ts';
import { cycleWords, type MethodReading, type Piece, type Trace } from '../reading/index.ts';
import { tokenTable } from '../sequences/index.ts';
import { breakSearch, breaksIn, type CycleBreaks } from './breaks.ts';
import type { BreakStatus, ElementBreak, ElementSpan, ElementTimes, FoundElements } from './element-times.ts';
import { type ModelCycle, modelCycle, type PlacedMark } from './marks.ts';

const rule =
  'The motions of the hand that begins an element are compared, cycle by cycle, with those of the cycle in which the element was named: 0 for the same motion with the same object, half a motion for another object, a whole motion for each one more or missing, and the alignment of least cost is taken; of several, the one whose motions begin at the most similar part of the cycle. An element begins with the counterpart of the motion that begins it in the model, the first one with the cycle where it does so in the model. It lasts until the next one begins, or to the end of the cycle. Where that motion has no counterpart the element begins between the motions around it if these follow one another, and otherwise the times beside it are not known.';

/**
 * Finds elements that were named in one cycle in every cycle of the reading, by their motions.
 * @param marks left out: the elements of the method
 */
export function findElements(
  reading: MethodReading,
  marks: readonly ElementMark[] = reading.method.elements ?? [],
): FoundElements {
  const { model, findings } = modelCycle(reading, marks);
  if (model === undefined || model.marks.length === 0) {
    return { model: model?.cycle.number, elements: [], findings, rule };
  }
  const search = breakSearch(model, tokenTable('kind-object'));
  const found = reading.cycles.map((cycle) => breaksIn(search, cycle));
  return {
    model: model.cycle.number,
    elements: elementTimes(reading, model, found),
    findings: [...findings, ...breakFindings(reading, model, found)],
    rule,
  };
}

function elementTimes(
  reading: MethodReading,
  model: ModelCycle,
  found: readonly CycleBreaks[],
): ElementTimes[] {
  const elements = model.marks.map(({ mark }, index) =>
    elementFrom(
      reading,
      mark,
      found.map(({ breaks }) => breaks[index] as ElementBreak),
      found.map(({ breaks }) => breaks[index + 1]),
    ),
  );
  if (model.marks[0]?.piece.from === model.cycle.from) return elements;
  const starts = reading.cycles.map(
    ({ from }): ElementBreak => ({ status: 'start', at: from, around: undefined }),
  );
  const firsts = found.map(({ breaks }) => breaks[0]);
  return [elementFrom(reading, undefined, starts, firsts), ...elements];
}

/** @param ends where the next element begins in each cycle; undefined for the last element */
function elementFrom(
  reading: MethodReading,
  mark: ElementMark | undefined,
  breaks: readonly ElementBreak[],
  ends: readonly (ElementBreak | undefined)[],
): ElementTimes {
  const spans = reading.cycles.map((cycle, position): ElementSpan => {
    const end = ends[position];
    const from = usable(breaks[position]);
    const to = end === undefined ? cycle.to : usable(end);
    if (from === undefined || to === undefined) {
      return { cycle: position, from: undefined, to: undefined, time: undefined };
    }
    return { cycle: position, from, to, time: micros(reading.clock.timeOf(to) - reading.clock.timeOf(from)) };
  });
  const times = spans.flatMap(({ time }) => (time === undefined ? [] : [time])).sort((a, b) => a - b);
  return {
    mark,
    name: mark?.name ?? 'before the first element',
    spans,
    breaks,
    sample: times.length === 0 ? undefined : sampleOf(times),
  };
}

function usable(item: ElementBreak | undefined): number | undefined {
  return item?.status === 'order' ? undefined : item?.at;
}

const told = {
  similar: 'examine/element-similar',
  between: 'examine/element-between',
  missing: 'examine/element-missing',
  order: 'examine/element-order',
} as const satisfies Partial<Record<BreakStatus, string>>;

function breakFindings(
  reading: MethodReading,
  { marks }: ModelCycle,
  found: readonly CycleBreaks[],
): Finding[] {
  const listed = marks.flatMap((placed, index) =>
    (['similar', 'between', 'missing', 'order'] as const).flatMap((status) => {
      const cycles = reading.cycles.filter(
        (_, position) => found[position]?.breaks[index]?.status === status,
      );
      return cycles.length === 0 ? [] : [breakFinding(placed, status, cycles)];
    }),
  );
  const unproven = reading.cycles.filter((_, position) => found[position]?.proven === false);
  if (unproven.length === 0) return listed;
  const words = { cycles: cycleWords(unproven.map(({ number }) => number)) };
  return [...listed, finding('examine/element-long-cycle', {}, words)];
}

function breakFinding(
  { mark, piece }: PlacedMark,
  status: keyof typeof told,
  cycles: readonly { readonly number: number }[],
): Finding {
  const words = {
    element: mark.name,
    hand: mark.hand,
    motion: motionWords(piece),
    cycles: cycleWords(cycles.map(({ number }) => number)),
  };
  return finding(told[status], { hand: mark.hand }, words);
}

function motionWords({ kind, object }: Piece): string {
  return object === undefined ? kind : `${kind} ${object}`;
}

/** Where the film shows an element: one stretch in each cycle in which it was found. */
export function elementTraces({ spans }: ElementTimes): Trace[] {
  return spans.flatMap(({ cycle, from, to }) =>
    from === undefined || to === undefined ? [] : [{ cycle, hand: 'both' as const, from, to }],
  );
}

/** The motions of both hands that lie in an element, wholly or in part, in one cycle. */
export function elementPieces(reading: MethodReading, { cycle, from, to }: ElementSpan): Piece[] {
  const found = reading.cycles[cycle];
  if (found === undefined || from === undefined || to === undefined) return [];
  return [...found.left, ...found.right].filter((piece) => piece.from < to && piece.to > from);
}
