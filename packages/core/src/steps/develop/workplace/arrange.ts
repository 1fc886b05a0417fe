import { ok, type Result } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import type { MethodReading } from '../../examine/index.ts';
import { type PredictionBase, predictWork, type WorkTimes } from '../predict/index.ts';
import { instanceOf, type Work } from '../work/index.ts';
import { type BenchMethod, type BenchWish, benchMethod } from './bench-method.ts';
import { type BenchSpot, gridSpots } from './bench-spots.ts';
import { reachOfBench } from './people.ts';
import { benchSize } from './plan-frame.ts';
import type { BenchPoint } from './working-areas.ts';

export interface ArrangeWish extends Omit<BenchWish, 'limits' | 'instanceAt'> {
  /** Records that the times are taken from. */
  readonly readings: readonly MethodReading[];
  readonly table?: PredictionBase['table'];
  /** Records of other studies, for what these have not measured. */
  readonly library?: PredictionBase['library'];
  /** Millimetres from one spot to the next; 100 when left out (ours). */
  readonly step?: number | undefined;
}

export interface MovedPlace {
  readonly place: string;
  readonly name: string;
  /** Undefined where it had no position. */
  readonly from: BenchPoint | undefined;
  readonly to: BenchPoint;
}

/** Places and method together, and what was moved for it. */
export interface Arranged extends BenchMethod {
  readonly times: WorkTimes;
  readonly moved: readonly MovedPlace[];
  /** Spots that there were to choose from. */
  readonly spots: number;
}

/**
 * The best places of a work with the best method for them: on a grid over its bench, within reach of everybody it is laid
 * out for. What is proven holds for these spots.
 */
export function arranged(work: Work, wish: ArrangeWish): Result<Arranged, Finding> {
  const { readings, table, library, step = usualStep, ...rest } = wish;
  const reach = reachOfBench(work.bench);
  const bench = benchSize(work);
  const spots = arrangeSpots(work, step);
  const timesAt = (at: Work) => predictWork(at, readings, { table, library });
  const found = benchMethod(work, {
    ...rest,
    limits: { reach, spots, bench },
    instanceAt: (at) => instanceOf(at, timesAt(at)),
  });
  if (!found.ok) return found;
  return ok({
    ...found.value,
    times: timesAt(found.value.work),
    moved: movedBetween(work, found.value.work),
    spots: spots.length,
  });
}

const usualStep = 100;

/** The spots over the bench of a work that some hand of everybody it is laid out for reaches. */
export function arrangeSpots(work: Work, step = usualStep): readonly BenchSpot[] {
  const bench = benchSize(work);
  return gridSpots(reachOfBench(work.bench), { step, deepest: bench.depth }).filter(
    ({ at }) => Math.abs(at.x) < bench.width / 2 && at.y < bench.depth,
  );
}

export function movedBetween(before: Work, after: Work): readonly MovedPlace[] {
  const then = new Map(before.places.map(({ id, at }) => [id, at]));
  return after.places.flatMap(({ id, name, at }): MovedPlace[] => {
    const from = then.get(id);
    return at === undefined || (from?.x === at.x && from.y === at.y)
      ? []
      : [{ place: id, name, from, to: at }];
  });
}
