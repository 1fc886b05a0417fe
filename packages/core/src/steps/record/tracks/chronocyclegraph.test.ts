import { describe, expect, it } from 'vitest';
import { chronocyclegraph, emptyHandTrack, handMotion } from './index.ts';

const timeOf = (frame: number) => frame * 40_000;
function steady(frames: number, gap: readonly number[] = []) {
  const hand = emptyHandTrack(frames);
  for (let frame = 0; frame < frames; frame += 1) {
    if (gap.includes(frame)) continue;
    hand.x[frame] = 10 * frame;
    hand.y[frame] = 100;
  }
  return handMotion(hand, timeOf);
}
const xs = (dots: readonly { readonly x: number }[] | undefined) =>
  (dots ?? []).map(({ x }) => Math.round(x * 100) / 100 + 0);

describe('the chronocyclegraph', () => {
  it('has dots at equal time, whatever the frames: 250 units a second, a dot each 0.1 s (arithmetic)', () => {
    const [path] = chronocyclegraph({ right: steady(26) }, [{ from: 0, to: 25 }], 100_000, timeOf);
    expect(path?.hand).toBe('right');
    expect(xs(path?.dots)).toEqual([0, 25, 50, 75, 100, 125, 150, 175, 200, 225, 250]);
    expect(path?.dots.map(({ frame }) => frame)).toEqual([0, 2, 5, 7, 10, 12, 15, 17, 20, 22, 25]);
  });

  it('begins anew with each cycle, so that the dots of overlaid cycles can be compared', () => {
    const spans = [
      { from: 0, to: 5 },
      { from: 5, to: 11 },
    ];
    const paths = chronocyclegraph({ left: steady(40), right: steady(40) }, spans, 80_000, timeOf);
    expect(paths.map(({ hand, span, dots }) => [hand, span, ...xs(dots)])).toEqual([
      ['left', 0, 0, 20, 40],
      ['right', 0, 0, 20, 40],
      ['left', 1, 50, 70, 90, 110],
      ['right', 1, 50, 70, 90, 110],
    ]);
  });

  it('has no dot where the hand is not seen, and no path across', () => {
    const [path] = chronocyclegraph({ left: steady(20, [5, 6]) }, [{ from: 0, to: 12 }], 40_000, timeOf);
    expect(xs(path?.dots)).toEqual([0, 10, 20, 30, 40, 70, 80, 90, 100, 110, 120]);
    expect(xs(path?.dots.filter(({ afterGap }) => afterGap))).toEqual([0, 70]);
  });

  it('of a hand that is never seen, or beyond the film, is nothing', () => {
    const never = handMotion(emptyHandTrack(20), timeOf);
    expect(chronocyclegraph({ left: never }, [{ from: 0, to: 12 }], 40_000, timeOf)).toEqual([]);
    expect(chronocyclegraph({ left: steady(20) }, [{ from: 30, to: 50 }], 40_000, timeOf)).toEqual([]);
    expect(() => chronocyclegraph({}, [], 0, timeOf)).toThrow(RangeError);
  });
});
