import {
  type Edit,
  type SingleEdit,
  sameData,
  type TimedElementFields,
  type TimeStudyFields,
} from '@evenhand/core/ground/edit';
import type {
  ForeignElement,
  Operation,
  Sitting,
  Study,
  TimeStudy,
  TimeStudyElement,
  TimeStudyReading,
} from '@evenhand/core/ground/study';
import { groupBy } from './group-by.ts';

/** New values of a reading; `null` takes one away. */
export interface ReadingChange {
  readonly us?: number | null;
  readonly rating?: number | null;
  readonly setAside?: string | null;
}

export function readingAt(element: TimeStudyElement, cycle: number): TimeStudyReading | undefined {
  const { readings } = element;
  let [low, high] = [0, readings.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((readings[middle]?.cycle ?? 0) < cycle) low = middle + 1;
    else high = middle;
  }
  return readings[low]?.cycle === cycle ? readings[low] : undefined;
}

/** The reading with a change; `null` where a study that takes its times from the record keeps nothing of it. */
export function changedReading(
  kind: TimeStudy['source']['kind'],
  cycle: number,
  was: TimeStudyReading | undefined,
  change: ReadingChange,
): TimeStudyReading | null {
  const us = change.us === undefined ? was?.us : (change.us ?? undefined);
  const rating = change.rating === undefined ? was?.rating : (change.rating ?? undefined);
  const setAside = change.setAside === undefined ? was?.setAside : (change.setAside ?? undefined);
  if (kind === 'record' && rating === undefined && setAside === undefined) return null;
  return {
    cycle,
    ...(us === undefined || kind === 'record' ? {} : { us }),
    ...(rating === undefined ? {} : { rating }),
    ...(setAside === undefined ? {} : { setAside }),
  };
}

/** Sets or clears (`null`) one reading; undefined when nothing would change. */
export function setReading(
  timeStudy: TimeStudy,
  element: TimeStudyElement,
  cycle: number,
  to: TimeStudyReading | null,
): SingleEdit | undefined {
  const was = readingAt(element, cycle) ?? null;
  if (sameData(was ?? {}, to ?? {})) return undefined;
  return { type: 'reading.set', timeStudy: timeStudy.id, element: element.id, to, was };
}

export function changeReading(
  timeStudy: TimeStudy,
  element: TimeStudyElement,
  cycle: number,
  change: ReadingChange,
): SingleEdit | undefined {
  const to = changedReading(timeStudy.source.kind, cycle, readingAt(element, cycle), change);
  return setReading(timeStudy, element, cycle, to);
}

export function grouped(name: string, edits: readonly (SingleEdit | undefined)[]): Edit | undefined {
  const made = edits.filter((edit) => edit !== undefined);
  return made.length === 0 ? undefined : { type: 'group', name, edits: made };
}

/** Every reading of a cycle that has none yet is set aside for one reason, or (`null`) counted again. */
export function setCycleAside(timeStudy: TimeStudy, cycle: number, reason: string | null): Edit | undefined {
  const record = timeStudy.source.kind === 'record';
  const edits = timeStudy.elements.flatMap((element) => {
    const reading = readingAt(element, cycle);
    const here = record || reading !== undefined;
    const asked = reason === null ? reading?.setAside !== undefined : reading?.setAside === undefined;
    return here && asked ? [changeReading(timeStudy, element, cycle, { setAside: reason })] : [];
  });
  return grouped(reason === null ? `count cycle ${cycle} again` : `set cycle ${cycle} aside`, edits);
}

/** More readings of one element than this are written by replacing the element, which is quicker than one by one. Ours. */
const manyReadings = 60;

export interface NewReading {
  readonly element: string;
  readonly reading: TimeStudyReading;
}

/** Many readings as one step; those of elements in `made` belong to elements that are added first. */
export function setReadings(
  timeStudy: TimeStudy,
  readings: readonly NewReading[],
  made: readonly TimeStudyElement[],
  name: string,
): Edit | undefined {
  const byElement = groupBy(readings, ({ element }) => element);
  const edits: (SingleEdit | undefined)[] = [];
  timeStudy.elements.forEach((element, index) => {
    const own = (byElement.get(element.id) ?? []).map(({ reading }) => reading);
    if (own.length <= manyReadings) {
      edits.push(...own.map((reading) => setReading(timeStudy, element, reading.cycle, reading)));
      return;
    }
    const replaced = { ...element, readings: mergedReadings(element.readings, own) };
    if (sameData(replaced, element)) return;
    edits.push(
      { type: 'timed-element.remove', timeStudy: timeStudy.id, element },
      { type: 'timed-element.add', timeStudy: timeStudy.id, element: replaced, index },
    );
  });
  for (const element of made) {
    const own = (byElement.get(element.id) ?? []).map(({ reading }) => reading);
    const filled = { ...element, readings: mergedReadings(element.readings, own) };
    edits.push({ type: 'timed-element.add', timeStudy: timeStudy.id, element: filled });
  }
  return grouped(name, edits);
}

/** In the order of their cycles; of two of one cycle the newer one, and of the new ones the last. */
export function mergedReadings(
  kept: readonly TimeStudyReading[],
  added: readonly TimeStudyReading[],
): readonly TimeStudyReading[] {
  const all = new Map([...kept, ...added].map((reading) => [reading.cycle, reading]));
  return [...all.values()].sort((a, b) => a.cycle - b.cycle);
}

