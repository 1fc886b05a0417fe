import {
  type BreakStatus,
  cycleWords,
  type ElementTimes,
  elementTraces,
  type FoundElements,
  type MethodReading,
  type Piece,
} from '@evenhand/core/examine';
import { motionFactsOf } from '@evenhand/core/ground/tables';
import { type TimeUnit, timeText, timeUnits } from '@evenhand/core/ground/units';
import { none, sampleInterval, valueText } from './figure-text.ts';
import type { TableData } from './table-text.ts';

/** Mean time of each element and in how many cycles its beginning was found. */
export function elementTable({ elements }: FoundElements, cycles: number, unit: TimeUnit): TableData {
  const number = (head: string) => ({ head, number: true });
  return {
    caption: `Time of the elements, ${timeUnits[unit].symbol} a cycle`,
    columns: [
      { head: 'Element' },
      { head: 'Begins with' },
      number('n'),
      number('mean'),
      number('deviation'),
      number('variation, %'),
      number('95 % interval of the mean'),
      { head: 'Found in' },
    ],
    rows: elements.map((element, index) => ({
      key: element.mark?.id ?? `${index}`,
      cells: [
        element.name,
        element.mark === undefined ? 'the cycle' : `${element.mark.hand} hand`,
        `${element.sample?.n ?? 0}`,
        valueText('time', element.sample?.mean, unit),
        valueText('time', element.sample?.deviation, unit),
        valueText('share', element.sample?.variation, unit),
        sampleInterval('time', element.sample, unit),
        foundWords(element, cycles),
      ],
      traces: () => elementTraces(element),
    })),
  };
}

const statusWords: Readonly<Record<BreakStatus, string>> = {
  start: 'at the start of the cycle',
  found: 'found',
  similar: 'with another object',
  between: 'between its neighbours',
  missing: 'missing',
  order: 'in another order',
};

/** "all 6", "4 of 6; 1 with another object, 1 missing". */
export function foundWords({ breaks, mark }: ElementTimes, cycles: number): string {
  if (mark === undefined) return none;
  const counts = new Map<BreakStatus, number>();
  for (const { status } of breaks) counts.set(status, (counts.get(status) ?? 0) + 1);
  const plain = (counts.get('found') ?? 0) + (counts.get('start') ?? 0);
  const others = [...counts].filter(([status]) => status !== 'found' && status !== 'start');
  if (others.length === 0) return `all ${cycles}`;
  const words = others.map(([status, count]) => `${count} ${statusWords[status]}`).join(', ');
  return `${plain} of ${cycles}; ${words}`;
}

/** A motion that an element can begin with. */
export interface Beginning {
  readonly hand: 'left' | 'right';
  /** Boundary at which the motion starts. */
  readonly at: number;
  readonly words: string;
}

/** The motions of a cycle, in order of time, at which no element begins yet. */
export function beginningsIn(
  { cycles, method }: Pick<MethodReading, 'cycles' | 'method'>,
  position: number,
  unit: TimeUnit,
): readonly Beginning[] {
  const cycle = cycles[position];
  if (cycle === undefined) return [];
  const taken = new Set(method.elements?.map(({ hand, at }) => `${hand} ${at}`));
  return [...cycle.left, ...cycle.right]
    .filter(({ kind, cut, hand, from }) => kind !== 'unmarked' && !cut && !taken.has(`${hand} ${from}`))
    .sort((a, b) => a.start - b.start || (a.hand < b.hand ? -1 : 1))
    .map((piece) => ({ hand: piece.hand, at: piece.from, words: beginningWords(piece, unit) }));
}

function beginningWords({ start, hand, kind, object }: Piece, unit: TimeUnit): string {
  const what = object === undefined ? '' : ` ${object}`;
  return `${timeText(start, unit)} ${hand}: ${motionFactsOf(kind).name}${what}`;
}

/** Position of the cycle in which the elements were named, when it is one of those that count; else the first. */
export function modelPosition({ cycles }: Pick<MethodReading, 'cycles'>, model: number | undefined): number {
  return Math.max(
    0,
    cycles.findIndex(({ number }) => number === model),
  );
}

/** "cycle 2", "the whole record". */
export function modelWords(model: number | undefined): string {
  return model === undefined ? 'no cycle' : cycleWords([model]);
}
