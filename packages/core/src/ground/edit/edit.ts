import { z } from 'zod';
import { fail, ok, type Result } from '../base/index.ts';
import type { Finding } from '../findings/index.ts';
import {
  type Answer,
  type Clock,
  type Cycle,
  type Decision,
  type ElementMark,
  type Examination,
  type Film,
  type Hand,
  type Method,
  type Motion,
  type Operation,
  type Place,
  shapeFindings,
  studyParts,
} from '../study/index.ts';
import type { Changed } from './changed.ts';
import { type TimeEdit, timeEditNames, timeEdits } from './time-edits.ts';
import { type WorkEdit, workEditNames, workEdits } from './work-edits.ts';

const { id, boundary, film, clock, calibration, place, motion, cycle, element, method, examination } =
  studyParts;
const { operation, hand, shortText, longText } = studyParts;

/** Which fields of a motion an edit may set; `null` takes an optional field away. */
const motionFields = z.strictObject({
  kind: motion.shape.kind.optional(),
  object: shortText.min(1).nullable().optional(),
  from: id.nullable().optional(),
  to: id.nullable().optional(),
  note: longText.nullable().optional(),
  said: motion.shape.said.optional(),
  confidence: motion.shape.confidence.unwrap().nullable().optional(),
});
const cycleFields = z.strictObject({
  name: shortText.nullable().optional(),
  setAside: shortText.min(1).nullable().optional(),
  said: cycle.shape.said.unwrap().nullable().optional(),
  confidence: cycle.shape.confidence.unwrap().nullable().optional(),
});
const methodFields = z.strictObject({
  name: shortText.min(1).optional(),
  unitsPerCycle: z.int().min(1).max(10_000).optional(),
  note: longText.nullable().optional(),
});
const filmFields = z.strictObject({
  name: shortText.optional(),
  operatorCode: shortText.nullable().optional(),
  agreed: z.boolean().nullable().optional(),
  note: longText.nullable().optional(),
  clock: clock.optional(),
  mirrored: z.boolean().nullable().optional(),
  calibration: calibration.nullable().optional(),
  tracks: film.shape.tracks.unwrap().nullable().optional(),
});
const placeFields = z.strictObject({
  name: shortText.min(1).optional(),
  at: place.shape.at.unwrap().nullable().optional(),
  mirror: id.nullable().optional(),
});
const elementFields = z.strictObject({
  name: shortText.min(1).optional(),
  hand: hand.optional(),
  at: boundary.optional(),
});
const examinationFields = z.strictObject({
  answers: examination.shape.answers.unwrap().nullable().optional(),
  decision: examination.shape.decision.unwrap().nullable().optional(),
});
const studyFields = z.strictObject({ title: shortText.min(1).optional(), operation: operation.optional() });

const inRow = { method: id, hand };

