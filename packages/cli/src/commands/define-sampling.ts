import {
  type Assurance,
  type ObservationsNeeded,
  observationsNeeded,
  observationTimes,
  type SampledDay,
  type ShareChart,
  type SharePrecision,
  type ShareSeen,
  shareSeen,
} from '@evenhand/core/define';
import { fail, type Micros, micros, ok, type Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import { badUse, type Call, type Command } from '../command.ts';
import { exitCode } from '../io.ts';
import { failWith, outJson, say } from '../report.ts';
import { samplingText } from './define-sampling-text.ts';
import {
  chartOf,
  readDaily,
  readSampledWork,
  type SampledPiece,
  sampledPiece,
  samplingWorkOptions,
  type WorkAsked,
} from './define-sampling-work.ts';
import { momentText, readShifts, type ShiftPlan } from './define-shifts.ts';
import { precisionDefault, readConfidence, readNumber, readPercent, readWhole } from './define-words.ts';

export const defineSampling: Command = {
  words: ['define', 'sampling'],
  summary: 'work sampling: how many observations, how sure a share is, and when to look',
  operands: [],
  options: {
    share: { value: 'PERCENT', help: 'share that is expected, for the number of observations' },
    precision: { value: 'PERCENT', help: 'wanted; left out, 5' },
    of: {
      value: 'WHAT',
      help: 'whole (points: 30 ± 5 %) or share (a part of the share itself); left out, whole',
    },
    confidence: { value: 'PERCENT', help: 'left out, 95' },
    multiplier: { value: 'N', help: 'of the standard error, such as 2, instead of a confidence' },
    seen: { value: 'N', help: 'how often it was seen, for the share and its interval' },
    count: { value: 'N', help: 'in how many observations' },
    ...samplingWorkOptions,
    shifts: { value: 'LIST', help: 'such as 06:00-14:00,14:00-22:00: draw random times in them' },
    breaks: { value: 'LIST', help: 'such as 09:00-09:15,12:00-12:30: no observation falls there' },
    days: { value: 'N', help: 'on how many days the shifts are worked; left out, 1' },
    times: { value: 'N', help: 'how many times to draw; left out, as many as are needed' },
    step: { value: 'MINUTES', help: 'between moments at which an observation may fall; left out, 1' },
    seed: { value: 'N', help: 'whole number: the same seed draws the same times; needed with shifts' },
    json: { help: 'print the result as JSON' },
  },
  example:
    'evenhand define sampling --share 30 --precision 5 --shifts 06:00-14:00 --breaks 10:00-10:15 --days 5 --seed 7',
  notes: [
    'What is sampled are states of the work and of machines. It says nothing about a person.',
    'A shift that ends before it begins runs over midnight.',
  ],
  run: async (call, io) => {
    const json = call.flag('json');
    const asked = readAsked(call);
    if (!asked.ok) return failWith(io, json, [badUse(asked.error, defineSampling.example)]);
    const told = compute(asked.value);
    if (!told.ok) return failWith(io, json, [told.error]);
    const notes = told.value.seen?.notes ?? [];
    say(io, notes);
    if (json)
      await outJson(io, { ok: true, figure: 'sampling', ...samplingJson(asked.value, told.value), notes });
    else await io.out(samplingText(asked.value, told.value));
    return exitCode.done;
  },
};

export interface SamplingAsked {
  readonly assurance: Assurance;
  readonly precision: SharePrecision;
  readonly share: number | undefined;
  readonly seen: { readonly times: number; readonly count: number } | undefined;
  readonly plan: (ShiftPlan & { readonly seed: number; readonly step: Micros }) | undefined;
  readonly times: number | undefined;
  readonly daily: readonly SampledDay[] | undefined;
  readonly work: WorkAsked | undefined;
}

export interface SamplingTold {
  readonly needed: ObservationsNeeded | undefined;
  readonly seen: ShareSeen | undefined;
  readonly chart: ShareChart | undefined;
  readonly piece: SampledPiece | undefined;
  readonly moments: readonly Micros[] | undefined;
}

function readAsked(call: Call): Result<SamplingAsked, string> {
  const shareText = call.text('share');
  const share = shareText === undefined ? ok(undefined) : readPercent('share', shareText);
  if (!share.ok) return share;
  const wish = readWish(call);
  if (!wish.ok) return wish;
  const daily = readDaily(call.text('daily'));
  if (!daily.ok) return daily;
  const work = readSampledWork(call);
  if (!work.ok) return work;
  const seen = readSeen(call, daily.value);
  if (!seen.ok) return seen;
  const plan = readPlan(call);
  if (!plan.ok) return plan;
  const timesText = call.text('times');
  const times = timesText === undefined ? ok(undefined) : readWhole('times', timesText);
  if (!times.ok) return times;
  if (plan.value !== undefined && share.value === undefined && times.value === undefined) {
    return fail('Say how many times to draw: --times N, or --share PERCENT from which the number follows.');
  }
  if (work.value !== undefined && share.value === undefined && seen.value === undefined) {
    return fail(
      'The standard time of a piece needs the share: --seen N with --count N, --daily LIST, or --share PERCENT.',
    );
  }
  if (plan.value === undefined && share.value === undefined && seen.value === undefined) {
    return fail(
      'Say what is wanted: --share PERCENT, --seen N with --count N, --daily LIST, or --shifts LIST.',
    );
  }
  return ok({
    ...wish.value,
    share: share.value,
    seen: seen.value,
    plan: plan.value,
    times: times.value,
    daily: daily.value,
    work: work.value,
  });
}

function readWish(call: Call): Result<Pick<SamplingAsked, 'assurance' | 'precision'>, string> {
  const [confidenceText, multiplierText] = [call.text('confidence'), call.text('multiplier')];
  if (confidenceText !== undefined && multiplierText !== undefined) {
    return fail('--confidence and --multiplier are two ways to say one thing; give one.');
  }
  const amount = readPercent('precision', call.text('precision') ?? String(100 * precisionDefault));
  if (!amount.ok) return amount;
  const of = call.text('of') ?? 'whole';
  if (of !== 'whole' && of !== 'share') return fail(`--of ${of} is not known; it can be whole or share.`);
  const precision = { kind: of === 'whole' ? 'of-the-whole' : 'of-the-share', amount: amount.value } as const;
  if (multiplierText !== undefined) {
    const multiplier = readNumber('multiplier', multiplierText);
    if (!multiplier.ok) return multiplier;
    return ok({ precision, assurance: { kind: 'multiplier', multiplier: multiplier.value } });
  }
  const confidence = readConfidence(confidenceText);
  if (!confidence.ok) return confidence;
  return ok({ precision, assurance: { kind: 'confidence', confidence: confidence.value } });
}

function readSeen(
  call: Call,
  daily: readonly SampledDay[] | undefined,
): Result<SamplingAsked['seen'], string> {
  const [seen, count] = [call.text('seen'), call.text('count')];
  if (daily !== undefined) {
    const sum = (of: 'seen' | 'count') => daily.reduce((total, day) => total + day[of], 0);
    return seen === undefined && count === undefined
      ? ok({ times: sum('seen'), count: sum('count') })
      : fail('--daily and --seen with --count are two ways to say one thing; give one.');
  }
  if (seen === undefined && count === undefined) return ok(undefined);
  if (seen === undefined || count === undefined)
    return fail('--seen and --count belong together: give both.');
  const [times, all] = [readWhole('seen', seen), readWhole('count', count)];
  if (!times.ok) return times;
  return all.ok ? ok({ times: times.value, count: all.value }) : all;
}

function readPlan(call: Call): Result<SamplingAsked['plan'], string> {
  const [shifts, seedText] = [call.text('shifts'), call.text('seed')];
  const lone = ['breaks', 'days', 'times', 'step', 'seed'].find((option) => call.text(option) !== undefined);
  if (shifts === undefined) {
    return lone === undefined ? ok(undefined) : fail(`--${lone} is for drawing times; give --shifts too.`);
  }
  if (seedText === undefined)
    return fail('--shifts needs --seed N, so that the same times can be drawn again.');
  const seed = readWhole('seed', seedText);
  if (!seed.ok) return seed;
  const days = readWhole('days', call.text('days') ?? '1');
  if (!days.ok) return days;
  if (days.value < 1 || days.value > 366) return fail(`--days ${days.value} is not between 1 and 366.`);
  const minutes = readNumber('step', call.text('step') ?? '1');
  if (!minutes.ok) return minutes;
  const plan = readShifts(shifts, call.text('breaks') ?? '', days.value);
  if (!plan.ok) return plan;
  return ok({ ...plan.value, seed: seed.value, step: micros(Math.round(minutes.value * 60e6)) });
}

function compute(asked: SamplingAsked): Result<SamplingTold, Finding> {
  const { assurance, precision, share, seen, daily, work } = asked;
  const needed = share === undefined ? ok(undefined) : observationsNeeded(share, precision, assurance);
  if (!needed.ok) return needed;
  const found = seen === undefined ? ok(undefined) : shareSeen(seen.times, seen.count, assurance);
  if (!found.ok) return found;
  const chart = chartOf(daily);
  if (!chart.ok) return chart;
  const worked = found.value?.share ?? share;
  const piece =
    work === undefined || worked === undefined ? ok(undefined) : sampledPiece(work, worked, found.value);
  if (!piece.ok) return piece;
  const moments = drawn(asked, needed.value);
  return moments.ok
    ? ok({
        needed: needed.value,
        seen: found.value,
        chart: chart.value,
        piece: piece.value,
        moments: moments.value,
      })
    : moments;
}

function drawn(
  { plan, times }: SamplingAsked,
  needed: ObservationsNeeded | undefined,
): Result<readonly Micros[] | undefined, Finding> {
  const count = times ?? needed?.needed ?? 0;
  return plan === undefined
    ? ok(undefined)
    : observationTimes(plan.shifts, { count, step: plan.step, seed: plan.seed });
}

function samplingJson(
  { assurance, precision, share, seen, plan }: SamplingAsked,
  told: SamplingTold,
): object {
  return {
    assurance,
    precision,
    needed: told.needed === undefined ? undefined : { share, ...told.needed },
    seen: told.seen === undefined ? undefined : { ...seen, ...told.seen, notes: undefined },
    chart: told.chart,
    piece: told.piece,
    seed: plan?.seed,
    times: told.moments?.map(momentText),
  };
}
