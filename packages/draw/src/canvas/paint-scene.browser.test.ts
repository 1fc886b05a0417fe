import { type Scene, textWidth } from '@evenhand/core/ground/scene';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Look, looks } from '../looks.ts';
import { type EmbeddedFont, sceneToSvg } from '../svg/scene-to-svg.ts';
import { drawnCharts, sceneOf } from '../testing/drawn-chart.ts';
import { loadPageFonts } from '../testing/page-fonts.ts';
import { paintScene } from './paint-scene.ts';

let fonts: readonly EmbeddedFont[] = [];

beforeAll(async () => {
  fonts = await loadPageFonts();
});

const zoom = 2;

function blank(scene: Scene): OffscreenCanvasRenderingContext2D {
  const canvas = new OffscreenCanvas(Math.ceil(scene.width * zoom), Math.ceil(scene.height * zoom));
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('there is no canvas');
  return context;
}

function paintedByCanvas(scene: Scene, look: Look): ImageData {
  const context = blank(scene);
  context.scale(zoom, zoom);
  paintScene(context, scene, look);
  return context.getImageData(0, 0, context.canvas.width, context.canvas.height);
}

async function paintedBySvg(scene: Scene, look: Look): Promise<ImageData> {
  const context = blank(scene);
  const svg = sceneToSvg(scene, { look, fonts, unit: 'px' });
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  context.drawImage(image, 0, 0, scene.width * zoom, scene.height * zoom);
  return context.getImageData(0, 0, context.canvas.width, context.canvas.height);
}

/** Share of pixels whose grey differs by more than `most` of 255, after each was averaged over 3 × 3 to forgive edges. */
function difference(a: ImageData, b: ImageData, most: number): number {
  const [first, second] = [softGrey(a), softGrey(b)];
  let different = 0;
  first.forEach((value, index) => {
    if (Math.abs(value - (second[index] ?? 0)) > most) different += 1;
  });
  return different / first.length;
}

function softGrey({ data, width, height }: ImageData): Float32Array {
  const grey = new Float32Array(width * height);
  for (let index = 0; index < grey.length; index += 1) {
    grey[index] = ((data[index * 4] ?? 0) + (data[index * 4 + 1] ?? 0) + (data[index * 4 + 2] ?? 0)) / 3;
  }
  const soft = new Float32Array(width * height);
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1; x < width - 1; x += 1) {
      let sum = 0;
      for (let dy = -1; dy <= 1; dy += 1) {
        for (let dx = -1; dx <= 1; dx += 1) sum += grey[(y + dy) * width + x + dx] ?? 0;
      }
      soft[y * width + x] = sum / 9;
    }
  }
  return soft;
}

describe('SVG and Canvas', () => {
  it.each(['light', 'dark', 'print'] as const)(
    'paint the same chart from the same scene (%s)',
    async (name) => {
      const [scene] = drawnCharts().twoHand;
      if (scene === undefined) throw new Error('there is no sheet');
      const [svg, canvas] = [await paintedBySvg(scene, looks[name]), paintedByCanvas(scene, looks[name])];
      expect(difference(svg, canvas, 24)).toBeLessThan(0.002);
      // The comparison must see what is not the same: an empty sheet, and the chart of another form.
      expect(difference(svg, paintedByCanvas({ ...scene, nodes: [] }, looks[name]), 24)).toBeGreaterThan(
        0.02,
      );
      const [other] = drawnCharts().process;
      if (other === undefined) throw new Error('there is no sheet');
      expect(difference(svg, paintedByCanvas(other, looks[name]), 24)).toBeGreaterThan(0.02);
    },
  );

  it('paint the same process chart with its symbols', async () => {
    const [scene] = drawnCharts().process;
    if (scene === undefined) throw new Error('there is no sheet');
    const [svg, canvas] = [await paintedBySvg(scene, looks.light), paintedByCanvas(scene, looks.light)];
    expect(difference(svg, canvas, 24)).toBeLessThan(0.002);
  });
});

describe('the painter', () => {
  it('leaves the state of the context as it was', () => {
    const scene = drawnCharts().twoHand[0] ?? sceneOf([]);
    const context = blank(scene);
    context.globalAlpha = 0.5;
    context.fillStyle = '#123456';
    paintScene(context, scene, looks.dark);
    expect([context.globalAlpha, context.fillStyle, context.lineWidth]).toEqual([0.5, '#123456', 1]);
  });

  it('the table of widths agrees with the browser’s own measure of the font, kerning off, within 0.1 %', () => {
    const context = blank(sceneOf([], 10, 10));
    context.fontKerning = 'none';
    context.textRendering = 'optimizeSpeed';
    for (const weight of [400, 600] as const) {
      for (const text of [
        'Simultaneous-motion chart',
        'reach for sealing ring, 16.7 winks',
        'Größe ÆØÅ ñ ç é',
        '0123456789 %–—…“”',
      ]) {
        context.font = `${weight} 100px 'IBM Plex Sans'`;
        const measured = context.measureText(text).width;
        expect(Math.abs(textWidth(text, 100, weight) - measured) / measured).toBeLessThan(0.001);
      }
    }
  });

  it('kerning makes the charts’ own words no wider than the table says by more than 1 %', () => {
    const context = blank(sceneOf([], 10, 10));
    context.font = "400 100px 'IBM Plex Sans'";
    for (const text of ['carry body from Body bin to Holding place in front', 'Wait for Tyre AVATAR To']) {
      expect(context.measureText(text).width).toBeLessThan(textWidth(text, 100, 400) * 1.01);
    }
  });
});
