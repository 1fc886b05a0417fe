import type { Hand } from '../../../ground/study/index.ts';
import type { WorkArea } from '../../../ground/tables/index.ts';
import { numberText } from '../../../ground/units/index.ts';
import {
  type Person,
  peopleRanges,
  personText,
  type ReachChoice,
  sizesOf,
  surfaceAboveElbow,
} from './people.ts';

/** Millimetres: x to the operator's right from the middle, y away from the near edge. */
export interface BenchPoint {
  readonly x: number;
  readonly y: number;
}

/** What one hand of a person reaches on the surface. Elbow and shoulder are one point in plan, for the upper arm hangs. */
export interface ArmReach {
  readonly shoulder: BenchPoint;
  /** Sweep of the forearm about the elbow, millimetres; 0 where the surface is out of its height. */
  readonly normal: number;
  /** Sweep of the straight arm about the shoulder, millimetres; 0 where the surface is out of its height. */
  readonly maximum: number;
}

/**
 * An arm of two links above a level surface: the forearm about a hanging elbow, the straight arm about the shoulder, each cut
 * at the height of the surface by Pythagoras. The geometry is ours (definition of the areas: Sanders and McCormick, secondary).
 * The elbow is taken to stay where it is; that it swings outward and makes the normal area wider and shallower (Squires 1956,
 * from memory) is left out, for no coefficients were found.
 */
export function armReach(person: Person, hand: Hand, choice: ReachChoice): ArmReach {
  const sizes = sizesOf(person);
  const above = surfaceAboveElbow(person, choice);
  // Percentiles of a root are not roots of percentiles, so the arm is the one that gives the percentile of the reach.
  const arm = Math.hypot(sizes.reachAtElbow, sizes.shoulderAboveElbow);
  const shoulder = choice.posture === 'sitting' ? sizes.shoulderAboveElbow : sizes.shoulderAboveElbowStanding;
  return {
    shoulder: {
      x: hand === 'left' ? -sizes.halfShoulders : sizes.halfShoulders,
      y: 0 - (choice.behindEdge ?? 0),
    },
    normal: cut(sizes.forearm, above),
    maximum: cut(arm, shoulder - above),
  };
}

function cut(length: number, height: number): number {
  return Math.sqrt(Math.max(0, length ** 2 - height ** 2));
}

/**
 * The outline of an area on the bench, counter-clockwise from its right end at the near edge; empty where nothing of the bench
 * is reached.
 * @param points along the arc, at least 2
 */
export function areaOutline(
  { shoulder, normal, maximum }: ArmReach,
  area: 'normal' | 'maximum',
  points = 49,
): readonly BenchPoint[] {
  const radius = area === 'normal' ? normal : maximum;
  if (radius <= -shoulder.y) return [];
  const begin = Math.asin(Math.max(-1, -shoulder.y / radius));
  const turn = (Math.PI - 2 * begin) / (points - 1);
  return Array.from({ length: points }, (_, index) => {
    const angle = begin + index * turn;
    return {
      x: shoulder.x + radius * Math.cos(angle),
      // Rounding must not put the ends of the arc before the edge.
      y: Math.max(0, shoulder.y + radius * Math.sin(angle)),
    };
  });
}

export interface PlaceArea {
  /** From the shoulder in plan, millimetres, and the area, for the smallest and for the largest person. */
  readonly smallest: { readonly distance: number; readonly area: WorkArea };
  readonly largest: { readonly distance: number; readonly area: WorkArea };
  /** Everybody of the range reaches it. */
  readonly reached: boolean;
  readonly sentence: string;
}

const rank: Readonly<Record<WorkArea, number>> = { normal: 0, maximum: 1, beyond: 2 };

/** In which area of a hand a place lies, for the smallest and the largest person of the choice, and in words. */
export function areaOf(
  place: { readonly name: string; readonly at: BenchPoint },
  hand: Hand,
  choice: ReachChoice,
): PlaceArea {
  const { smallest, largest } = peopleRanges[choice.people];
  const one = areaFor(place.at, smallest, hand, choice);
  const other = areaFor(place.at, largest, hand, choice);
  return {
    smallest: { distance: one.distance, area: one.area },
    largest: { distance: other.distance, area: other.area },
    reached: one.area !== 'beyond' && other.area !== 'beyond',
    sentence: sentenceOf(place.name, hand, { ...one, who: smallest }, { ...other, who: largest }),
  };
}

/** The worse of the areas of the two ends of the range. */
export function worseArea({ smallest, largest }: PlaceArea): WorkArea {
  return rank[smallest.area] >= rank[largest.area] ? smallest.area : largest.area;
}

interface Found {
  readonly distance: number;
  readonly area: WorkArea;
  readonly maximum: number;
}

function areaFor(at: BenchPoint, person: Person, hand: Hand, choice: ReachChoice): Found {
  const { shoulder, normal, maximum } = armReach(person, hand, choice);
  const distance = Math.hypot(at.x - shoulder.x, at.y - shoulder.y);
  return {
    distance,
    maximum,
    area: distance <= normal ? 'normal' : distance <= maximum ? 'maximum' : 'beyond',
  };
}

const areaNames = {
  normal: 'in the normal area',
  maximum: 'in the maximum area',
  beyond: 'out of reach',
} as const;

function sentenceOf(
  name: string,
  hand: Hand,
  small: Found & { readonly who: Person },
  large: Found & { readonly who: Person },
): string {
  const far = (found: typeof small) =>
    found.area === 'beyond'
      ? ` (${numberText(found.distance - found.maximum, 0)} mm beyond the straight arm)`
      : '';
  if (small.area === large.area) {
    const who = `from ${personText(small.who)} to ${personText(large.who)}`;
    return `${name} lies ${areaNames[small.area]} of the ${hand} hand for everybody ${who}${far(large)}.`;
  }
  return `${name} lies ${areaNames[small.area]} of the ${hand} hand for ${personText(small.who)}${far(small)}, and ${areaNames[large.area]} for ${personText(large.who)}${far(large)}.`;
}
