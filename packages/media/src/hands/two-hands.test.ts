import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { KeptSighting } from './packed-sightings.ts';
import { assignHands, type TwoHands } from './two-hands.ts';

type Side = 'left' | 'right';

/** A sighting 100 pixels large; `looks` is what the model believes. */
function seen(frame: number, x: number, y: number, looks: Side, trail = 1, sure = 0.95): KeptSighting {
  const right = looks === 'right' ? sure : 1 - sure;
  return { frame, trail, presence: 0.9, right, x, y, palm: 100, opening: 0.5 };
}

const ofFrame = (hands: ReadonlyMap<number, TwoHands>, side: Side) => (frame: number) =>
  hands.get(frame)?.[side]?.x;

/** Small numbers that repeat, between 0 and 1. */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

describe('whose hand it is', () => {
  it('two hands that cross keep their names, though both look like a right hand while they meet', () => {
    const sightings = Array.from({ length: 60 }, (_, frame) => {
      const meet = frame > 20 && frame < 40;
      return [
        seen(frame, 200 + 10 * frame, 300, meet ? 'right' : 'left', 1),
        seen(frame, 800 - 10 * frame, 380, 'right', 2),
      ];
    }).flat();
    const hands = assignHands(sightings);
    for (let frame = 0; frame < 60; frame += 1) {
      expect([frame, ofFrame(hands, 'left')(frame)]).toEqual([frame, 200 + 10 * frame]);
      expect([frame, ofFrame(hands, 'right')(frame)]).toEqual([frame, 800 - 10 * frame]);
    }
  });

  it('hands that hide each other for some frames come out of it as they went in, though misjudged at first', () => {
    const sightings = Array.from({ length: 40 }, (_, frame) => {
      const confused = frame > 15 && frame < 28;
      const left = seen(frame, 200 + 15 * frame, 300, confused ? 'right' : 'left', frame < 18 ? 1 : 3);
      const right = seen(frame, 800 - 15 * frame, 300, confused ? 'left' : 'right', frame < 18 ? 2 : 4);
      // From frame 18 to 22 only one blob is seen.
      return frame >= 18 && frame <= 22 ? [] : [left, right];
    }).flat();
    const hands = assignHands(sightings);
    expect(ofFrame(hands, 'left')(10)).toBe(350);
    expect(ofFrame(hands, 'left')(23)).toBe(200 + 15 * 23);
    expect(ofFrame(hands, 'left')(30)).toBe(650);
  });

  it('a hand alone is named by what it looks like on the whole, not in single frames', () => {
    const random = chance(4);
    const sightings = Array.from({ length: 100 }, (_, frame) =>
      seen(frame, 400 + frame, 300, random() < 0.3 ? 'left' : 'right', 1, 0.9),
    );
    const hands = assignHands(sightings);
    expect([...hands.values()].every((two) => two.right !== undefined && two.left === undefined)).toBe(true);
    expect(hands.size).toBe(100);
  });

  it('in a mirror image left and right change places', () => {
    const sightings = Array.from({ length: 20 }, (_, frame) => [
      seen(frame, 100, 300, 'left', 1),
      seen(frame, 900, 300, 'right', 2),
    ]).flat();
    const plain = assignHands(sightings);
    const mirrored = assignHands(sightings, true);
    for (let frame = 0; frame < 20; frame += 1) {
      expect(mirrored.get(frame)?.left?.x).toBe(plain.get(frame)?.right?.x);
      expect(mirrored.get(frame)?.right?.x).toBe(plain.get(frame)?.left?.x);
    }
  });

  it('of three hands the two that go on are kept', () => {
    const sightings = Array.from({ length: 50 }, (_, frame) => [
      seen(frame, 200 + frame, 300, 'left', 1),
      seen(frame, 700 - frame, 300, 'right', 2),
      ...(frame % 10 === 5 ? [seen(frame, 450, 50, 'left', 10 + frame)] : []),
    ]).flat();
    const hands = assignHands(sightings);
    for (let frame = 0; frame < 50; frame += 1) {
      expect(ofFrame(hands, 'left')(frame)).toBe(200 + frame);
      expect(ofFrame(hands, 'right')(frame)).toBe(700 - frame);
    }
  });

  it('a frame never has one sighting for both hands, and every sighting it names was seen', () => {
    const one = fc.record({
      frame: fc.nat(30),
      trail: fc.nat(4),
      x: fc.nat(1280),
      y: fc.nat(720),
      right: fc.double({ min: 0, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(one, { maxLength: 60 }), fc.boolean(), (all, mirrored) => {
        const sightings = all
          .map((each) => ({ ...each, presence: 0.9, palm: 80, opening: 0.5 }))
          .sort((a, b) => a.frame - b.frame);
        const hands = assignHands(sightings, mirrored);
        const frames = new Set(sightings.map(({ frame }) => frame));
        for (const [frame, { left, right }] of hands) {
          expect(frames.has(frame)).toBe(true);
          for (const hand of [left, right]) {
            if (hand !== undefined) expect(sightings).toContain(hand);
            if (hand !== undefined) expect(hand.frame).toBe(frame);
          }
          if (left !== undefined) expect(left).not.toBe(right);
        }
      }),
      { seed: 11 },
    );
  });

  it('hands that move, meet, vanish and are misjudged now and then keep their names (tracks made with known hands)', () => {
    let [wrong, all, misjudged] = [0, 0, 0];
    for (let seed = 1; seed <= 20; seed += 1) {
      const random = chance(seed);
      const trails = { left: 1, right: 1001 };
      const sightings = Array.from({ length: 300 }, (_, frame) =>
        (['left', 'right'] as const).flatMap((side) => {
          const phase = frame / 25 + (side === 'left' ? 0 : 2);
          const x = 640 + 300 * Math.sin(phase) + 8 * (random() - 0.5);
          const y = 360 + (side === 'left' ? 30 : -30) + 100 * Math.sin(phase * 0.7);
          const gone = random() < 0.1;
          const looks = random() < 0.2 ? (side === 'left' ? 'right' : 'left') : side;
          if (gone) trails[side] += 1;
          else if (looks !== side) misjudged += 1;
          return gone
            ? []
            : [
                {
                  ...seen(frame, x, y, looks, trails[side]),
                  opening: side === 'left' ? 0 : 1,
                },
              ];
        }),
      ).flat();
      for (const { left, right } of assignHands(sightings).values()) {
        all += (left ? 1 : 0) + (right ? 1 : 0);
        wrong += (left?.opening === 1 ? 1 : 0) + (right?.opening === 0 ? 1 : 0);
      }
    }
    expect(misjudged).toBeGreaterThan(1500);
    expect(all).toBeGreaterThan(10_000);
    expect(wrong / all).toBeLessThan(0.005);
  });
});
