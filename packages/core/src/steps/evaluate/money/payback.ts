import { fail, ok, type Result } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import { numberText } from '../../../ground/units/index.ts';
import { boundsFault, firstOf } from '../inputs.ts';
import { discounted, type Investment, investmentFault, rateFault } from './present-value.ts';

export interface Payback {
  /** Years until the cost is recovered for the first time, fractions allowed; undefined when it is not in the years given. */
  readonly years: number | undefined;
  /** What is still missing at the end of the last year; 0 when the cost is recovered. */
  readonly missing: number;
  /** Does a later year bring a loss that leaves part of the cost open again? */
  readonly lostAgain: boolean;
  readonly words: string;
}

/** Years until yearly savings add up to the cost, in a straight line within the year in which they do. */
export function payback(investment: Investment): Result<Payback, Finding> {
  const fault = investmentFault(investment);
  return fault === undefined ? ok(recovery(investment, 'payback')) : fail(fault);
}

/** The same with each year's saving discounted to the start, taken at the end of its year. */
export function discountedPayback(investment: Investment, rate: number): Result<Payback, Finding> {
  const fault = firstOf(investmentFault(investment), rateFault(rate));
  if (fault !== undefined) return fail(fault);
  return ok(
    recovery({ ...investment, flows: discounted(investment.flows, rate) }, 'payback on discounted savings'),
  );
}

/** Cost ÷ saving a year, when every year brings the same; the saving is above 0. */
export function evenPayback(cost: number, savingAYear: number): Result<number, Finding> {
  const fault = firstOf(
    boundsFault('The cost of the change', cost, { least: 0 }),
    boundsFault('The saving a year', savingAYear, { above: 0 }),
  );
  return fault === undefined ? ok(cost / savingAYear) : fail(fault);
}

function recovery({ cost, flows }: Investment, name: string): Payback {
  let open = cost;
  let years = cost === 0 ? 0 : undefined;
  let lostAgain = false;
  for (const [index, flow] of flows.entries()) {
    const left = open - flow;
    if (years === undefined && left <= roundingOf(cost)) years = index + (flow > 0 ? open / flow : 0);
    else if (years !== undefined && left > roundingOf(cost)) lostAgain = true;
    open = left;
  }
  const missing = years === undefined ? open : 0;
  return { years, missing, lostAgain, words: recoveryWords(years, flows.length, lostAgain, name) };
}

/** Flows that add up to the cost in decimals may miss it by the machine's rounding. */
function roundingOf(cost: number): number {
  return cost * 1e-12;
}

function recoveryWords(years: number | undefined, counted: number, lostAgain: boolean, name: string): string {
  if (years === undefined) return `No ${name} within ${counted === 1 ? 'one year' : `${counted} years`}.`;
  const later = lostAgain ? ' A later year brings a loss that leaves part of the cost open again.' : '';
  return `The ${name} takes ${numberText(years, 2)} years.${later}`;
}
