export const fingerNames = ['thumb', 'index', 'middle', 'ring', 'pinky'] as const;
type FingerName = (typeof fingerNames)[number];

/** Degrees: bend of the three joints from the palm outwards, then spread and twist of the first. */
type FingerBend = readonly [number, number, number, number, number];
export type HandPose = Readonly<Record<FingerName, FingerBend>>;

function pose(
  thumb: FingerBend,
  index: FingerBend,
  middle: FingerBend,
  ring: FingerBend,
  pinky: FingerBend,
): HandPose {
  return { thumb, index, middle, ring, pinky };
}

/** Bends that look right for each way of holding; found by looking at the pictures. */
export const poses = {
  relaxed: pose(
    [8, 14, 10, 0, 0],
    [24, 26, 14, 0, 0],
    [28, 32, 16, 0, 0],
    [32, 36, 18, 0, 0],
    [34, 36, 18, 0, 0],
  ),
  /** Fingers and thumb open around a part of about 40 mm. */
  openWide: pose(
    [-6, 2, 4, 0, 0],
    [20, 20, 10, 4, 0],
    [22, 23, 10, 0, 0],
    [23, 24, 12, -3, 0],
    [22, 24, 12, -7, 0],
  ),
  gripWide: pose(
    [2, 8, 12, 0, 0],
    [30, 30, 16, 3, 0],
    [32, 33, 16, 0, 0],
    [33, 34, 18, -2, 0],
    [32, 34, 18, -5, 0],
  ),
  /** Tips of thumb and first fingers nearly together. */
  openSmall: pose(
    [2, 10, 12, 0, 0],
    [28, 32, 18, 2, 0],
    [29, 33, 18, 0, 0],
    [25, 28, 16, -3, 0],
    [20, 26, 14, -7, 0],
  ),
  gripSmall: pose(
    [10, 18, 22, 0, 0],
    [38, 40, 24, 1, 0],
    [38, 41, 24, 0, 0],
    [30, 34, 20, -3, 0],
    [24, 30, 18, -7, 0],
  ),
} satisfies Record<string, HandPose>;

export type PoseName = keyof typeof poses;

/** Between two poses, 0 being the first. */
export function blendPose(from: HandPose, to: HandPose, share: number): HandPose {
  const mix = (name: FingerName) =>
    from[name].map(
      (value, index) => value + ((to[name][index] ?? 0) - value) * share,
    ) as unknown as FingerBend;
  return pose(mix('thumb'), mix('index'), mix('middle'), mix('ring'), mix('pinky'));
}
