import { fail, type Micros, ok, type Result } from '../../ground/base/index.ts';
import { type Finding, finding } from '../../ground/findings/index.ts';
import type { Method, Study } from '../../ground/study/index.ts';
import { inUnit, type TimeUnit } from '../../ground/units/index.ts';
import {
  type CycleReading,
  cycleWords,
  findElements,
  type MethodReading,
  readMethod,
} from '../examine/index.ts';
import type { Reading } from './reading.ts';
import type { StudyElement } from './study-standard.ts';

export interface RecordChoice {
  /** Numbers of the cycles from 1; left out, all of the method. */
  readonly cycles?: readonly number[] | undefined;
  /** Motions that the program proposed and nobody confirmed count as well. */
  readonly proposed?: boolean | undefined;
  /** The unit in which the readings are wanted. */
  readonly unit: TimeUnit;
}

export interface RecordedReadings {
  readonly method: Method;
  /** Numbers of the cycles that were read, those set aside included; 0 stands for the whole record. */
  readonly cycles: readonly number[];
  /** All are work of the worker, with a reading for each cycle. */
  readonly elements: readonly StudyElement[];
  /** Ids of the break points with which they begin, by position; undefined where none begins it. */
  readonly marks: readonly (string | undefined)[];
  /** Whether they are the named elements of the method, or the whole cycle as one element. */
  readonly basis: 'elements' | 'cycle';
  /** How the elements were found in the other cycles; undefined when there are none. */
  readonly rule: string | undefined;
  readonly notes: readonly Finding[];
}

/**
 * Readings of a marked record: the named elements, or without any the whole cycle as one element. A cycle that is set
 * aside gives readings that are set aside with its reason, also when it is among the chosen ones. An element that was not
 * found in a cycle, or takes no time there, is a missed reading, and a note says so.
 */
export function readingsFromRecord(
  study: Study,
  methodId: string,
  { cycles, proposed, unit }: RecordChoice,
): Result<RecordedReadings, Finding> {
  const all = study.methods.find(({ id }) => id === methodId)?.cycles.items.map((_, index) => index + 1);
  const numbers = cycles ?? (all !== undefined && all.length > 0 ? all : undefined);
  const read = readMethod(study, methodId, { cycles: numbers, proposed });
  if (!read.ok) return read;
  const reading = read.value;
  if (reading.cycles.every(({ setAside }) => setAside !== undefined)) {
    return fail(finding('examine/no-cycle-left', {}, { method: reading.method.name }));
  }
  const named = (reading.method.elements ?? []).length > 0;
  const parts = named ? namedElements(reading, unit) : undefined;
  const useful = parts !== undefined && parts.elements.length > 0;
  const elements = useful ? parts.elements : [wholeCycle(reading, unit)];
  return ok({
    method: reading.method,
    cycles: reading.cycles.map(({ number }) => number),
    elements,
    marks: useful ? parts.marks : [undefined],
    basis: useful ? 'elements' : 'cycle',
    rule: useful ? parts.rule : undefined,
    notes: [...reading.notes, ...(parts?.notes ?? []), ...(useful ? [] : [finding('define/whole-cycle')])],
  });
}

function wholeCycle({ cycles }: MethodReading, unit: TimeUnit): StudyElement {
  const readings = cycles.map((cycle) => readingOf(cycle, cycle.duration, unit));
  return { name: 'whole cycle', work: 'worker', readings };
}

function namedElements(reading: MethodReading, unit: TimeUnit) {
  const { elements, findings, rule } = findElements(reading);
  const notes: Finding[] = [...findings];
  const made = elements.map(({ name, spans }): StudyElement => {
    const times = reading.cycles.map((cycle, position) => ({ cycle, time: spans[position]?.time }));
    notes.push(
      ...cyclesNote('define/element-missed', name, times, (time) => time === undefined),
      ...cyclesNote('define/element-no-time', name, times, (time) => time === 0),
    );
    const readings = times.map(({ cycle, time }) => readingOf(cycle, time === 0 ? undefined : time, unit));
    return { name, work: 'worker', readings };
  });
  return { elements: made, marks: elements.map(({ mark }) => mark?.id), notes, rule };
}

function readingOf({ number, setAside }: CycleReading, time: Micros | undefined, unit: TimeUnit): Reading {
  return {
    cycle: Math.max(1, number),
    time: time === undefined ? undefined : inUnit(time, unit),
    ...(setAside === undefined
      ? {}
      : { setAside: setAside.trim() === '' ? 'no reason was written' : setAside }),
  };
}

function cyclesNote(
  code: 'define/element-missed' | 'define/element-no-time',
  element: string,
  times: readonly { readonly cycle: CycleReading; readonly time: Micros | undefined }[],
  applies: (time: Micros | undefined) => boolean,
): Finding[] {
  const numbers = times.filter(({ time }) => applies(time)).map(({ cycle }) => cycle.number);
  return numbers.length === 0 ? [] : [finding(code, {}, { element, cycles: cycleWords(numbers) })];
}
