import {
  type AllowanceConvention,
  conventionWords,
  type SampledDay,
  type SampledStandard,
  type ShareChart,
  type ShareSeen,
  shareChart,
  standardFromSampling,
} from '@evenhand/core/define';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import type { Interval } from '@evenhand/core/ground/numerics';
import type { Call, OptionFacts } from '../command.ts';
import { readConvention } from './define-allowance.ts';
import { readNumber, readPercent } from './define-words.ts';

export const samplingWorkOptions: Readonly<Record<string, OptionFacts>> = {
  daily: {
    value: 'LIST',
    help: 'what was seen on each day, as "12/100; 9/96": the share of all days and a p-chart, instead of --seen and --count',
  },
  over: {
    value: 'TIME',
    help: 'time over which the observations were spread, in any unit of time: for the standard time of a piece',
  },
  pieces: { value: 'N', help: 'pieces that were finished in that time' },
  rating: { value: 'N', help: 'mean pace on the 0–100 scale; left out, 100 is taken' },
  allowance: { value: 'PERCENT', help: 'allowance on that work; left out, none' },
  'allowance-of': { value: 'WHAT', help: 'basic or shift: what the allowance is a share of' },
};

/** Work whose share was sampled, beside its share. */
export interface WorkAsked {
  readonly time: number;
  readonly pieces: number;
  /** As a share of standard; undefined when it was not rated. */
  readonly pace: number | undefined;
  readonly allowance: number;
  readonly convention: AllowanceConvention;
}

export interface SampledPiece extends SampledStandard {
  readonly rated: boolean;
  readonly allowance: number;
  /** With the sampling error of the share alone; only where the share was seen. */
  readonly interval?: Interval;
  readonly words: string;
}

/** The days of a p-chart in their order. The error is a sentence. */
export function readDaily(text: string | undefined): Result<readonly SampledDay[] | undefined, string> {
  if (text === undefined) return ok(undefined);
  const days: SampledDay[] = [];
  for (const part of text.split(/[;,]/).filter((item) => item.trim() !== '')) {
    const [, seen, count] = /^\s*(\d{1,15})\s*\/\s*(\d{1,15})\s*$/.exec(part) ?? [];
    if (seen === undefined || count === undefined)
      return fail(`--daily: “${part.trim()}” is not SEEN/COUNT, such as 12/100.`);
    days.push({ name: `day ${days.length + 1}`, seen: Number(seen), count: Number(count) });
  }
  return days.length > 0 ? ok(days) : fail('--daily names no day. Write such as "12/100; 9/96".');
}

/** The error is a sentence. */
export function readSampledWork(call: Call): Result<WorkAsked | undefined, string> {
  const given = Object.keys(samplingWorkOptions).filter(
    (option) => option !== 'daily' && call.text(option) !== undefined,
  );
  const [first] = given;
  if (first === undefined) return ok(undefined);
  const [over, made] = [call.text('over'), call.text('pieces')];
  if (over === undefined || made === undefined)
    return fail(`--${first} is for the standard time of a piece, which needs --over TIME and --pieces N.`);
  const [time, pieces] = [readNumber('over', over), readNumber('pieces', made)];
  if (!time.ok) return time;
  if (!pieces.ok) return pieces;
  const rating = call.text('rating');
  const pace = rating === undefined ? ok(undefined) : readNumber('rating', rating);
  if (!pace.ok) return pace;
  const allowance = readPercent('allowance', call.text('allowance') ?? '0');
  if (!allowance.ok) return allowance;
  const convention = readConvention('allowance-of', call.text('allowance-of'), allowance.value !== 0);
  if (!convention.ok) return convention;
  return ok({
    time: time.value,
    pieces: pieces.value,
    pace: pace.value === undefined ? undefined : pace.value / 100,
    allowance: allowance.value,
    convention: convention.value,
  });
}

export function chartOf(days: readonly SampledDay[] | undefined): Result<ShareChart | undefined, Finding> {
  return days === undefined ? ok(undefined) : shareChart(days);
}

/** The standard time of a piece from the share that was seen, or else the one that is expected. */
export function sampledPiece(
  { time, pieces, pace, allowance, convention }: WorkAsked,
  share: number,
  seen: ShareSeen | undefined,
): Result<SampledPiece, Finding> {
  const made = standardFromSampling({ time, share, pace: pace ?? 1, pieces, allowance, convention });
  if (!made.ok) return made;
  const scale = made.value.standard / share;
  const carried =
    seen === undefined
      ? 'The share was given and not seen, so there is no interval.'
      : 'The interval carries the sampling error of the share and no error of the rating.';
  return ok({
    ...made.value,
    rated: pace !== undefined,
    allowance,
    ...(seen === undefined
      ? {}
      : {
          interval: {
            low: seen.interval.low * scale,
            high: seen.interval.high * scale,
            confidence: seen.interval.confidence,
          },
        }),
    words: `Time · share · pace ÷ pieces, with the allowance: ${conventionWords[convention]}. ${carried}`,
  });
}
