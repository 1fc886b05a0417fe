import { readingsFromRecord, readingsFromTable, type StudyElement } from '@evenhand/core/define';
import { cycleWords } from '@evenhand/core/examine';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { parseStudy, type Study } from '@evenhand/core/ground/study';
import { countText } from '@evenhand/core/ground/units';
import { chooseMethod, nameOf, readText } from '../files.ts';
import type { Io } from '../io.ts';
import { atFile } from '../report.ts';
import type { DefineChoice } from './define-choice.ts';

/** Readings wherever they come from. */
export interface TimedReadings {
  readonly title: string;
  /** Invented data, as its study says. */
  readonly demo: boolean;
  readonly heading: string;
  readonly method: string | undefined;
  readonly cycles: readonly number[];
  readonly basis: 'elements' | 'cycle' | 'table';
  readonly piecesPerCycle: number;
  readonly elements: readonly StudyElement[];
  /** How elements were found in a record. */
  readonly rule: string | undefined;
  readonly notes: readonly Finding[];
}

/** Reads a study or a table; which of them is told by how the text begins. Findings carry the name of the file. */
export async function readReadings(
  io: Io,
  file: string,
  wish: string | undefined,
  choice: DefineChoice,
): Promise<Result<TimedReadings, readonly Finding[]>> {
  const text = await readText(io, file);
  if (!text.ok) return fail([text.error]);
  const isStudy = /^\uFEFF?\s*\{/.test(text.value) || file.toLowerCase().endsWith('.json');
  const made = isStudy
    ? fromStudyText(io, text.value, wish, choice)
    : fromTableText(text.value, nameOf(file), wish, choice);
  if (!made.ok) return fail(atFile(made.error, nameOf(file)));
  return ok({ ...made.value, notes: atFile(made.value.notes, nameOf(file)) });
}

type Made = Result<TimedReadings, readonly Finding[]>;

function fromStudyText(io: Io, text: string, wish: string | undefined, choice: DefineChoice): Made {
  const needless = choice.zeros !== undefined ? 'zeros' : choice.skip.length > 0 ? 'skip' : undefined;
  if (needless !== undefined) return fail([notFor(needless, 'a study', 'a table of readings')]);
  const study = parseStudy(text);
  if (!study.ok) return study;
  const method = chooseMethod(io, study.value, wish);
  return method.ok ? fromRecord(study.value, method.value.id, choice) : fail([method.error]);
}

function fromRecord(study: Study, methodId: string, choice: DefineChoice): Made {
  const read = readingsFromRecord(study, methodId, choice);
  if (!read.ok) return fail([read.error]);
  const { method, cycles, elements, basis, rule, notes } = read.value;
  const { unitsPerCycle } = method;
  const counted = cycles[0] === 0 ? 'the whole record as one cycle' : cycleWords(cycles);
  return ok({
    title: study.title,
    demo: study.demo === true,
    heading: `${method.name}, ${counted}, ${countText(unitsPerCycle, 'unit')} a cycle`,
    method: method.id,
    cycles,
    basis,
    piecesPerCycle: unitsPerCycle,
    elements,
    rule,
    notes,
  });
}

function fromTableText(text: string, file: string, wish: string | undefined, choice: DefineChoice): Made {
  const needless = wish !== undefined ? 'method' : choice.proposed ? 'proposed' : undefined;
  if (needless !== undefined) return fail([notFor(needless, 'a table of readings', 'a study')]);
  const read = readingsFromTable(text, choice);
  if (!read.ok) return read;
  const wanted = new Set(choice.cycles ?? read.value.cycles);
  const missing = [...wanted].find((cycle) => !read.value.cycles.includes(cycle));
  if (missing !== undefined) {
    return fail([finding('define/table-no-cycle', {}, { cycle: missing })]);
  }
  const cycles = read.value.cycles.filter((cycle) => wanted.has(cycle));
  const elements = read.value.elements.map((element) => ({
    ...element,
    readings: element.readings.filter(({ cycle }) => wanted.has(cycle)),
  }));
  const skipped = read.value.skipped.length === 0 ? '' : `; not read: ${read.value.skipped.join(', ')}`;
  return ok({
    title: file,
    demo: false,
    heading: `${countText(elements.length, 'element')}, ${cycleWords(cycles)}, 1 unit a cycle${skipped}`,
    method: undefined,
    cycles,
    basis: 'table',
    piecesPerCycle: 1,
    elements,
    rule: undefined,
    notes: read.value.notes,
  });
}

function notFor(option: string, what: string, other: string): Finding {
  const reason = `--${option} is for ${other}, and this is ${what}.`;
  return finding('cli/use', {}, { reason, example: 'evenhand help define' });
}
