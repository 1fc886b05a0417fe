import { type Micros, micros } from '../../../ground/base/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import { type MotionKind, motionFactsOf } from '../../../ground/tables/index.ts';
import type { MethodReading, Piece } from '../../examine/index.ts';
import { type Charge, chargesOf } from './charge.ts';
import {
  type Fraction,
  fraction,
  less,
  nearest,
  nought,
  numberOf,
  sum,
  times,
  wholeParts,
} from './fraction.ts';

/** Where a difference comes from. The first three save time, the last three cost it. */
export type Cause =
  | 'removed'
  | 'shortened'
  | 'made simultaneous'
  | 'added'
  | 'lengthened'
  | 'no longer simultaneous';

export const causes: readonly Cause[] = [
  'removed',
  'shortened',
  'made simultaneous',
  'added',
  'lengthened',
  'no longer simultaneous',
];

export const decompositionRule =
  'Every moment of a cycle is charged to the hand that works then, half to each hand when both work or neither does. ' +
  'What a motion is charged for a unit is how often it occurs, times how long it takes each time, times the share of it that is charged. ' +
  'A motion that only one of the methods has is removed or added whole. For one that both have, fewer times is removed and more times added, ' +
  'a shorter time is shortened, and a smaller charged share is made simultaneous; each is averaged over the orders in which the three could have changed. ' +
  'All parts add up to the difference of the two mean times for a unit to the microsecond.';

/** What a motion is in one of the two methods, for one unit; times in microseconds, not always whole. */
export interface ChargedMotion {
  /** Occurrences, both hands. */
  readonly count: number;
  /** Time that the hands spend on it, both hands added. */
  readonly handTime: number;
  /** Elapsed time that is charged to it, by hand and together. */
  readonly left: number;
  readonly right: number;
  readonly charged: number;
  /** Where it can be seen. */
  readonly pieces: readonly Piece[];
}

export interface DecompositionPart {
  readonly cause: Cause;
  /** For one unit; above 0 where time is saved, below 0 where it is added. */
  readonly saved: Micros;
}

export interface DecompositionRow {
  readonly kind: MotionKind;
  /** The motion in words: "transport empty, body". */
  readonly name: string;
  readonly object: string | undefined;
  readonly before: ChargedMotion;
  readonly after: ChargedMotion;
  /** At most three, none of them 0; they add up to `saved`. */
  readonly parts: readonly DecompositionPart[];
  readonly saved: Micros;
  /** The same by hand: left and right add up to `saved`. */
  readonly byHand: Readonly<Record<Hand, Micros>>;
}

export interface Decomposition {
  /** Mean time for a unit, to the nearest microsecond. */
  readonly before: Micros;
  readonly after: Micros;
  /** before − after, and the sum of all rows. */
  readonly saved: Micros;
  /** Rows that change anything, the largest change first. */
  readonly rows: readonly DecompositionRow[];
  /** Sums over the rows; they add up to `saved`. */
  readonly totals: Readonly<Record<Cause, Micros>>;
  readonly byHand: Readonly<Record<Hand, Micros>>;
  readonly rule: string;
}

/** Where the difference of the mean times for a unit comes from, motion by motion, by `decompositionRule`. */
export function decompositionOf(before: MethodReading, after: MethodReading): Decomposition {
  const sides = [sideOf(before), sideOf(after)] as const;
  const drafts = draftRows(sides);
  const means = sides.map(({ total, units }) => nearest(fraction(total, units))) as [bigint, bigint];
  const saved = means[0] - means[1];
  const whole = wholeParts(
    drafts.flatMap(({ parts }) => parts.map((part) => part.saved)),
    saved,
  );
  let at = 0;
  const rows = drafts.map((draft) => {
    const found = whole.slice(at, at + draft.parts.length).map((part) => micros(Number(part)));
    at += draft.parts.length;
    return rowOf(draft, found, sides);
  });
  const shown = rows.filter((row) => row.parts.length > 0 || row.byHand.left !== 0).sort(largestFirst);
  return {
    before: micros(Number(means[0])),
    after: micros(Number(means[1])),
    saved: micros(Number(saved)),
    rows: shown,
    totals: totalsOf(shown),
    byHand: {
      left: micros(rows.reduce((all, row) => all + row.byHand.left, 0)),
      right: micros(rows.reduce((all, row) => all + row.byHand.right, 0)),
    },
    rule: decompositionRule,
  };
}

interface Side {
  readonly charges: ReadonlyMap<string, Charge>;
  /** Units that all cycles together turn out. */
  readonly units: number;
  /** Length of all cycles together. */
  readonly total: number;
}

function sideOf(reading: MethodReading): Side {
  return {
    charges: chargesOf(reading),
    units: reading.cycles.length * reading.method.unitsPerCycle,
    total: reading.cycles.reduce((all, cycle) => all + cycle.duration, 0),
  };
}

