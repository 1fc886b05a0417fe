import {
  checkWork,
  type DevelopedMethod,
  developed,
  type Library,
  libraryFrom,
  ordersOf,
  type PeriodInterval,
  parseTimeTable,
  parseWork,
  periodInterval,
  type TimeTable,
  unitsWithoutSteps,
  type Work,
  workFromRecord,
} from '@evenhand/core/develop';
import { type MethodReading, readMethod, readRecords } from '@evenhand/core/examine';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { type KeptWork, parseStudy, type Study } from '@evenhand/core/ground/study';
import { badUse, type Call, type Command } from '../command.ts';
import { chooseMethod, nameOf, readText, stream } from '../files.ts';
import { exitCode, type Io } from '../io.ts';
import { atFile, failWith, outJson, say } from '../report.ts';
import { type TriedChanges, tryChanges } from './develop-changes.ts';
import { developOptions, readDevelopChoice } from './develop-choice.ts';
import {
  developLayoutOptions,
  type LayoutTold,
  layoutFor,
  readLayoutChoice,
  writePlan,
} from './develop-layout.ts';
import { developJson, developText } from './develop-text.ts';
import { bestOf, writeComposed } from './develop-write.ts';

export const develop: Command = {
  words: ['develop'],
  summary: 'find the shortest two-hand method for a work, and what changes of it are worth',
  operands: ['FILE'],
  options: { ...developOptions, ...developLayoutOptions },
  example: 'evenhand develop couplings.evenhand.json --method present --changes all',
  notes: [
    'FILE is a study, from whose record the work is drawn, or a work file (docs/work-format.md).',
    'Times come from the records first, else from published laws at their pace; every predicted time carries an interval.',
    'A method is told as the shortest there is only where that was proven for these times; else the gap to the bound is told.',
  ],
  run: async (call, io) => {
    const json = call.flag('json');
    const choice = readDevelopChoice(call);
    if (!choice.ok) return failWith(io, json, [badUse(choice.error, develop.example)]);
    const asked = readLayoutChoice(call);
    if (!asked.ok) return failWith(io, json, [badUse(asked.error, develop.example)]);
    const output = call.text('output');
    if (json && output === stream)
      return failWith(io, false, [badUse('--json and -o - both want standard output.', develop.example)]);
    const there = await alreadyThere(io, output, call);
    if (there !== undefined) return failWith(io, json, [there]);
    const [file = ''] = call.operands;
    const source = await readSource(io, file, call);
    if (!source.ok) return failWith(io, json, source.error);
    const { work, readings, notes } = source.value;
    const table = await tableFrom(io, call.text('table'));
    if (!table.ok) return failWith(io, json, table.error);
    const library = await libraryIn(io, call.text('library'));
    if (!library.ok) return failWith(io, json, library.error);
    const { seconds, seed, closed, unit } = choice.value;
    let limit = io.now() + seconds * 1000;
    const wish = {
      readings,
      table: table.value,
      library: library.value,
      kind: closed ? ('closed' as const) : ('open' as const),
      seed,
      stop: () => io.now() > limit,
    };
    const base = developed(work, wish);
    if (!base.ok) return failWith(io, json, atFile([base.error], nameOf(file)));
    const tried = tryChanges(base.value, work, wish, choice.value, (more) => {
      limit = io.now() + more * 1000;
    });
    if (!tried.ok) return failWith(io, json, atFile([tried.error], nameOf(file)));
    limit = io.now() + seconds * 1000;
    const best = bestOf(tried.value);
    const layout = asked.value.layout ? layoutFor(work, best?.changes ?? [], wish) : undefined;
    if (layout?.ok === false) return failWith(io, json, atFile([layout.error], nameOf(file)));
    const told: Told = {
      base: base.value,
      interval: intervalOf(base.value, seed),
      ...tried.value,
      layout: layout?.value,
    };
    say(io, atFile([...notes, ...base.value.times.notes], nameOf(file)));
    if (output !== undefined) {
      const written = await writeComposed(io, source.value, told, output);
      if (!written.ok) return failWith(io, json, [written.error]);
      if (output !== stream) io.say(`Wrote ${output}.`);
    }
    if (asked.value.plan !== undefined) {
      const { study } = source.value;
      const drawn = await writePlan(io, asked.value.plan, study, base.value, layout?.value);
      if (!drawn.ok) return failWith(io, json, atFile([drawn.error], nameOf(file)));
    }
    if (json) await outJson(io, developJson(told));
    else if (output === stream) io.say(developText(told, unit));
    else await io.out(developText(told, unit));
    return exitCode.done;
  },
};

export interface Told extends TriedChanges {
  readonly base: DevelopedMethod;
  readonly interval: PeriodInterval | undefined;
  /** With `--layout`. */
  readonly layout?: LayoutTold | undefined;
}

