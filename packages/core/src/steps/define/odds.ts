import { percentText } from '../../ground/units/index.ts';

/** How rare a result must be under chance alone before it is told as shown: one in twenty, the usual custom. */
export const rareEnough = 0.05;

/** "in 3.2 % of studies", "in less than 0.1 % of studies". */
export function chanceWords(chance: number): string {
  return chance < 0.001
    ? `in less than ${percentText(0.001)} of studies`
    : `in ${percentText(chance)} of studies`;
}
