import { type Finding, type FindingPlace, finding } from '../../ground/findings/index.ts';
import { numberText } from '../../ground/units/index.ts';

/** The range of a number that a person gives. A bound that is left out does not bind. */
export interface Bounds {
  readonly above?: number;
  readonly least?: number;
  readonly below?: number;
  readonly most?: number;
  readonly whole?: boolean;
}

/** What can be measured, counted or paid ends here; closer to 0 than one part of it, a number is a slip. */
export const largest = 1e15;
const smallest = 1e-12;

/**
 * A finding when a number that a person gave lies outside its bounds or is no number.
 * @param what the name of the number as the subject of a sentence, such as “The cost of the change”
 */
export function boundsFault(
  what: string,
  value: number,
  bounds: Bounds,
  where: FindingPlace = {},
): Finding | undefined {
  const { above, least, below, most, whole } = bounds;
  const inside =
    Math.abs(value) <= largest &&
    (above === undefined || (value > above && (above !== 0 || value >= smallest))) &&
    (least === undefined || value >= least) &&
    (below === undefined || value < below) &&
    (most === undefined || value <= most) &&
    (whole !== true || Number.isSafeInteger(value));
  if (inside) return undefined;
  return finding('evaluate/number', where, { what, found: foundText(value), range: boundsText(bounds) });
}

/** The first of several findings. */
export function firstOf(...faults: readonly (Finding | undefined)[]): Finding | undefined {
  return faults.find((fault) => fault !== undefined);
}

/** A number with as many decimals as it needs, six at most. */
export function shortText(value: number): string {
  const text = numberText(value, 6);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** What a person gave, also when it is no number. */
export function foundText(value: number): string {
  if (Number.isNaN(value)) return 'something that is no number';
  if (Math.abs(value) > largest) return 'a number beyond all measure';
  return value !== 0 && Math.abs(value) < 1e-6 ? 'a number next to 0' : shortText(value);
}

function boundsText({ above, least, below, most, whole }: Bounds): string {
  const parts = [
    above === undefined ? undefined : `above ${shortText(above)}`,
    least === undefined ? undefined : `of at least ${shortText(least)}`,
    below === undefined ? undefined : `below ${shortText(below)}`,
    most === undefined ? undefined : `at most ${shortText(most)}`,
  ].filter((part) => part !== undefined);
  const kind = whole === true ? 'a whole number' : 'a number';
  return parts.length === 0 ? kind : `${kind} ${parts.join(' and ')}`;
}