/** Removes every reading of a cycle. */
export function clearCycle(timeStudy: TimeStudy, cycle: number): Edit | undefined {
  return grouped(
    `clear cycle ${cycle}`,
    timeStudy.elements.map((element) => setReading(timeStudy, element, cycle, null)),
  );
}

// ---- the time study and its elements

export function changeTimeStudy(timeStudy: TimeStudy, to: TimeStudyFields): Edit | undefined {
  const was = presentFields(timeStudy, to);
  return sameData(to, was) ? undefined : { type: 'time-study.change', timeStudy: timeStudy.id, to, was };
}

export function changeElement(
  timeStudy: TimeStudy,
  element: TimeStudyElement,
  to: TimedElementFields,
): Edit | undefined {
  const was = presentFields(element, to);
  if (sameData(to, was)) return undefined;
  return { type: 'timed-element.change', timeStudy: timeStudy.id, element: element.id, to, was };
}

function presentFields<Fields extends object>(target: object, to: Fields): Fields {
  const values = target as Readonly<Record<string, unknown>>;
  return Object.fromEntries(Object.keys(to).map((key) => [key, values[key] ?? null])) as Fields;
}

export function addElement(timeStudy: TimeStudy, name: string, id: string): SingleEdit {
  return { type: 'timed-element.add', timeStudy: timeStudy.id, element: newElement(name, id) };
}

export function newElement(name: string, id: string): TimeStudyElement {
  return { id, name, work: 'worker', readings: [] };
}

/** Foreign elements that happened during it stay and name no element any more. */
export function removeElement(timeStudy: TimeStudy, element: TimeStudyElement): Edit | undefined {
  const foreign = timeStudy.foreign ?? [];
  const without = foreign.map((item) => (item.element === element.id ? withoutElement(item) : item));
  const named = foreign.some((item) => item.element === element.id);
  const freed = named ? changeTimeStudy(timeStudy, { foreign: without }) : undefined;
  return grouped('remove an element of the time study', [
    freed as SingleEdit | undefined,
    { type: 'timed-element.remove', timeStudy: timeStudy.id, element },
  ]);
}

function withoutElement({ element: _, ...item }: ForeignElement): ForeignElement {
  return item;
}

/** One place up (−1) or down (1); undefined at the end of the list. */
export function moveElement(
  timeStudy: TimeStudy,
  element: TimeStudyElement,
  direction: -1 | 1,
): Edit | undefined {
  const index = timeStudy.elements.findIndex(({ id }) => id === element.id) + direction;
  if (index < 0 || index >= timeStudy.elements.length) return undefined;
  return grouped('move an element', [
    { type: 'timed-element.remove', timeStudy: timeStudy.id, element },
    { type: 'timed-element.add', timeStudy: timeStudy.id, element, index },
  ]);
}

/** A copy under another name, with ids of its own; only elements of a record keep theirs, which are those of its break points. */
export function copyTimeStudy(timeStudy: TimeStudy, name: string, newId: () => string): TimeStudy {
  const record = timeStudy.source.kind === 'record';
  const ids = new Map(timeStudy.elements.map(({ id }) => [id, record ? id : newId()]));
  const { sittings, foreign } = timeStudy;
  return {
    ...timeStudy,
    id: newId(),
    name,
    elements: timeStudy.elements.map((element) => ({ ...element, id: ids.get(element.id) ?? newId() })),
    ...(sittings === undefined ? {} : { sittings: sittings.map((item) => ({ ...item, id: newId() })) }),
    ...(foreign === undefined
      ? {}
      : {
          foreign: foreign.map((item) => {
            const element = item.element === undefined ? undefined : ids.get(item.element);
            return { ...withoutElement(item), id: newId(), ...(element === undefined ? {} : { element }) };
          }),
        }),
  };
}

/** “Name (2)”, with the first number that is free. */
export function freeName(wanted: string, taken: readonly string[]): string {
  const used = new Set(taken);
  if (!used.has(wanted)) return wanted;
  let count = 2;
  while (used.has(`${wanted} (${count})`)) count += 1;
  return `${wanted} (${count})`;
}

// ---- sittings, foreign elements, the heading

/** Sittings in the order of their first cycles; an empty list is none. */
export function setSittings(timeStudy: TimeStudy, sittings: readonly Sitting[]): Edit | undefined {
  const sorted = [...sittings].sort((a, b) => a.start - b.start);
  return changeTimeStudy(timeStudy, { sittings: sorted.length === 0 ? null : sorted });
}

export function setForeign(timeStudy: TimeStudy, foreign: readonly ForeignElement[]): Edit | undefined {
  const sorted = [...foreign].sort((a, b) => a.cycle - b.cycle);
  return changeTimeStudy(timeStudy, { foreign: sorted.length === 0 ? null : sorted });
}

export type HeadingField = 'name' | 'part' | 'number' | 'department' | 'analyst';

/** A field of the operation, which all sheets of the study share. An empty text takes it away. */
export function changeHeading(study: Study, field: HeadingField, text: string): Edit | undefined {
  const { [field]: _, ...rest } = study.operation;
  const trimmed = text.trim();
  const to: Operation =
    field === 'name' || trimmed !== '' ? { ...study.operation, [field]: trimmed } : (rest as Operation);
  if (sameData(to, study.operation)) return undefined;
  return { type: 'study.change', to: { operation: to }, was: { operation: study.operation } };
}
