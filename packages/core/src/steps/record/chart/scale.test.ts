import { describe, expect, it } from 'vitest';
import { timeUnitNames, timeUnits } from '../../../ground/units/index.ts';
import { graduationFor, roundScales, scaleText } from './scale.ts';

describe('the scale of a chart', () => {
  it('1 mm to 1 wink is 72 / 25.4 points for 30 000 µs (1 in = 25.4 mm = 72 pt; 1 wink = 1/2000 min)', () => {
    const scale = roundScales('winks', 1, 1e-12).find((item) => item.millimetresPerUnit === 1);
    expect(scale?.pointsPerMicro).toBeCloseTo(72 / 25.4 / 30_000, 15);
    expect(scale && scaleText(scale)).toBe('Scale: 1 mm to 1 wink');
  });

  it('names a scale with whole tens, hundreds … of the unit, so that a ruler reads it', () => {
    const text = (millimetresPerUnit: number) =>
      scaleText({ unit: 'winks', millimetresPerUnit, pointsPerMicro: 1 });
    expect(text(2.5)).toBe('Scale: 2.5 mm to 1 wink');
    expect(text(0.6)).toBe('Scale: 6 mm to 10 winks');
    expect(text(0.0125)).toBe('Scale: 1.25 mm to 100 winks');
  });

  it('offers at least one scale within every factor of two, in every unit', () => {
    for (const unit of timeUnitNames) {
      for (let least = 1e-9; least < 1e-3; least *= 3) {
        expect(roundScales(unit, least * 2, least).length).toBeGreaterThan(0);
      }
    }
  });

  it('numbers its lines no closer than asked, and no more than two and a half times as far', () => {
    for (const unit of timeUnitNames) {
      for (const scale of roundScales(unit, 1e-3, 1e-9)) {
        const { major, minor } = graduationFor(scale, 24);
        const points = major * timeUnits[unit].microseconds * scale.pointsPerMicro;
        expect(points).toBeGreaterThanOrEqual(24);
        expect(points).toBeLessThanOrEqual(24 * 2.5 + 1e-9);
        expect(Math.round(major / minor)).toBeCloseTo(major / minor, 9);
      }
    }
  });
});
