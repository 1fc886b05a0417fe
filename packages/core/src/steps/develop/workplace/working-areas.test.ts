import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bodySizes } from '../../../ground/tables/index.ts';
import { type Person, peopleRanges, type ReachChoice } from './people.ts';
import { areaOf, areaOutline, armReach, worseArea } from './working-areas.ts';

const inch = 25.4;
const sitting: ReachChoice = { people: 'mixed', posture: 'sitting' };
const woman = (percentile: Person['percentile']): Person => ({ sex: 'women', percentile });
const man = (percentile: Person['percentile']): Person => ({ sex: 'men', percentile });

describe('radii computed from ANSUR II (NATICK/TR-15/007), seated at the height of the elbow', () => {
  it.each([
    [woman(5), 290, 488],
    [woman(50), 316, 533],
    [woman(95), 350, 588],
    [man(5), 320, 535],
    [man(50), 348, 583],
    [man(95), 379, 634],
  ])(
    '%o: forearm %d mm about the elbow, straight arm %d mm about the shoulder',
    (person, normal, maximum) => {
      const reach = armReach(person, 'right', sitting);
      expect(reach.normal).toBeCloseTo(normal, 6);
      expect(reach.maximum).toBeCloseTo(maximum, 6);
    },
  );

  it('at the median straight arm and shoulder height of the survey give them by Pythagoras, to 0.3 %: grip reach 627 and 684 mm, shoulder 331 and 358 mm above the elbow', () => {
    for (const [person, grip, above] of [
      [woman(50), 627, 331],
      [man(50), 684, 358],
    ] as const) {
      const { maximum } = armReach(person, 'left', sitting);
      expect(Math.abs(maximum / Math.sqrt(grip ** 2 - above ** 2) - 1)).toBeLessThan(0.003);
    }
  });

  it('widths of both hands in the survey: 999 and 1431 mm for women, 1112 and 1580 mm for men, at the median', () => {
    for (const [person, normal, maximum] of [
      [woman(50), 999, 1431],
      [man(50), 1112, 1580],
    ] as const) {
      const [left, right] = [armReach(person, 'left', sitting), armReach(person, 'right', sitting)];
      const width = (radius: 'normal' | 'maximum') =>
        right.shoulder.x + right[radius] - (left.shoulder.x - left[radius]);
      expect(Math.abs(width('normal') - normal)).toBeLessThan(3);
      expect(Math.abs(width('maximum') - maximum)).toBeLessThan(3);
    }
  });

  it('widths of the textbook for women: normal 40 in, maximum 48 to 58 in (IASRI e-course, lesson 44); depth of the maximum area 24 in at the most', () => {
    const outlines = (area: 'normal' | 'maximum') =>
      (['left', 'right'] as const).flatMap((hand) =>
        areaOutline(armReach(woman(50), hand, sitting), area, 181),
      );
    const width = (area: 'normal' | 'maximum') => {
      const xs = outlines(area).map(({ x }) => x);
      return (Math.max(...xs) - Math.min(...xs)) / inch;
    };
    expect(Math.abs(width('normal') - 40)).toBeLessThan(1);
    expect(width('maximum')).toBeGreaterThan(48);
    expect(width('maximum')).toBeLessThan(58);
    expect(Math.max(...outlines('maximum').map(({ y }) => y)) / inch).toBeLessThan(24);
  });

  it('primary zone 13 to 17 in from each shoulder (State Fund): between the normal and the maximum radius of women', () => {
    const { normal, maximum } = armReach(woman(50), 'right', sitting);
    expect(normal / inch).toBeLessThan(13);
    expect(maximum / inch).toBeGreaterThan(17);
  });
});