export interface Source {
  readonly work: Work;
  /** The record that the work was drawn from. */
  readonly drawnFrom?: KeptWork['drawnFrom'];
  readonly readings: readonly MethodReading[];
  readonly study: Study | undefined;
  readonly notes: readonly Finding[];
}

/** A study gives the work of its record; a work file is taken as it stands. */
export async function readSource(
  io: Io,
  file: string,
  call: Call,
): Promise<Result<Source, readonly Finding[]>> {
  const text = await readText(io, file);
  if (!text.ok) return fail([text.error]);
  if (isWork(text.value)) {
    const work = parseWork(text.value);
    if (!work.ok) return fail(atFile(work.error, nameOf(file)));
    const stray = ['method', 'cycle'].find((option) => call.text(option) !== undefined);
    if (stray !== undefined)
      return fail([
        badUse(
          `--${stray} chooses in the record of a study, and ${nameOf(file)} is a work file.`,
          develop.example,
        ),
      ]);
    const readings = await timesFrom(io, '--times', call.text('times'));
    const notes = unitsWithoutSteps(work.value);
    return readings.ok ? ok({ work: work.value, ...readings.value, notes }) : readings;
  }
  const study = parseStudy(text.value);
  if (!study.ok) return fail(atFile(neitherStudyNorWork(study.error), nameOf(file)));
  if (call.text('times') !== undefined)
    return fail([
      badUse(
        `--times gives a work file its times, and ${nameOf(file)} is a study, whose own records give them; --library adds those of others.`,
        develop.example,
      ),
    ]);
  const method = chooseMethod(io, study.value, call.text('method'));
  if (!method.ok) return fail(atFile([method.error], nameOf(file)));
  const cycle = call.text('cycle');
  if (cycle !== undefined && !/^[1-9]\d{0,6}$/.test(cycle))
    return fail([badUse(`--cycle ${cycle} is not a number of 1 or more.`, develop.example)]);
  const drawn = workFromRecord(study.value, method.value.id, {
    cycle: cycle === undefined ? undefined : Number(cycle),
  });
  if (!drawn.ok) return fail(atFile([drawn.error], nameOf(file)));
  const faults = checkWork(drawn.value.work);
  if (faults.length > 0) return fail(atFile(faults, nameOf(file)));
  const reading = readMethod(study.value, method.value.id);
  return ok({
    work: drawn.value.work,
    drawnFrom: { method: method.value.id, ...(cycle === undefined ? {} : { cycle: Number(cycle) }) },
    readings: reading.ok ? [reading.value] : [],
    study: study.value,
    notes: drawn.value.notes,
  });
}

export function isWork(text: string): boolean {
  return /"workFormat"\s*:/.test(text);
}

function neitherStudyNorWork(found: readonly Finding[]): readonly Finding[] {
  return found.map((item) => (item.code === 'study/no-format' ? finding('develop/no-source') : item));
}

/** What is there is written over only where that was asked for. */
export async function alreadyThere(
  io: Io,
  output: string | undefined,
  call: Call,
): Promise<Finding | undefined> {
  if (output === undefined || output === stream || call.flag('replace')) return undefined;
  return (await io.exists(output)) ? finding('cli/exists', {}, { file: output }) : undefined;
}

async function timesFrom(
  io: Io,
  option: string,
  file: string | undefined,
): Promise<Result<Pick<Source, 'readings' | 'study'>, readonly Finding[]>> {
  if (file === undefined) return ok({ readings: [], study: undefined });
  const text = await readText(io, file);
  if (!text.ok) return fail([text.error]);
  if (isWork(text.value))
    return fail(atFile([finding('develop/work-for-study', {}, { what: option })], nameOf(file)));
  const study = parseStudy(text.value);
  if (!study.ok) return fail(atFile(study.error, nameOf(file)));
  return ok({ readings: readRecords(study.value), study: study.value });
}

/** All records of the studies named. */
async function libraryIn(
  io: Io,
  list: string | undefined,
): Promise<Result<Library | undefined, readonly Finding[]>> {
  if (list === undefined) return ok(undefined);
  const readings: MethodReading[] = [];
  for (const file of list.split(',').map((name) => name.trim())) {
    const found = await timesFrom(io, '--library', file);
    if (!found.ok) return found;
    readings.push(...found.value.readings);
  }
  return ok(libraryFrom(readings));
}

async function tableFrom(
  io: Io,
  file: string | undefined,
): Promise<Result<TimeTable | undefined, readonly Finding[]>> {
  if (file === undefined) return ok(undefined);
  const text = await readText(io, file);
  if (!text.ok) return fail([text.error]);
  const table = parseTimeTable(text.value, nameOf(file));
  return table.ok ? table : fail(atFile(table.error, nameOf(file)));
}

function intervalOf(
  { work, times, instance, composed }: DevelopedMethod,
  seed: number,
): PeriodInterval | undefined {
  return periodInterval(work, times, ordersOf(instance, composed.schedule), { seed });
}
