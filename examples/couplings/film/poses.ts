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
    [-4, 4, 6, 0, 0],
    [38, 28, 14, 2, 0],
    [40, 32, 14, 0, 0],
    [42, 36, 16, -2, 0],
    [42, 36, 16, -5, 0],
  ),
  gripWide: pose(
    [6, 12, 18, 0, 0],
    [50, 34, 20, 2, 0],
    [52, 38, 20, 0, 0],
    [56, 44, 24, 0, 0],
    [58, 46, 24, -2, 0],
  ),
  /** Tips of thumb and first fingers nearly together. */
  openSmall: pose(
    [4, 12, 14, 0, 0],
    [46, 34, 20, 2, 0],
    [48, 38, 22, 0, 0],
    [48, 44, 24, -2, 0],
    [46, 44, 24, -4, 0],
  ),
  gripSmall: pose(
    [14, 20, 22, 0, 0],
    [56, 42, 26, 1, 0],
    [58, 46, 26, 0, 0],
    [58, 50, 28, -1, 0],
    [56, 50, 28, -3, 0],
  ),
} satisfies Record<string, HandPose>;

export type PoseName = keyof typeof poses;

/** Between two poses, 0 being the first. */
export function blendPose(from: HandPose, to: HandPose, share: number): HandPose {
  const mix = (name: FingerName) =>
    from[name].map((value, index) => value + ((to[name][index] ?? 0) - value) * share) as unknown as FingerBend;
  return pose(mix('thumb'), mix('index'), mix('middle'), mix('ring'), mix('pinky'));
}
