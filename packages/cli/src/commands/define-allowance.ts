import { type AllowanceConvention, conventionWords } from '@evenhand/core/define';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import type { TimeStudyAllowances } from '@evenhand/core/ground/study';
import {
  type AllowanceColumn,
  type AllowanceEdition,
  type AllowanceEditionId,
  type AllowanceRow,
  allowanceEditions,
} from '@evenhand/core/ground/tables';
import type { Call, OptionFacts } from '../command.ts';
import { type NamedNumbers, nameKey, readNamed, readPairs, readPercent } from './define-words.ts';

const conventions = { basic: 'share-of-basic-time', shift: 'share-of-shift' } as const;
export const editionNames = Object.keys(allowanceEditions) as AllowanceEditionId[];
const editions: Readonly<Record<AllowanceEditionId, AllowanceEdition>> = allowanceEditions;

export const allowanceOptions: Readonly<Record<string, OptionFacts>> = {
  allowance: {
    value: 'PERCENT',
    help: 'relaxation allowance that was agreed, for all or for single elements as "12; NAME=18"; left out, none',
  },
  relaxation: {
    value: 'EDITION',
    help: `relaxation from a printed edition of the published table: ${editionNames.join(', ')}`,
  },
  column: { value: 'COLUMN', help: 'men or women: the column of the edition, where it has two' },
  rows: {
    value: 'LIST',
    help: 'rows of the edition that apply, each with its level from 0, as "personal=0; posture=1"; "list" prints them',
  },
  process: { value: 'PERCENT', help: 'allowance on machine-paced time; left out, none' },
  contingency: { value: 'PERCENT', help: 'contingency on top; left out, none' },
  of: {
    value: 'WHAT',
    help: 'basic or shift: what the allowance is a share of; needed with --allowance and --process',
  },
};

export interface AllowanceWish {
  readonly allowances: TimeStudyAllowances;
  /** Relaxation of single elements in the same convention, by the key of their name. */
  readonly own: NamedNumbers['byName'];
}

/** The error is a sentence that says what to write instead. */
export function readAllowances(call: Call): Result<AllowanceWish, string> {
  const share = (option: string) => {
    const text = call.text(option);
    return text === undefined ? ok(0) : readPercent(option, text);
  };
  const [agreed, process, contingency] = [readAgreed(call), share('process'), share('contingency')];
  if (!agreed.ok) return agreed;
  if (!process.ok) return process;
  if (!contingency.ok) return contingency;
  const { all, byName } = agreed.value;
  const shares = [all ?? 0, process.value, ...byName.values()];
  const convention = readConvention(
    'of',
    call.text('of'),
    shares.some((value) => value !== 0),
  );
  if (!convention.ok) return convention;
  const relaxation = readRelaxation(call, all);
  if (!relaxation.ok) return relaxation;
  const allowances = {
    convention: convention.value,
    relaxation: relaxation.value,
    process: process.value,
    contingency: contingency.value,
  };
  return ok({ allowances, own: byName });
}

function readAgreed(call: Call): Result<NamedNumbers, string> {
  const text = call.text('allowance');
  if (text === undefined) return ok({ all: undefined, byName: new Map() });
  return text.trim() === ''
    ? fail('--allowance says nothing. Write such as 12, or "12; NAME=18".')
    : readNamed('allowance', text, readPercent);
}

/** The same figure gives another standard in each convention, so it is asked for and never taken for granted. */
export function readConvention(
  option: string,
  word: string | undefined,
  matters: boolean,
): Result<AllowanceConvention, string> {
  if (word === undefined) {
    const both = `--${option} basic (${conventionWords['share-of-basic-time']}) or --${option} shift (${conventionWords['share-of-shift']})`;
    return matters
      ? fail(`It must be said what the allowance is a share of: ${both}.`)
      : ok('share-of-basic-time');
  }
  return word === 'basic' || word === 'shift'
    ? ok(conventions[word])
    : fail(`--${option} ${word} is not known; it can be basic or shift.`);
}

function readRelaxation(
  call: Call,
  agreed: number | undefined,
): Result<TimeStudyAllowances['relaxation'], string> {
  const name = call.text('relaxation');
  if (name === undefined) {
    const needless = ['column', 'rows'].find((option) => call.text(option) !== undefined);
    return needless === undefined
      ? ok({ kind: 'share', share: agreed ?? 0 })
      : fail(`--${needless} says what applies of a printed table; name its edition: ${editionWords()}`);
  }
  if (agreed !== undefined)
    return fail(
      '--allowance for all and --relaxation are two ways to say one thing; give one. Single elements may have their own beside the table: --allowance "NAME=18".',
    );
  const id = editionNames.find((known) => known === name.trim().toLowerCase());
  if (id === undefined) return fail(`--relaxation ${name} is no edition that is known. ${editionWords()}`);
  const choices = readRows(call.text('rows'), editions[id]);
  if (!choices.ok) return choices;
  const column = readColumn(call.text('column'), editions[id]);
  if (!column.ok) return column;
  return ok({ kind: 'table', edition: id, column: column.value, choices: choices.value });
}

function editionWords(): string {
  const words = editionNames.map((id) => `--relaxation ${id}: ${editions[id].name}. ${editions[id].differs}`);
  return `There are: ${words.join(' ')}`;
}

function readColumn(
  word: string | undefined,
  { name, columns }: AllowanceEdition,
): Result<AllowanceColumn, string> {
  const [only] = columns;
  if (columns.length === 1 && only !== undefined) {
    return word === undefined || word === only
      ? ok(only)
      : fail(`--column ${word}: “${name}” has one column, so --column is left out.`);
  }
  const found = columns.find((column) => column === word);
  if (found !== undefined) return ok(found);
  const known = columns.map((column) => `--column ${column}`).join(' or ');
  return fail(
    `${word === undefined ? 'Which column of the table applies is not said' : `--column ${word} is not in “${name}”`}: give ${known}.`,
  );
}

type Choices = Extract<TimeStudyAllowances['relaxation'], { kind: 'table' }>['choices'];

function readRows(text: string | undefined, edition: AllowanceEdition): Result<Choices, string> {
  const { name, rows } = edition;
  const list = `“${name}” has these rows and levels. ${rows.map(rowWords).join(' ')}`;
  if (text === undefined || text.trim() === '')
    return fail(`--rows must say which rows of the table apply, as "personal=0; posture=1". ${list}`);
  if (text.trim() === 'list') return fail(list);
  const pairs = readPairs('rows', text, 'ROW=LEVEL');
  if (!pairs.ok) return pairs;
  const choices: { row: AllowanceRow['id']; level: number }[] = [];
  for (const [key, said] of pairs.value) {
    const row = rows.find(({ id, words }) => id === key || nameKey(words) === key);
    if (row === undefined) return fail(`--rows names “${key}”, which is no row of the table. ${list}`);
    const level = row.levels.findIndex(
      ({ words }, index) => String(index) === said || nameKey(words) === nameKey(said),
    );
    if (level < 0) return fail(`--rows: “${said}” is no level of “${key}”. ${rowWords(row)}`);
    choices.push({ row: row.id, level });
  }
  return ok(choices);
}

function rowWords({ id, words, levels }: AllowanceRow): string {
  return `${id} (${words}): ${levels.map((level, index) => `${index} ${level.words}`).join(', ')}.`;
}
