import { numberText } from '../units/index.ts';
import type { FindingCode } from './catalogue.ts';
import { type Finding, type FindingPlace, finding } from './finding.ts';

/** The range of a number that a person gives. A bound that is left out does not bind. */
export interface NumberRange {
  readonly above?: number;
  readonly least?: number;
  readonly below?: number;
  readonly most?: number;
  readonly whole?: boolean;
}

/** What can be measured, counted or paid ends here; beyond it, or closer to 0 than one part of it, a number is a slip. */
export const largest = 1e15;
export const smallest = 1e-12;

/**
 * A finding when a number that a person gave lies outside its range or is no number.
 * @param code of the step that asks; its text has the words what, found and range
 * @param what the name of the number as the subject of a sentence, such as “The confidence”
 */
export function rangeFault(
  code: Extract<FindingCode, `${string}/number`>,
  what: string,
  value: number,
  range: NumberRange,
  where: FindingPlace = {},
): Finding | undefined {
  const { above, least, below, most, whole } = range;
  const outside =
    !(Math.abs(value) <= largest) ||
    (above === 0 && value < smallest) ||
    (above !== undefined && value <= above) ||
    (least !== undefined && value < least) ||
    (below !== undefined && value >= below) ||
    (most !== undefined && value > most) ||
    (whole === true && !Number.isSafeInteger(value));
  if (!outside) return undefined;
  return finding(code, where, { what, found: foundText(value), range: rangeText(range) });
}

/** The first of several findings. */
export function firstFault(...faults: readonly (Finding | undefined)[]): Finding | undefined {
  return faults.find((fault) => fault !== undefined);
}

/** A number with as many decimals as it needs, six at most. */
export function shortNumber(value: number): string {
  const text = numberText(value, 6);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** What a person gave, also when it is no number. */
export function foundText(value: number): string {
  if (Number.isNaN(value)) return 'something that is no number';
  if (Math.abs(value) > largest) return 'a number beyond all measure';
  return value !== 0 && Math.abs(value) < 1e-6 ? 'a number next to 0' : shortNumber(value);
}

function rangeText({ above, least, below, most, whole }: NumberRange): string {
  const bounds = [
    above === undefined ? undefined : `above ${shortNumber(above)}`,
    least === undefined ? undefined : `of at least ${shortNumber(least)}`,
    below === undefined ? undefined : `below ${shortNumber(below)}`,
    most === undefined ? undefined : `at most ${shortNumber(most)}`,
  ].filter((bound) => bound !== undefined);
  return `${whole === true ? 'a whole number' : 'a number'}${bounds.length > 0 ? ` ${bounds.join(' and ')}` : ''}`;
}
