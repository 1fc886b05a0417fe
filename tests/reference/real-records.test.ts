import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { type Io, IoFault, run } from '@evenhand/cli';
import { parseStudy, type Study } from '@evenhand/core/ground/study';
import { describe, expect, inject, it } from 'vitest';
import { intervalUnion } from '../oracles/interval-union.ts';

/**
 * Records of real work that others labelled for purposes of their own. They lie beside the folder of the real films and
 * are never part of the project; without them these tests are counted as skipped. The mappings are invented here: they
 * try the reading and say nothing about the work. Every count is taken from the raw text by the few lines below.
 */
const films = inject('realFilms')?.folder;
const folder = films === undefined ? undefined : path.resolve(films, '../records');
const files = {
  cooking: 'captaincook4d_steps.csv',
  furniture: 'ikea_asm_test_25fps.csv',
  narrated: 'egoexolearn_6videos_handword.csv',
  factory: 'egocentric10k_f001_w002_bagging_element_times_s.csv',
  markers: 'kinesis_reach_to_grasp.txt',
} as const;
const isThere = (file: string) => folder !== undefined && existsSync(path.join(folder, file));
const textOf = once((file: string) => readFileSync(path.join(folder ?? '', file), 'utf8'));

/** Hundreds of subjects stand in one file; it is read and taken apart once. */
function once<Value>(read: (key: string) => Value): (key: string) => Value {
  const known = new Map<string, Value>();
  return (key) => {
    const value = known.get(key) ?? read(key);
    known.set(key, value);
    return value;
  };
}

interface World {
  readonly files: Readonly<Record<string, string>>;
}

/** Calls the program with files of its own in place of a disk; it needs nothing else of the world. */
async function call(argv: readonly string[], world: World) {
  const files: Record<string, string> = { ...world.files };
  const said = { out: '', err: '' };
  const text = (content: string | Uint8Array) =>
    typeof content === 'string' ? content : new TextDecoder().decode(content);
  const needless = () => {
    throw new RangeError('neither import nor examine needs this');
  };
  const io: Io = {
    readFile: async (file) => {
      const content = files[file];
      if (content === undefined) throw new IoFault('there is no such file');
      return new TextEncoder().encode(content);
    },
    exists: async (file) => file in files,
    readFault: async () => undefined,
    writeFault: async () => undefined,
    writeFile: async (file, content) => {
      files[file] = text(content);
    },
    out: async (content) => {
      said.out += text(content);
    },
    say: (message) => {
      said.err += `${message}\n`;
    },
    newId: () => 'real-record',
    today: () => '2026-03-14',
    now: needless,
    version: '0',
    readStdin: needless,
    svgFonts: needless,
    pdf: needless,
    trackFilm: needless,
    serve: needless,
    openBrowser: needless,
    stopped: needless,
  };
  const code = await run(argv, io);
  return { code, files, ...said };
}

interface Row {
  /** From 1, as an editor counts. */
  readonly line: number;
  readonly subject: string;
  readonly hand: string;
  readonly label: string;
  readonly start: number;
  readonly end: number;
}

/** None of the records has a quoted cell; the test says so before it splits at commas. */
const rowsOf = once((file: string): readonly Row[] => {
  const text = textOf(file);
  expect(text).not.toContain('"');
  const lines = text.split(/\r?\n/).filter((line) => line !== '');
  return lines.slice(1).map((line, index) => {
    const [subject = '', hand = '', label = '', start, end] = line.split(',');
    return { line: index + 2, subject, hand, label, start: Number(start), end: Number(end) };
  });
});

/** Motions for labels in turn, so that several kinds come up; every label whose turn is the fifth is not marked. */
const kinds = ['G', 'TL', 'A', 'P', 'unmarked'];
const kindOf = (labels: readonly string[]) =>
  new Map(labels.map((label, index) => [label, kinds[index % kinds.length] ?? 'G']));
const labelsOf = (rows: readonly Row[]) => [...new Set(rows.map(({ label }) => label.toLowerCase()))].sort();
const mappingText = (motions: ReadonlyMap<string, string>) =>
  `label,motion\n${[...motions].map((entry) => entry.join(',')).join('\n')}\n`;

