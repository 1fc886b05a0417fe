import { fail, ok, type Result } from '../../ground/base/index.ts';
import { type Finding, finding } from '../../ground/findings/index.ts';
import { fShare, sampleOf } from '../../ground/numerics/index.ts';
import { countText, numberText } from '../../ground/units/index.ts';
import { largest } from './inputs.ts';
import { chanceWords, rareEnough } from './odds.ts';

/** Readings that belong together, such as those of one operator or one shift. */
export interface ReadingGroup {
  readonly name: string;
  readonly times: readonly number[];
}

interface Squares {
  readonly degrees: number;
  readonly sum: number;
  readonly mean: number;
}

/** One-way analysis of variance. */
export interface Variance {
  readonly between: Squares;
  readonly within: Squares;
  /** Mean square between over mean square within; undefined when nothing varies within the groups. */
  readonly ratio: number | undefined;
  /** Share of the cases in which chance alone gives a ratio as large, 0 to 1; undefined when nothing varies at all. */
  readonly chance: number | undefined;
  /** Share of all squares that lies between the groups, 0 to 1; undefined when nothing varies at all. */
  readonly explained: number | undefined;
  /** Standard deviation within the groups. */
  readonly deviation: number;
  readonly differs: boolean;
  readonly words: string;
}

/**
 * Do groups of readings differ by more than the readings within them? One-way analysis of variance: it takes the
 * readings as independent and spread alike in all groups. It says that groups differ, never which person is better.
 * @param groups two or more, each with one finite time or more, and more times than groups
 * @param noun what a group is, in the singular
 */
export function varianceBetween(
  groups: readonly ReadingGroup[],
  noun = 'operator',
): Result<Variance, Finding> {
  const fault = groupFault(groups, noun);
  if (fault !== undefined) return fail(fault);
  const { between, within } = squaresOf(groups);
  const total = between.sum + within.sum;
  const ratio = within.sum === 0 ? undefined : between.mean / within.mean;
  const chance = total === 0 ? undefined : ratio === undefined ? 0 : chanceOf(ratio, between, within);
  const differs = (chance ?? 1) <= rareEnough;
  return ok({
    between,
    within,
    ratio,
    chance,
    explained: total === 0 ? undefined : between.sum / total,
    deviation: Math.sqrt(within.mean),
    differs,
    words: varianceWords(countText(groups.length, noun), noun, differs, ratio, chance, between, within),
  });
}

/** Counted from the first time: readings that lie close together keep their digits however large they are. */
function squaresOf(groups: readonly ReadingGroup[]): Pick<Variance, 'between' | 'within'> {
  const origin = groups[0]?.times[0] ?? 0;
  const samples = groups.map(({ times }) => sampleOf(times.map((time) => time - origin)));
  const n = samples.reduce((sum, sample) => sum + sample.n, 0);
  const grand = samples.reduce((sum, sample) => sum + sample.n * sample.mean, 0) / n;
  const between = samples.reduce((sum, sample) => sum + sample.n * (sample.mean - grand) ** 2, 0);
  const within = samples.reduce((sum, sample) => sum + (sample.n - 1) * (sample.deviation ?? 0) ** 2, 0);
  const rows = groups.length - 1;
  const rest = n - groups.length;
  return {
    between: { degrees: rows, sum: between, mean: between / rows },
    within: { degrees: rest, sum: within, mean: within / rest },
  };
}

/** The upper share of F is the lower share of its reciprocal, which keeps the digits of a small one. */
function chanceOf(ratio: number, between: Squares, within: Squares): number {
  return ratio === 0 ? 1 : fShare(1 / ratio, within.degrees, between.degrees);
}

function groupFault(groups: readonly ReadingGroup[], noun: string): Finding | undefined {
  const empty = groups.find(({ times }) => times.length === 0);
  if (empty !== undefined) return finding('define/group-empty', {}, { group: empty.name });
  for (const { name, times } of groups) {
    const index = times.findIndex((time) => !(Math.abs(time) <= largest));
    if (index >= 0) return finding('define/group-number', {}, { group: name, place: index + 1 });
  }
  const count = groups.reduce((sum, { times }) => sum + times.length, 0);
  return groups.length < 2 || count <= groups.length ? finding('define/groups', {}, { noun }) : undefined;
}

function varianceWords(
  counted: string,
  noun: string,
  differs: boolean,
  ratio: number | undefined,
  chance: number | undefined,
  between: Squares,
  within: Squares,
): string {
  if (chance === undefined) return `All readings of the ${counted} are equal, so no difference can be seen.`;
  const test =
    ratio === undefined
      ? 'nothing varies within them'
      : `F ${ratio > 1e6 ? 'above 1,000,000' : numberText(ratio, 2)} with ${between.degrees} and ${within.degrees} degrees of freedom; chance alone gives as much ${chanceWords(chance)}`;
  return differs
    ? `The means of the ${counted} differ by more than the readings within one ${noun} explain (${test}). Look for another way of working, another place or another pace before the readings are put together; this says nothing about a person.`
    : `No difference between the ${counted} is shown (${test}). That is no proof that there is none.`;
}
