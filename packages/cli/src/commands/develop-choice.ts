import { type ChangeId, type CostRange, changeCodes } from '@evenhand/core/develop';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import type { TimeUnit } from '@evenhand/core/ground/units';
import type { Call, OptionFacts } from '../command.ts';
import { readNumber, readUnit, readWhole } from './define-words.ts';

export const developOptions: Readonly<Record<string, OptionFacts>> = {
  method: { value: 'ID', help: 'of a study: id or name of the recorded method; left out, the first' },
  cycle: {
    value: 'N',
    help: 'of a study: number of the cycle that the work is drawn from; left out, the middle one',
  },
  times: { value: 'STUDY', help: 'of a work file: a study whose records give the times' },
  library: {
    value: 'LIST',
    help: 'other studies, with commas between them, whose records give the times of what this one never measured',
  },
  table: { value: 'CSV', help: 'your own licensed time table, for what no record measured' },
  units: { value: '2|4', help: 'units at once, so that both hands do the same; left out, those of the work' },
  changes: {
    value: 'all|LIST',
    help: `what to try: all, each alone and in combinations, or a list of ${changeCodes.join(', ')} to make together; those about a step or an object as without-step:STEP; left out, none`,
  },
  costs: {
    value: 'LIST',
    help: 'of changes: what each costs once, as fixture=800 or fixture=600..800..1200, with commas between them; then only these are combined',
  },
  closed: {
    help: 'both hands wait for each other between two cycles; left out, each goes on when it is ready',
  },
  seconds: {
    value: 'N',
    help: 'longest time for each method; all combinations together take at most six times that; left out, 10',
  },
  seed: { value: 'N', help: 'left out, 1' },
  unit: { value: 'UNIT', help: 'seconds, minutes, winks, tmu, hours; left out, seconds' },
  output: {
    short: 'o',
    value: 'STUDY',
    help: 'writes the study with the best method added as a composed one; of a work file without --times, a new study',
  },
  replace: { help: 'with -o: write over a study that is there already' },
  json: { help: 'print all of it as JSON' },
};

export interface DevelopChoice {
  readonly changes: 'none' | 'all' | readonly string[];
  readonly units: 2 | 4 | undefined;
  readonly costs: ReadonlyMap<ChangeId, CostRange>;
  readonly closed: boolean;
  /** Of each method. */
  readonly seconds: number;
  readonly seed: number;
  readonly unit: TimeUnit;
}

/** The error is a sentence. Whether the work has such changes is seen when it is read. */
export function readDevelopChoice(call: Call): Result<DevelopChoice, string> {
  const unit = readUnit(call.text('unit'));
  if (!unit.ok) return unit;
  const seconds = readWhole('seconds', call.text('seconds') ?? '10');
  if (!seconds.ok) return seconds;
  const seed = readWhole('seed', call.text('seed') ?? '1');
  if (!seed.ok) return seed;
  const units = call.text('units')?.trim();
  if (units !== undefined && units !== '2' && units !== '4')
    return fail(`--units ${units} is not possible; it can be 2 or 4.`);
  const text = call.text('changes')?.trim();
  const changes = text === undefined ? 'none' : text === 'all' ? 'all' : namesIn(text);
  if (typeof changes !== 'string') {
    if (changes.includes(''))
      return fail('--changes has an empty name; write one comma between two changes.');
    if (changes.length > 1 && changes.includes('all'))
      return fail('--changes all tries every change; leave the other names out.');
    const stray = changes.find((name) => !changeCodes.some((code) => code === name.split(':')[0]));
    if (stray !== undefined)
      return fail(`--changes ${stray} is not known; it can be all, ${changeCodes.join(', ')}.`);
  }
  const costs = readCosts(call.text('costs'));
  if (!costs.ok) return costs;
  if (costs.value.size > 0 && changes === 'none')
    return fail('--costs tells what changes cost; name them with --changes.');
  return ok({
    changes,
    units: units === undefined ? undefined : units === '2' ? 2 : 4,
    costs: costs.value,
    closed: call.flag('closed'),
    seconds: seconds.value,
    seed: seed.value,
    unit: unit.value,
  });
}

function namesIn(text: string): readonly string[] {
  return text.split(',').map((name) => name.trim());
}

/** `fixture=800,two-units=600..800..1200`. */
function readCosts(text: string | undefined): Result<ReadonlyMap<ChangeId, CostRange>, string> {
  const costs = new Map<ChangeId, CostRange>();
  for (const part of text === undefined ? [] : namesIn(text)) {
    const at = part.lastIndexOf('=');
    const name = part.slice(0, Math.max(0, at)).trim();
    const code = changeCodes.find((item) => item === name.split(':')[0]);
    if (at < 0 || code === undefined)
      return fail(
        `--costs ${part} is not understood. Write such as fixture=800, with one of ${changeCodes.join(', ')}.`,
      );
    const cost = readCost(part.slice(at + 1));
    if (!cost.ok) return cost;
    costs.set(name === code ? code : `${code}:${name.slice(code.length + 1)}`, cost.value);
  }
  return ok(costs);
}

function readCost(text: string): Result<CostRange, string> {
  const numbers: number[] = [];
  for (const part of text.split('..')) {
    const number = readNumber('costs', part.trim());
    if (!number.ok) return number;
    numbers.push(number.value);
  }
  const [low, likely = low, high = likely] = numbers;
  if (
    low === undefined ||
    likely === undefined ||
    high === undefined ||
    numbers.length === 2 ||
    numbers.length > 3
  )
    return fail(`--costs ${text} is no cost: write one number, or LOW..LIKELY..HIGH.`);
  if (low < 0 || low > likely || likely > high)
    return fail(`--costs ${text} is no cost: LOW, LIKELY and HIGH are 0 or more and rise in this order.`);
  return ok({ low, likely, high });
}
