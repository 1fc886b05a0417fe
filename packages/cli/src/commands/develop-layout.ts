import {
  type Arranged,
  type ArrangeWish,
  arranged,
  arrangedWith,
  benchPlan,
  type ChangeId,
  changeOf,
  type DevelopedMethod,
  reachOfBench,
  reachWords,
  tripsOfSchedule,
  type Work,
} from '@evenhand/core/develop';
import { fail, ok, type Result, roundMicros } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { type SheetName, sheets } from '@evenhand/core/ground/scene';
import type { Study } from '@evenhand/core/ground/study';
import { numberText, type TimeUnit, timeText } from '@evenhand/core/ground/units';
import type { Call, OptionFacts } from '../command.ts';
import { formatOf, stream } from '../files.ts';
import type { Io } from '../io.ts';
import { wrapped } from './wrapped.ts';
import { type SheetOutput, sheetFormats, writeSheets } from './write-sheets.ts';

const sheetNames = Object.keys(sheets) as SheetName[];
/** Eight hours of work, microseconds; for the travel of a day. */
const dayOfWork = 8 * 3_600_000_000;

export const developLayoutOptions: Readonly<Record<string, OptionFacts>> = {
  layout: {
    help: 'also seek the best places of bins, tools and exits together with the method, and say whether the pair is proven',
  },
  plan: {
    value: 'FILE',
    help: 'FILE.pdf or FILE.svg: the bench to scale for the workshop; with --layout as it is arranged',
  },
  scale: { value: '5|10', help: 'of the plan: 1:5 or 1:10; left out, 5' },
  sheet: { value: sheetNames.join('|'), help: 'of the plan: size of its sheet; left out, a3' },
};

export interface LayoutChoice {
  readonly layout: boolean;
  readonly plan: (SheetOutput<SheetName> & { readonly scale: 5 | 10 }) | undefined;
}

/** The error is a sentence. */
export function readLayoutChoice(call: Call): Result<LayoutChoice, string> {
  const layout = call.flag('layout');
  const output = call.text('plan');
  const scale = call.text('scale') ?? '5';
  if (scale !== '5' && scale !== '10') return fail(`--scale ${scale} is not possible; it can be 5 or 10.`);
  const asked = (call.text('sheet') ?? 'a3').toLowerCase();
  const paper = sheetNames.find((name) => name === asked);
  if (paper === undefined) return fail(`--sheet ${asked} is not known; it can be ${sheetNames.join(', ')}.`);
  if (output === undefined) {
    const stray = ['scale', 'sheet'].find((name) => call.text(name) !== undefined);
    return stray === undefined
      ? ok({ layout, plan: undefined })
      : fail(`--${stray} is for a plan; name its file with --plan.`);
  }
  if (output === stream) return fail('--plan needs the name of a file that ends in .pdf or .svg.');
  const format = formatOf(output, undefined, sheetFormats);
  if (!format.ok) return format;
  return ok({ layout, plan: { output, format: format.value, paper, scale: scale === '5' ? 5 : 10 } });
}

export interface LayoutTold
  extends Pick<
    Arranged,
    'work' | 'times' | 'moved' | 'schedule' | 'instance' | 'proven' | 'words' | 'spots'
  > {
  /** Of all layouts; undefined where changes are taken, because none is known then. */
  readonly bound?: number;
}

/** Best places of a work; with changes, of what they make of it, the changes made again for every layout. */
export function layoutFor(
  work: Work,
  changes: readonly ChangeId[],
  wish: Omit<ArrangeWish, 'step' | 'onBetter'>,
): Result<LayoutTold, Finding> {
  if (changes.length === 0) return arranged(work, wish);
  const found = arrangedWith(
    work,
    changes.flatMap((id) => changeOf(id, work) ?? []),
    wish,
  );
  if (found === undefined)
    return fail(finding('develop/changes-clash', {}, { one: changes[0] ?? '', other: changes.at(-1) ?? '' }));
  if (!found.ok) return found;
  const { method, moved, words, spots } = found.value;
  const { composed, times, instance } = method;
  const { schedule } = composed;
  return ok({ work: method.work, times, moved, schedule, instance, proven: false, words, spots });
}

