/** A numbered place on an axis. */
export interface AxisMark {
  readonly value: number;
  readonly decimals: number;
}

/**
 * Round numbers from `low` to `high`, 1, 2 or 5 times a power of ten apart, no more than `most` of them.
 * @param least no finer than this, such as 1 for whole numbers; 0 for any
 */
export function axisMarks(low: number, high: number, most: number, least = 0): readonly AxisMark[] {
  const span = high - low;
  if (!(span > 0)) return [{ value: low, decimals: least >= 1 ? 0 : 2 }];
  const rough = Math.max(span / Math.max(1, most), least);
  const power = Math.floor(Math.log10(rough));
  const [step, exponent] = [1, 2, 5, 10, 20]
    .map((digit) => [digit * 10 ** power, digit >= 10 ? power + 1 : power] as const)
    .find(([size]) => size >= rough * (1 - 1e-9) && countIn(low, high, size) <= Math.max(1, most)) ?? [
    50 * 10 ** power,
    power + 1,
  ];
  const decimals = Math.min(12, Math.max(0, -exponent));
  const first = Math.ceil(low / step - 1e-9);
  return Array.from({ length: countIn(low, high, step) }, (_, index) => ({
    value: (first + index) * step,
    decimals,
  }));
}

function countIn(low: number, high: number, step: number): number {
  return Math.max(0, Math.floor(high / step + 1e-9) - Math.ceil(low / step - 1e-9) + 1);
}

/**
 * The stretch of time that the chart shows: all that counts, the bounds of the rule, and what is set aside unless it
 * would press the rest flat: no more than the height of the rest is added for it on either side.
 */
export function timeSpan(
  counted: readonly number[],
  bounds: { readonly low: number; readonly high: number } | undefined,
  aside: readonly number[],
): { readonly low: number; readonly high: number } {
  const within = counted.length === 0 ? aside : counted;
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const time of within) [low, high] = [Math.min(low, time), Math.max(high, time)];
  if (!(high >= low)) return { low: 0, high: 1 };
  if (bounds !== undefined) [low, high] = [Math.min(low, bounds.low), Math.max(high, bounds.high)];
  low = Math.max(0, low);
  const room = Math.max(high - low, high * 0.05);
  let [least, most] = [low, high];
  for (const time of aside) {
    if (time >= low - room) least = Math.min(least, time);
    if (time <= high + room) most = Math.max(most, time);
  }
  const air = Math.max((most - least) * 0.06, most * 0.01, 1e-9);
  // Where the least is not far from nothing, the axis may as well begin there.
  const from = least < 0.4 * most ? 0 : Math.max(0, least - air);
  return { low: from, high: most + air };
}
