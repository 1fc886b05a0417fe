import { filmOf, type Study, type TimeStudy, type TimeStudyElement } from '../../../ground/study/index.ts';
import { ratingScales } from '../../../ground/tables/index.ts';
import { countText, percentText } from '../../../ground/units/index.ts';
import { cycleWords } from '../../examine/index.ts';
import type { TimeStudySheet } from '../sheet/index.ts';

/** Where the times come from: the film, or the watch with its kind of timing. */
export function sourceWords(study: Study, { timeStudy, method }: TimeStudySheet): string {
  const { source } = timeStudy;
  if (source.kind === 'readings') {
    return {
      continuous: 'Watch, continuous timing (it runs on)',
      repetitive: 'Watch, repetitive timing (set back at each reading)',
      typed: 'Readings written in',
    }[source.timing];
  }
  if (method === undefined) return 'Marked film';
  const film = filmOf(study, method);
  const marked = film === undefined ? 'Record without a film' : `Film ${film.name}`;
  return source.proposed === true ? `${marked}, with proposed motions` : marked;
}

/** Codes of the operators, from the sittings, else from the film; never a name. */
export function operatorWords(study: Study, { timeStudy, method }: TimeStudySheet): string {
  const codes = [...new Set((timeStudy.sittings ?? []).flatMap(({ operatorCode }) => operatorCode ?? []))];
  if (codes.length > 0) return codes.join(', ');
  const film = timeStudy.source.kind === 'record' && method !== undefined ? filmOf(study, method) : undefined;
  return film?.operatorCode ?? '';
}

/** "2026-03-31", or the first and the last day of a study that took several. */
export function dateWords({ sittings = [] }: TimeStudy): string {
  const dates = [...new Set(sittings.flatMap(({ date }) => date ?? []))].sort();
  const [first, last] = [dates[0], dates.at(-1)];
  if (first === undefined || last === undefined) return '';
  return first === last ? first : `${first} to ${last}`;
}

/** The analyst of the operation, else those who observed. */
export function analystWords({ operation }: Study, { sittings = [] }: TimeStudy): string {
  const observers = [...new Set(sittings.flatMap(({ observer }) => observer ?? []))];
  return operation.analyst ?? observers.join(', ');
}

/** "30: 1–30". */
export function cyclesWords({ cycles }: TimeStudySheet): string {
  if (cycles.length === 0) return 'none';
  const words = cycleWords(cycles).replace(/^cycles? /, '');
  return words.length > 60
    ? `${cycles.length}, from ${cycles[0]} to ${cycles.at(-1)}`
    : `${cycles.length}: ${words}`;
}

export function scaleWords({ scale }: TimeStudy): string {
  const { name, standard } = ratingScales[scale];
  return `${name}, standard ${standard}`;
}

export function occursWords({ occurs }: TimeStudyElement): string {
  if (occurs === undefined) return 'every cycle';
  const times = occurs.times === 1 ? 'once' : `${occurs.times} times`;
  return `${times} in ${countText(occurs.cycles, 'cycle')}`;
}

export const workWords = {
  worker: 'worker',
  process: 'machine',
  inside: 'inside machine time',
} as const satisfies Readonly<Record<TimeStudyElement['work'], string>>;

/** The allowance of an element in words: its own, that of machine time, or that of the study. */
export function ownAllowanceWords(element: TimeStudyElement, { allowances }: TimeStudy): string {
  if (element.relaxation !== undefined) return percentText(element.relaxation);
  return element.work === 'process' ? percentText(allowances.process) : 'of the study';
}