function seconds(study: Study, hand: 'left' | 'right'): number {
  const row = study.methods[0]?.[hand];
  const items = row?.items ?? [];
  return items.reduce(
    (sum, { kind, start }, index) =>
      kind === 'unmarked' ? sum : sum + ((items[index + 1]?.start ?? row?.end ?? 0) - start) / 1e6,
    0,
  );
}

/** Cuts as they are told, with the lines they were told of, from 1. */
const cutsIn = (err: string) =>
  [
    ...err.matchAll(
      /The (left|right) hand did two things at once: the motion on line (\d+) was cut by ([\d.]+) s.*\[csv\/cut-(\w+)\]/g,
    ),
  ].map(([, hand, line, time, how]) => ({ hand, line: Number(line), time: Number(time), how }));

async function imported(file: string, mapping: string, more: readonly string[]) {
  const world = { files: { 'record.csv': textOf(file), 'labels.csv': mapping } };
  const words = ['record', 'import', 'record.csv', '--mapping', 'labels.csv', '-o', 'new.json', ...more];
  const made = await call(words, world);
  const study = parseStudy(String(made.files['new.json']));
  return { ...made, study: study.ok ? study.value : undefined };
}

/** A record of one subject, against the raw rows: time of each hand, number of motions, notes, and what examine says. */
async function holds(file: string, subject: string) {
  const all = rowsOf(file);
  const motions = kindOf(labelsOf(all));
  const more = ['--subject', subject, '--hand', 'right', '--both', 'copy', '--overlaps', 'cut'];
  const { code, err, study, files: after } = await imported(file, mappingText(motions), more);
  expect([code, study === undefined]).toEqual([0, false]);
  if (study === undefined) return [];
  const cuts = cutsIn(err);
  const isMarked = ({ label }: Row) => motions.get(label.toLowerCase()) !== 'unmarked';
  for (const hand of ['left', 'right'] as const) {
    const own = all
      .filter((row) => row.subject === subject && isMarked(row))
      .filter(
        (row) => row.hand === hand || row.hand === 'both' || (hand === 'right' && row.hand === 'unspecified'),
      );
    const lines = new Set(own.map(({ line }) => line));
    const told = cuts.filter((cut) => cut.hand === hand && lines.has(cut.line));
    const lost = told.reduce((sum, { time }) => sum + time, 0);
    const there = own.reduce((sum, { start, end }) => sum + end - start, 0);
    expect(seconds(study, hand)).toBeCloseTo(there - lost, 4);
    const micros = (time: number) => Math.round(time * 1e6);
    const union = intervalUnion(own.map(({ start, end }) => ({ start: micros(start), end: micros(end) })));
    expect(seconds(study, hand)).toBeCloseTo(union / 1e6, 4);
    const count = (how: string) => told.filter((cut) => cut.how === how).length;
    const motionsMade = own.length - count('whole') + count('split');
    expect(err).toMatch(new RegExp(`${hand} hand ${motionsMade} motions?[,;]`));
    const notes = new Set(study.methods[0]?.[hand].items.map(({ note }) => note));
    const gone = new Set(told.filter(({ how }) => how === 'whole').map(({ line }) => line));
    for (const { label, line } of own) if (!gone.has(line)) expect(notes).toContain(label);
  }
  const examined = await call(['examine', 'new.json'], { files: { ...after } });
  expect([subject, examined.code]).toEqual([subject, 0]);
  expect(examined.out).toMatch(/\d/);
  expect(examined.out).not.toMatch(/NaN|Infinity|undefined/);
  return cuts;
}

/** The subject with most lines. */
function largest(rows: readonly Row[]): string {
  const lines = new Map<string, number>();
  for (const { subject } of rows) lines.set(subject, (lines.get(subject) ?? 0) + 1);
  return [...lines].toSorted(([, a], [, b]) => b - a)[0]?.[0] ?? '';
}

