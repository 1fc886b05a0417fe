import { fundamentalMotions, motionFacts } from '@evenhand/core/ground/tables';
import { describe, expect, it } from 'vitest';
import { patternInk, patternTiles } from './patterns.ts';

describe('patterns', () => {
  it('tell all motions apart without colour: no two have the same marks', () => {
    const marks = fundamentalMotions
      .map((motion) => patternTiles[motion.pattern])
      .filter((tile) => tile !== undefined)
      .map((tile) => JSON.stringify(tile));
    expect(new Set(marks).size).toBe(marks.length);
    // Two fills have no marks: grasp is dark and rest is light.
    expect(fundamentalMotions.length - marks.length).toBe(2);
  });

  it('the ink of a pattern contrasts with its colour by at least 3 to 1 (WCAG 2.2, 1.4.11)', () => {
    expect(patternInk('#ffffff')).toBe('#000000');
    expect(patternInk('#000000')).toBe('#ffffff');
    for (const { colour } of motionFacts) {
      const light = patternInk(colour) === '#ffffff';
      const luminance = [1, 3, 5]
        .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
        .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4))
        .reduce((sum, part, index) => sum + part * ([0.2126, 0.7152, 0.0722][index] ?? 0), 0);
      const ratio = light ? 1.05 / (luminance + 0.05) : (luminance + 0.05) / 0.05;
      expect(ratio).toBeGreaterThanOrEqual(3);
    }
  });

  it('tiles are whole in eighths, which the canvas needs to repeat them without a seam', () => {
    for (const tile of Object.values(patternTiles)) {
      if (tile === undefined) continue;
      expect(Number.isInteger(tile.width * 8) && Number.isInteger(tile.height * 8)).toBe(true);
    }
  });
});
