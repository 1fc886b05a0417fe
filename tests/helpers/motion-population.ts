import type { Cell, WorkPlace } from '@evenhand/core/develop';
import { type Random, standardNormalQuantile } from '@evenhand/core/ground/numerics';
import { type MotionKind, movementLawOf } from '@evenhand/core/ground/tables';

/** An invented operator whose true times are known: law × pace × kind × what is peculiar to the motion. */
export interface Population {
  readonly places: readonly WorkPlace[];
  /** True mean time of each cell beside its readings, microseconds. */
  readonly cells: readonly { readonly cell: Cell; readonly truth: number }[];
}

const kinds: readonly MotionKind[] = ['TE', 'TL', 'G', 'P', 'A'];

export function normalFrom(random: Random): number {
  return standardNormalQuantile((Math.floor(random() * 4_294_967_296) + 0.5) / 4_294_967_296);
}

/** Pace and what is peculiar to each kind of motion, the same for all that an operator does. */
export interface Operator {
  readonly pace: number;
  readonly ofKind: ReadonlyMap<MotionKind, number>;
}

export function operatorFrom(random: Random): Operator {
  const pace = 1.2 + 0.6 * random();
  return { pace, ofKind: new Map(kinds.map((kind) => [kind, Math.exp(0.15 * normalFrom(random))])) };
}

/** @param spread standard deviations of the logarithm: between motions of one kind, and from one time to the next */
export function motionPopulation(
  random: Random,
  spread: { readonly between: number; readonly within: number },
): Population {
  const normal = () => normalFrom(random);
  const { pace, ofKind } = operatorFrom(random);
  const places = Array.from(
    { length: 9 },
    (_, index): WorkPlace => ({
      id: `p${index}`,
      name: `p${index}`,
      kind: 'bin',
      at: { x: Math.round(-400 + 800 * random()), y: Math.round(100 + 300 * random()) },
      width: 60,
    }),
  );
  const cells = kinds.flatMap((kind) =>
    Array.from({ length: 7 }, (_, index) => {
      const move = kind === 'TE' || kind === 'TL';
      const [from, to] = move ? [places[index], places[index + 1]] : [places[index], places[index]];
      const distance = Math.hypot(
        (to?.at?.x ?? 0) - (from?.at?.x ?? 0),
        (to?.at?.y ?? 0) - (from?.at?.y ?? 0),
      );
      const law = movementLawOf(kind).time({ distance, width: move ? 60 : 1 }) * 1000;
      const truth = law * pace * (ofKind.get(kind) ?? 1) * Math.exp(spread.between * normal());
      const times = Array.from({ length: 6 }, () => truth * Math.exp(spread.within * normal()));
      const cell: Cell = {
        kind,
        object: `part ${index}`,
        hand: 'right',
        from: from?.id,
        to: to?.id,
        method: 'm',
        times,
      };
      return { cell, truth };
    }),
  );
  return { places, cells };
}