/** A time such as 2.2e-16, which somebody's sum left behind; a person would not write it and it is not read. */
async function refusesExponents(file: string, subject: string): Promise<boolean> {
  const lines = textOf(file).split(/\r?\n/);
  const at = lines.findIndex((line) => line.startsWith(`${subject},`) && /,\d[\d.]*e-?\d+(,|$)/i.test(line));
  if (at < 0) return false;
  const motions = kindOf(labelsOf(rowsOf(file)));
  const { code, err } = await imported(file, mappingText(motions), ['--subject', subject, '--hand', 'right']);
  expect(code).toBe(2);
  expect(err).toMatch(new RegExp(`line ${at + 1}, column [45]: “[^”]*” is not a time in seconds`));
  return true;
}

describe.each([
  ['steps of cooking', files.cooking],
  ['steps of furniture assembly', files.furniture],
  ['narrated actions of both hands', files.narrated],
])('a record of others: %s', (_, file) => {
  it.runIf(isThere(file))('of many subjects is refused with their number', async () => {
    const subjects = new Set(rowsOf(file).map(({ subject }) => subject));
    const { code, err, study } = await imported(file, 'label,motion\nput,RL', []);
    expect([code, study]).toEqual([2, undefined]);
    expect(err).toContain(`The table tells of ${subjects.size} subjects`);
    if (subjects.size > 20) expect(err).toContain(`and ${subjects.size - 20} more.`);
  });

  it.runIf(isThere(file))('names every label without a motion, the most frequent first', async () => {
    const rows = rowsOf(file);
    const subject = largest(rows);
    const counts = new Map<string, { times: number; line: number }>();
    for (const row of rows.filter((each) => each.subject === subject)) {
      const label = row.label.toLowerCase();
      const { times, line } = counts.get(label) ?? { times: 0, line: row.line };
      counts.set(label, { times: times + 1, line });
    }
    const [known = '', ...unknown] = [...counts.keys()].sort();
    const more = ['--subject', subject, '--hand', 'right', '--both', 'copy', '--overlaps', 'cut'];
    const mapping = `label,motion\n${known},G\n`;
    const { code, err, study } = await imported(file, mapping, more);
    expect([code, study]).toEqual([2, undefined]);
    const told = [
      ...err.matchAll(/line (\d+), column 3: “([^”]*)” stands for no motion \((\d+) times?/g),
    ].map(
      ([, line, label = '', times]) =>
        [label.toLowerCase(), { times: Number(times), line: Number(line) }] as const,
    );
    expect(new Map(told)).toEqual(new Map(unknown.map((label) => [label, counts.get(label)])));
    const order = told.map(([, { times }]) => times);
    expect(order).toEqual(order.toSorted((a, b) => b - a));
    const read = await imported(file, mapping, [...more, '--unmapped', 'unmarked']);
    expect(read.code).toBe(0);
  });

  it.runIf(isThere(file))('runs through with a mapping: no time is lost but what is told', async () => {
    const refused: string[] = [];
    for (const subject of new Set(rowsOf(file).map((row) => row.subject))) {
      if (await refusesExponents(file, subject)) refused.push(subject);
      else await holds(file, subject);
    }
    const withExponent = new Set(
      textOf(file)
        .split(/\r?\n/)
        .filter((line) => line.split(',').some((cell) => /^\d[\d.]*e-?\d+$/i.test(cell)))
        .map((line) => line.split(',')[0]),
    );
    expect(new Set(refused)).toEqual(withExponent);
  });
});

describe('narrated actions that overlap in one hand', () => {
  it.runIf(isThere(files.narrated))('are refused by line, and cut where that is chosen', async () => {
    const rows = rowsOf(files.narrated);
    const mapping = mappingText(kindOf(labelsOf(rows)));
    let refused = 0;
    for (const subject of new Set(rows.map((row) => row.subject))) {
      const more = ['--subject', subject, '--hand', 'right', '--both', 'copy'];
      const plain = await imported(files.narrated, mapping, more);
      const cuts = await holds(files.narrated, subject);
      expect([subject, plain.code]).toEqual([subject, cuts.length > 0 ? 2 : 0]);
      if (plain.code === 0) continue;
      refused += 1;
      expect(plain.err).toMatch(/line \d+, column 4: The (left|right) hand does two things at once/);
    }
    expect(refused).toBeGreaterThan(0);
  });
});

describe('a log of a factory: elements by cycle in whole seconds', () => {
  const raw = () =>
    textOf(files.factory)
      .split(/\r?\n/)
      .filter((line) => line !== '')
      .map((line) => line.split(','));

  it.runIf(isThere(files.factory))('is told what it is when it is read as motions', async () => {
    const { code, err } = await imported(files.factory, 'label,motion\nput,RL', []);
    expect(code).toBe(2);
    expect(err).toContain('This is a table of elements by cycle');
    expect(err).toContain('--shape elements --hand right --mapping FILE');
  });

  it.runIf(isThere(files.factory))(
    'each clip runs through, and each second is marked or told to be cut',
    async () => {
      const [head = [], ...lines] = raw();
      const labels = head.slice(3);
      const mapping = mappingText(new Map(labels.map((label, index) => [label, kinds[index % 4] ?? 'G'])));
      const clips = new Set(lines.map(([, clip]) => clip ?? ''));
      expect(clips.size).toBeGreaterThan(1);
      for (const clip of clips) {
        const own = lines.filter((line) => line[1] === clip);
        const words = ['--shape', 'elements', '--hand', 'right', '--subject', clip];
        const sum = (line: readonly string[]) =>
          line.slice(3).reduce((total, cell) => total + Number(cell), 0);
        const runsOver = own.some((line, index) => {
          const next = own[index + 1];
          return next !== undefined && Number(line[2]) + sum(line) > Number(next[2]);
        });
        const plain = await imported(files.factory, mapping, words);
        expect([clip, plain.code]).toEqual([clip, runsOver ? 2 : 0]);
        const {
          code,
          err,
          study,
          files: after,
        } = await imported(files.factory, mapping, [...words, '--overlaps', 'cut']);
        expect([clip, code]).toEqual([clip, 0]);
        if (study === undefined) continue;
        const cut = [...err.matchAll(/The element “[^”]*” was cut by ([\d.]+) s/g)];
        const lost = cut.reduce((total, [, time]) => total + Number(time), 0);
        expect(cut.length > 0).toBe(runsOver);
        expect(seconds(study, 'right')).toBeCloseTo(
          own.reduce((total, line) => total + sum(line), 0) - lost,
          6,
        );
        expect(study.methods[0]?.cycles.items.map(({ start }) => start / 1e6)).toEqual(
          own.map((line) => Number(line[2])),
        );
        const examined = await call(['examine', 'new.json'], { files: { ...after } });
        expect([clip, examined.code]).toEqual([clip, 0]);
        expect(examined.out).not.toMatch(/NaN|Infinity|undefined/);
      }
    },
  );

  it.runIf(isThere(files.factory))('the element of 385 s stays as long as it is', async () => {
    const [head = [], ...lines] = raw();
    const line = lines.find((cells) => cells[3] === '385.0') ?? [];
    const mapping = mappingText(new Map(head.slice(3).map((label) => [label, 'A'])));
    const words = ['--shape', 'elements', '--hand', 'left', '--subject', line[1] ?? '', '--overlaps', 'cut'];
    const { study } = await imported(files.factory, mapping, words);
    const items = study?.methods[0]?.left.items ?? [];
    const at = items.findIndex(({ start }) => start / 1e6 === Number(line[2]));
    expect([items[at]?.kind, ((items[at + 1]?.start ?? 0) - (items[at]?.start ?? 0)) / 1e6]).toEqual([
      'A',
      385,
    ]);
  });
});

describe('positions of markers on fingers', () => {
  it.runIf(isThere(files.markers))(
    'are no record of motions, and every column that is missing is named',
    async () => {
      const { code, err, study } = await imported(files.markers, 'label,motion\nput,RL', []);
      expect([code, study]).toEqual([2, undefined]);
      for (const column of ['hand', 'motion', 'start_s', 'end_s']) {
        expect(err).toContain(`line 1: The column “${column}” is missing.`);
      }
      expect(err).not.toMatch(/NaN|undefined/);
    },
  );
});
