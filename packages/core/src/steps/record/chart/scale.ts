import { pointsPerMillimetre } from '../../../ground/scene/index.ts';
import { numberText, type TimeUnit, timeUnits } from '../../../ground/units/index.ts';

/** How time becomes length on the sheet. */
export interface ChartScale {
  readonly unit: TimeUnit;
  /** Millimetres of paper for one unit of time: a round number, so that a ruler can read the chart. */
  readonly millimetresPerUnit: number;
  readonly pointsPerMicro: number;
}

const steps = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8] as const;

/** Round scales from large to small: 1 to 8 in ten steps, times powers of ten. */
export function roundScales(unit: TimeUnit, most: number, least: number): readonly ChartScale[] {
  const scales: ChartScale[] = [];
  for (let power = 7; power >= -9; power -= 1) {
    for (const step of [...steps].reverse()) {
      const millimetresPerUnit = power < 0 ? step / 10 ** -power : step * 10 ** power;
      const pointsPerMicro = (millimetresPerUnit * pointsPerMillimetre) / timeUnits[unit].microseconds;
      if (pointsPerMicro <= most && pointsPerMicro >= least) {
        scales.push({ unit, millimetresPerUnit, pointsPerMicro });
      }
    }
  }
  return scales;
}

/** "Scale: 5 mm to 10 winks". */
export function scaleText({ unit, millimetresPerUnit }: ChartScale): string {
  let [millimetres, units] = [millimetresPerUnit, 1];
  while (millimetres < 1) {
    millimetres *= 10;
    units *= 10;
  }
  const short = (value: number) => numberText(value, 6).replace(/\.?0+$/, '');
  const symbol = units === 1 && unit === 'winks' ? 'wink' : timeUnits[unit].symbol;
  return `Scale: ${short(millimetres)} mm to ${units} ${symbol}`;
}

/** Graduation of the middle scale: a numbered line every `major` units, a short one every `minor`. */
export interface Graduation {
  readonly major: number;
  readonly minor: number;
  readonly decimals: number;
}

/** The finest round graduation with numbered lines at least `room` points apart. */
export function graduationFor(scale: ChartScale, room: number): Graduation {
  const pointsPerUnit = scale.millimetresPerUnit * pointsPerMillimetre;
  for (let power = -6; power <= 9; power += 1) {
    for (const [step, parts] of [
      [1, 10],
      [2, 4],
      [5, 5],
    ] as const) {
      const major = power < 0 ? step / 10 ** -power : step * 10 ** power;
      if (major * pointsPerUnit >= room) {
        return { major, minor: major / parts, decimals: Math.max(0, -power) };
      }
    }
  }
  throw new RangeError(`no graduation for a scale of ${scale.millimetresPerUnit} mm to the unit`);
}
