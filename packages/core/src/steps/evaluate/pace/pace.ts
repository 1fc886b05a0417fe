import type { Finding } from '../../../ground/findings/index.ts';
import { type Interval, sampleOf } from '../../../ground/numerics/index.ts';
import type { MethodReading } from '../../examine/index.ts';
import { meanDifference } from '../difference/welch.ts';
import { type Saving, savingOf } from '../saving.ts';
import { paceNotes } from './pace-notes.ts';
import { pacedTime, workedTime } from './paced-time.ts';
import { type SharedMotion, sharedMotions, sharedMotionsRule } from './shared-motions.ts';

export const equalPaceRule =
  `${sharedMotionsRule} Each cycle gives one figure: the mean logarithm of the lengths of its shared motions against what is usual for each, weighted by the time they take. ` +
  'The pace ratio is the difference of these figures between the two methods, with Welch’s interval over cycles, so that motions of one cycle do not count as independent. ' +
  'At equal pace, the time of the new method in which at least one hand works is divided by the ratio; time in which neither works stays as it is. ' +
  'This supposes that the whole work ran at the pace of its shared motions.';

/** A shared motion with its lengths in both methods, microseconds for one. */
export interface PacedMotion extends SharedMotion {
  readonly meanBefore: number;
  readonly meanAfter: number;
  /** Ratio of the geometric means, after ÷ before. */
  readonly ratio: number;
  /** By Welch over cycles; undefined with one cycle or without spread. */
  readonly interval: Interval | undefined;
  /** Its share in the weight of all, 0 to 1. */
  readonly weight: number;
}

export interface EqualPace {
  readonly motions: readonly PacedMotion[];
  /** Share of the worked hand time of the method after that its shared motions fill, 0 to 1. */
  readonly share: number;
  /** Time of the same motions after ÷ before; below 1 the method after ran faster. Undefined without a shared motion. */
  readonly ratio: number | undefined;
  readonly interval: Interval | undefined;
  /** Lowest and highest ratio when one of the motions is left out; undefined with fewer than two. */
  readonly withoutOne: { readonly low: number; readonly high: number } | undefined;
  /** Share of the cycle of the method after in which at least one hand works, 0 to 1. */
  readonly paced: number;
  readonly raw: Saving;
  readonly equal: SavingAtEqualPace | undefined;
  /** Share of the time saved that pace explains; below 0 where slower work hides some. Undefined when nothing is saved. */
  readonly explained: number | undefined;
  readonly notes: readonly Finding[];
  readonly rule: string;
}

export interface SavingAtEqualPace {
  /** Time for a unit that the method after would take at the pace of the method before, microseconds. */
  readonly after: number;
  readonly saving: Saving;
  /** Interval of the share of time saved; undefined with one cycle or without spread. */
  readonly timeSaved: Interval | undefined;
}

/**
 * Is it the method, or did the work only run faster? Compares the motions that both methods share and gives the saving
 * that is left at the pace of the method before. It compares two recordings and says nothing about a person.
 * @param confidence above 0.5 and below 1
 */
export function paceOf(before: MethodReading, after: MethodReading, confidence = 0.95): EqualPace {
  const motions = pacedMotions(sharedMotions(before, after), confidence);
  const unit = { before: unitTimes(before), after: unitTimes(after) };
  const means = { before: sampleOf(unit.before).mean, after: sampleOf(unit.after).mean };
  const raw = savingOf(means.before, means.after);
  const paced = pacedTime(after) / unitsOf(after) / means.after;
  const figures = cycleFigures(motions);
  const found = figures === undefined ? undefined : ratioOf(figures, confidence);
  const equal =
    figures === undefined || found === undefined
      ? undefined
      : equalSaving({ unit, means, paced, figures, ratio: found.ratio, confidence });
  const pace = {
    motions,
    share: sharedShare(motions, after),
    ratio: found?.ratio,
    interval: found?.interval,
    withoutOne: withoutOne(motions),
    paced,
    raw,
    equal,
    explained: explainedBy(raw, equal),
    rule: equalPaceRule,
  };
  return { ...pace, notes: paceNotes(pace, before.method.name, after.method.name) };
}

function unitsOf({ cycles, method }: MethodReading): number {
  return cycles.length * method.unitsPerCycle;
}

function sharedShare(motions: readonly PacedMotion[], after: MethodReading): number {
  const worked = workedTime(after) / unitsOf(after);
  const shared = motions.reduce((sum, motion) => sum + motion.after.handTime, 0);
  return worked > 0 ? Math.min(1, shared / worked) : 0;
}

function explainedBy(raw: Saving, equal: SavingAtEqualPace | undefined): number | undefined {
  if (equal === undefined || raw.timeSaved <= 0) return undefined;
  return (raw.timeSaved - equal.saving.timeSaved) / raw.timeSaved;
}

