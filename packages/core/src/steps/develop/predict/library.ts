import type { Study } from '../../../ground/study/index.ts';
import type { MethodReading } from '../../examine/index.ts';
import type { WorkPlace } from '../work/index.ts';
import type { Factor, Measured } from './calibration.ts';
import { cellSpreadOf, cellsFor, fromCells, type MotionWanted } from './from-cells.ts';
import { type Cell, cellsOf, type Occurrence, occurrencesOf } from './observed.ts';
import { type PredictedTime, predictedTime } from './predicted-time.ts';

/** Records of other studies: other benches, perhaps other people. */
export interface Library {
  readonly cells: readonly Cell[];
  readonly places: readonly WorkPlace[];
  /** How many studies they are from. */
  readonly studies: number;
}

/** Places of different studies are never the same place, whatever they are called. */
export function libraryFrom(readings: readonly MethodReading[]): Library {
  const studies = new Map(readings.map(({ study }) => [study.id, study]));
  return {
    cells: cellsOf(
      readings.flatMap((reading) => occurrencesOf(reading).map((one) => ofStudy(one, reading.study))),
    ),
    places: [...studies.values()].flatMap((study) =>
      study.places.map(
        ({ id, name, at }): WorkPlace => ({
          id: placeIn(study, id),
          name,
          kind: 'bench',
          ...(at === undefined ? {} : { at }),
        }),
      ),
    ),
    studies: studies.size,
  };
}

function ofStudy(one: Occurrence, study: Study): Occurrence {
  const place = (id: string | undefined) => (id === undefined ? undefined : placeIn(study, id));
  return { ...one, from: place(one.from), to: place(one.to), study: study.title };
}

const placeIn = ({ id }: Study, place: string) => `${id} ${place}`;

/**
 * A motion that only the library has: the same motion on the same object at other benches, at the pace of this record
 * where both paces are known, else with the spread of a pace that is not. Moves are left to the law, for no two benches
 * have the same ways.
 */
export function fromLibrary(
  { cells, studies }: Library,
  wanted: MotionWanted,
  { here, there, unknown }: Paces,
): PredictedTime | undefined {
  const measured = cells.map((cell) => ({ cell, mean: meanOf(cell.times), law: undefined }));
  const found = fromCells(wanted, measured, cellSpreadOf(measured), undefined);
  if (found === undefined || found.source.kind !== 'measured') return undefined;
  const both = here !== undefined && there !== undefined;
  const ratio = both ? here.factor / there.factor : 1;
  const shared = both ? Math.hypot(here.shared, there.shared) : unknown;
  const { n } = found.source;
  return predictedTime(
    found.us * ratio,
    { errors: found.errors, shared },
    { kind: 'measured', n, where: 'library' },
    `measured in ${studiesIn(cellsFor(wanted, measured)?.cells ?? [], studies)}, ${n === 1 ? 'once' : `${n} times`}${
      both
        ? `, brought to the pace of this record (× ${ratio.toFixed(2)})`
        : '; how the paces compare is not known'
    }`,
  );
}

/** The studies by name that have the motion; where nothing names them, how many there are. */
function studiesIn(found: readonly Measured[], studies: number): string {
  const titles = [...new Set(found.flatMap(({ cell }) => cell.study ?? []))].map((title) => `“${title}”`);
  const last = titles.at(-1);
  if (last === undefined) return `the library (${studies} ${studies === 1 ? 'study' : 'studies'})`;
  return titles.length === 1
    ? `another study, ${last}`
    : `other studies, ${titles.slice(0, -1).join(', ')} and ${last}`;
}

interface Paces {
  readonly here: Factor | undefined;
  readonly there: Factor | undefined;
  /** Standard deviation of the logarithm between two paces that nobody has compared. */
  readonly unknown: number;
}

function meanOf(times: readonly number[]): number {
  return times.reduce((sum, time) => sum + time, 0) / times.length;
}
