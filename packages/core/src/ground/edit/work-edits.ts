import { z } from 'zod';
import {
  type KeptChange,
  type KeptWork,
  studyParts,
  type Work,
  type WorkPlace,
  type WorkStep,
  workSchema,
} from '../study/index.ts';
import type { Changed } from './changed.ts';

const { id, keptWork, workPlace, workStep, keptChange, shortText, longText } = studyParts;
const { shape: head } = workSchema;
const { shape: step } = workStep;
const { shape: place } = workPlace;

/** Which fields of a kept work an edit may set; `null` takes an optional field away. */
const workFields = z.strictObject({
  title: head.title.optional(),
  unitsPerCycle: head.unitsPerCycle.optional(),
  home: head.home.optional(),
  bench: head.bench.unwrap().nullable().optional(),
  spots: head.spots.unwrap().nullable().optional(),
  objects: head.objects.unwrap().nullable().optional(),
  sight: head.sight.unwrap().nullable().optional(),
  note: longText.nullable().optional(),
  currency: keptWork.shape.currency.unwrap().nullable().optional(),
});
const workStepFields = z.strictObject({
  name: step.name.optional(),
  motions: step.motions.optional(),
  hand: step.hand.optional(),
  place: id.optional(),
  rightPlace: id.nullable().optional(),
  before: shortText.min(1).nullable().optional(),
  after: shortText.min(1).nullable().optional(),
  held: step.held.unwrap().nullable().optional(),
  eyes: z.boolean().optional(),
  follows: step.follows.unwrap().nullable().optional(),
  unit: step.unit.optional(),
  from: step.from.unwrap().nullable().optional(),
});
const workPlaceFields = z.strictObject({
  name: place.name.optional(),
  kind: place.kind.optional(),
  at: place.at.unwrap().nullable().optional(),
  width: place.width.unwrap().nullable().optional(),
  size: place.size.unwrap().nullable().optional(),
  angle: place.angle.unwrap().nullable().optional(),
  mirror: id.nullable().optional(),
  stays: z.boolean().nullable().optional(),
});
const index = z.int().min(0).optional();
const inWork = { work: id };

export const workEdits = [
  z.strictObject({ type: z.literal('work.add'), work: keptWork, index }),
  z.strictObject({ type: z.literal('work.remove'), work: keptWork }),
  z.strictObject({ type: z.literal('work.change'), ...inWork, to: workFields, was: workFields }),
  z.strictObject({ type: z.literal('work-step.add'), ...inWork, step: workStep, index }),
  z.strictObject({ type: z.literal('work-step.remove'), ...inWork, step: workStep }),
  z.strictObject({
    type: z.literal('work-step.change'),
    ...inWork,
    step: id,
    to: workStepFields,
    was: workStepFields,
  }),
  z.strictObject({
    type: z.literal('work-step.move'),
    ...inWork,
    step: id,
    to: id.nullable(),
    was: id.nullable(),
  }),
  z.strictObject({ type: z.literal('work-place.add'), ...inWork, place: workPlace, index }),
  z.strictObject({ type: z.literal('work-place.remove'), ...inWork, place: workPlace }),
  z.strictObject({
    type: z.literal('work-place.change'),
    ...inWork,
    place: id,
    to: workPlaceFields,
    was: workPlaceFields,
  }),
  z.strictObject({
    type: z.literal('work-change.set'),
    ...inWork,
    to: keptChange.nullable(),
    was: keptChange.nullable(),
  }),
] as const;

export type WorkFields = Changed<
  Pick<Work, 'title' | 'unitsPerCycle' | 'home' | 'bench' | 'spots' | 'objects' | 'sight' | 'note'>
> &
  Changed<Pick<KeptWork, 'currency'>>;
export type WorkStepFields = Changed<Omit<WorkStep, 'id'>>;
export type WorkPlaceFields = Changed<Omit<WorkPlace, 'id'>>;
type InWork = { readonly work: string };

/** Changes of the works that are kept in the study. */
export type WorkEdit =
  | { readonly type: 'work.add'; readonly work: KeptWork; readonly index?: number }
  | { readonly type: 'work.remove'; readonly work: KeptWork }
  | ({ readonly type: 'work.change'; readonly to: WorkFields; readonly was: WorkFields } & InWork)
  | ({ readonly type: 'work-step.add'; readonly step: WorkStep; readonly index?: number } & InWork)
  | ({ readonly type: 'work-step.remove'; readonly step: WorkStep } & InWork)
  | ({
      readonly type: 'work-step.change';
      readonly step: string;
      readonly to: WorkStepFields;
      readonly was: WorkStepFields;
    } & InWork)
  /** Both name the step after which it stands, `null` at the beginning of the list. The order of the list is only for reading. */
  | ({
      readonly type: 'work-step.move';
      readonly step: string;
      readonly to: string | null;
      readonly was: string | null;
    } & InWork)
  | ({ readonly type: 'work-place.add'; readonly place: WorkPlace; readonly index?: number } & InWork)
  | ({ readonly type: 'work-place.remove'; readonly place: WorkPlace } & InWork)
  | ({
      readonly type: 'work-place.change';
      readonly place: string;
      readonly to: WorkPlaceFields;
      readonly was: WorkPlaceFields;
    } & InWork)
  /** What was settled about one change: nothing yet when `was` is null, nothing any more when `to` is. */
  | ({
      readonly type: 'work-change.set';
      readonly to: KeptChange | null;
      readonly was: KeptChange | null;
    } & InWork);

export const workEditNames: Readonly<Record<WorkEdit['type'], string>> = {
  'work.add': 'keep a work',
  'work.remove': 'remove a work',
  'work.change': 'change a work',
  'work-step.add': 'add a step to the work',
  'work-step.remove': 'remove a step of the work',
  'work-step.change': 'change a step of the work',
  'work-step.move': 'move a step of the work',
  'work-place.add': 'add a place to the work',
  'work-place.remove': 'remove a place of the work',
  'work-place.change': 'change a place of the work',
  'work-change.set': 'settle a change of the work',
};