const single = [
  z.strictObject({ type: z.literal('study.change'), to: studyFields, was: studyFields }),
  z.strictObject({ type: z.literal('film.add'), film, index: z.int().min(0).optional() }),
  z.strictObject({ type: z.literal('film.remove'), film }),
  z.strictObject({ type: z.literal('film.change'), film: id, to: filmFields, was: filmFields }),
  z.strictObject({ type: z.literal('place.add'), place, index: z.int().min(0).optional() }),
  z.strictObject({ type: z.literal('place.remove'), place }),
  z.strictObject({ type: z.literal('place.change'), place: id, to: placeFields, was: placeFields }),
  z.strictObject({ type: z.literal('method.add'), method, index: z.int().min(0).optional() }),
  z.strictObject({ type: z.literal('method.remove'), method }),
  z.strictObject({ type: z.literal('method.change'), method: id, to: methodFields, was: methodFields }),
  z.strictObject({ type: z.literal('motion.mark'), ...inRow, motion }),
  z.strictObject({ type: z.literal('motion.remove'), ...inRow, motion }),
  z.strictObject({
    type: z.literal('motion.change'),
    ...inRow,
    motion: id,
    to: motionFields,
    was: motionFields,
  }),
  z.strictObject({ type: z.literal('motion.move'), ...inRow, motion: id, to: boundary, was: boundary }),
  z.strictObject({ type: z.literal('row.end'), ...inRow, to: boundary, was: boundary }),
  z.strictObject({ type: z.literal('cycle.mark'), method: id, cycle }),
  z.strictObject({ type: z.literal('cycle.remove'), method: id, cycle }),
  z.strictObject({
    type: z.literal('cycle.change'),
    method: id,
    cycle: id,
    to: cycleFields,
    was: cycleFields,
  }),
  z.strictObject({ type: z.literal('cycle.move'), method: id, cycle: id, to: boundary, was: boundary }),
  z.strictObject({ type: z.literal('cycles.end'), method: id, to: boundary, was: boundary }),
  z.strictObject({
    type: z.literal('element.add'),
    method: id,
    element,
    index: z.int().min(0).optional(),
  }),
  z.strictObject({ type: z.literal('element.remove'), method: id, element }),
  z.strictObject({
    type: z.literal('element.change'),
    method: id,
    element: id,
    to: elementFields,
    was: elementFields,
  }),
  z.strictObject({ type: z.literal('examination.add'), examination, index: z.int().min(0).optional() }),
  z.strictObject({ type: z.literal('examination.remove'), examination }),
  z.strictObject({
    type: z.literal('examination.change'),
    examination: id,
    to: examinationFields,
    was: examinationFields,
  }),
  ...timeEdits,
  ...workEdits,
] as const;

const singleSchema = z.discriminatedUnion('type', single);

/** Several edits that hold together or not at all, under one name. */
const groupSchema = z.strictObject({
  type: z.literal('group'),
  name: shortText.min(1),
  edits: z.array(singleSchema).max(200_000),
});

export const editSchema = z.union([singleSchema, groupSchema]).meta({ id: 'Edit' });

type MotionFields = Changed<Pick<Motion, 'kind' | 'object' | 'from' | 'to' | 'note' | 'said' | 'confidence'>>;
type InRow = { readonly method: string; readonly hand: Hand };

/**
 * A change of the study as plain data. It carries what it expects to find (`was`, or the whole of what it removes), so
 * that it can be inverted, and so that it fails with a finding when somebody else changed the same thing meanwhile.
 */
export type SingleEdit =
  | { readonly type: 'study.change'; readonly to: StudyFields; readonly was: StudyFields }
  | { readonly type: 'film.add'; readonly film: Film; readonly index?: number }
  | { readonly type: 'film.remove'; readonly film: Film }
  | { readonly type: 'film.change'; readonly film: string; readonly to: FilmFields; readonly was: FilmFields }
  | { readonly type: 'place.add'; readonly place: Place; readonly index?: number }
  | { readonly type: 'place.remove'; readonly place: Place }
  | {
      readonly type: 'place.change';
      readonly place: string;
      readonly to: PlaceFields;
      readonly was: PlaceFields;
    }
  | { readonly type: 'method.add'; readonly method: Method; readonly index?: number }
  | { readonly type: 'method.remove'; readonly method: Method }
  | {
      readonly type: 'method.change';
      readonly method: string;
      readonly to: MethodFields;
      readonly was: MethodFields;
    }
  | ({ readonly type: 'motion.mark'; readonly motion: Motion } & InRow)
  | ({ readonly type: 'motion.remove'; readonly motion: Motion } & InRow)
  | ({
      readonly type: 'motion.change';
      readonly motion: string;
      readonly to: MotionFields;
      readonly was: MotionFields;
    } & InRow)
  | ({
      readonly type: 'motion.move';
      readonly motion: string;
      readonly to: number;
      readonly was: number;
    } & InRow)
  | ({ readonly type: 'row.end'; readonly to: number; readonly was: number } & InRow)
  | { readonly type: 'cycle.mark'; readonly method: string; readonly cycle: Cycle }
  | { readonly type: 'cycle.remove'; readonly method: string; readonly cycle: Cycle }
  | {
      readonly type: 'cycle.change';
      readonly method: string;
      readonly cycle: string;
      readonly to: CycleFields;
      readonly was: CycleFields;
    }
  | {
      readonly type: 'cycle.move';
      readonly method: string;
      readonly cycle: string;
      readonly to: number;
      readonly was: number;
    }
  | { readonly type: 'cycles.end'; readonly method: string; readonly to: number; readonly was: number }
  | {
      readonly type: 'element.add';
      readonly method: string;
      readonly element: ElementMark;
      readonly index?: number;
    }
  | { readonly type: 'element.remove'; readonly method: string; readonly element: ElementMark }
  | {
      readonly type: 'element.change';
      readonly method: string;
      readonly element: string;
      readonly to: ElementFields;
      readonly was: ElementFields;
    }
  | { readonly type: 'examination.add'; readonly examination: Examination; readonly index?: number }
  | { readonly type: 'examination.remove'; readonly examination: Examination }
  | {
      readonly type: 'examination.change';
      readonly examination: string;
      readonly to: ExaminationFields;
      readonly was: ExaminationFields;
    }
  | TimeEdit
  | WorkEdit;

