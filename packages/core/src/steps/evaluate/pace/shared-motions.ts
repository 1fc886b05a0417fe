import type { Hand } from '../../../ground/study/index.ts';
import { motionFactsOf } from '../../../ground/tables/index.ts';
import type { MethodReading, Piece } from '../../examine/index.ts';
import { objectKey } from '../motion-key.ts';
import { bothHands, type MotionGroup, motionGroups } from './motion-groups.ts';

/** A motion that both methods have. */
export interface SharedMotion {
  /** "grasp, ring". */
  readonly name: string;
  /** Undefined when the methods do it with different hands, so that both hands are counted together. */
  readonly hand: Hand | undefined;
  readonly before: SharedSide;
  readonly after: SharedSide;
}

export interface SharedSide {
  /** Millimetres, for a transport between places whose positions are known. */
  readonly distance: number | undefined;
  readonly pieces: readonly Piece[];
  /** Mean length of one in each cycle of the reading, microseconds; undefined where there is none. */
  readonly perCycle: readonly (number | undefined)[];
  /** Time that the hands spend on it for one unit, microseconds. */
  readonly handTime: number;
}

/** Distances are similar when they differ by no more than this share of the longer one, or by this many millimetres. Ours. */
export const similarDistance = { share: 0.1, millimetres: 20 } as const;

export const sharedMotionsRule =
  'Shared are motions of the same kind with the same object that lie whole within their cycles, in at least half of the cycles of each method; waits and holds are left out. ' +
  'Transports also run between the same places (a place and its mirror image are one), or over a distance that differs by no more than 10 % or 20 mm. ' +
  'A motion is compared hand with the same hand where both methods have it there, otherwise with both hands together.';

/** The motions that two methods share, by `sharedMotionsRule`, in order of their names. */
export function sharedMotions(before: MethodReading, after: MethodReading): SharedMotion[] {
  const all = [motionGroups(before), motionGroups(after)] as const;
  const byHand = matched(common(all[0], before), common(all[1], after));
  const used = new Set(byHand.flat());
  const rest = all.map((groups) => bothHands(groups.filter((group) => !used.has(group)))) as [
    MotionGroup[],
    MotionGroup[],
  ];
  return [...byHand, ...matched(common(rest[0], before), common(rest[1], after))]
    .map(([first, second]) => sharedOf(first, before, second, after))
    .sort((a, b) => byName(`${a.name} ${a.hand}`, `${b.name} ${b.hand}`));
}

/** Groups that occur in at least half of the cycles. */
function common(groups: readonly MotionGroup[], { cycles }: MethodReading): MotionGroup[] {
  return groups.filter(({ pieces }) => 2 * new Set(pieces.map(({ cycle }) => cycle)).size >= cycles.length);
}

/** Pairs of groups that can be compared: first those over the same route, then the nearest distances. */
function matched(
  before: readonly MotionGroup[],
  after: readonly MotionGroup[],
): [MotionGroup, MotionGroup][] {
  const candidates = before
    .flatMap((first) => after.map((second) => ({ first, second, away: apart(first, second) })))
    .filter(({ away }) => away !== undefined)
    .sort((a, b) => (a.away ?? 0) - (b.away ?? 0) || byName(routes(a), routes(b)));
  const taken = new Set<MotionGroup>();
  const pairs: [MotionGroup, MotionGroup][] = [];
  for (const { first, second } of candidates) {
    if (taken.has(first) || taken.has(second)) continue;
    taken.add(first).add(second);
    pairs.push([first, second]);
  }
  return pairs;
}

/** How far two groups are from being the same motion: −1 over one route, millimetres over two, undefined when too far. */
function apart(first: MotionGroup, second: MotionGroup): number | undefined {
  const same =
    first.hand === second.hand &&
    first.kind === second.kind &&
    objectKey(first.object) === objectKey(second.object);
  if (!same) return undefined;
  if (first.route === second.route) return -1;
  if (first.distance === undefined || second.distance === undefined) return undefined;
  const [away, longer] = [
    Math.abs(first.distance - second.distance),
    Math.max(first.distance, second.distance),
  ];
  const { share, millimetres } = similarDistance;
  return away <= Math.max(millimetres, share * longer) ? away : undefined;
}

function routes({ first, second }: { readonly first: MotionGroup; readonly second: MotionGroup }): string {
  return `${first.route} ${second.route}`;
}

function sharedOf(
  first: MotionGroup,
  before: MethodReading,
  second: MotionGroup,
  after: MethodReading,
): SharedMotion {
  const { kind, object, hand } = first;
  const { name } = motionFactsOf(kind);
  return {
    name: object === undefined ? name : `${name}, ${object}`,
    hand,
    before: sideOf(first, before),
    after: sideOf(second, after),
  };
}

function sideOf({ pieces, distance }: MotionGroup, { cycles, method }: MethodReading): SharedSide {
  const sums = cycles.map(() => ({ time: 0, count: 0 }));
  for (const { cycle, duration } of pieces) {
    const sum = sums[cycle];
    if (sum === undefined) continue;
    sum.time += duration;
    sum.count += 1;
  }
  const time = sums.reduce((all, sum) => all + sum.time, 0);
  return {
    distance,
    pieces,
    perCycle: sums.map((sum) => (sum.count === 0 ? undefined : sum.time / sum.count)),
    handTime: time / (cycles.length * method.unitsPerCycle),
  };
}

function byName(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
