import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../ground/numerics/index.ts';
import { emptyHandTrack, type HandTrack, handMotion, motionFigures, spectralArcLength } from './index.ts';

const rate = 30;
const timeOf = (frame: number) => Math.round((frame * 1e6) / rate);
const handAt = (
  frames: number,
  place: (seconds: number) => readonly [number, number] | undefined,
): HandTrack => {
  const hand = emptyHandTrack(frames);
  for (let frame = 0; frame < frames; frame += 1) {
    const found = place(timeOf(frame) / 1e6);
    if (found === undefined) continue;
    [hand.x[frame], hand.y[frame]] = found;
    hand.presence[frame] = 1;
  }
  return hand;
};
/** T. Flash, N. Hogan, Journal of Neuroscience 5:1688 (1985), eq. 3: a movement of 0 to 1 in the time 0 to 1. */
const minimumJerk = (share: number) => {
  const s = Math.min(1, Math.max(0, share));
  return s ** 3 * (10 - 15 * s + 6 * s * s);
};

describe('the speed of a hand', () => {
  it('of a steady movement is exact everywhere, at the ends too', () => {
    const { speed, x } = handMotion(
      handAt(40, (t) => [100 + 300 * t, 50 - 400 * t]),
      timeOf,
    );
    for (const value of speed) expect(value).toBeCloseTo(500, 1);
    expect(x[20]).toBeCloseTo(100 + 300 * (20 / 30), 2);
  });

  it('peaks at 15/8 of distance over time in a minimum-jerk movement (Flash & Hogan 1985, eq. 3 differentiated by hand)', () => {
    for (const seconds of [0.4, 0.6, 1]) {
      const { speed } = handMotion(
        handAt(90, (t) => [400 * minimumJerk((t - 1) / seconds), 0]),
        timeOf,
      );
      const peak = Math.max(...speed);
      expect(peak / ((400 * 15) / 8 / seconds)).toBeGreaterThan(0.93);
      expect(peak / ((400 * 15) / 8 / seconds)).toBeLessThan(1.01);
    }
  });

  it('is missing where the hand is missing, and knows nothing across the gap', () => {
    const jumped = handAt(60, (t) => (t < 1 ? [100, 0] : t < 1.3 ? undefined : [900, 0]));
    const { speed, x } = handMotion(jumped, timeOf);
    for (let frame = 0; frame < 60; frame += 1) {
      expect(Number.isNaN(speed[frame])).toBe(Number.isNaN(jumped.x[frame]));
      if (!Number.isNaN(jumped.x[frame]))
        expect([speed[frame], x[frame]]).toEqual([expect.closeTo(0, 3), jumped.x[frame]]);
    }
  });

  it('one false place is not a movement', () => {
    const hand = handAt(40, () => [300, 300]);
    hand.x[20] = 900;
    expect(Math.max(...handMotion(hand, timeOf).speed)).toBeLessThan(1e-3);
  });

  it('a sight of two frames has a place and no speed; three have both', () => {
    const two = handMotion(
      handAt(30, (t) => (t > 0.45 && t < 0.52 ? [10, 10] : undefined)),
      timeOf,
    );
    expect([...two.x].filter((value) => !Number.isNaN(value))).toEqual([10, 10]);
    expect([...two.speed].every(Number.isNaN)).toBe(true);
    const three = handMotion(
      handAt(3, (t) => [90 * t, 0]),
      timeOf,
    );
    for (const value of three.speed) expect(value).toBeCloseTo(90, 2);
  });

  it('uses the real time of each frame: the same movement filmed unevenly has the same speed', () => {
    const uneven = (frame: number) => timeOf(frame) + (frame % 3) * 9000;
    const hand = emptyHandTrack(60);
    for (let frame = 0; frame < 60; frame += 1) {
      hand.x[frame] = (250 * uneven(frame)) / 1e6;
      hand.y[frame] = 0;
    }
    for (const value of handMotion(hand, uneven).speed) expect(value).toBeCloseTo(250, 1);
  });

  it('of a resting hand seen with noise of 2 pixels: 95 in 100 are what Savitzky & Golay’s weights let through', () => {
    const random = seededRandom(5);
    const noise = () => 2 * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const { speed } = handMotion(
      handAt(600, () => [300 + noise(), 300 + noise()]),
      timeOf,
    );
    const sorted = [...speed].sort((a, b) => a - b);
    // Cubic over 9 points, first slope: weights (86, −142, −193, −126)/1188 to either side; Rayleigh’s 95th percentile.
    const spread = (Math.sqrt(2 * (86 ** 2 + 142 ** 2 + 193 ** 2 + 126 ** 2)) / 1188) * rate * 2;
    // The median of three makes neighbours alike, which the weights take for movement: a tenth more.
    expect((sorted[Math.floor(0.95 * sorted.length)] ?? 0) / (2.45 * spread)).toBeGreaterThan(0.8);
    expect((sorted[Math.floor(0.95 * sorted.length)] ?? 0) / (2.45 * spread)).toBeLessThan(1.15);
  });
});

