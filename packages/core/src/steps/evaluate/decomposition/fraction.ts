/** An exact number: `over` ÷ `under`, with `under` above 0 and nothing left to cancel. */
export interface Fraction {
  readonly over: bigint;
  readonly under: bigint;
}

/** @throws RangeError when `under` is 0 or a number is not whole */
export function fraction(over: number | bigint, under: number | bigint = 1): Fraction {
  return reduced(BigInt(over), BigInt(under));
}

export function sum(...terms: readonly Fraction[]): Fraction {
  return terms.reduce((a, b) => reduced(a.over * b.under + b.over * a.under, a.under * b.under), nought);
}

export function less(a: Fraction, b: Fraction): Fraction {
  return reduced(a.over * b.under - b.over * a.under, a.under * b.under);
}

export function times(...factors: readonly Fraction[]): Fraction {
  return factors.reduce((a, b) => reduced(a.over * b.over, a.under * b.under), fraction(1));
}

/** The greatest whole number that is not above it. */
export function floorOf({ over, under }: Fraction): bigint {
  const quotient = over / under;
  return over < 0n && quotient * under !== over ? quotient - 1n : quotient;
}

/** The nearest whole number, halves upwards. */
export function nearest(value: Fraction): bigint {
  return floorOf(sum(value, fraction(1, 2)));
}

/** Below 0, 0 or above 0 as `a` is less than, equal to or greater than `b`. */
export function order(a: Fraction, b: Fraction): number {
  const { over } = less(a, b);
  return over < 0n ? -1 : over > 0n ? 1 : 0;
}

/** The nearest floating number; good to the last digit or two for any size. */
export function numberOf({ over, under }: Fraction): number {
  const whole = over / under;
  const rest = over - whole * under;
  return Number(whole) + Number((rest * 2n ** 60n) / under) / 2 ** 60;
}

export const nought: Fraction = { over: 0n, under: 1n };

function reduced(over: bigint, under: bigint): Fraction {
  if (under === 0n) throw new RangeError('a fraction has no 0 below');
  const sign = under < 0n ? -1n : 1n;
  const common = sign * (divisor(over < 0n ? -over : over, sign * under) || 1n);
  return { over: over / common, under: under / common };
}

function divisor(a: bigint, b: bigint): bigint {
  let [large, small] = [a, b];
  while (small > 0n) [large, small] = [small, large % small];
  return large;
}

/**
 * Whole numbers in place of fractions, so that they add up to a given whole number: each is rounded down, and what is
 * missing goes to those that lost most, the first of equals first. Every number stays within 1 of its fraction.
 * @param total the sum of the fractions rounded up or down
 * @throws RangeError for another total
 */
export function wholeParts(parts: readonly Fraction[], total: bigint): readonly bigint[] {
  const floors = parts.map(floorOf);
  const missing = Number(total - floors.reduce((all, floor) => all + floor, 0n));
  const lost = parts
    .map((part, index) => ({ index, rest: less(part, fraction(floors[index] ?? 0n)) }))
    .filter(({ rest }) => rest.over > 0n)
    .sort((a, b) => order(b.rest, a.rest) || a.index - b.index);
  if (missing < 0 || missing > lost.length) {
    throw new RangeError(
      `the parts do not add up to ${total}: ${missing} of ${lost.length} would have to be raised`,
    );
  }
  const raised = new Set(lost.slice(0, missing).map(({ index }) => index));
  return floors.map((floor, index) => (raised.has(index) ? floor + 1n : floor));
}
