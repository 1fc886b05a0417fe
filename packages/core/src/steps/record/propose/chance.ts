import type { ProposedRows } from './propose-rows.ts';

/**
 * How many boundaries hold of those to which this share of all ways leads: measured on generated records (kinds of
 * `tests/helpers/made-regimes.ts`, seeds 31 to 33, one and three confirmed cycles), the steps joined by straight lines. The bench
 * shows on other seeds how well it holds.
 */
const held: readonly (readonly [share: number, chance: number])[] = [
  [0, 0.05],
  [0.43, 0.17],
  [0.55, 0.41],
  [0.66, 0.48],
  [0.75, 0.53],
  [0.84, 0.63],
  [0.9, 0.73],
  [0.935, 0.8],
  [0.965, 0.835],
  [0.98, 0.89],
  [0.991, 0.925],
  [0.9975, 0.945],
  [1, 0.975],
];

/**
 * The chance that a boundary lies within a fifth of a second of where a person would put it.
 * @param share 0 to 1: the share of all ways of placing the boundaries, by their likelihood, that put it there
 * @returns 0.05 to 0.975
 */
export function trueChance(share: number): number {
  const above = held.findIndex(([at]) => at >= share);
  const [high, low] = [held[above] ?? held.at(-1), held[Math.max(0, above - 1)]];
  if (high === undefined || low === undefined || high === low) return high?.[1] ?? 0.5;
  return low[1] + ((high[1] - low[1]) * (share - low[0])) / (high[0] - low[0]);
}

/** Cycles less likely than this are not proposed. */
export const leastChance = 0.07;

/**
 * The chance that each found cycle is one at all. What tells is how like the confirmed cycle it is, and how much more like
 * than the same cycle gone through in a wrong order; the other cycles of the film have a say, since most of a film is the
 * same work. Fitted to cycles of generated records (kinds of `tests/helpers/made-regimes.ts` and cycles of 15 to 40 s,
 * seeds 31 to 36) and to what is found in films of other work than the confirmed cycle.
 * @returns 0 to 1, in the order of the cycles
 */
export function cycleChances({ shares, cycles }: Pick<ProposedRows, 'shares' | 'cycles'>): number[] {
  const sought = shares.flatMap((share, index) => (share > 0 ? [index] : []));
  const mean = (of: (index: number) => number) =>
    sought.reduce((sum, index) => sum + of(index), 0) / Math.max(1, sought.length);
  const share = (index: number) => Math.min(1.1, shares[index] ?? 0);
  const distance = (index: number) => cycles[index]?.distance ?? 1;
  const [meanShare, meanDistance] = [mean(share), mean(distance)];
  return shares.map((given, index) => {
    if (given === 0) return 0.99;
    const odds =
      12.76 - 7.27 * 0.5 * (share(index) + meanShare) - 14.26 * 0.5 * (distance(index) + meanDistance);
    return Math.min(0.99, 1 / (1 + Math.exp(-odds)));
  });
}
