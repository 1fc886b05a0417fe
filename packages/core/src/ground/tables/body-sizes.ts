import type { SourceId } from './sources.ts';

export type BodySex = 'women' | 'men';
/** Share of the group that is smaller, in percent. */
export type BodyPercentile = 5 | 50 | 95;

/** Sizes of one percentile of women or of men, millimetres; each is a percentile by itself, nobody has all of them. */
export interface BodySizes {
  /** Elbow to the centre of the grip: the radius of the normal area. */
  readonly forearm: number;
  /** Upper arm from the shoulder to the elbow joint. */
  readonly upperArm: number;
  /** Straight arm on a surface at the height of the seated elbow, about the shoulder: the maximum area. */
  readonly reachAtElbow: number;
  /** Shoulder above the elbow, sitting. */
  readonly shoulderAboveElbow: number;
  /** Shoulder above the elbow, standing with the arm hanging. */
  readonly shoulderAboveElbowStanding: number;
  /** Half the breadth between the shoulders. */
  readonly halfShoulders: number;
  /** Elbow above the floor without shoes, sitting on a seat at the hollow of the knee. */
  readonly elbowSitting: number;
  /** Elbow above the floor without shoes, standing: shoulder height less upper arm, for it was not measured itself. */
  readonly elbowStanding: number;
  /** Top of the thighs above the floor, sitting, without shoes. */
  readonly thighs: number;
}

/** Percentiles computed from the public file of the survey; printed to 0.1 cm where two figures are joined. */
export const bodySizesSource: SourceId = 'ansur-2';

function sizes(
  forearm: number,
  upperArm: number,
  reachAtElbow: number,
  [shoulderAboveElbow, shoulderAboveElbowStanding]: readonly [number, number],
  halfShoulders: number,
  [elbowSitting, elbowStanding, thighs]: readonly [number, number, number],
): BodySizes {
  return {
    forearm,
    upperArm,
    reachAtElbow,
    shoulderAboveElbow,
    shoulderAboveElbowStanding,
    halfShoulders,
    elbowSitting,
    elbowStanding,
    thighs,
  };
}

export const bodySizes: Readonly<Record<BodySex, Readonly<Record<BodyPercentile, BodySizes>>>> = {
  women: {
    5: sizes(290, 283, 488, [298, 307], 168, [570, 927, 511]),
    50: sizes(316, 311, 533, [331, 334], 183, [620, 1000, 555]),
    95: sizes(350, 340, 588, [365, 363], 198, [675, 1078, 604]),
  },
  men: {
    5: sizes(320, 307, 535, [322, 334], 192, [619, 1000, 563]),
    50: sizes(348, 335, 583, [358, 363], 208, [675, 1076, 610]),
    95: sizes(379, 365, 634, [394, 394], 224, [733, 1160, 661]),
  },
};
