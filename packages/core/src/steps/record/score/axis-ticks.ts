import type { TimeUnit } from '../../../ground/units/index.ts';
import { numberText, timeUnits } from '../../../ground/units/index.ts';

export interface AxisTick {
  /** Real time, microseconds; not always whole, as a step in winks or TMU need not be. */
  readonly us: number;
  /** The number in the unit; only major ticks bear one. */
  readonly text?: string;
}

export interface AxisSteps {
  /** One major step in microseconds: 1, 2 or 5 × a power of ten of the unit. */
  readonly majorUs: number;
  /** Minor steps in one major step: 10, 5 or 4; 1 when there is no room. */
  readonly parts: number;
  readonly decimals: number;
}

const mantissas = [1, 2, 5] as const;

/**
 * The finest steps of 1, 2 or 5 × 10ⁿ of the unit whose major ticks stand at least `apart` pixels from each other and
 * whose minor ticks at least 6.
 */
export function axisSteps(usPerPixel: number, unit: TimeUnit, apart: number): AxisSteps {
  const unitUs = timeUnits[unit].microseconds;
  const least = (usPerPixel * apart) / unitUs;
  let exponent = Math.floor(Math.log10(least)) - 1;
  for (;;) {
    const mantissa = mantissas.find((value) => value * 10 ** exponent >= least * (1 - 1e-9));
    if (mantissa !== undefined) {
      const majorUs = mantissa * 10 ** exponent * unitUs;
      const finest = mantissa === 2 ? [4, 2] : mantissa === 5 ? [5] : [10, 5, 2];
      const parts = finest.find((count) => majorUs / count / usPerPixel >= 6) ?? 1;
      return { majorUs, parts, decimals: Math.max(0, -exponent) };
    }
    exponent += 1;
  }
}

/** Ticks from one time to another, both included; `originUs` is the time that reads zero. */
export function axisTicks(
  fromUs: number,
  toUs: number,
  originUs: number,
  steps: AxisSteps,
  unit: TimeUnit,
): AxisTick[] {
  const minorUs = steps.majorUs / steps.parts;
  const first = Math.ceil((fromUs - originUs) / minorUs - 1e-9);
  const last = Math.floor((toUs - originUs) / minorUs + 1e-9);
  const ticks: AxisTick[] = [];
  for (let step = first; step <= last; step += 1) {
    const us = originUs + step * minorUs;
    if (step % steps.parts !== 0) ticks.push({ us });
    else {
      const value = ((step / steps.parts) * steps.majorUs) / timeUnits[unit].microseconds;
      ticks.push({ us, text: numberText(value, steps.decimals) });
    }
  }
  return ticks;
}
