import type { Learning, LearningLoss } from './learning-loss.ts';
import { microsecondsAnHour, type YearOfWork } from './yearly-saving.ts';

/** A change of method as a matter of money. Times are for one unit, in microseconds. */
export interface ChangeCase extends YearOfWork {
  /** Cost of the change, paid at the start; 0 or more. */
  readonly cost: number;
  /** Years for which the new method is expected to run, 1 to 50, whole. */
  readonly years: number;
  /** Yearly rate of discount as a share, 0 or more; 0.08 for 8 %. */
  readonly discountRate: number;
  /** What the new method costs each year beyond the old one, such as upkeep; 0 when left out, below 0 where it saves. */
  readonly runningCost?: number | undefined;
  /** Left out, nothing has to be learned. */
  readonly learning?: Learning | undefined;
}

/** What each year brings. @param loss undefined when nothing has to be learned */
export function flowsOf(
  change: Pick<ChangeCase, 'before' | 'after' | 'unitsAYear' | 'hourlyCost' | 'years' | 'runningCost'>,
  loss: LearningLoss | undefined,
): number[] {
  const { before, after, unitsAYear, hourlyCost, years, runningCost = 0 } = change;
  const moneyOfTime = (time: number) => (time / microsecondsAnHour) * hourlyCost;
  return Array.from({ length: years }, (_, year) => {
    const [from, to] = [Math.floor(unitsAYear * year), Math.floor(unitsAYear * (year + 1))];
    const lost = loss === undefined ? 0 : loss.upTo(to) - loss.upTo(from);
    return moneyOfTime((before - after) * unitsAYear - lost) - runningCost;
  });
}
