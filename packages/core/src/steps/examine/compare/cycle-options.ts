import type { Micros } from '../../../ground/base/index.ts';
import { endOf, methodClock, type Study } from '../../../ground/study/index.ts';
import { type TimeUnit, timeText } from '../../../ground/units/index.ts';
import { readMethod } from '../reading/index.ts';

export type CycleMark = 'shortest' | 'middle' | 'longest';

/** A cycle that can be chosen. */
export interface CycleOption {
  /** From 1; 0 for a record without cycles. */
  readonly number: number;
  readonly name: string | undefined;
  readonly time: Micros;
  readonly setAside: string | undefined;
  /**
   * Its place by length among the cycles that are not set aside; empty for all others, and when there is only one.
   * `middle`: as many are shorter as longer; of two in the middle the shorter one, of equal ones the earlier.
   */
  readonly marks: readonly CycleMark[];
}

/** The cycles of a method that can be put side by side; none when there is no such method. */
export function cycleOptions(study: Study, methodId: string): readonly CycleOption[] {
  const method = study.methods.find((item) => item.id === methodId);
  if (method === undefined) return [];
  const { items } = method.cycles;
  if (items.length === 0) return wholeRecord(study, methodId);
  const clock = methodClock(study, method);
  const plain = items.map(({ name, setAside, start }, index) => ({
    number: index + 1,
    name,
    setAside,
    time: clock.span(start, endOf(method.cycles, index)),
  }));
  const marks = marksOf(plain.filter((option) => option.setAside === undefined));
  return plain.map((option) => ({ ...option, marks: marks.get(option.number) ?? [] }));
}

function wholeRecord(study: Study, methodId: string): readonly CycleOption[] {
  const read = readMethod(study, methodId);
  const cycle = read.ok ? read.value.cycles[0] : undefined;
  if (cycle === undefined) return [];
  return [{ number: 0, name: undefined, time: cycle.duration, setAside: undefined, marks: [] }];
}

function marksOf(
  options: readonly Pick<CycleOption, 'number' | 'time'>[],
): ReadonlyMap<number, readonly CycleMark[]> {
  const sorted = [...options].sort((a, b) => a.time - b.time || a.number - b.number);
  const found = new Map<number, CycleMark[]>();
  if (sorted.length < 2) return found;
  const add = (index: number, mark: CycleMark) => {
    const number = sorted[index]?.number;
    if (number !== undefined) found.set(number, [...(found.get(number) ?? []), mark]);
  };
  add(0, 'shortest');
  add(Math.floor((sorted.length - 1) / 2), 'middle');
  add(sorted.length - 1, 'longest');
  return found;
}

/** The cycle of middle length, or the first there is. */
export function defaultCycle(options: readonly CycleOption[]): CycleOption | undefined {
  return (
    options.find((option) => option.marks.includes('middle')) ??
    options.find((option) => option.setAside === undefined) ??
    options[0]
  );
}

const markWords: Readonly<Record<CycleMark, string>> = {
  shortest: 'the shortest',
  middle: 'of middle length',
  longest: 'the longest',
};

/** "3: 7.60 s, of middle length", "6: 9.63 s, set aside". */
export function cycleOptionWords(option: CycleOption, unit: TimeUnit): string {
  const head = option.number === 0 ? 'the whole record' : `${option.number}`;
  const name = option.name === undefined ? '' : ` ${option.name}`;
  const notes = option.setAside === undefined ? option.marks.map((mark) => markWords[mark]) : ['set aside'];
  return [`${head}${name}: ${timeText(option.time, unit)}`, ...notes].join(', ');
}
