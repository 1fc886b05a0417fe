import type { LearningLoss } from './learning-loss.ts';
import { discounted } from './present-value.ts';
import { type ChangeCase, flowsOf } from './yearly-flows.ts';
import { microsecondsAnHour } from './yearly-saving.ts';

/** The volume from which a change pays. */
export interface BreakEven {
  /**
   * Units, whenever they are made, whose savings recover the cost of the change and what learning loses; without running
   * cost and discount. Undefined when a unit saves no money.
   */
  readonly units: number | undefined;
  /** Units a year, whole, from which the net present value over the years is 0 or more; undefined when none is. */
  readonly unitsAYear: number | undefined;
}

const mostUnits = 1e12;

export function breakEven(change: ChangeCase, loss: LearningLoss | undefined): BreakEven {
  return { units: unitsToRecover(change, loss), unitsAYear: unitsForValue(change, loss) };
}

/**
 * Learning makes the first units dearer than the old method, so what has been gained falls first and rises for good
 * later: the last crossing is the one that counts.
 */
function unitsToRecover(
  { before, after, hourlyCost, cost }: ChangeCase,
  loss: LearningLoss | undefined,
): number | undefined {
  const saved = before - after;
  if (saved * hourlyCost <= 0) return undefined;
  const wanted = (cost / hourlyCost) * microsecondsAnHour;
  const enough = (units: number) => saved * units - (loss?.upTo(units) ?? 0) >= wanted * (1 - 1e-12);
  const most = Math.ceil(((wanted + (loss?.total ?? 0)) / saved) * (1 - 1e-12));
  if (most > mostUnits) return undefined;
  return lastCrossing(enough, leastGain(saved, loss), most);
}

/** The unit at which the gain is lowest: up to there each unit loses more by learning than it saves. */
function leastGain(saved: number, loss: LearningLoss | undefined): number {
  if (loss === undefined) return 0;
  const loses = (unit: number) => loss.upTo(unit) - loss.upTo(unit - 1) > saved;
  let [low, high] = [0, loss.units + 1];
  while (high - low > 1) {
    const half = Math.floor((low + high) / 2);
    if (loses(half)) low = half;
    else high = half;
  }
  return low;
}

function unitsForValue(change: ChangeCase, loss: LearningLoss | undefined): number | undefined {
  const enough = (unitsAYear: number) => {
    const flows = discounted(flowsOf({ ...change, unitsAYear }, loss), change.discountRate);
    return flows.reduce((sum, flow) => sum + flow, -change.cost) >= -1e-9 * change.cost;
  };
  if ((change.before - change.after) * change.hourlyCost <= 0) return undefined;
  let high = 1;
  while (!enough(high)) {
    if (high >= mostUnits) return undefined;
    high = Math.min(mostUnits, high * 2);
  }
  return lastCrossing(enough, enough(0) && loss === undefined ? -1 : 0, high);
}

/** The least whole number above `low` from which on it is enough, when it is at `high` and not between. */
function lastCrossing(enough: (units: number) => boolean, low: number, high: number): number {
  let [below, above] = [low, high];
  while (above - below > 1) {
    const half = Math.floor((below + above) / 2);
    if (enough(half)) above = half;
    else below = half;
  }
  return above;
}
