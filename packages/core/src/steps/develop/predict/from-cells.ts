import { sampleOf } from '../../../ground/numerics/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import { type MotionKind, movementLawOf, otherHandSlower } from '../../../ground/tables/index.ts';
import { type Measured, noiseOf, stretchOf, truthSpread } from './calibration.ts';
import { type PredictedTime, predictedTime, type TimeError } from './predicted-time.ts';

/** A motion whose time is wanted. */
export interface MotionWanted {
  readonly kind: MotionKind;
  readonly object: string | undefined;
  readonly hand?: Hand | undefined;
  readonly from: string | undefined;
  readonly to: string | undefined;
  readonly clearance?: number | undefined;
  /** Of what is carried, in grams. */
  readonly weight?: number | undefined;
}

/** How far one motion differs from hand to hand and from place to place: standard deviations of the logarithm. */
export interface CellSpread {
  readonly hand: number;
  readonly place: number;
}

/** Where the record does not tell: the hands differ as in a published test; the places are ours. */
const usualSpread: CellSpread = { hand: Math.log(otherHandSlower.factor), place: 0.12 };
/** So many degrees of freedom tell more than a guess. Ours. */
const enoughDegrees = 3;
/** One reading alone says nothing about its spread; the usual spread of a motion from one time to the next. Ours. */
const usualVariation = 0.25;

export function isMove(kind: MotionKind): boolean {
  return kind === 'TE' || kind === 'TL';
}

/** From the record itself where it has the same motion of both hands, or of one object at several places, often enough. */
export function cellSpreadOf(measured: readonly Measured[]): CellSpread {
  const still = measured.filter(({ cell }) => !isMove(cell.kind));
  return {
    hand:
      pooled(measured, ({ cell: { kind, object, from, to } }) => [kind, object, from, to]) ??
      usualSpread.hand,
    place: pooled(still, ({ cell: { kind, object } }) => [kind, object]) ?? usualSpread.place,
  };
}

/** Spread of the logarithms of means within groups, all groups together; stretched for few degrees of freedom. */
function pooled(
  measured: readonly Measured[],
  groupOf: (one: Measured) => readonly (string | undefined)[],
): number | undefined {
  const groups = new Map<string, Measured[]>();
  for (const one of measured) {
    const key = JSON.stringify(groupOf(one));
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  const noises: number[] = [];
  let [squares, degrees] = [0, 0];
  for (const group of groups.values()) {
    const { deviation } = sampleOf(group.map(({ mean }) => Math.log(mean)));
    if (deviation === undefined) continue;
    squares += deviation ** 2 * (group.length - 1);
    degrees += group.length - 1;
    noises.push(...group.map(({ cell }) => noiseOf(cell.times)));
  }
  if (degrees < enoughDegrees) return undefined;
  return truthSpread(squares / degrees, noises, degrees);
}

/** The same motion as it was measured: with this hand here, else with the other hand, else the same object at another place. */
export function fromCells(
  wanted: MotionWanted,
  measured: readonly Measured[],
  spread: CellSpread,
  law: number | undefined,
): PredictedTime | undefined {
  const found = cellsFor(wanted, measured);
  if (found === undefined) return undefined;
  const { cells, as } = found;
  const times = cells.flatMap(({ cell }) => cell.times);
  const { n, mean, variation } = sampleOf(times);
  const readings =
    n < 2 || variation === undefined
      ? usualVariation
      : (stretchOf(n - 1) * Math.max(variation, 0.01)) / Math.sqrt(n);
  const ratio = isMove(wanted.kind) ? distanceRatio(cells, law) : 1;
  const errors: TimeError[] = [
    { name: JSON.stringify(cells.map(({ cell: { times: _, ...facts } }) => facts)), spread: readings },
  ];
  const name = nameOf(wanted);
  if (as !== 'same')
    errors.push({ name: `${as} ${name}`, spread: spread[as] * Math.sqrt(1 + 1 / cells.length) });
  if (ratio !== 1)
    errors.push({
      name: `distance ${name}`,
      spread: movementLawOf(wanted.kind).spread * Math.abs(Math.log(ratio)),
    });
  return predictedTime(
    mean * ratio,
    { errors, shared: 0 },
    { kind: 'measured', n, where: as === 'place' ? 'elsewhere' : 'here' },
    `measured in the record${asWords[as]}, ${n} times${ratio === 1 ? '' : ', brought to the other distance by the law'}`,
  );
}

const asWords = { same: '', hand: ' with the other hand', place: ' at another place' } as const;

/** Names the error of a motion that nobody has timed: the same motion again errs the same way. */
export function nameOf({ kind, object, from, to }: MotionWanted): string {
  return JSON.stringify([kind, isMove(kind) ? undefined : object, from, to]);
}

/** What was measured that comes nearest to a motion; undefined where nothing was. */
export function cellsFor(
  wanted: MotionWanted,
  measured: readonly Measured[],
): { readonly cells: readonly Measured[]; readonly as: keyof typeof asWords } | undefined {
  const move = isMove(wanted.kind);
  const alike = measured.filter(
    ({ cell }) => cell.kind === wanted.kind && (move || cell.object === wanted.object),
  );
  const here = alike.filter(({ cell }) => cell.to === wanted.to && (!move || cell.from === wanted.from));
  const same = here.filter(({ cell }) => wanted.hand === undefined || cell.hand === wanted.hand);
  if (same.length > 0) return { cells: same, as: 'same' };
  if (here.length > 0) return { cells: here, as: 'hand' };
  return move || alike.length === 0 ? undefined : { cells: alike, as: 'place' };
}

/** What the law gives for the distance now against the distance when it was measured; 1 where nothing was moved. */
function distanceRatio(found: readonly Measured[], law: number | undefined): number {
  const then = found[0]?.law;
  if (law === undefined || then === undefined || then <= 0 || law <= 0) return 1;
  return Math.abs(law - then) < 1 ? 1 : law / then;
}
