import type { ProposedRows } from './propose-rows.ts';

/**
 * How many boundaries hold of those to which this share of all ways leads: measured on generated records (kinds of
 * `tests/helpers/made-regimes.ts`, seeds 31 to 33, one and three confirmed cycles), the steps joined by straight lines. The bench
 * shows on other seeds how well it holds.
 */
const held: readonly (readonly [share: number, chance: number])[] = [
  [0, 0.3],
  [0.4, 0.35],
  [0.6, 0.47],
  [0.75, 0.58],
  [0.85, 0.69],
  [0.92, 0.81],
  [0.965, 0.86],
  [0.99, 0.91],
  [0.998, 0.955],
  [1, 0.975],
];

/**
 * The chance that a boundary lies within a fifth of a second of where a person would put it.
 * @param share 0 to 1: the share of all ways of placing the boundaries, by their likelihood, that put it there
 * @returns 0.3 to 0.975
 */
export function trueChance(share: number): number {
  const above = held.findIndex(([at]) => at >= share);
  const [high, low] = [held[above] ?? held.at(-1), held[Math.max(0, above - 1)]];
  if (high === undefined || low === undefined || high === low) return high?.[1] ?? 0.5;
  return low[1] + ((high[1] - low[1]) * (share - low[0])) / (high[0] - low[0]);
}

/** Cycles less likely than this are not proposed. */
export const leastChance = 0.15;

/**
 * The chance that each found cycle is one at all. What tells is how much more like the confirmed cycle it is than the same
 * cycle gone through in a wrong order; the other cycles of the film have a say, since most of a film is the same work.
 * @returns 0 to 1, in the order of the cycles
 */
export function cycleChances({ shares }: Pick<ProposedRows, 'shares'>): number[] {
  const sought = shares.filter((share) => share > 0);
  const mean = sought.reduce((sum, share) => sum + share, 0) / Math.max(1, sought.length);
  return shares.map((share) =>
    share === 0 ? 0.99 : Math.min(0.99, 1 / (1 + Math.exp((0.5 * share + 0.5 * mean - 0.77) / 0.022))),
  );
}