export type GroupEdit = {
  readonly type: 'group';
  readonly name: string;
  readonly edits: readonly SingleEdit[];
};
export type Edit = SingleEdit | GroupEdit;

export type StudyFields = { readonly title?: string; readonly operation?: Operation };
export type FilmFields = Changed<
  Pick<Film, 'name' | 'operatorCode' | 'agreed' | 'note' | 'mirrored' | 'calibration' | 'tracks'>
> & {
  readonly clock?: Clock;
};
export type PlaceFields = Changed<Pick<Place, 'name' | 'at' | 'mirror'>>;
export type MethodFields = Changed<Pick<Method, 'name' | 'unitsPerCycle' | 'note'>>;
export type CycleFields = Changed<Pick<Cycle, 'name' | 'setAside' | 'said' | 'confidence'>>;
export type ElementFields = Changed<Pick<ElementMark, 'name' | 'hand' | 'at'>>;
export type ExaminationFields = {
  readonly answers?: readonly Answer[] | null;
  readonly decision?: Decision | null;
};
export type { MotionFields };

/** Reads an edit that came over the wire or out of the history. */
export function readEdit(value: unknown): Result<Edit, readonly Finding[]> {
  const parsed = editSchema.safeParse(value);
  return parsed.success ? ok(parsed.data as Edit) : fail(shapeFindings(parsed.error, 'edit/shape'));
}

const names: Readonly<Record<SingleEdit['type'], string>> = {
  'study.change': 'change the heading',
  'film.add': 'add a film',
  'film.remove': 'remove a film',
  'film.change': 'change a film',
  'place.add': 'add a place',
  'place.remove': 'remove a place',
  'place.change': 'change a place',
  'method.add': 'add a method',
  'method.remove': 'remove a method',
  'method.change': 'change a method',
  'motion.mark': 'mark a motion',
  'motion.remove': 'join two motions',
  'motion.change': 'change a motion',
  'motion.move': 'move a boundary',
  'row.end': 'move the end of a row',
  'cycle.mark': 'mark a cycle',
  'cycle.remove': 'remove a cycle mark',
  'cycle.change': 'change a cycle',
  'cycle.move': 'move a cycle mark',
  'cycles.end': 'move the end of the cycles',
  'element.add': 'name an element',
  'element.remove': 'remove an element',
  'element.change': 'change an element',
  'examination.add': 'note an examination',
  'examination.remove': 'remove an examination',
  'examination.change': 'change an examination',
  ...timeEditNames,
  ...workEditNames,
};

/** What an edit does, in words for the undo command and the history. */
export function editName(edit: Edit): string {
  return edit.type === 'group' ? edit.name : names[edit.type];
}
