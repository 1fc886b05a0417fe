import { roundMicros } from '../../../ground/base/index.ts';
import type { Interval } from '../../../ground/numerics/index.ts';
import { countText, numberText, percentText, type TimeUnit, timeText } from '../../../ground/units/index.ts';
import { causes, type Decomposition } from '../decomposition/decomposition.ts';
import type { Difference } from '../difference/difference.ts';
import type { EqualPace } from '../pace/pace.ts';
import { materialShare } from '../pace/pace-notes.ts';
import { type Saving, savingWords } from '../saving.ts';

/** One sentence that can be copied, and what it rests on. */
export interface Claim {
  readonly sentence: string;
  /** One sentence each. */
  readonly restsOn: readonly string[];
}

export interface ClaimGrounds {
  readonly difference: Difference;
  readonly pace: EqualPace;
  readonly decomposition: Decomposition;
  /** "cycles 1–5, 7 of 7", for each method. */
  readonly cycles: { readonly before: string; readonly after: string };
  /** Invented data, which must never pass for a proof. */
  readonly demo: boolean;
  readonly unit: TimeUnit;
}

/**
 * What may be said of the two methods. Where pace explains a material part of the saving, the claim is the saving at
 * equal pace; where slower work may hide some, it stays with what was measured. Where the cycles show no difference, or
 * too few were timed, it says that.
 */
export function claimOf(grounds: ClaimGrounds): Claim {
  const { difference, pace, unit, demo } = grounds;
  const body = bodyOf(grounds);
  const { before, after } = difference;
  const head = `“${after.name}” takes ${unitTime(after.sample.mean, unit)} a unit and “${before.name}” ${unitTime(before.sample.mean, unit)}`;
  return {
    sentence: `${demo ? 'Invented data, no proof: ' : ''}${head}: ${body}${paceWords(difference, pace)}.`,
    restsOn: restsOn(grounds),
  };
}

function bodyOf({ difference, pace }: ClaimGrounds): string {
  const { verdict, saving, timeSaved, more } = difference;
  const interval = timeSaved === undefined ? '' : ` (${intervalWords(timeSaved)})`;
  if (verdict === 'unknown')
    return `${savingWords(saving)}, but how sure this is cannot be said from these cycles`;
  if (verdict === 'open') {
    const further = more?.ofEach === undefined ? '' : `; ${more.ofEach} more cycles of each could settle it`;
    return `a difference is not shown${interval}${further}`;
  }
  if (verdict === 'longer') return `${savingWords(saving)}${interval}`;
  return explainsMuch(pace) && pace.equal !== undefined
    ? equalWords(pace.equal.saving, pace.equal.timeSaved, saving)
    : `${savingWords(saving)}${interval}`;
}

/** Pace is told from chance, and explains a material part of the saving. */
function explainsMuch({ explained, interval }: EqualPace): boolean {
  return explained !== undefined && explained >= materialShare && interval !== undefined && interval.high < 1;
}

function equalWords(equal: Saving, timeSaved: Interval | undefined, raw: Saving): string {
  const measured = `of the ${percentText(raw.timeSaved)} of the time that was measured as saved, a part is faster work and not method`;
  const interval = timeSaved === undefined ? '' : ` (${intervalWords(timeSaved)})`;
  return timeSaved !== undefined && timeSaved.low > 0
    ? `at equal pace ${savingWords(equal)}${interval}; ${measured}`
    : `at equal pace a saving is not shown${interval}; ${measured}`;
}

function paceWords({ verdict }: Difference, pace: EqualPace): string {
  if (verdict !== 'shorter' || explainsMuch(pace)) return '';
  if (pace.ratio === undefined) return '; how far pace plays a part cannot be told';
  const unsure = pace.notes.some(
    ({ code }) => code === 'evaluate/pace-unsure' || code === 'evaluate/pace-unknown',
  );
  return unsure
    ? '; how far pace plays a part cannot be told from so few cycles'
    : '; by the motions that both share, faster work does not explain it';
}

function restsOn({ difference, pace, decomposition, cycles, unit }: ClaimGrounds): string[] {
  const { before, after, drawn, ratio, odds, more } = difference;
  const kept = [
    `It rests on ${cycles.before} of “${before.name}” and ${cycles.after} of “${after.name}”.`,
    ...(ratio === undefined
      ? []
      : [
          `The interval is by Welch on the logarithms of the times for a unit, with ${numberText(ratio.degrees, 1)} degrees of freedom; it supposes that cycles are independent of each other.`,
        ]),
    ...(drawn === undefined
      ? []
      : [
          `Beside it, ${drawn.draws} draws of the cycles from seed ${drawn.seed} give ${intervalWords(asSaved(drawn.ratio))}; “${after.name}” is shorter in ${percentText(drawn.shorter)} of them.`,
        ]),
    odds,
    ...(more === undefined ? [] : [more.words]),
    paceGround(pace),
    causeGround(decomposition, unit),
    'It compares these records. Another operator, another day or another batch is not in them.',
  ];
  return [...kept, ...[...difference.notes, ...pace.notes].map(({ message }) => message)];
}

function paceGround({ motions, ratio, interval, equal }: EqualPace): string {
  if (ratio === undefined || equal === undefined)
    return 'Pace: the methods share no motion that could be compared.';
  const range =
    interval === undefined
      ? ''
      : ` (${Math.round(interval.confidence * 100)} % interval ${percentText(interval.low)} to ${percentText(interval.high)})`;
  return `Pace: ${countText(motions.length, 'shared motion')} took ${percentText(ratio)}${range} of the time that they took before. At equal pace ${savingWords(equal.saving)}.`;
}

function causeGround({ totals, saved }: Decomposition, unit: TimeUnit): string {
  const parts = causes.flatMap((cause) =>
    totals[cause] === 0 ? [] : [`${cause} ${timeText(totals[cause], unit)}`],
  );
  return `Where it comes from, a unit: ${parts.join(', ') || 'nothing changed'}; together ${timeText(saved, unit)}.`;
}

function asSaved({ low, high, confidence }: Interval): Interval {
  return { low: 1 - high, high: 1 - low, confidence };
}

/** "95 % interval of the time saved 33.1 % to 39.3 %". */
function intervalWords({ low, high, confidence }: Interval): string {
  const share = Number((confidence * 100).toFixed(2));
  return `${share} % interval of the time saved ${percentText(low)} to ${percentText(high)}`;
}

function unitTime(time: number, unit: TimeUnit): string {
  return timeText(roundMicros(time), unit);
}
