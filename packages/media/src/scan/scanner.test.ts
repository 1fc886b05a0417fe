import { seededRandom } from '@evenhand/core/ground/numerics';
import { handMotion } from '@evenhand/core/record';
import { describe, expect, it } from 'vitest';
import type { Picture } from '../hands/picture.ts';
import { bandColour, bandsFault, hueOf } from './band-colour.ts';
import { blobsOf } from './blobs.ts';
import type { ScanWish } from './scan-messages.ts';
import { scanner } from './scanner.ts';

type Rgb = readonly [number, number, number];
const blue: Rgb = [40, 90, 220];
const yellow: Rgb = [230, 200, 40];
const glove: Rgb = [25, 25, 28];
const [width, height, frames] = [320, 180, 60];

/** Four pictures of an empty bench, each with its own noise. */
const grounds = [1, 2, 3, 4].map((seed) => {
  const random = seededRandom(seed);
  const data = new Uint8ClampedArray(4 * width * height);
  for (let at = 0; at < data.length; at += 4)
    for (const [colour, value] of [150, 146, 138].entries())
      data[at + colour] = value + 10 * (random() - 0.5);
  return data;
});

/** A grey bench with camera noise, on which things are drawn. */
function bench(
  seed: number,
): Picture & { readonly draw: (x: number, y: number, w: number, h: number, rgb: Rgb) => void } {
  const random = seededRandom(seed);
  const data = (grounds[seed % grounds.length] as Uint8ClampedArray).slice();
  const noisy = (value: number) => value + 10 * (random() - 0.5);
  const draw = (x: number, y: number, w: number, h: number, rgb: Rgb) => {
    for (let row = Math.max(0, Math.round(y)); row < Math.min(height, Math.round(y + h)); row += 1)
      for (let column = Math.max(0, Math.round(x)); column < Math.min(width, Math.round(x + w)); column += 1)
        for (const [colour, value] of rgb.entries()) data[4 * (row * width + column) + colour] = noisy(value);
  };
  return { width, height, data, draw };
}

const timeOf = (frame: number) => Math.round((frame * 1e6) / 30);
const film = { frames, width: 4 * width, height: 4 * height, scale: 4, timeOf };
/** Middle of a hand’s band, in pixels of the small picture. */
const leftAt = (frame: number) => ({ x: 90 + 40 * Math.sin(frame / 8), y: 100 });
const rightAt = (frame: number) => ({ x: 230, y: 90 + 50 * Math.sin(frame / 10) });

function picture(frame: number, hidden = false): Picture {
  const made = bench(frame);
  const [left, right] = [leftAt(frame), rightAt(frame)];
  for (const at of [left, right]) made.draw(at.x - 14, at.y - 40, 28, 60, glove);
  if (!hidden) made.draw(left.x - 14, left.y - 4, 28, 8, blue);
  made.draw(right.x - 14, right.y - 4, 28, 8, yellow);
  return made;
}

function colourAt(frame: number, at: { readonly x: number; readonly y: number }) {
  const found = bandColour(picture(frame), at);
  if (!found.ok) throw new Error(found.error.message);
  return found.value;
}
const wish = (): ScanWish => ({
  kind: 'bands',
  bands: {
    left: {
      colour: colourAt(20, leftAt(20)),
      click: { frame: 20, x: 4 * leftAt(20).x, y: 4 * leftAt(20).y },
    },
    right: {
      colour: colourAt(20, rightAt(20)),
      click: { frame: 20, x: 4 * rightAt(20).x, y: 4 * rightAt(20).y },
    },
  },
});
function run(what: ScanWish, pictureOf: (frame: number) => Picture | undefined) {
  const scan = scanner(film, what);
  for (let frame = 0; frame < frames; frame += 1) scan.next(pictureOf(frame));
  return scan.end();
}

describe('the colour of a band', () => {
  it.each([
    [[255, 0, 0], 0],
    [[255, 255, 0], 60],
    [[0, 255, 0], 120],
    [[0, 0, 255], 240],
    [[255, 0, 255], 300],
    [[191, 64, 64], 0],
  ])('hue of %j is %d° (primary and secondary colours of the hexcone, A. R. Smith 1978)', (rgb, hue) => {
    expect(hueOf(...(rgb as unknown as [number, number, number]))[0]).toBe(hue);
  });

  it('is refused in words where there is none, none of its own, or none at all', () => {
    const bad = (x: number, y: number) => {
      const found = bandColour(picture(0), { x, y });
      return found.ok ? 'taken' : found.error.code;
    };
    expect(bad(5, 5)).toBe('band/dull');
    expect(bad(rightAt(0).x, rightAt(0).y - 25)).toBe('band/dull');
    expect(bad(-1, 5)).toBe('band/outside');
    const flag = bench(1);
    flag.draw(100, 100, 2, 40, [220, 30, 30]);
    flag.draw(102, 100, 30, 40, blue);
    expect(bandColour(flag, { x: 102, y: 120 }).ok).toBe(true);
    flag.draw(102, 100, 1, 40, [40, 200, 60]);
    flag.draw(101, 100, 1, 40, [220, 30, 30]);
    flag.draw(103, 100, 1, 40, yellow);
    expect(bandColour(flag, { x: 102, y: 120 })).toMatchObject({ error: { code: 'band/mixed' } });
  });

  it('two bands of one colour cannot be told apart', () => {
    const colour = colourAt(0, leftAt(0));
    expect(bandsFault({ left: colour, right: { ...colour, hue: colour.hue + 15 } })?.code).toBe('band/alike');
    expect(bandsFault({ left: colour, right: colourAt(0, rightAt(0)) })).toBeUndefined();
  });

  it('a band parted by a thin fold is one blob', () => {
    const made = bench(3);
    made.draw(100, 80, 30, 4, blue);
    made.draw(100, 85, 30, 4, blue);
    const [blob, second] = blobsOf(made, colourAt(0, leftAt(0)), 6);
    expect([blob?.area, second]).toEqual([240, undefined]);
    expect([blob?.x, blob?.y]).toEqual([expect.closeTo(115, 1), expect.closeTo(84.5, 1)]);
  });
});

