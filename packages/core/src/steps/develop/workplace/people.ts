import {
  type BodyPercentile,
  type BodySex,
  type BodySizes,
  bodySizes,
  shoes,
} from '../../../ground/tables/index.ts';
import type { WorkBench } from '../work/index.ts';

export interface Person {
  readonly sex: BodySex;
  readonly percentile: BodyPercentile;
}

export type Posture = 'sitting' | 'standing';

/** For whom a bench is laid out: from the smallest to the largest person that is to work at it. */
export type PeopleRange = 'women' | 'men' | 'mixed';

export const peopleRanges: Readonly<
  Record<PeopleRange, { readonly name: string; readonly smallest: Person; readonly largest: Person }>
> = {
  women: {
    name: 'women, 5th to 95th percentile',
    smallest: { sex: 'women', percentile: 5 },
    largest: { sex: 'women', percentile: 95 },
  },
  men: {
    name: 'men, 5th to 95th percentile',
    smallest: { sex: 'men', percentile: 5 },
    largest: { sex: 'men', percentile: 95 },
  },
  mixed: {
    name: 'women of the 5th to men of the 95th percentile',
    smallest: { sex: 'women', percentile: 5 },
    largest: { sex: 'men', percentile: 95 },
  },
};

/** Where the hands work: set for each person from the elbow (a bench or seat that moves), or one height above the floor. */
export type SurfaceHeight =
  | { readonly from: 'elbow'; readonly mm: number }
  | { readonly from: 'floor'; readonly mm: number };

export interface ReachChoice {
  readonly people: PeopleRange;
  readonly posture: Posture;
  /** At the elbow when left out. */
  readonly surface?: SurfaceHeight | undefined;
  /** How far the shoulders are behind the near edge of the bench, millimetres; 0 (as close as anybody can be) when left out. */
  readonly behindEdge?: number | undefined;
}

export const usualReach: ReachChoice = { people: 'mixed', posture: 'sitting' };

/** For whom a work says that its bench is laid out. */
export function reachOfBench(bench: WorkBench | undefined): ReachChoice {
  if (bench === undefined) return usualReach;
  const { people, posture } = usualReach;
  const surface = bench.height === undefined ? {} : { surface: bench.height };
  return { people: bench.people ?? people, posture: bench.posture ?? posture, ...surface };
}

export function personText({ sex, percentile }: Person): string {
  return `${sex} of the ${percentile}th percentile`;
}

export function sizesOf({ sex, percentile }: Person): BodySizes {
  return bodySizes[sex][percentile];
}

/** Height of the elbow above the floor, with shoes, millimetres. */
export function elbowHeight(person: Person, posture: Posture): number {
  const { elbowSitting, elbowStanding } = sizesOf(person);
  return shoes + (posture === 'sitting' ? elbowSitting : elbowStanding);
}

/** The surface above the elbow of a person, millimetres; below it where negative. */
export function surfaceAboveElbow(person: Person, { posture, surface }: ReachChoice): number {
  if (surface === undefined) return 0;
  return surface.from === 'elbow' ? surface.mm : surface.mm - elbowHeight(person, posture);
}
