import { type ReportSource, readingsFromRecord, readingsFromTable } from '@evenhand/core/define';
import { cycleWords } from '@evenhand/core/examine';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { emptyStudy, parseStudy, type Study, type TimeStudy } from '@evenhand/core/ground/study';
import { countText, numberText } from '@evenhand/core/ground/units';
import type { Call } from '../command.ts';
import { chooseMethod, nameOf, readText } from '../files.ts';
import type { Io } from '../io.ts';
import { atFile } from '../report.ts';
import { type DefineChoice, defineOptions } from './define-choice.ts';
import { knownTimeStudies, saidOfReadings, storedTimeStudy, timeStudyOf, unratedIn } from './define-study.ts';

/** A time study, wherever it comes from, and what is said above it. */
export interface Timed {
  /** The document, or an empty one for a table. */
  readonly study: Study;
  readonly timeStudy: TimeStudy;
  readonly heading: string;
  readonly source: ReportSource;
}

type Made = Result<Timed, readonly Finding[]>;

/** Reads a study or a table; which of them is told by how the text begins. Findings carry the name of the file. */
export async function readTimed(io: Io, file: string, call: Call, choice: DefineChoice): Promise<Made> {
  const text = await readText(io, file);
  if (!text.ok) return fail([text.error]);
  const isStudy = /^\uFEFF?\s*\{/.test(text.value) || file.toLowerCase().endsWith('.json');
  const made = isStudy
    ? fromStudyText(io, text.value, call, choice)
    : fromTableText(text.value, nameOf(file), call, choice);
  if (!made.ok) return fail(atFile(made.error, nameOf(file)));
  const { source } = made.value;
  return ok({ ...made.value, source: { ...source, notes: atFile(source.notes, nameOf(file)) } });
}

function fromStudyText(io: Io, text: string, call: Call, choice: DefineChoice): Made {
  const needless = ['zeros', 'skip', 'pieces'].find((option) => call.text(option) !== undefined);
  if (needless !== undefined) return fail([notFor(needless, 'a study', 'a table of readings')]);
  const read = parseStudy(text);
  if (!read.ok) return read;
  const study = read.value;
  const wish = call.text('study') ?? usualTimeStudy(io, study, call);
  if (wish !== undefined) {
    const stored = storedTimeStudy(study, wish, call, choice, Object.keys(defineOptions));
    return stored.ok ? fromStored(study, stored.value) : fail([stored.error]);
  }
  const method = chooseMethod(io, study, call.text('method'));
  return method.ok ? fromRecord(study, method.value.id, choice) : fail([method.error]);
}

/**
 * Where the call says nothing of the readings, a time study that the document holds is worth more than the bare times of a
 * record: it has ratings and allowances. What was taken and what else there is is told.
 */
function usualTimeStudy(io: Io, study: Study, call: Call): string | undefined {
  const [first] = study.timeStudies ?? [];
  if (first === undefined || call.text('method') !== undefined) return undefined;
  const known = knownTimeStudies(study);
  const option = saidOfReadings(call, Object.keys(defineOptions));
  if (option === undefined) {
    io.say(
      `The time study ${first.id} is taken. --study takes one of: ${known}; --method times a record instead.`,
    );
    return first.id;
  }
  io.say(
    `A record is timed, as --${option} speaks of it. The study holds time studies too, for --study: ${known}.`,
  );
  return undefined;
}

function fromStored(study: Study, timeStudy: TimeStudy): Made {
  const { piecesPerCycle, source, name } = timeStudy;
  const method = study.methods.find(({ id }) => id === source.method)?.name;
  const from = source.kind === 'record' ? ', times from the record' : '';
  const of = method === undefined ? '' : ` of “${method}”`;
  return ok({
    study,
    timeStudy,
    heading: `${name}${of}${from}, ${unitsText(piecesPerCycle)} a cycle`,
    source: {
      title: study.title,
      demo: study.demo === true,
      basis: 'time-study',
      unrated: [],
      rule: undefined,
      notes: [],
    },
  });
}

function unitsText(count: number): string {
  return Number.isInteger(count)
    ? countText(count, 'unit')
    : `${numberText(count, 3).replace(/\.?0+$/, '')} units`;
}

function fromRecord(study: Study, methodId: string, choice: DefineChoice): Made {
  const { cycles: wanted, proposed } = choice;
  const read = readingsFromRecord(study, methodId, { cycles: wanted, proposed, unit: 'seconds' });
  if (!read.ok) return fail([read.error]);
  const { method, cycles, elements, basis, rule, notes } = read.value;
  const { unitsPerCycle } = method;
  const found = { elements, unit: 'seconds', method: method.id, piecesPerCycle: unitsPerCycle } as const;
  const timeStudy = timeStudyOf(found, choice);
  if (!timeStudy.ok) return timeStudy;
  const counted = cycles[0] === 0 ? 'the whole record as one cycle' : cycleWords(cycles);
  return ok({
    study,
    timeStudy: timeStudy.value,
    heading: `${method.name}, ${counted}, ${countText(unitsPerCycle, 'unit')} a cycle`,
    source: {
      title: study.title,
      demo: study.demo === true,
      basis,
      unrated: unratedIn(timeStudy.value, choice),
      rule,
      notes,
    },
  });
}

function fromTableText(text: string, file: string, call: Call, choice: DefineChoice): Made {
  const needless = ['method', 'study'].find((option) => call.text(option) !== undefined);
  const other = needless ?? (choice.proposed ? 'proposed' : undefined);
  if (other !== undefined) return fail([notFor(other, 'a table of readings', 'a study')]);
  const read = readingsFromTable(text, choice);
  if (!read.ok) return read;
  const wanted = new Set(choice.cycles ?? read.value.cycles);
  const missing = [...wanted].find((cycle) => !read.value.cycles.includes(cycle));
  if (missing !== undefined) return fail([finding('define/table-no-cycle', {}, { cycle: missing })]);
  const cycles = read.value.cycles.filter((cycle) => wanted.has(cycle));
  const elements = read.value.elements.map((element) => ({
    ...element,
    readings: element.readings.filter(({ cycle }) => wanted.has(cycle)),
  }));
  const piecesPerCycle = choice.pieces ?? 1;
  const found = { elements, unit: choice.unit, method: undefined, piecesPerCycle };
  const timeStudy = timeStudyOf(found, choice);
  if (!timeStudy.ok) return timeStudy;
  const title = file.split(/[\\/]/).at(-1) ?? file;
  const skipped = read.value.skipped.length === 0 ? '' : `; not read: ${read.value.skipped.join(', ')}`;
  return ok({
    study: emptyStudy('table', title),
    timeStudy: timeStudy.value,
    heading: `${countText(elements.length, 'element')}, ${cycleWords(cycles)}, ${unitsText(piecesPerCycle)} a cycle${skipped}`,
    source: {
      title,
      demo: false,
      basis: 'table',
      unrated: unratedIn(timeStudy.value, choice),
      rule: undefined,
      notes: read.value.notes,
    },
  });
}

function notFor(option: string, what: string, other: string): Finding {
  const reason = `--${option} is for ${other}, and this is ${what}.`;
  return finding('cli/use', {}, { reason, example: 'evenhand help define' });
}
