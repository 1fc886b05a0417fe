import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { quantileOf } from '../../../ground/numerics/index.ts';
import type { Study } from '../../../ground/study/index.ts';
import { motionFactsOf } from '../../../ground/tables/index.ts';
import { type CycleReading, cycleWords, type MethodReading, readMethod } from '../../examine/index.ts';
import { changes, type Draft, draftsOf, objectOf } from './draft.ts';
import { type Links, linksOf } from './links.ts';
import { placesOf } from './places.ts';
import type { Visit } from './visits.ts';
import { type StepMotion, type Work, type WorkStep, workFormatVersion } from './work-schema.ts';

export interface WorkChoice {
  /** Number of the cycle that is drawn, from 1; left out, the one of middle length among those that count. */
  readonly cycle?: number | undefined;
  /** Proposed motions count as well. */
  readonly proposed?: boolean | undefined;
}

export interface DrawnWork {
  readonly work: Work;
  readonly cycle: number;
  readonly notes: readonly Finding[];
}

/**
 * Draws the work of one cycle from a marked record. Moves become travel and are left to the composer; what a hand does at
 * one place becomes a step; holds become what a step needs; objects and places give the order that must be kept. Waiting,
 * rest and what is not marked are left out, and a note says so.
 */
export function workFromRecord(
  study: Study,
  methodId: string,
  { cycle: wanted, proposed }: WorkChoice = {},
): Result<DrawnWork, Finding> {
  const read = readMethod(study, methodId, { cycles: wanted === undefined ? undefined : [wanted], proposed });
  if (!read.ok) return read;
  const reading = read.value;
  const cycle = middleCycle(reading);
  const { drafts, idleHolds } = draftsOf(cycle);
  const placed = drafts.filter(({ place }) => place !== undefined);
  if (placed.length === 0) return fail(finding('develop/no-places', {}, { method: reading.method.name }));
  const links = linksOf(placed);
  const steps = placed.map((draft, index) => stepOf(draft, index, links, reading.method.id));
  const notes = [...reading.notes.filter(({ code }) => code !== 'examine/not-all-marked')];
  const lost = drafts.length - placed.length;
  if (lost > 0) notes.push(finding('develop/without-place', {}, { count: lost }));
  if (idleHolds.length > 0) {
    const objects = [...new Set(idleHolds.map((hold) => objectOf(hold) ?? 'something'))].join(', ');
    notes.push(finding('develop/hold-serves-nothing', {}, { objects }));
  }
  notes.push(...leftOut(cycle));
  const work: Work = {
    workFormat: workFormatVersion,
    title: `${study.operation.name || study.title}: ${reading.method.name}`,
    ...(study.demo === true ? { demo: true } : {}),
    unitsPerCycle: reading.method.unitsPerCycle,
    home: 'free',
    places: placesOf(study, placed),
    steps,
    ...(links.spots.length === 0
      ? {}
      : {
          spots: links.spots.map(({ place, claimedBy, releasedBy }) => ({
            name: reading.placeName(place),
            place,
            claimedBy: stepId(claimedBy),
            releasedBy: stepId(releasedBy),
          })),
        }),
    sight: { field: 150, change: 150_000 },
  };
  return ok({ work, cycle: cycle.number, notes });
}

function stepId(index: number): string {
  return `step-${index + 1}`;
}

function middleCycle({ cycles }: MethodReading): CycleReading {
  const sorted = [...cycles].sort((a, b) => a.duration - b.duration || a.number - b.number);
  const middle = quantileOf(
    sorted.map(({ duration }) => duration),
    0.5,
  );
  const nearest = sorted.reduce((best, cycle) =>
    Math.abs(cycle.duration - middle) < Math.abs(best.duration - middle) ? cycle : best,
  );
  return nearest;
}

function stepOf(draft: Draft, index: number, links: Links, method: string): WorkStep {
  const { visits, hand, held } = draft;
  const [visit, right] = visits;
  const follows = links.before[index] ?? [];
  return {
    id: stepId(index),
    name: nameOf(visit),
    motions: visit.pieces.map(contentOf),
    hand: hand === 'both' ? 'both' : 'either',
    place: draft.place ?? '',
    ...(right?.place === undefined || right.place === draft.place ? {} : { rightPlace: right.place }),
    ...(visit.before === undefined ? {} : { before: visit.before }),
    ...(visit.after === undefined ? {} : { after: visit.after }),
    ...(held === undefined
      ? {}
      : {
          held: {
            object: held.object,
            place: held.place ?? draft.place ?? '',
            by: held.by,
            ...(held.becomes === undefined ? {} : { becomes: held.becomes }),
          },
        }),
    eyes: visits.some(({ eyes }) => eyes),
    ...(follows.length === 0 ? {} : { follows: follows.map((step) => ({ step: stepId(step) })) }),
    unit: links.unit[index] ?? 1,
    from: visits.flatMap(({ hand: by, pieces }) =>
      pieces.flatMap(({ motion }) => (motion === undefined ? [] : [{ method, hand: by, motion: motion.id }])),
    ),
  };
}

function contentOf({ kind, object }: Visit['pieces'][number]): StepMotion {
  return { kind, ...(object === undefined ? {} : { object }) };
}

/** “Assemble, release ring”. */
function nameOf(visit: Visit): string {
  const verbs = visit.pieces.map(({ kind }) => motionFactsOf(kind).name.toLowerCase());
  const words = [...new Set(verbs)].join(', ');
  const object = objectOf(visit) ?? (changes(visit) ? visit.before : undefined);
  return `${words[0]?.toUpperCase() ?? ''}${words.slice(1)}${object === undefined ? '' : ` ${object}`}`.slice(
    0,
    200,
  );
}

function leftOut(cycle: CycleReading): Finding[] {
  const left = [...cycle.left, ...cycle.right].filter(({ kind }) => ['UD', 'AD', 'R', 'Pn'].includes(kind));
  if (left.length === 0) return [];
  const kinds = [...new Set(left.map(({ kind }) => motionFactsOf(kind).name.toLowerCase()))].join(', ');
  return [finding('develop/left-out', {}, { kinds, cycle: cycleWords([cycle.number]) })];
}
