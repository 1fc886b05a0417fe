import type { MotionKind } from './motion-kinds.ts';
import type { SourceId } from './sources.ts';

/** What a law needs to know: distance and width of the target or clearance of the fit, in millimetres. */
export interface Movement {
  readonly distance: number;
  readonly width: number;
  /** Of what the hand carries, in grams; left out, as light as a pencil. */
  readonly weight?: number | undefined;
}

/** A published law of movement, or a guess of ours where nothing is published. Times in milliseconds. */
export interface MovementLaw {
  readonly name: string;
  readonly kinds: readonly MotionKind[];
  /** The law in words, with its parameters. */
  readonly form: string;
  readonly population: string;
  /** Where it was found to hold. */
  readonly range: string;
  readonly source: SourceId;
  /** Standard deviation of the logarithm of a time about the law, for one population at one pace. */
  readonly spread: number;
  readonly time: (movement: Movement) => number;
}

/** 12.8 + 94.7·log₂(2A/W), the line through the 16 printed means of light tapping; computed from them. */
export const tapping = { a: 12.8, b: 94.675 } as const;
/** 50 + 16.5·√A, the line through the four printed means with the widest target; computed from them. */
export const ballistic = { a: 50.02, b: 16.464 } as const;
/** 531 + 20.5·√A + 56.3·log₂(1/c), the plane through the 16 means of discs put over pins; computed from them. */
export const discTransfer = { a: 530.92, b: 20.504, c: 56.25 } as const;

/**
 * A stylus of 1 lb took 4.7 % longer than one of 1 oz, the mean over 16 pairs of means; the heavy ones are from memory. What
 * lies between, and what is heavier, is taken to go with the weight. Ours.
 */
export const heavierLoad = {
  light: 28.35,
  heavy: 453.6,
  longer: 0.0474,
  source: 'fitts-tapping-heavy',
} as const;

/** The other hand took so many times as long as the preferred one at moving blocks, mean of women and men. */
export const otherHandSlower = { factor: 1.104, source: 'box-and-block' } as const;

/** A grasp and a release are within the disc transfer; how its constant is shared out is ours. */
const graspTime = 150;
const releaseTime = 60;
/** Clearances under 1.6 and over 12.7 mm were not tried; the fit takes no less than this. Ours. */
const leastFit = 60;

function moveTime({ distance, width, weight = 0 }: Movement): number {
  if (distance <= 0) return 0;
  const { light, heavy, longer } = heavierLoad;
  const carried = 1 + (longer * Math.max(0, weight - light)) / (heavy - light);
  return carried * freeMoveTime(distance, width);
}

function freeMoveTime(distance: number, width: number): number {
  const easy = ballistic.a + ballistic.b * Math.sqrt(distance);
  const exact = tapping.a + tapping.b * Math.log2((2 * distance) / width);
  return Math.max(easy, exact);
}

/** What a disc transfer takes beyond its move, without grasp and release. */
function fitTime({ width: clearance }: Movement): number {
  const typical = 250;
  const total = discTransfer.a + discTransfer.b * Math.sqrt(typical) - discTransfer.c * Math.log2(clearance);
  const move = ballistic.a + ballistic.b * Math.sqrt(typical);
  return Math.max(leastFit, total - move - graspTime - releaseTime);
}

function guess(
  name: string,
  kinds: readonly MotionKind[],
  milliseconds: number,
  spread: number,
): MovementLaw {
  return {
    name,
    kinds,
    form: `${milliseconds} ms, a wide guess: no law is published for it. Time it, or write its time.`,
    population: 'none',
    range: 'none',
    source: 'ours',
    spread,
    time: () => milliseconds,
  };
}

/**
 * Laws for motions that nobody has timed yet. The published ones are of fast bursts by students; a working pace is
 * slower, so they are used only with the pace of a record, or with a wide spread.
 */
export const movementLaws = {
  move: {
    name: 'Move of the hand to a target',
    kinds: ['TE', 'TL'],
    form: 'the longer of 50 + 16.5·√A and 12.8 + 94.7·log₂(2A/W) ms (A distance, W width of the target in mm), 4.7 % longer with a load of 1 lb',
    population: '16 right-handed male students, tapping with a light stylus',
    range: 'A 51 to 406 mm, W 6 to 51 mm',
    source: 'fitts-tapping',
    spread: 0.1,
    time: moveTime,
  },
  fit: {
    name: 'Fit of a part',
    kinds: ['P'],
    form: '531 + 20.5·√A + 56.3·log₂(1/c) ms for a whole transfer (c clearance in mm), less the move, a grasp and a release',
    population: '16 people, discs put over pins',
    range: 'A 102 to 813 mm, c 1.6 to 12.7 mm',
    source: 'fitts-discs',
    spread: 0.2,
    time: fitTime,
  },
  grasp: guess('Grasp', ['G'], graspTime, 0.5),
  release: guess('Release', ['RL'], releaseTime, 0.5),
  select: guess('Select', ['St', 'F'], 250, 0.6),
  search: guess('Search', ['Sh'], 350, 0.7),
  'pre-position': guess('Pre-position', ['PP'], 300, 0.6),
  inspect: guess('Inspect', ['I'], 600, 0.8),
  assemble: guess('Assemble', ['A'], 600, 0.8),
  disassemble: guess('Disassemble', ['DA'], 500, 0.8),
  use: guess('Use', ['U'], 1000, 0.9),
  plan: guess('Plan', ['Pn', 'AD', 'UD', 'R', 'H', 'unmarked'], 300, 0.9),
} as const satisfies Readonly<Record<string, MovementLaw>>;

export type MovementLawId = keyof typeof movementLaws;

const lawOfKind = new Map<MotionKind, MovementLawId>(
  (Object.entries(movementLaws) as [MovementLawId, MovementLaw][]).flatMap(([id, { kinds }]) =>
    kinds.map((kind): [MotionKind, MovementLawId] => [kind, id]),
  ),
);

export function movementLawOf(kind: MotionKind): MovementLaw & { readonly id: MovementLawId } {
  const id = lawOfKind.get(kind) ?? 'use';
  return { ...movementLaws[id], id };
}