interface Draft {
  readonly key: string;
  readonly charges: readonly [Charge | undefined, Charge | undefined];
  readonly parts: readonly { readonly cause: Cause; readonly saved: Fraction }[];
}

function draftRows([before, after]: readonly [Side, Side]): Draft[] {
  const keys = [...new Set([...before.charges.keys(), ...after.charges.keys()])].sort();
  return keys.map((key) => {
    const charges = [before.charges.get(key), after.charges.get(key)] as const;
    const parts = partsOf(factorsOf(charges[0], before.units), factorsOf(charges[1], after.units));
    return { key, charges, parts: parts.filter(({ saved }) => saved.over !== 0n) };
  });
}

/** Occurrences a unit, time each, charged share; their product is the charge for a unit. Undefined without any time. */
type Factors = readonly [count: Fraction, time: Fraction, share: Fraction];

function factorsOf(charge: Charge | undefined, units: number): Factors | undefined {
  if (charge === undefined || charge.handTime === 0) return undefined;
  const { pieces, handTime, halves } = charge;
  return [
    fraction(pieces.length, units),
    fraction(handTime, pieces.length),
    fraction(halves.left + halves.right, 2 * handTime),
  ];
}

const causeOf = [
  ['removed', 'added'],
  ['shortened', 'lengthened'],
  ['made simultaneous', 'no longer simultaneous'],
] as const satisfies readonly (readonly [Cause, Cause])[];

function partsOf(before: Factors | undefined, after: Factors | undefined): Draft['parts'] {
  if (before === undefined && after === undefined) return [];
  if (after === undefined) return [{ cause: 'removed', saved: times(...(before ?? [])) }];
  if (before === undefined) return [{ cause: 'added', saved: less(nought, times(...after)) }];
  return causeOf.map(([saves, costs], index) => {
    const saved = effectOf(before, after, index);
    return { cause: saved.over >= 0n ? saves : costs, saved };
  });
}

/** What the change of one factor saves, averaged over the six orders in which the three factors could change. */
function effectOf(before: Factors, after: Factors, index: number): Fraction {
  const [a, b] = [(index + 1) % 3, (index + 2) % 3] as const;
  const [a1, b1, a2, b2] = [before[a], before[b], after[a], after[b]] as [
    Fraction,
    Fraction,
    Fraction,
    Fraction,
  ];
  const weight = sum(
    times(fraction(1, 3), sum(times(a1, b1), times(a2, b2))),
    times(fraction(1, 6), sum(times(a1, b2), times(a2, b1))),
  );
  return times(less(before[index] ?? nought, after[index] ?? nought), weight);
}

function rowOf(
  { charges: [first, second], parts }: Draft,
  whole: readonly Micros[],
  [before, after]: readonly [Side, Side],
): DecompositionRow {
  const { kind, object } = (first ?? second) as Charge;
  const saved = micros(whole.reduce((all, part) => all + part, 0));
  const [ofLeft, ofRight] = (['left', 'right'] as const).map((hand) =>
    less(halfOf(first, hand, before.units), halfOf(second, hand, after.units)),
  ) as [Fraction, Fraction];
  // What rounding added to the whole or took from it is shared, so that neither hand is favoured.
  const twice = sum(fraction(saved), less(ofLeft, ofRight));
  const left = micros(Number(nearest(times(twice, fraction(1, 2)))));
  const facts = motionFactsOf(kind);
  return {
    kind,
    name: object === undefined ? facts.name : `${facts.name}, ${object}`,
    object,
    before: chargedMotion(first, before.units),
    after: chargedMotion(second, after.units),
    parts: parts
      .map(({ cause }, index) => ({ cause, saved: whole[index] ?? micros(0) }))
      .filter((part) => part.saved !== 0),
    saved,
    byHand: { left, right: micros(saved - left) },
  };
}

function halfOf(charge: Charge | undefined, hand: Hand, units: number): Fraction {
  return fraction(charge?.halves[hand] ?? 0, 2 * units);
}

function chargedMotion(charge: Charge | undefined, units: number): ChargedMotion {
  const [left, right] = [numberOf(halfOf(charge, 'left', units)), numberOf(halfOf(charge, 'right', units))];
  return {
    count: (charge?.pieces.length ?? 0) / units,
    handTime: (charge?.handTime ?? 0) / units,
    left,
    right,
    charged: left + right,
    pieces: charge?.pieces ?? [],
  };
}

function largestFirst(a: DecompositionRow, b: DecompositionRow): number {
  return Math.abs(b.saved) - Math.abs(a.saved) || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0);
}

function totalsOf(rows: readonly DecompositionRow[]): Record<Cause, Micros> {
  const all = Object.fromEntries(causes.map((cause) => [cause, 0])) as Record<Cause, number>;
  for (const { parts } of rows) for (const { cause, saved } of parts) all[cause] += saved;
  return all as Record<Cause, Micros>;
}
