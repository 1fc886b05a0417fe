import { type Micros, roundMicros } from '../base/index.ts';

/** The units in which a person reads a time. Inside, every time is whole microseconds. */
export type TimeUnit = 'seconds' | 'minutes' | 'winks' | 'tmu' | 'hours';

interface UnitFacts {
  readonly symbol: string;
  readonly name: string;
  readonly microseconds: number;
  /** Decimal places at which one step is finer than a frame at 30 a second, where that is readable. */
  readonly decimals: number;
}

/**
 * wink = 1/2000 min = 0.03 s (Gilbreth; as in ILO, Introduction to Work Study, 4th ed. 1992, from memory);
 * TMU = 1/100 000 h = 0.036 s (conversion line on the public MTM data card, 2019); the others by definition (SI brochure).
 */
export const timeUnits: Readonly<Record<TimeUnit, UnitFacts>> = {
  seconds: { symbol: 's', name: 'seconds', microseconds: 1_000_000, decimals: 2 },
  minutes: { symbol: 'min', name: 'decimal minutes', microseconds: 60_000_000, decimals: 4 },
  winks: { symbol: 'winks', name: 'winks (1/2000 min)', microseconds: 30_000, decimals: 1 },
  tmu: { symbol: 'TMU', name: 'TMU (1/100 000 h)', microseconds: 36_000, decimals: 1 },
  hours: { symbol: 'h', name: 'hours', microseconds: 3_600_000_000, decimals: 6 },
};

export const timeUnitNames = Object.keys(timeUnits) as readonly TimeUnit[];

/** A time in the unit, as an unrounded number. */
export function inUnit(time: Micros, unit: TimeUnit): number {
  return time / timeUnits[unit].microseconds;
}

/** The whole microseconds nearest to a value in the unit, halves away from zero. @throws RangeError when not finite or too large */
export function fromUnit(value: number, unit: TimeUnit): Micros {
  return roundMicros(value * timeUnits[unit].microseconds);
}