/** Time for one unit in each cycle, microseconds, not always whole. */
export function unitTimes({ cycles, method }: MethodReading): number[] {
  return cycles.map(({ duration }) => duration / method.unitsPerCycle);
}

function pacedMotions(shared: readonly SharedMotion[], confidence: number): PacedMotion[] {
  const total = shared.reduce((sum, motion) => sum + weightOf(motion), 0);
  return shared.map((motion) => {
    const [first, second] = [motion.before, motion.after].map(({ perCycle }) => known(perCycle)) as [
      number[],
      number[],
    ];
    const logs = [first, second].map((times) => sampleOf(times.map(Math.log)));
    const [before, after] = logs as [(typeof logs)[number], (typeof logs)[number]];
    return {
      ...motion,
      meanBefore: sampleOf(first).mean,
      meanAfter: sampleOf(second).mean,
      ratio: Math.exp(after.mean - before.mean),
      interval: exponential(meanDifference(after, before, confidence)?.interval),
      weight: weightOf(motion) / total,
    };
  });
}

function weightOf({ before, after }: SharedMotion): number {
  return (before.handTime + after.handTime) / 2;
}

function known(perCycle: readonly (number | undefined)[]): number[] {
  return perCycle.filter((time) => time !== undefined);
}

/** One figure for each cycle: how much longer its shared motions took than usual, as a logarithm; undefined without one. */
interface CycleFigures {
  readonly before: readonly (number | undefined)[];
  readonly after: readonly (number | undefined)[];
}

function cycleFigures(motions: readonly PacedMotion[]): CycleFigures | undefined {
  if (motions.length === 0) return undefined;
  const usual = motions.map(({ before, after }) => {
    const [first, second] = [before, after].map(({ perCycle }) => known(perCycle).map(Math.log));
    return (sampleOf(first ?? []).mean + sampleOf(second ?? []).mean) / 2;
  });
  const figuresOf = (side: 'before' | 'after') => {
    const cycles = motions[0]?.[side].perCycle.length ?? 0;
    return Array.from({ length: cycles }, (_, cycle) => {
      let [sum, weights] = [0, 0];
      motions.forEach((motion, index) => {
        const time = motion[side].perCycle[cycle];
        if (time === undefined) return;
        sum += motion.weight * (Math.log(time) - (usual[index] ?? 0));
        weights += motion.weight;
      });
      return weights > 0 ? sum / weights : undefined;
    });
  };
  return { before: figuresOf('before'), after: figuresOf('after') };
}

function ratioOf(figures: CycleFigures, confidence: number) {
  const [before, after] = [sampleOf(known(figures.before)), sampleOf(known(figures.after))];
  return {
    ratio: Math.exp(after.mean - before.mean),
    interval: exponential(meanDifference(after, before, confidence)?.interval),
  };
}

function withoutOne(motions: readonly PacedMotion[]): EqualPace['withoutOne'] {
  if (motions.length < 2) return undefined;
  const ratios = motions.flatMap((_, left) => {
    const figures = cycleFigures(motions.filter((_, index) => index !== left));
    return figures === undefined ? [] : [ratioOf(figures, 0.95).ratio];
  });
  return { low: Math.min(...ratios), high: Math.max(...ratios) };
}

interface EqualWish {
  readonly unit: { readonly before: readonly number[]; readonly after: readonly number[] };
  readonly means: { readonly before: number; readonly after: number };
  readonly paced: number;
  readonly figures: CycleFigures;
  readonly ratio: number;
  readonly confidence: number;
}

/**
 * The interval comes from one figure for each cycle, log time − share · pace, because time and pace of a cycle vary
 * together; share is the part of the time at equal pace that follows the pace.
 */
function equalSaving(wish: EqualWish): SavingAtEqualPace {
  const { unit, means, paced, figures, ratio, confidence } = wish;
  const worked = (means.after * paced) / ratio;
  const after = worked + means.after * (1 - paced);
  const follows = after > 0 ? worked / after : 0;
  const adjusted = (times: readonly number[], pace: readonly (number | undefined)[]) =>
    sampleOf(
      times.flatMap((time, cycle) => {
        const figure = pace[cycle];
        return figure === undefined ? [] : [Math.log(time) - follows * figure];
      }),
    );
  const found = meanDifference(
    adjusted(unit.after, figures.after),
    adjusted(unit.before, figures.before),
    confidence,
  );
  const saving = savingOf(means.before, after);
  if (found === undefined) return { after, saving, timeSaved: undefined };
  const half = (found.interval.high - found.interval.low) / 2;
  const [low, high] = [(after / means.before) * Math.exp(-half), (after / means.before) * Math.exp(half)];
  return { after, saving, timeSaved: { low: 1 - high, high: 1 - low, confidence } };
}

function exponential(interval: Interval | undefined): Interval | undefined {
  if (interval === undefined) return undefined;
  return { ...interval, low: Math.exp(interval.low), high: Math.exp(interval.high) };
}