describe('smoothness', () => {
  it('is −1.41403 for exp(−5t²) at 100 samples a second (Balasubramanian et al. 2015, the example beside the authors’ own program, siva82kb/SPARC smoothness.py)', () => {
    const speeds = Array.from({ length: 200 }, (_, index) => Math.exp(-5 * (-1 + index * 0.01) ** 2));
    expect(spectralArcLength(speeds, 100)?.toFixed(5)).toBe('-1.41403');
  });

  it('does not change with the size of the movement, and falls with every further submovement (Balasubramanian et al. 2015)', () => {
    const bell = (at: number) => (index: number) => Math.exp(-50 * (index * 0.01 - at) ** 2);
    const sum = (...ats: number[]) =>
      Array.from({ length: 400 }, (_, index) => ats.reduce((all, at) => all + bell(at)(index), 0));
    const one = spectralArcLength(sum(1), 100) as number;
    expect(
      spectralArcLength(
        sum(1).map((value) => value * 700),
        100,
      ),
    ).toBeCloseTo(one, 9);
    const two = spectralArcLength(sum(1, 1.6), 100) as number;
    const three = spectralArcLength(sum(1, 1.6, 2.2), 100) as number;
    expect(one).toBeGreaterThan(two);
    expect(two).toBeGreaterThan(three);
  });

  it('has nothing to say of a few samples or of a hand that rests', () => {
    expect(spectralArcLength([1, 2, 2, 1], 30)).toBeUndefined();
    expect(spectralArcLength(new Array<number>(50).fill(0), 30)).toBeUndefined();
    expect(spectralArcLength(new Array<number>(50).fill(1), 0)).toBeUndefined();
  });
});

describe('figures of a motion', () => {
  const reach = handAt(90, (t) => [300 * minimumJerk((t - 0.5) / 0.8), 400 * minimumJerk((t - 0.5) / 0.8)]);

  it('path, straight way and peak of a straight reach of 500', () => {
    const figures = motionFigures(handMotion(reach, timeOf), 12, 42, timeOf);
    expect((figures?.path ?? 0) / 500).toBeCloseTo(1, 2);
    expect(figures?.straight).toBeCloseTo(500, 0);
    expect(figures?.peak?.frame).toBe(27);
    expect(figures?.seen).toBe(1);
    expect(figures?.smoothness).toBeGreaterThan(-1.7);
  });

  it('half a circle is π times its radius long', () => {
    const circle = handAt(61, (t) => [200 * Math.cos((Math.PI * t) / 2), 200 * Math.sin((Math.PI * t) / 2)]);
    const figures = motionFigures(handMotion(circle, timeOf), 0, 60, timeOf);
    expect((figures?.path ?? 0) / (Math.PI * 200)).toBeCloseTo(1, 2);
    expect((figures?.straight ?? 0) / 400).toBeCloseTo(1, 2);
  });

  it('a gap is not bridged: the path is of what was seen, and there is no smoothness', () => {
    const gone = handAt(90, (t) => (t > 0.8 && t < 1 ? undefined : [300 * minimumJerk((t - 0.5) / 0.8), 0]));
    const figures = motionFigures(handMotion(gone, timeOf), 12, 42, timeOf);
    expect(figures?.path).toBeLessThan(250);
    expect(figures?.straight).toBeCloseTo(300, 0);
    expect(figures?.smoothness).toBeUndefined();
    expect(figures?.seen).toBeCloseTo(26 / 31, 3);
  });

  it('a hand that is never seen has no figures, and frames beyond the film do no harm', () => {
    expect(motionFigures(handMotion(emptyHandTrack(50), timeOf), 0, 49, timeOf)).toBeUndefined();
    expect(motionFigures(handMotion(reach, timeOf), 200, 300, timeOf)).toBeUndefined();
    expect(motionFigures(handMotion(reach, timeOf), 60, 900, timeOf)?.path).toBeCloseTo(0, 1);
  });
});
