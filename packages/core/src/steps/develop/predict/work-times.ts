import { type Finding, finding } from '../../../ground/findings/index.ts';
import { type Random, seededRandom, standardNormalQuantile } from '../../../ground/numerics/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import { percentText } from '../../../ground/units/index.ts';
import type { MethodReading } from '../../examine/index.ts';
import type { StepMotion, Work, WorkPlace, WorkStep } from '../work/index.ts';
import type { Factor } from './calibration.ts';
import { type Cell, cellsOf, occurrencesOf } from './observed.ts';
import { drawnTime, type PredictedTime, predictedTime } from './predicted-time.ts';
import { type PredictionBase, type Predictor, predictorFrom } from './predictor.ts';

export interface StepTimes {
  readonly motions: readonly PredictedTime[];
  /** Sum of the motions, microseconds. */
  readonly us: number;
}

/** Times of everything in a work. */
export interface WorkTimes {
  readonly steps: ReadonlyMap<string, StepTimes>;
  /** Of a hand from one place to another, carrying something or nothing. */
  readonly travel: (hand: Hand, from: string, to: string, load: string | undefined) => PredictedTime;
  /** The pace of the record against that of the published laws. */
  readonly pace: Factor | undefined;
  readonly notes: readonly Finding[];
}

/** Times of one draw: every error drawn once, the pace for all together. */
export interface DrawnTimes {
  readonly step: (id: string) => number;
  readonly travel: (hand: Hand, from: string, to: string, load: string | undefined) => number;
}

/**
 * Predicts every motion of a work: from the readings given, where the same motion was measured, else by law.
 * @param readings methods of the study that were recorded at this work; none is allowed
 */
export function predictWork(
  work: Work,
  readings: readonly MethodReading[],
  more: Omit<PredictionBase, 'recorded'> = {},
): WorkTimes {
  const cells = knownCells(readings);
  const recorded = recordedPlaces(work, readings);
  const predictor = predictorFrom(cells, allPlaces(work, readings), { ...more, recorded });
  const steps = new Map(work.steps.map((step) => [step.id, stepTimes(step, predictor)]));
  const weights = new Map(work.objects?.map(({ name, grams }) => [name, grams]));
  const known = new Map<string, PredictedTime>();
  const travel = (hand: Hand, from: string, to: string, load: string | undefined): PredictedTime => {
    const weight = load === undefined ? undefined : weights.get(load);
    const key = JSON.stringify([hand, from, to, load === undefined, weight]);
    const found = known.get(key);
    if (found !== undefined) return found;
    const kind = load === undefined ? 'TE' : 'TL';
    const time = predictor.predict({ kind, object: load, hand, from, to, weight });
    known.set(key, time);
    return time;
  };
  return { steps, travel, pace: predictor.calibration.pace, notes: notesOn(work, steps, predictor) };
}

/** Cells of lists of readings that were asked for before: a bench is tried with thousands of layouts of one record. */
const cellsOfReadings = new WeakMap<readonly MethodReading[], readonly Cell[]>();

function knownCells(readings: readonly MethodReading[]): readonly Cell[] {
  const known = cellsOfReadings.get(readings);
  if (known !== undefined) return known;
  const cells = cellsOf(readings.flatMap(occurrencesOf));
  cellsOfReadings.set(readings, cells);
  return cells;
}

/** Where places stood when the records were made; a place of the work that the records do not have stands where it stands. */
function recordedPlaces(work: Work, readings: readonly MethodReading[]): readonly WorkPlace[] {
  const then = new Map(
    readings.flatMap(({ study }) => study.places.map((place) => [place.id, place.at] as const)),
  );
  return allPlaces(work, readings).map((place) => {
    if (!then.has(place.id)) return place;
    const { at: _, ...rest } = place;
    const at = then.get(place.id);
    return at === undefined ? rest : { ...rest, at };
  });
}

/** The places of the work, and those of the records that it does without: their moves tell the pace as well. */
function allPlaces(work: Work, readings: readonly MethodReading[]): readonly WorkPlace[] {
  const known = new Set(work.places.map(({ id }) => id));
  const others = new Map(
    readings.flatMap(({ study }) =>
      study.places
        .filter(({ id }) => !known.has(id))
        .map(({ id, name, at }): [string, WorkPlace] => [
          id,
          { id, name, kind: 'bench', ...(at === undefined ? {} : { at }) },
        ]),
    ),
  );
  return [...work.places, ...others.values()];
}

function stepTimes(step: WorkStep, { predict }: Predictor): StepTimes {
  const motions = step.motions.map((motion) => motionTime(step, motion, predict));
  return { motions, us: motions.reduce((sum, { us }) => sum + us, 0) };
}

function motionTime(step: WorkStep, motion: StepMotion, predict: Predictor['predict']): PredictedTime {
  const { kind, object, clearance, us, share, spread = 0 } = motion;
  if (us !== undefined)
    return predictedTime(
      us,
      { errors: [{ name: `given ${step.id} ${kind} ${object ?? ''}`, spread }], shared: 0 },
      { kind: 'known' },
      'given in the work',
    );
  const hand = step.hand === 'left' || step.hand === 'right' ? step.hand : undefined;
  const found = predict({ kind, object, hand, from: step.place, to: step.place, clearance });
  if (share === undefined) return found;
  const { errors, shared, source, words } = found;
  const left = { name: `left ${kind} ${object ?? ''}`, spread };
  return predictedTime(
    found.us * share,
    { errors: [...errors, left], shared },
    source,
    `${words}, of which the change leaves ${percentText(share, 0)}`,
  );
}

function notesOn(work: Work, steps: ReadonlyMap<string, StepTimes>, { calibration }: Predictor): Finding[] {
  const guessed = work.steps.filter(({ id }) =>
    steps.get(id)?.motions.some(({ source }) => source.kind === 'law' && source.source === 'ours'),
  );
  const unmeasured = work.places.filter(({ at }) => at === undefined);
  return [
    ...(calibration.pace === undefined ? [finding('develop/no-pace')] : []),
    ...(guessed.length === 0
      ? []
      : [finding('develop/guessed-times', {}, { steps: guessed.map(({ name }) => name).join('; ') })]),
    ...(unmeasured.length === 0
      ? []
      : [finding('develop/no-position', {}, { places: unmeasured.map(({ name }) => name).join(', ') })]),
  ];
}

/**
 * Times drawn from what is not known. The same seed gives the same draw, and every error its own number by its name: two
 * works drawn with one seed err alike in all that they share.
 */
export function drawTimes(times: WorkTimes, seed: number): DrawnTimes {
  const pace = normal(seededRandom(seed));
  const drawn = new Map<string, number>();
  const own = (error: string): number => {
    const known = drawn.get(error);
    if (known !== undefined) return known;
    const number = normal(seededRandom(seed ^ hashOf(error)));
    drawn.set(error, number);
    return number;
  };
  const steps = new Map(
    [...times.steps].map(([id, { motions }]) => [
      id,
      motions.reduce((sum, motion) => sum + drawnTime(motion, own, pace), 0),
    ]),
  );
  return {
    step: (id) => steps.get(id) ?? 0,
    travel: (hand, from, to, load) => drawnTime(times.travel(hand, from, to, load), own, pace),
  };
}

function hashOf(text: string): number {
  let hash = 2166136261;
  for (let index = 0; index < text.length; index += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(index), 16777619);
  }
  return hash | 0;
}

function normal(random: Random): number {
  return standardNormalQuantile((Math.floor(random() * 4_294_967_296) + 0.5) / 4_294_967_296);
}
