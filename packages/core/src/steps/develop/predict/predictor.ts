import { sampleOf } from '../../../ground/numerics/index.ts';
import { movementLawOf } from '../../../ground/tables/index.ts';
import type { WorkPlace } from '../work/index.ts';
import { type Calibration, calibrate, type Factor, type Measured } from './calibration.ts';
import { cellSpreadOf, fromCells, isMove, type MotionWanted, nameOf } from './from-cells.ts';
import { fromLibrary, type Library } from './library.ts';
import type { Cell } from './observed.ts';
import { type PredictedTime, predictedTime, type TimeError } from './predicted-time.ts';
import { fromTable, type TimeTable } from './time-table.ts';

export interface Predictor {
  readonly calibration: Calibration;
  readonly measured: readonly Measured[];
  readonly predict: (wanted: MotionWanted) => PredictedTime;
}

/** What a prediction may rest on besides the record. */
export interface PredictionBase {
  /** Where the places stood when the record was made; left out, where they stand. */
  readonly recorded?: readonly WorkPlace[] | undefined;
  /** A time table that its owner has a licence for. */
  readonly table?: TimeTable | undefined;
  /** Records of other studies, for what this one's have not measured. */
  readonly library?: Library | undefined;
  /** The pace where no record tells it; left out, a working pace that nobody has measured. */
  readonly pace?: Factor | undefined;
}

/** Widths in millimetres where the work gives none: how exactly the hand must arrive. Ours. */
const usualWidth: Readonly<Record<WorkPlace['kind'], number>> = {
  bin: 80,
  fixture: 25,
  tool: 40,
  exit: 120,
  machine: 40,
  bench: 40,
};
/** Clearance in millimetres where the work gives none. Ours. */
const usualClearance = 1;
/** Working pace without any record: slower than the bursts of the sources, and nobody knows by how much. Ours. */
const usualPace: Factor = {
  factor: 1.3,
  n: 0,
  shared: 0.25,
  own: 0.2,
  interval: { low: 0.86, high: 1.96, confidence: 0.9 },
};
/** The pace at which the sources timed: short bursts, as fast as one can. */
export const burstPace: Factor = {
  factor: 1,
  n: 0,
  shared: 0,
  own: 0,
  interval: { low: 1, high: 1, confidence: 0.9 },
};
/** A move of a hand's length stands in for one whose distance is not known, and the interval says how little that is worth. Ours. */
const unknownMove = { distance: 300, width: 40, spread: 0.4 } as const;

/**
 * Predicts from the cells of a record first, then from a time table, else from the laws at the pace of the record. Places
 * that are not known have no distance.
 */
export function predictorFrom(
  cells: readonly Cell[],
  places: readonly WorkPlace[],
  { recorded = places, table, library, pace = usualPace }: PredictionBase = {},
): Predictor {
  const placeOf = new Map(places.map((place) => [place.id, place]));
  const placeThen = new Map(recorded.map((place) => [place.id, place]));
  const measured = cells.map(
    (cell): Measured => ({ cell, mean: sampleOf(cell.times).mean, law: lawTimeOf(cell, placeThen) }),
  );
  const calibration = calibrate(measured);
  const spread = cellSpreadOf(measured);
  const there = library === undefined ? undefined : libraryPace(library);
  const predict = (wanted: MotionWanted): PredictedTime => {
    const law = lawTimeOf(wanted, placeOf);
    return (
      fromCells(wanted, measured, spread, law) ??
      (library === undefined
        ? undefined
        : fromLibrary(library, wanted, { here: calibration.pace, there, unknown: usualPace.shared })) ??
      fromTable(table, wanted, distanceOf(wanted, placeOf)) ??
      fromLaw(wanted, law, calibration, standIn(there, pace))
    );
  };
  return { calibration, measured, predict };
}

/** The pace of a library against that of the laws. */
function libraryPace({ cells, places }: Library): Factor | undefined {
  const placeOf = new Map(places.map((place) => [place.id, place]));
  const measured = cells.map(
    (cell): Measured => ({ cell, mean: sampleOf(cell.times).mean, law: lawTimeOf(cell, placeOf) }),
  );
  return calibrate(measured).pace;
}

/** Where nothing tells the pace here, that of others stands in, as uncertain as any pace that was not compared. */
function standIn(there: Factor | undefined, otherwise: Factor): Factor {
  return there === undefined ? otherwise : { ...there, shared: Math.hypot(there.shared, usualPace.shared) };
}

/** Millimetres between the places of a move; undefined where one has no position. */
function distanceOf(
  { from, to }: Pick<MotionWanted, 'from' | 'to'>,
  placeOf: ReadonlyMap<string, WorkPlace>,
): number | undefined {
  const [start, end] = [placeOf.get(from ?? '')?.at, placeOf.get(to ?? '')?.at];
  if (start === undefined || end === undefined) return undefined;
  return Math.hypot(end.x - start.x, end.y - start.y);
}

/** Microseconds at the pace of the source; undefined for a move whose distance is not known. */
function lawTimeOf(wanted: MotionWanted, placeOf: ReadonlyMap<string, WorkPlace>): number | undefined {
  const { kind, from, to, clearance, weight } = wanted;
  const law = movementLawOf(kind);
  if (!isMove(kind)) return law.time({ distance: 0, width: clearance ?? usualClearance }) * 1000;
  const distance = distanceOf(wanted, placeOf);
  const end = placeOf.get(to ?? '');
  if (distance === undefined || end === undefined || from === to) return undefined;
  const width = end.width ?? usualWidth[end.kind];
  return law.time({ distance, width, weight: kind === 'TL' ? weight : undefined }) * 1000;
}

/** By the law, at the factor of its own kind where the record has one, else at the pace of the record. */
function fromLaw(
  wanted: MotionWanted,
  time: number | undefined,
  { pace, ofKind }: Calibration,
  elsePace: Factor,
): PredictedTime {
  const law = movementLawOf(wanted.kind);
  const kind = ofKind.get(wanted.kind);
  const factor = kind ?? pace ?? elsePace;
  const stays = isMove(wanted.kind) && wanted.from === wanted.to;
  const blind = time === undefined && !stays;
  const known = time ?? (stays ? 0 : law.time(unknownMove) * 1000);
  const name = nameOf(wanted);
  const errors: TimeError[] = [{ name, spread: kind === undefined ? law.spread : kind.own }];
  // What the factor of a kind errs by is common to that kind alone; only the pace of the record errs in all kinds alike.
  if (kind !== undefined) errors.push({ name: `factor of ${wanted.kind}`, spread: kind.shared });
  if (blind) errors.push({ name: `distance ${name}`, spread: unknownMove.spread });
  const words = [
    `by the law “${law.name}” (${law.form})`,
    kind !== undefined
      ? `at the pace of ${kind.n} such motions in the record`
      : pace !== undefined
        ? `at the pace of the record (${pace.n} motions)`
        : elsePace.n > 0
          ? `at the pace of the library (${elsePace.n} motions), not compared with the pace here`
          : elsePace === usualPace
            ? 'at a working pace that nobody has measured here'
            : `at ${elsePace.factor.toFixed(2)} times the pace of its source`,
    ...(blind ? ['with a distance that is not known'] : []),
  ].join(', ');
  return predictedTime(
    known * factor.factor,
    { errors, shared: kind === undefined ? factor.shared : 0 },
    { kind: 'law', law: law.id, source: law.source, calibrated: kind !== undefined || pace !== undefined },
    words,
  );
}
