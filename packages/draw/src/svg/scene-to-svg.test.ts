import { describe, expect, it } from 'vitest';
import { looks } from '../looks.ts';
import { drawnCharts, sceneOf } from '../testing/drawn-chart.ts';
import { sceneToSvg } from './scene-to-svg.ts';

describe('a scene as SVG', () => {
  it('the same scene gives the same bytes', () => {
    const make = () => drawnCharts().twoHand.map((scene) => sceneToSvg(scene));
    expect(make()).toEqual(make());
  });

  it('is as large as the sheet: A4 is 595.2756 × 841.8898 points (ISO 216: 210 × 297 mm)', () => {
    const svg = sceneToSvg(drawnCharts().twoHand[0] ?? sceneOf([]));
    expect(svg).toContain('width="595.2756pt" height="841.8898pt"');
  });

  it('carries the fonts that it is given, and none otherwise', () => {
    const scene = sceneOf([]);
    expect(sceneToSvg(scene)).not.toContain('@font-face');
    const svg = sceneToSvg(scene, { fonts: [{ weight: 600, woff2: 'AAAA', unicodeRange: 'U+20-7E' }] });
    expect(svg).toContain(
      "@font-face{font-family:'IBM Plex Sans';font-weight:600;unicode-range:U+20-7E;src:url(data:font/woff2;base64,AAAA) format('woff2')}",
    );
  });

  it('inks follow the look; a motion keeps its own colour', () => {
    const nodes = [
      { kind: 'line', x1: 0, y1: 0, x2: 9, y2: 0, stroke: { ink: 'ink', width: 1 } },
      { kind: 'rect', x: 0, y: 0, width: 9, height: 9, fill: { ink: { colour: '#2e8b3d' } } },
    ] as const;
    for (const look of Object.values(looks)) {
      const svg = sceneToSvg(sceneOf(nodes), { look });
      expect(svg).toContain(`stroke="${look.inks.ink}"`);
      expect(svg).toContain('fill="#2e8b3d"');
    }
  });

  it('two drawings in one page share no id when their prefixes differ', () => {
    const [scene = sceneOf([])] = drawnCharts().twoHand;
    const ids = (idPrefix: string) =>
      [...sceneToSvg(scene, { idPrefix }).matchAll(/ id="([^"]+)"/g)].map((match) => match[1] ?? '');
    const [first, second] = [ids('a'), ids('b')];
    expect(first.length).toBeGreaterThan(10);
    expect(new Set([...first, ...second]).size).toBe(first.length + second.length);
  });

  it('refuses a measure that is not finite', () => {
    const line = {
      kind: 'line',
      x1: 0,
      y1: Number.NaN,
      x2: 9,
      y2: 0,
      stroke: { ink: 'ink', width: 1 },
    } as const;
    expect(() => sceneToSvg(sceneOf([line]))).toThrow(RangeError);
  });
});
