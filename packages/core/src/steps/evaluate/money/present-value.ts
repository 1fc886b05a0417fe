import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { boundsFault, firstOf } from '../inputs.ts';

/** What a change costs at once, what each year brings, and the yearly rate at which later money counts less. */
export interface Investment {
  /** 0 or more, paid at the start. */
  readonly cost: number;
  /** One for each year, at least one; a year may bring a loss. */
  readonly flows: readonly number[];
}

/** Highest yearly rate that is taken; a rate of 8 % is 0.08. */
const highestRate = 10;
const mostYears = 100;

/** Net present value: −cost + Σ flow(year) ÷ (1 + rate)^year, each flow at the end of its year. */
export function netPresentValue(investment: Investment, rate: number): Result<number, Finding> {
  const fault = firstOf(investmentFault(investment), rateFault(rate));
  if (fault !== undefined) return fail(fault);
  return ok(discounted(investment.flows, rate).reduce((sum, flow) => sum + flow, -investment.cost));
}

/** What 1 at the end of each of so many years is worth at the start: (1 − (1 + rate)^−years) ÷ rate; years at a rate of 0. */
export function annuityFactor(rate: number, years: number): Result<number, Finding> {
  const fault = firstOf(
    rateFault(rate),
    boundsFault('The number of years', years, { least: 1, most: mostYears, whole: true }),
  );
  if (fault !== undefined) return fail(fault);
  return ok(rate === 0 ? years : -Math.expm1(-years * Math.log1p(rate)) / rate);
}

/** Each flow as it counts at the start, when it comes at the end of its year. */
export function discounted(flows: readonly number[], rate: number): readonly number[] {
  return flows.map((flow, index) => flow / (1 + rate) ** (index + 1));
}

export function rateFault(rate: number): Finding | undefined {
  return boundsFault('The yearly rate of discount, as a share', rate, { least: 0, most: highestRate });
}

export function investmentFault({ cost, flows }: Investment): Finding | undefined {
  if (flows.length === 0) return finding('evaluate/no-years');
  return firstOf(
    boundsFault('The cost of the change', cost, { least: 0 }),
    boundsFault('The number of years', flows.length, { least: 1, most: mostYears, whole: true }),
    ...flows.map((flow, index) => boundsFault(`The saving of year ${index + 1}`, flow, {})),
  );
}
