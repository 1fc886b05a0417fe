import { describe, expect, it } from 'vitest';
import { reportOf, trackOf } from './hand-tracks.ts';
import type { KeptSighting } from './packed-sightings.ts';
import { assignHands } from './two-hands.ts';

const seen = (frame: number, x: number, right: number, trail: number): KeptSighting => ({
  frame,
  trail,
  presence: 0.75,
  right,
  x,
  y: 100,
  palm: 50,
  opening: 0.25,
});

const twoHands = (frame: number) => [seen(frame, 100, 0.05, 1), seen(frame, 500, 0.95, 2)];

describe('the track', () => {
  it('has the hands where they were seen, and nothing where they were not', () => {
    const sightings = [...twoHands(1), seen(2, 500, 0.95, 2)];
    const track = trackOf({ frames: 4, width: 640, height: 360 }, assignHands(sightings));
    expect([...(track.left?.x ?? [])]).toEqual([Number.NaN, 100, Number.NaN, Number.NaN]);
    expect([...(track.right?.x ?? [])]).toEqual([Number.NaN, 500, 500, Number.NaN]);
    expect([...(track.right?.presence ?? [])]).toEqual([0, 0.75, 0.75, 0]);
    expect(track.right?.opening?.[2]).toBe(0.25);
  });

  it('has no row for a hand that is never seen', () => {
    const track = trackOf({ frames: 2, width: 640, height: 360 }, assignHands([seen(0, 500, 0.95, 1)]));
    expect(track.left).toBeUndefined();
    expect(track.right).toBeDefined();
  });
});

describe('the report', () => {
  const frames = Array.from({ length: 40 }, (_, frame) => frame);

  it('counts frames by the hands in them; together they are all frames', () => {
    const sightings = frames.flatMap((frame) =>
      frame < 10 ? twoHands(frame) : frame < 16 ? [seen(frame, 500, 0.95, 2)] : [],
    );
    expect(reportOf(40, assignHands(sightings), sightings)).toEqual({
      frames: 40,
      both: 10,
      leftOnly: 0,
      rightOnly: 6,
      none: 24,
      more: 0,
    });
  });

  it('knows a third hand that stays, and takes one that flashes up for an error', () => {
    const with3 = (third: (frame: number) => boolean) => {
      const all = frames.flatMap((frame) => [
        ...twoHands(frame),
        ...(third(frame) ? [seen(frame, 300, 0.5, 3)] : []),
      ]);
      return reportOf(40, assignHands(all), all).more;
    };
    expect(with3((frame) => frame >= 20)).toBe(20);
    expect(with3((frame) => frame % 5 === 0)).toBe(0);
  });
});
