import type { Random } from '@evenhand/core/ground/numerics';
import { emptyStudy, type Method, type Motion, type Place, type Study } from '@evenhand/core/ground/study';
import { type MotionKind, movementLawOf } from '@evenhand/core/ground/tables';
import { normalFrom, operatorFrom } from './motion-population.ts';

/** A motion as the population times it: moves by the places that they join, everything else by place and object. */
export interface Done {
  readonly kind: MotionKind;
  readonly object: string | undefined;
  readonly from: string;
  readonly to: string;
}

/** An operator of the generated population at a bench, with a record of some of the work. */
export interface RecordedOperator {
  readonly study: Study;
  /** True mean time of a motion, microseconds. */
  readonly truth: (motion: Done) => number;
}

export interface OperatorSpread {
  /** Between motions of one kind, and from one time to the next: standard deviations of the logarithm. */
  readonly between: number;
  readonly within: number;
}

/** Of the targets at the bench and the fits, millimetres: what predictions take where nothing is said. */
const targetWidth: Readonly<Record<string, number>> = { front: 25, box: 120 };
const binWidth = 80;
const clearance = 1;

/**
 * An invented operator fetches parts one after the other, places them in front and lays the whole aside: method `all` with
 * all parts, method `some` with the first ones. True times are law × pace × kind × what is peculiar to the motion, as in
 * `motionPopulation`; readings scatter about them.
 * @param random gives the same operator for the same numbers
 */
export function recordedOperator(
  random: Random,
  spread: OperatorSpread,
  { parts, cycles }: { readonly parts: number; readonly cycles: number },
): RecordedOperator {
  const { pace, ofKind } = operatorFrom(random);
  const places = placesFrom(random, parts);
  const placeAt = new Map(places.map(({ id, at }) => [id, at ?? { x: 0, y: 0 }]));
  const peculiar = new Map<string, number>();
  const truth = ({ kind, object, from, to }: Done): number => {
    const move = kind === 'TE' || kind === 'TL';
    if (move && from === to) return 0;
    const name = JSON.stringify([kind, move ? undefined : object, from, to]);
    const known = peculiar.get(name) ?? Math.exp(spread.between * normalFrom(random));
    peculiar.set(name, known);
    const [start, end] = [placeAt.get(from), placeAt.get(to)];
    const distance = Math.hypot((end?.x ?? 0) - (start?.x ?? 0), (end?.y ?? 0) - (start?.y ?? 0));
    const width = move ? (targetWidth[to] ?? binWidth) : clearance;
    return movementLawOf(kind).time({ distance, width }) * 1000 * pace * (ofKind.get(kind) ?? 1) * known;
  };
  const timed = (motion: Done) => truth(motion) * Math.exp(spread.within * normalFrom(random));
  const all = Array.from({ length: parts }, (_, part) => part);
  const methods = [methodOf('all', all, cycles, timed), methodOf('some', all.slice(0, -2), cycles, timed)];
  return { study: { ...emptyStudy('s', 'Generated'), places: [...places], methods }, truth };
}

function placesFrom(random: Random, parts: number): readonly Place[] {
  const bins = Array.from({ length: parts }, (_, part): Place => {
    const x = Math.round(-400 + (800 * (part + random())) / parts);
    return { id: `bin-${part}`, name: `Bin ${part}`, at: { x, y: Math.round(250 + 150 * random()) } };
  });
  return [
    ...bins,
    { id: 'front', name: 'Front', at: { x: 0, y: 200 } },
    { id: 'box', name: 'Box', at: { x: Math.round(250 + 100 * random()), y: 120 } },
  ];
}

function methodOf(
  id: string,
  parts: readonly number[],
  cycles: number,
  timed: (motion: Done) => number,
): Method {
  const items: Motion[] = [];
  const starts: number[] = [];
  let at = 0;
  for (let cycle = 0; cycle < cycles; cycle += 1) {
    starts.push(at);
    for (const motion of cycleOf(parts)) {
      const { kind, object, from, to } = motion;
      const named = object === undefined ? {} : { object };
      items.push({ id: `r${items.length}`, start: at, kind, said: 'marked', ...named, from, to });
      at += Math.max(1, Math.round(timed(motion)));
    }
  }
  return {
    id,
    name: `Method ${id}`,
    kind: 'recorded',
    base: { kind: 'micros' },
    unitsPerCycle: 1,
    left: { items: [{ id: 'l0', start: 0, kind: 'UD', said: 'marked' }], end: at },
    right: { items, end: at },
    cycles: { items: starts.map((start, index) => ({ id: `c${index}`, start })), end: at },
  };
}

/** Each part is fetched and assembled in front; then the first, as the whole, is laid into the box. */
function cycleOf(parts: readonly number[]): readonly Done[] {
  const still = (kind: MotionKind, object: string, place: string): Done => ({
    kind,
    object,
    from: place,
    to: place,
  });
  const fetched = parts.flatMap((part, index): Done[] => {
    const [bin, object] = [`bin-${part}`, `part ${part}`];
    return [
      { kind: 'TE', object: undefined, from: index === 0 ? 'box' : 'front', to: bin },
      still('G', object, bin),
      { kind: 'TL', object, from: bin, to: 'front' },
      still('P', object, 'front'),
      still('A', object, 'front'),
      still('RL', object, 'front'),
    ];
  });
  return [
    ...fetched,
    still('G', 'whole', 'front'),
    { kind: 'TL', object: 'whole', from: 'front', to: 'box' },
    still('RL', 'whole', 'box'),
  ];
}
