import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { shortNumber } from '@evenhand/core/ground/findings';
import { plainNumber, short } from './readings/cell-text.ts';

export interface Bounds {
  readonly above?: number;
  readonly least?: number;
  readonly below?: number;
  readonly most?: number;
  readonly whole?: boolean;
}

/** Reads a number of a field; the error says what may be written. */
export function readNumber(bounds: Bounds): (text: string) => Result<number, string> {
  return (text) => {
    const value = plainNumber(text.replace(/%$/, ''));
    const { above, least, below, most, whole } = bounds;
    const outside =
      value === undefined ||
      (above !== undefined && value <= above) ||
      (least !== undefined && value < least) ||
      (below !== undefined && value >= below) ||
      (most !== undefined && value > most) ||
      (whole === true && !Number.isSafeInteger(value));
    return outside ? fail(`“${short(text.trim())}” cannot be used. Write ${boundsText(bounds)}.`) : ok(value);
  };
}

/** A percentage as a share, within bounds given in percent. */
export function readPercent(bounds: Bounds): (text: string) => Result<number, string> {
  const read = readNumber(bounds);
  return (text) => {
    const value = read(text.trim());
    // 12.3 % as a share has no more digits than were written: 12.3 / 100 is the nearest number to 0.123.
    return value.ok ? ok(value.value / 100) : value;
  };
}

/** The same, where an empty field takes the value away. */
export function orNone(
  read: (text: string) => Result<number, string>,
): (text: string) => Result<number | null, string> {
  return (text) => (text.trim() === '' ? ok(null) : read(text));
}

export function boundsText({ above, least, below, most, whole }: Bounds): string {
  const parts = [
    above === undefined ? undefined : `above ${shortNumber(above)}`,
    least === undefined ? undefined : `from ${shortNumber(least)}`,
    below === undefined ? undefined : `below ${shortNumber(below)}`,
    most === undefined ? undefined : `up to ${shortNumber(most)}`,
  ].filter((part) => part !== undefined);
  return `${whole === true ? 'a whole number' : 'a number'}${parts.length === 0 ? '' : ` ${parts.join(' and ')}`}`;
}

/** A share as percent with no more digits than it needs. */
export function percentNumber(share: number): string {
  return shortNumber(share * 100);
}

/** “1 in 5”, “2 in 1”, “every cycle” or nothing for once in each. */
export function readOccurs(text: string): Result<{ times: number; cycles: number } | null, string> {
  const trimmed = text.trim().toLowerCase();
  if (trimmed === '' || trimmed === 'every cycle' || trimmed === 'every') return ok(null);
  const match = /^(\d{1,5})\s*(?:in|of|\/|:)\s*(\d{1,7})$/.exec(trimmed);
  const [times, cycles] = [Number(match?.[1]), Number(match?.[2])];
  if (match === null || times < 1 || times > 10_000 || cycles < 1 || cycles > 1_000_000) {
    return fail('Write how often in how many cycles, such as 1 in 5, or “every cycle”.');
  }
  return ok(times === cycles && times === 1 ? null : { times, cycles });
}
