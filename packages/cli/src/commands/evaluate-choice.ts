import { parseCycles } from '@evenhand/core/examine';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type PaperName, papers } from '@evenhand/core/ground/scene';
import type { Comparison, Study } from '@evenhand/core/ground/study';
import type { TimeUnit } from '@evenhand/core/ground/units';
import type { Call, OptionFacts } from '../command.ts';
import { formatOf, stream } from '../files.ts';
import { readConfidence, readUnit } from './define-words.ts';
import { moneyOptions, readMoney } from './evaluate-money.ts';
import { type SheetOutput, sheetFormats } from './write-sheets.ts';

const paperNames = Object.keys(papers) as PaperName[];

export const evaluateOptions: Readonly<Record<string, OptionFacts>> = {
  before: { value: 'ID', help: 'id or name of the method before; needed without a --comparison' },
  after: { value: 'ID', help: 'id or name of the method after; needed without a --comparison' },
  comparison: { value: 'NAME', help: 'a comparison that is kept in the study, by id or name' },
  'cycles-before': { value: 'LIST', help: 'such as 1-6 or 1-4,6; left out, all that are not set aside' },
  'cycles-after': { value: 'LIST', help: 'likewise' },
  confidence: { value: 'PERCENT', help: 'of the intervals; left out, 95' },
  unit: { value: 'UNIT', help: 'seconds, minutes, winks, tmu, hours; left out, seconds' },
  proposed: { help: 'let proposed motions count that nobody has confirmed' },
  ...moneyOptions,
  output: { short: 'o', value: 'FILE', help: 'FILE.pdf or FILE.svg: the proof on one page' },
  paper: { value: paperNames.join('|'), help: 'size of the page; left out, a4' },
  date: { value: 'TEXT', help: 'the date on the page; left out, today' },
  as: { value: sheetFormats.join('|'), help: 'what to write, where the name does not say it' },
  json: { help: 'print all of it as JSON' },
};

export interface EvaluateChoice {
  readonly unit: TimeUnit;
  readonly page: SheetOutput | undefined;
}

/** How it is printed and where the page goes. The error is a sentence. */
export function readEvaluateChoice(call: Call): Result<EvaluateChoice, string> {
  const unit = readUnit(call.text('unit'));
  if (!unit.ok) return unit;
  const paper = (call.text('paper') ?? 'a4').toLowerCase();
  const known = paperNames.find((name) => name === paper);
  if (known === undefined)
    return fail(`--paper ${paper} is not known; it can be ${paperNames.join(' or ')}.`);
  const output = call.text('output');
  if (output === undefined) return ok({ unit: unit.value, page: undefined });
  const format = formatOf(output, call.text('as'), sheetFormats);
  if (!format.ok) return format;
  if (call.flag('json') && output === stream) return fail('--json and -o - both want standard output.');
  return ok({ unit: unit.value, page: { output, format: format.value, paper: known } });
}

/** The comparison that is meant: one that is kept in the study, or the one that the options say. */
export function readComparison(
  call: Call,
  study: Study,
  methods: { readonly before: string | undefined; readonly after: string | undefined },
): Result<Comparison, string> {
  const kept = keptComparison(call, study);
  if (!kept.ok) return kept;
  const [before, after] = [
    readSide(call, 'before', methods.before ?? kept.value?.before.method, kept.value?.before.cycles),
    readSide(call, 'after', methods.after ?? kept.value?.after.method, kept.value?.after.cycles),
  ];
  if (!before.ok) return before;
  if (!after.ok) return after;
  const confidence = readConfidence(call.text('confidence'));
  if (!confidence.ok) return confidence;
  const money = readMoney(call, study, kept.value?.money);
  if (!money.ok) return money;
  return ok({
    ...(kept.value ?? { id: 'asked' }),
    before: before.value,
    after: after.value,
    confidence:
      call.text('confidence') === undefined ? (kept.value?.confidence ?? confidence.value) : confidence.value,
    ...(call.flag('proposed') ? { proposed: true } : {}),
    ...(money.value === undefined ? {} : { money: money.value }),
  });
}

function keptComparison(call: Call, { comparisons = [] }: Study): Result<Comparison | undefined, string> {
  const wish = call.text('comparison');
  if (wish === undefined) return ok(undefined);
  const byId = comparisons.find(({ id }) => id === wish);
  const byName = comparisons.filter(({ name }) => name?.toLowerCase() === wish.toLowerCase());
  const found = byId ?? (byName.length === 1 ? byName[0] : undefined);
  if (found !== undefined) return ok(found);
  const known = comparisons.map(({ id, name }) => (name === undefined ? id : `${id} (${name})`)).join(', ');
  return fail(`The study has no comparison “${wish}”. It has: ${known || 'none'}.`);
}

function readSide(
  call: Call,
  side: 'before' | 'after',
  method: string | undefined,
  kept: readonly number[] | undefined,
): Result<Comparison['before'], string> {
  if (method === undefined) return fail(`The option --${side} ID is missing.`);
  const wanted = call.text(`cycles-${side}`);
  if (wanted === undefined) return ok({ method, ...(kept === undefined ? {} : { cycles: kept }) });
  const cycles = parseCycles(wanted);
  if (!cycles.ok) return fail(cycles.error);
  return ok({ method, ...(cycles.value === undefined ? {} : { cycles: cycles.value }) });
}
