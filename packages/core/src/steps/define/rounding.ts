/**
 * The least whole number that is not below a value. What lies within a thousand-millionth of a whole number is taken as
 * that number, so that 144.00000000000003, which is 144 but for the machine's rounding, does not become 145.
 * @param value finite, 0 or more
 */
export function roundedUp(value: number): number {
  const nearest = Math.round(value);
  return Math.abs(value - nearest) <= 1e-9 * Math.max(1, Math.abs(value)) ? nearest : Math.ceil(value);
}

/** The greatest whole number that is not above a value, with the same tolerance: whole pieces that fit into a time. */
export function roundedDown(value: number): number {
  const nearest = Math.round(value);
  return Math.abs(value - nearest) <= 1e-9 * Math.max(1, Math.abs(value)) ? nearest : Math.floor(value);
}
