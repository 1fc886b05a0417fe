import { ok, type Result } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import type { Comparison, MoneyCase, Study } from '../../../ground/study/index.ts';
import type { TimeUnit } from '../../../ground/units/index.ts';
import { type CaseField, type Outlook, outlookOf, type RangedCase } from '../money/outlook.ts';
import { type Proof, proofOf } from '../proof/proof.ts';

/** A comparison of the study worked out: the same numbers for the desk, the page and the command line. */
export interface ComparisonFacts {
  readonly comparison: Comparison;
  readonly proof: Proof;
  /** Undefined when no money case was given. */
  readonly money: ComparedMoney | undefined;
}

export interface ComparedMoney {
  readonly given: MoneyCase;
  /** The case as it is reckoned with: times in microseconds for a unit. */
  readonly ranged: RangedCase;
  /** Undefined with the reason in `fault`. */
  readonly outlook: Outlook | undefined;
  readonly fault: Finding | undefined;
  /** Which saving it is, in words. */
  readonly basis: string;
}

/** Joins proof and money. A money case that cannot be reckoned takes nothing from the proof. */
export function comparisonOf(
  study: Study,
  comparison: Comparison,
  unit: TimeUnit = 'seconds',
): Result<ComparisonFacts, Finding> {
  const { before, after, proposed, confidence } = comparison;
  const proof = proofOf(study, {
    before: before.method,
    after: after.method,
    cyclesBefore: before.cycles,
    cyclesAfter: after.cycles,
    proposed,
    confidence,
    unit,
  });
  if (!proof.ok) return proof;
  const { money } = comparison;
  return ok({
    comparison,
    proof: proof.value,
    money: money === undefined ? undefined : comparedMoney(proof.value, money),
  });
}

/** A money case reckoned with the times of a proof. Much cheaper than the proof, which it leaves as it is. */
export function comparedMoney(proof: Proof, given: MoneyCase): ComparedMoney {
  const { pace, difference } = proof;
  const equal = given.basis === 'equal-pace' ? pace.equal : undefined;
  const before = difference.before.sample.mean;
  const after = equal?.after ?? difference.after.sample.mean;
  const saved = equal === undefined ? difference.timeSaved : equal.timeSaved;
  const afterRange =
    saved === undefined ? undefined : { low: before * (1 - saved.high), high: before * (1 - saved.low) };
  const { unitsAYear, hourlyCost, cost, years, discountRate, runningCost, learning } = given;
  const ranged: RangedCase = {
    likely: { before, after, unitsAYear, hourlyCost, cost, years, discountRate, runningCost, learning },
    ranges: rangesOf(given, afterRange === undefined ? undefined : around(afterRange, after)),
  };
  const outlook = outlookOf(ranged);
  return {
    given,
    ranged,
    outlook: outlook.ok ? outlook.value : undefined,
    fault: outlook.ok ? undefined : outlook.error,
    basis: basisWords(given, equal !== undefined),
  };
}

type Range = { readonly low: number; readonly high: number };

/** The interval of the logarithms may lie beside the mean of the times by a trace. */
function around({ low, high }: Range, likely: number): Range {
  return { low: Math.min(low, likely), high: Math.max(high, likely) };
}

/** The ranges that were given; the time after has that of the measured interval, unless one was given. */
function rangesOf({ ranges = {} }: MoneyCase, after: Range | undefined): RangedCase['ranges'] {
  const given = Object.fromEntries(
    Object.entries(ranges).filter(([, range]) => range !== undefined),
  ) as Partial<Record<CaseField, Range>>;
  return { ...(after === undefined || !(after.low > 0) ? {} : { after }), ...given };
}

function basisWords({ basis }: MoneyCase, equal: boolean): string {
  if (equal) return 'Reckoned with the saving at equal pace.';
  return basis === 'equal-pace'
    ? 'Reckoned with the saving as measured: the methods share no motion from which a saving at equal pace could be told.'
    : 'Reckoned with the saving as measured.';
}
