import { type AllowancePlan, type MeasuredElement, standardTime } from '@evenhand/core/define';
import { quantileOf, seededRandom } from '@evenhand/core/ground/numerics';

/**
 * The bootstrap of a standard time as it is defined: draw as many cycles as there are with replacement, take for each
 * element the plain mean of its readings in the drawn cycles, and compute the standard time of those means.
 */
export function cycleBootstrap(
  elements: readonly MeasuredElement[],
  plan: AllowancePlan,
  { draws, seed, confidence }: { readonly draws: number; readonly seed: number; readonly confidence: number },
): { readonly low: number; readonly high: number } {
  const random = seededRandom(seed);
  const cycles = [...new Set(elements.flatMap(({ readings }) => readings.map(({ cycle }) => cycle)))];
  const values: number[] = [];
  while (values.length < draws) {
    const drawn = cycles.map(() => cycles[Math.floor(random() * cycles.length)] ?? 0);
    const timed = elements.map((element) => {
      const times = drawn.flatMap((cycle) =>
        element.readings.filter((reading) => reading.cycle === cycle).map(({ basic }) => basic),
      );
      return { ...element, basic: times.reduce((sum, time) => sum + time, 0) / times.length };
    });
    if (timed.some(({ basic }) => !Number.isFinite(basic))) continue;
    const result = standardTime(timed, plan);
    if (!result.ok) throw new Error(result.error.message);
    values.push(result.value.standard);
  }
  values.sort((a, b) => a - b);
  const tail = (1 - confidence) / 2;
  return { low: quantileOf(values, tail), high: quantileOf(values, 1 - tail) };
}