describe('laws of the areas', () => {
  const people = fc.constantFrom<Person>(woman(5), woman(50), woman(95), man(5), man(50), man(95));
  const height = fc.integer({ min: -200, max: 200 });

  it('every point of an outline lies on the bench and at the radius of its area, and so does its mirror for the other hand', () => {
    fc.assert(
      fc.property(people, height, fc.integer({ min: 0, max: 250 }), (person, mm, behindEdge) => {
        const choice: ReachChoice = { ...sitting, surface: { from: 'elbow', mm }, behindEdge };
        for (const area of ['normal', 'maximum'] as const) {
          const right = armReach(person, 'right', choice);
          const outline = areaOutline(right, area);
          const mirrored = areaOutline(armReach(person, 'left', choice), area);
          outline.forEach(({ x, y }, index) => {
            expect(y).toBeGreaterThanOrEqual(0);
            expect(Math.hypot(x - right.shoulder.x, y - right.shoulder.y)).toBeCloseTo(right[area], 3);
            expect(mirrored.at(-1 - index)?.x).toBeCloseTo(-x, 6);
          });
        }
      }),
      { seed: 51, numRuns: 100 },
    );
  });

  it('the normal area is within the maximum area, the farther the shoulders stand back the less is reached', () => {
    fc.assert(
      fc.property(people, height, fc.integer({ min: 0, max: 200 }), (person, mm, back) => {
        const choice: ReachChoice = { ...sitting, surface: { from: 'elbow', mm } };
        const { normal, maximum } = armReach(person, 'left', choice);
        expect(normal).toBeLessThan(maximum);
        const depth = (behindEdge: number) =>
          Math.max(
            0,
            ...areaOutline(armReach(person, 'left', { ...choice, behindEdge }), 'maximum').map(({ y }) => y),
          );
        expect(depth(back)).toBeCloseTo(Math.max(0, depth(0) - back), 6);
      }),
      { seed: 52, numRuns: 100 },
    );
  });

  it('standing at a bench of one height the short reach up and the tall reach down', () => {
    const choice: ReachChoice = {
      people: 'mixed',
      posture: 'standing',
      surface: { from: 'floor', mm: 1050 },
    };
    // Elbow with shoes: 927 + 25 and 1160 + 25.
    const small = armReach(woman(5), 'right', choice);
    expect(small.normal).toBeCloseTo(Math.sqrt(290 ** 2 - 98 ** 2), 6);
    const large = armReach(man(95), 'right', choice);
    expect(large.normal).toBeCloseTo(Math.sqrt(379 ** 2 - 135 ** 2), 6);
  });
});

describe('a place on the bench', () => {
  const named = (x: number, y: number) => ({ name: 'Ring bin', at: { x, y } });

  it('3-4-5: 300 across and 400 away from the shoulder are 500, too far for the smallest and within reach of the largest', () => {
    const found = areaOf(named(168 + 300, 400), 'right', sitting);
    expect(found.smallest).toEqual({ distance: 500, area: 'beyond' });
    expect(found.largest.area).toBe('maximum');
    expect([found.reached, worseArea(found)]).toEqual([false, 'beyond']);
    expect(found.sentence).toBe(
      'Ring bin lies out of reach of the right hand for women of the 5th percentile (12 mm beyond the straight arm), and in the maximum area for men of the 95th percentile.',
    );
  });

  it('in front of the shoulder it is in the normal area of everybody', () => {
    expect(areaOf(named(180, 250), 'right', sitting).sentence).toBe(
      'Ring bin lies in the normal area of the right hand for everybody from women of the 5th percentile to men of the 95th percentile.',
    );
  });

  it('and what nobody reaches is said with how far', () => {
    const { largest } = peopleRanges.mixed;
    const far = Math.hypot(900 - bodySizes.men[95].halfShoulders, 900) - 634;
    expect(largest).toEqual(man(95));
    expect(areaOf(named(900, 900), 'right', sitting).sentence).toContain(
      `for everybody from women of the 5th percentile to men of the 95th percentile (${Math.round(far)} mm beyond`,
    );
  });
});
