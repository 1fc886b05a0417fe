import type { QuadraticAssignment } from '@evenhand/core/develop';

/** The least cost of all ways to put the items on spots of their own, tried one after the other; infinite when none keeps the rules. */
export function leastByTrial(problem: QuadraticAssignment): number {
  const { items, spots, flow, distance, linear, conflict } = problem;
  const chosen: number[] = [];
  let least = Number.POSITIVE_INFINITY;
  const whole = () => {
    let cost = 0;
    for (let i = 0; i < items; i += 1) {
      cost += linear[i * spots + (chosen[i] ?? 0)] ?? 0;
      for (let j = 0; j < items; j += 1) {
        if (i !== j && conflict?.(i, chosen[i] ?? 0, j, chosen[j] ?? 0) === true) return;
        cost += (flow[i * items + j] ?? 0) * (distance[(chosen[i] ?? 0) * spots + (chosen[j] ?? 0)] ?? 0);
      }
    }
    least = Math.min(least, cost);
  };
  const go = () => {
    if (chosen.length === items) {
      whole();
      return;
    }
    for (let spot = 0; spot < spots; spot += 1) {
      if (chosen.includes(spot)) continue;
      chosen.push(spot);
      go();
      chosen.pop();
    }
  };
  go();
  return least;
}
