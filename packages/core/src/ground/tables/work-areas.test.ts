import { describe, expect, it } from 'vitest';
import { workAreaOf, workAreas } from './index.ts';

const inch = 25.4;

describe('work areas of the arms', () => {
  it('width of the normal area of women: 40 in, of the maximum area 48 to 58 in (IASRI e-course, lesson 44)', () => {
    const { normalRadius, maximumRadius, halfShoulders } = workAreas.middle;
    const width = (radius: number) => (2 * (radius + halfShoulders)) / inch;
    expect(Math.abs(width(normalRadius) - 40)).toBeLessThan(1);
    expect(width(maximumRadius)).toBeGreaterThan(48);
    expect(width(maximumRadius)).toBeLessThan(58);
  });

  it('median grip reach 627 mm and shoulder 331 mm above the elbow (ANSUR II, women) give the maximum radius by Pythagoras', () => {
    // Percentiles of a root are not roots of percentiles, so this is checked at the median only, to half a millimetre.
    expect(Math.abs(Math.sqrt(627 ** 2 - 331 ** 2) - workAreas.middle.maximumRadius)).toBeLessThan(0.6);
  });

  it('a place is measured from the shoulder of the hand that goes there', () => {
    // 3-4-5: 300 to the right of the right shoulder and 400 away from the edge are 500.
    expect(workAreaOf({ x: 468, y: 400 }, 'right')).toEqual({ distance: 500, area: 'beyond' });
    expect(workAreaOf({ x: 168, y: 400 }, 'right')).toEqual({ distance: 400, area: 'maximum' });
    expect(workAreaOf({ x: -168, y: 290 }, 'left')).toEqual({ distance: 290, area: 'normal' });
    // 336 across and 252 away: 3-4-5 again, 420.
    expect(workAreaOf({ x: -168, y: 252 }, 'right')).toEqual({ distance: 420, area: 'maximum' });
  });
});
