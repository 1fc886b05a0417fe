import type { Micros } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import { type Alignment, align, type ElementTimes, elementTraces, findElements } from '../elements/index.ts';
import { cycleWords, type MethodReading, stateOf, type Trace } from '../reading/index.ts';
import { tokenTable, tokenWords } from '../sequences/index.ts';
import { bestCycle, lackingCycles, quartilesOfElements, quartilesOfMotions } from './bounds.ts';
import { deviationsOf, patternCounts } from './deviations.ts';
import { spreadOf } from './spread.ts';
import { type HandCycle, type HandTypical, handCycles, typicalCycle } from './typical.ts';
import type { Deviation, ElementVariation, Variation, VariationChoice } from './variation-types.ts';

const rule =
  'In each hand every cycle is compared with the typical one by the alignment of their motions that costs least: 0 for the same motion with the same object, half a motion for another object, a whole motion for each one more or missing. What has no counterpart is a deviation. Parts that are not marked say nothing.';

/** One hand: its typical cycle and how every cycle answers to it. */
interface HandComparison {
  readonly hand: Hand;
  readonly cycles: readonly HandCycle[];
  readonly typical: HandTypical;
  readonly alignments: readonly Alignment[];
}

/** How the cycles of a reading differ from one another, element by element, and what practice has shown to be possible. */
export function variationOf(reading: MethodReading, choice: VariationChoice = {}): Variation {
  const table = tokenTable('kind-object');
  const compared = hands.flatMap((hand) => comparison(handCycles(reading, hand, table), hand));
  const deviations = compared.flatMap(handDeviations);
  const marks = choice.marks ?? reading.method.elements ?? [];
  const named = marks.length === 0 ? undefined : findElements(reading, marks);
  const basis = named === undefined || named.elements.length === 0 ? 'motions' : 'elements';
  const elements =
    basis === 'elements' && named !== undefined
      ? named.elements.map(namedElement)
      : compared.flatMap((item) => motionElements(item));
  const tiling = compared.filter(isTiled).map(({ hand }) => hand);
  const ofHand = (hand: Hand) => compared.find((item) => item.hand === hand)?.typical.told;
  return {
    basis,
    elements,
    cycles: spreadOf(reading.cycles.map(({ duration }) => duration)),
    typical: { left: ofHand('left'), right: ofHand('right') },
    deviations,
    patterns: patternCounts(reading, deviations),
    best: bestCycle(reading.cycles, lackingCycles(deviations)),
    quartiles:
      basis === 'elements'
        ? quartilesOfElements(elements)
        : quartilesOfMotions(
            elements.filter(({ hand }) => hand !== 'both' && tiling.includes(hand)),
            workOf(reading),
          ),
    rule,
    findings: [...(named?.findings ?? []), ...compared.flatMap((item) => unproven(item))],
  };
}

function workOf({ cycles }: MethodReading): Record<Hand, number> {
  const work = { left: 0, right: 0 };
  for (const cycle of cycles) {
    for (const hand of hands) {
      for (const { kind, duration } of cycle[hand]) if (stateOf(kind) === 'working') work[hand] += duration;
    }
  }
  return work;
}

function comparison(cycles: readonly HandCycle[], hand: Hand): HandComparison[] {
  const typical = typicalCycle(cycles, hand);
  if (typical === undefined) return [];
  return [{ hand, cycles, typical, alignments: cycles.map(({ row }) => align(typical.of.row, row)) }];
}

function handDeviations({ hand, cycles, typical, alignments }: HandComparison): Deviation[] {
  return cycles.flatMap((other, index) => {
    const alignment = alignments[index];
    return alignment === undefined ? [] : deviationsOf(hand, typical.of, other, alignment);
  });
}

function isTiled({ hand, typical }: HandComparison): boolean {
  const { cycle } = typical.of;
  return cycle.marked[hand] === cycle.duration;
}

function unproven({ cycles, alignments }: HandComparison): Finding[] {
  const found = cycles.filter((_, index) => alignments[index]?.proven === false);
  if (found.length === 0) return [];
  return [
    finding('examine/element-long-cycle', {}, { cycles: cycleWords(found.map(({ cycle }) => cycle.number)) }),
  ];
}

function namedElement(element: ElementTimes): ElementVariation {
  const { mark, name, spans } = element;
  const times = spans.map(({ time }) => time);
  return variationFrom({ name, hand: mark?.hand ?? 'both', mark, times, traces: elementTraces(element) });
}

/** One element for each motion of the typical cycle. */
function motionElements({ hand, cycles, typical, alignments }: HandComparison): ElementVariation[] {
  return typical.of.row.pieces.map(({ kind, object }, index) => {
    const found = cycles.map(({ row }, at) => row.pieces[alignments[at]?.counterpart[index] ?? -1]);
    const traces = found.flatMap((piece): Trace[] =>
      piece === undefined ? [] : [{ cycle: piece.cycle, hand, from: piece.from, to: piece.to }],
    );
    const words = tokenWords({ kind, object, from: undefined, to: undefined }, (id) => id);
    return variationFrom({
      name: `${index + 1} ${words}`,
      hand,
      mark: undefined,
      times: found.map((piece) => piece?.duration),
      traces,
    });
  });
}

function variationFrom(element: Omit<ElementVariation, 'spread'>): ElementVariation {
  const known: Micros[] = element.times.filter((time) => time !== undefined);
  return { ...element, spread: known.length === 0 ? undefined : spreadOf(known) };
}
