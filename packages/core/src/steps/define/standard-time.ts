import { fail, ok, type Result } from '../../ground/base/index.ts';
import { type Finding, finding } from '../../ground/findings/index.ts';
import { type AllowanceConvention, allowanceFactor, allowanceFault, conventionWords } from './allowances.ts';
import { firstFault, rangeFault } from './inputs.ts';
import { roundedDown } from './rounding.ts';

/** An element of the work with its basic time. All times of a study are in one unit. */
export interface TimedElement {
  readonly name: string;
  /**
   * `worker`: paced by the worker and rated; `process`: paced by the machine, never rated;
   * `inside`: work of the worker while the machine runs.
   */
  readonly work: 'worker' | 'process' | 'inside';
  /** Basic time of one occurrence (of a process element its observed time); above 0. */
  readonly basic: number;
  /** Occurrences in a cycle, above 0; 1 when left out, 1/n for an element of every n-th cycle. */
  readonly frequency?: number | undefined;
  /** Relaxation of this element alone, in the convention of the plan, instead of that of the plan. */
  readonly relaxation?: number | undefined;
}

/** Allowances as shares, all in one convention, which is named on every result. */
export interface AllowancePlan {
  readonly convention: AllowanceConvention;
  /** On the work of the worker, outside and inside. */
  readonly worker: number;
  /** On machine-paced time; often 0. */
  readonly process: number;
  /** Put on top of the sum with its relaxation: a share of it, in either convention. */
  readonly contingency: number;
}

export interface StandardElement extends TimedElement {
  /** Basic time in one cycle: basic · frequency. */
  readonly perCycle: number;
  /** What the allowance multiplies it with; 1 or more. */
  readonly factor: number;
  /** perCycle · factor, without contingency. */
  readonly standard: number;
}

export interface StandardTime {
  readonly elements: readonly StandardElement[];
  /** Basic time of the cycle without any allowance: outside work, and the longer of machine and inside work. */
  readonly basic: number;
  /** With relaxation and process allowance, without contingency. */
  readonly relaxed: number;
  readonly contingency: number;
  readonly standard: number;
  /** Outside work, machine and inside work with their allowances, in one cycle. */
  readonly parts: { readonly worker: number; readonly process: number; readonly inside: number };
  readonly convention: AllowanceConvention;
  readonly words: string;
  readonly notes: readonly Finding[];
}

/**
 * Standard time of a cycle: (outside work · its allowance + the longer of machine time · its allowance and inside work ·
 * its allowance) · (1 + contingency). The worker–machine form is that of Groover (from memory), the rest after the ILO.
 */
export function standardTime(
  elements: readonly TimedElement[],
  plan: AllowancePlan,
): Result<StandardTime, Finding> {
  const fault = planFault(plan) ?? elementsFault(elements);
  if (fault !== undefined) return fail(fault);
  const rows: StandardElement[] = [];
  for (const element of elements) {
    const factor = factorOf(element, plan);
    if (!factor.ok) return factor;
    const perCycle = element.basic * (element.frequency ?? 1);
    rows.push({ ...element, perCycle, factor: factor.value, standard: perCycle * factor.value });
  }
  const parts = partsOf(rows, ({ standard }) => standard);
  const relaxed = parts.worker + Math.max(parts.process, parts.inside);
  const basicParts = partsOf(rows, ({ perCycle }) => perCycle);
  const contingency = relaxed * plan.contingency;
  return ok({
    elements: rows,
    basic: basicParts.worker + Math.max(basicParts.process, basicParts.inside),
    relaxed,
    contingency,
    standard: relaxed + contingency,
    parts,
    convention: plan.convention,
    words: `The allowance is ${conventionWords[plan.convention]}.`,
    notes: parts.inside > parts.process ? [finding('define/inside-longer')] : [],
  });
}

function partsOf(
  rows: readonly StandardElement[],
  timeOf: (row: StandardElement) => number,
): StandardTime['parts'] {
  const sum = (work: TimedElement['work']) =>
    rows.filter((row) => row.work === work).reduce((total, row) => total + timeOf(row), 0);
  return { worker: sum('worker'), process: sum('process'), inside: sum('inside') };
}

function factorOf({ work, relaxation }: TimedElement, plan: AllowancePlan): Result<number, Finding> {
  const share = relaxation ?? (work === 'process' ? plan.process : plan.worker);
  return allowanceFactor({ share, convention: plan.convention });
}

/** A finding when the allowances of a plan cannot be given. */
export function planFault({ convention, worker, process, contingency }: AllowancePlan): Finding | undefined {
  return firstFault(
    allowanceFault({ share: worker, convention }, 'The allowance of the worker'),
    allowanceFault({ share: process, convention }, 'The allowance on machine time'),
    rangeFault('The contingency', contingency, { least: 0, below: 1 }),
  );
}

function elementsFault(elements: readonly TimedElement[]): Finding | undefined {
  if (elements.length === 0) return finding('define/no-elements');
  return firstFault(
    ...elements.flatMap(({ name, basic, frequency = 1 }) => [
      rangeFault(`The time of “${name}”`, basic, { above: 0 }),
      rangeFault(`The frequency of “${name}” in a cycle`, frequency, { above: 0, most: 1e6 }),
    ]),
    insideFault(elements),
  );
}

/** Work cannot be inside a run that is not there. */
export function insideFault(elements: readonly Pick<TimedElement, 'name' | 'work'>[]): Finding | undefined {
  const inside = elements.find(({ work }) => work === 'inside');
  const runs = elements.some(({ work }) => work === 'process');
  return inside === undefined || runs
    ? undefined
    : finding('define/no-process', {}, { element: inside.name });
}

export interface Output {
  /** Pieces in the time, with their fraction. */
  readonly rate: number;
  /** Whole pieces that fit into the time: rounded down. */
  readonly whole: number;
}

/**
 * Output in a time at the standard: pieces an hour when the time is an hour in the unit of the standard.
 * @param piecesPerCycle above 0
 */
export function outputIn(time: number, standard: number, piecesPerCycle = 1): Result<Output, Finding> {
  const fault = firstFault(
    rangeFault('The time', time, { above: 0 }),
    rangeFault('The standard time', standard, { above: 0 }),
    rangeFault('The number of pieces in a cycle', piecesPerCycle, { above: 0 }),
  );
  if (fault !== undefined) return fail(fault);
  const cycles = time / standard;
  const rate = cycles * piecesPerCycle;
  return ok({ rate, whole: roundedDown(rate) });
}