/** The work with its places where a layout puts them, before any changes. */
export function movedWork(work: Work, { moved }: Pick<LayoutTold, 'moved'>): Work {
  const goals = new Map(moved.map(({ place, to }) => [place, to]));
  const places = work.places.map((place) => {
    const at = goals.get(place.id);
    return at === undefined ? place : { ...place, at };
  });
  return { ...work, places };
}

/** Writes the plan of the bench as it is, or as it was arranged. */
export async function writePlan(
  io: Io,
  plan: NonNullable<LayoutChoice['plan']>,
  study: Study | undefined,
  base: DevelopedMethod,
  layout: LayoutTold | undefined,
): Promise<Result<readonly string[], Finding>> {
  const { work, instance, schedule } = layout ?? { ...base, schedule: base.composed.schedule };
  const drawn = benchPlan(work, {
    paper: plan.paper,
    scale: plan.scale,
    reach: reachOfBench(work.bench),
    trips: tripsOfSchedule(work, instance, schedule),
    ...(schedule.period > 0 ? { day: { period: schedule.period, worked: dayOfWork } } : {}),
    titleBlock: {
      operation: study === undefined ? work.title : study.operation.name || study.title,
      ...(study?.operation.analyst === undefined ? {} : { drawnBy: study.operation.analyst }),
      date: io.today(),
    },
  });
  if (!drawn.ok) return drawn;
  const written = await writeSheets(io, plan, [drawn.value]);
  if (written.ok) io.say(`Wrote ${written.value.join(', ')}.`);
  return written;
}

/** `now` is what a unit takes with the places as they are. */
export function layoutLines(layout: LayoutTold, now: number, unit: TimeUnit): string[] {
  const { work, moved, schedule, bound, proven, words, spots } = layout;
  const time = (us: number) => timeText(roundMicros(us), unit);
  const { period } = schedule;
  const unitTime = period / work.unitsPerCycle;
  const saved =
    unitTime < now
      ? `${time(now - unitTime)}${work.unitsPerCycle > 1 ? ' a unit' : ''} less than with the places as they are`
      : 'the places as they are do as well';
  const known = proven
    ? ', the pair proven'
    : bound === undefined || bound === 0
      ? ''
      : `, bound ${time(bound)}`;
  const { beyond } = reachWords(
    work,
    tripsOfSchedule(work, layout.instance, schedule),
    reachOfBench(work.bench),
  );
  return [
    'Best places together with the method',
    `  cycle ${time(period)}, a unit ${time(unitTime)}, ${saved}${known}`,
    ...wrapped(
      `${words} Chosen from ${spots} spots, 100 mm apart, within reach of everybody the bench is laid out for.`,
      '  ',
    ),
    ...moved.map(
      ({ name, from, to }) =>
        `  ${name}: ${from === undefined ? 'had no position' : `from ${at(from)}`} to ${at(to)}`,
    ),
    ...beyond.flatMap(({ sentence }) => wrapped(sentence, '  ')),
    ...wrapped(
      'Positions are across from the middle and deep from the near edge. A hint, no limit for a person: try it with those who work there; local rules and qualified people decide.',
      '  ',
    ),
  ];
}

function at({ x, y }: { readonly x: number; readonly y: number }): string {
  return `${numberText(x, 0)}, ${numberText(y, 0)} mm`;
}

export function layoutJson({ work, moved, schedule, bound, proven, words, spots }: LayoutTold): unknown {
  const unitTime = schedule.period / work.unitsPerCycle;
  return { work, moved, period: schedule.period, unitTime, bound, proven, words, spots };
}
