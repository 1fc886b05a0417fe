import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { motionKinds } from '../../../ground/tables/index.ts';
import { chartFacts } from './facts.ts';
import { chartedStudy, type ShortMotion, type ShortStudy } from './testing/charted-study.ts';
import { groupTimes, kindTotals } from './totals.ts';

function facts(short: ShortStudy) {
  const result = chartFacts(chartedStudy(short), 'm');
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

// At 25 frames a second a frame lasts 40 000 µs exactly.
const short: ShortStudy = {
  framesPerSecond: 25,
  left: [
    ['TE', 10],
    ['G', 5],
    ['H', 60],
    ['I', 10],
    ['unmarked', 15],
  ],
  right: [
    ['TE', 10],
    ['G', 5],
    ['TE', 5],
    ['P', 20],
    ['PP', 20],
    ['R', 20],
    ['F', 20],
  ],
  cycles: [0, 100],
};

describe('totals', () => {
  it('counts and sums each motion of each hand (by hand, 25 frames a second)', () => {
    const totals = kindTotals(facts(short));
    expect(totals.map((total) => total.kind)).toEqual(['TE', 'G', 'H', 'P', 'PP', 'F', 'I', 'R', 'unmarked']);
    expect(totals[0]).toEqual({
      kind: 'TE',
      left: { count: 1, time: 400_000 },
      right: { count: 2, time: 600_000 },
    });
  });

  it('pre-position is effective with Niebel & Freivalds and not with Groover; inspect and rest the other way round', () => {
    const niebel = groupTimes(facts(short), 'niebel-freivalds');
    const groover = groupTimes(facts(short), 'groover');
    expect(niebel.right).toEqual({
      effective: 1_600_000,
      ineffective: 1_600_000,
      unlisted: 800_000,
      effectiveShare: 0.4,
    });
    expect(groover.right).toEqual({
      effective: 1_600_000,
      ineffective: 1_600_000,
      unlisted: 800_000,
      effectiveShare: 0.4,
    });
    // The left hand: TE 10 and G 5 effective for both, I 10 for Groover only, H 60 for neither; 85 frames are marked.
    expect(niebel.left.effectiveShare).toBeCloseTo(15 / 85, 12);
    expect(groover.left.effectiveShare).toBeCloseTo(25 / 85, 12);
  });

  it('leaves out of the share what nobody marked', () => {
    const { left } = groupTimes(
      facts({
        left: [
          ['G', 10],
          ['unmarked', 90],
        ],
        right: [['H', 100]],
        cycles: [0, 100],
      }),
      'groover',
    );
    expect(left.effectiveShare).toBe(1);
  });

  it('has no share for a hand in which nothing is marked', () => {
    const { left } = groupTimes(
      facts({ left: [['unmarked', 100]], right: [['H', 100]], cycles: [0, 100] }),
      'groover',
    );
    expect(left.effectiveShare).toBeUndefined();
  });

  it('the totals of a hand add up to the cycle, frame by frame', () => {
    const motion = fc.tuple(fc.constantFrom(...motionKinds), fc.integer({ min: 1, max: 60 }));
    const row = fc.array(motion, { minLength: 1, maxLength: 40 }) as fc.Arbitrary<ShortMotion[]>;
    fc.assert(
      fc.property(row, row, (left, right) => {
        const frames = (motions: readonly ShortMotion[]) => motions.reduce((sum, item) => sum + item[1], 0);
        const end = Math.min(frames(left), frames(right));
        const result = chartFacts(chartedStudy({ framesPerSecond: 25, left, right, cycles: [0, end] }), 'm');
        fc.pre(result.ok);
        if (!result.ok) return;
        for (const [hand, motions] of [
          ['left', left],
          ['right', right],
        ] as const) {
          expect(kindTotals(result.value).map((total) => [total.kind, total[hand].time])).toEqual(
            byFrames(
              motions,
              end,
              kindTotals(result.value).map((total) => total.kind),
            ),
          );
        }
      }),
      { seed: 21 },
    );
  });
});

/** The same totals by going through the frames one by one. */
function byFrames(
  motions: readonly ShortMotion[],
  end: number,
  kinds: readonly string[],
): [string, number][] {
  const frames = motions.flatMap(([kind, length]) => Array.from({ length }, () => kind)).slice(0, end);
  return kinds.map((kind) => [kind, frames.filter((frame) => frame === kind).length * 40_000]);
}