describe('two wristbands on black gloves', () => {
  it('are followed in every frame, each its own hand, to a pixel of the small picture', () => {
    const { track, findings } = run(wish(), (frame) => picture(frame));
    expect(findings).toEqual([]);
    for (let frame = 0; frame < frames; frame += 1) {
      expect(Math.abs((track.left?.x[frame] ?? 0) - 4 * leftAt(frame).x)).toBeLessThan(4);
      expect(Math.abs((track.right?.y[frame] ?? 0) - 4 * rightAt(frame).y)).toBeLessThan(4);
    }
    expect([track.source, track.width, track.unit]).toEqual(['bands', 1280, 'pixels']);
  });

  it('a band that is hidden, and a frame that cannot be read, are gaps', () => {
    const { track, findings } = run(wish(), (frame) =>
      frame === 40 ? undefined : picture(frame, frame >= 25 && frame < 33),
    );
    const missing = (hand: 'left' | 'right') =>
      [...(track[hand]?.x ?? [])].flatMap((x, frame) => (Number.isNaN(x) ? [frame] : []));
    expect(missing('left')).toEqual([25, 26, 27, 28, 29, 30, 31, 32, 40]);
    expect(missing('right')).toEqual([40]);
    expect(findings.map(({ code, where }) => [code, where.hand])).toEqual([
      ['track/gaps', 'left'],
      ['track/gaps', 'right'],
    ]);
  });

  it('a thing of the same colour that lies far off is not taken for the band, and is told', () => {
    const { track, findings } = run(wish(), (frame) => {
      const made = bench(frame);
      const at = leftAt(frame);
      made.draw(at.x - 14, at.y - 4, 28, 8, blue);
      made.draw(290, 10, 26, 20, blue);
      return made;
    });
    for (let frame = 0; frame < frames; frame += 1)
      expect(Math.abs((track.left?.x[frame] ?? 0) - 4 * leftAt(frame).x)).toBeLessThan(4);
    expect(findings.map(({ code }) => code)).toEqual(['band/others', 'band/not-found', 'track/one-hand']);
  });

  it('where no band is found there is no track', () => {
    const { track, findings } = run(wish(), (frame) => bench(frame));
    expect([track.left, track.right]).toEqual([undefined, undefined]);
    expect(findings.map(({ code }) => code)).toEqual([
      'band/not-found',
      'band/not-found',
      'track/no-hand-found',
    ]);
  });
});

describe('movement in regions', () => {
  const regions: ScanWish = {
    kind: 'energy',
    regions: {
      left: [{ x: 0, y: 0, width: 640, height: 720 }],
      right: [
        { x: 680, y: 0, width: 400, height: 720 },
        { x: 900, y: 0, width: 380, height: 720 },
      ],
    },
  };
  /** The right hand rests, works from frame 15 to 35, and rests; the left one never moves. */
  const moving = (frame: number) => {
    const share = Math.min(1, Math.max(0, (frame - 15) / 20));
    const made = bench(frame);
    made.draw(180 + 110 * share ** 3 * (10 - 15 * share + 6 * share * share), 80, 20, 40, [90, 60, 50]);
    return made;
  };

  it('tells when the hand of a region moves, and finds it where it moves', () => {
    const { track, findings } = run(regions, moving);
    const { speed } = handMotion(
      track.right ?? { x: new Float32Array(0), y: new Float32Array(0), presence: new Float32Array(0) },
      timeOf,
    );
    expect(track.left).toBeUndefined();
    expect(findings.map(({ code }) => code)).toEqual(['track/one-hand', 'track/gaps']);
    // Known only once it has moved; a minimum-jerk movement begins and ends too slowly to be seen at once.
    expect(track.right?.x.findIndex((x) => !Number.isNaN(x))).toBeGreaterThanOrEqual(16);
    expect(track.right?.x.findIndex((x) => !Number.isNaN(x))).toBeLessThanOrEqual(19);
    const peak = speed.reduce((best, value, frame) => (value > (speed[best] || 0) ? frame : best), 20);
    expect(Math.abs(peak - 25)).toBeLessThanOrEqual(2);
    const [x, y] = [track.right?.x[59] ?? 0, track.right?.y[59] ?? 0];
    expect([Math.abs(x - 4 * 300) < 60, Math.abs(y - 4 * 100) < 20]).toEqual([true, true]);
  });

  it('a hand at rest keeps its place with half the presence and no speed', () => {
    const { track } = run(regions, moving);
    expect([...(track.right?.presence.slice(45) ?? [])]).toEqual(new Array<number>(15).fill(0.5));
    expect(new Set(track.right?.x.slice(45)).size).toBe(1);
  });

  it('noise of the camera is no movement', () => {
    const { findings } = run(regions, (frame) => bench(frame));
    expect(findings.map(({ code }) => code)).toEqual(['track/no-hand-found']);
  });
});
