import { z } from 'zod';
import {
  type Comparison,
  studyParts,
  type TimeStudy,
  type TimeStudyElement,
  type TimeStudyReading,
} from '../study/index.ts';
import type { Changed } from './changed.ts';

const { id, timeStudy, timedElement, reading, comparison, shortText, longText } = studyParts;
const { shape } = timeStudy;

/** Which fields of a time study an edit may set; `null` takes an optional field away. */
const timeStudyFields = z.strictObject({
  name: shape.name.optional(),
  source: shape.source.optional(),
  unit: shape.unit.optional(),
  scale: shape.scale.optional(),
  rating: shape.rating.unwrap().nullable().optional(),
  ratingError: shape.ratingError.optional(),
  confidence: shape.confidence.optional(),
  precision: shape.precision.optional(),
  allowances: shape.allowances.optional(),
  piecesPerCycle: shape.piecesPerCycle.optional(),
  sittings: shape.sittings.unwrap().nullable().optional(),
  foreign: shape.foreign.unwrap().nullable().optional(),
  note: longText.nullable().optional(),
});
const timedElementFields = z.strictObject({
  name: shortText.min(1).optional(),
  work: timedElement.shape.work.optional(),
  endsWhen: shortText.min(1).nullable().optional(),
  occurs: timedElement.shape.occurs.unwrap().nullable().optional(),
  rating: timedElement.shape.rating.unwrap().nullable().optional(),
  relaxation: timedElement.shape.relaxation.unwrap().nullable().optional(),
});
const comparisonFields = z.strictObject({
  name: shortText.min(1).nullable().optional(),
  before: comparison.shape.before.optional(),
  after: comparison.shape.after.optional(),
  proposed: z.boolean().nullable().optional(),
  confidence: comparison.shape.confidence.optional(),
  money: comparison.shape.money.unwrap().nullable().optional(),
  note: longText.nullable().optional(),
});
const index = z.int().min(0).optional();
const cell = reading.nullable();

export const timeEdits = [
  z.strictObject({ type: z.literal('time-study.add'), timeStudy, index }),
  z.strictObject({ type: z.literal('time-study.remove'), timeStudy }),
  z.strictObject({
    type: z.literal('time-study.change'),
    timeStudy: id,
    to: timeStudyFields,
    was: timeStudyFields,
  }),
  z.strictObject({ type: z.literal('timed-element.add'), timeStudy: id, element: timedElement, index }),
  z.strictObject({ type: z.literal('timed-element.remove'), timeStudy: id, element: timedElement }),
  z.strictObject({
    type: z.literal('timed-element.change'),
    timeStudy: id,
    element: id,
    to: timedElementFields,
    was: timedElementFields,
  }),
  z.strictObject({ type: z.literal('reading.set'), timeStudy: id, element: id, to: cell, was: cell }),
  z.strictObject({ type: z.literal('comparison.add'), comparison, index }),
  z.strictObject({ type: z.literal('comparison.remove'), comparison }),
  z.strictObject({
    type: z.literal('comparison.change'),
    comparison: id,
    to: comparisonFields,
    was: comparisonFields,
  }),
] as const;

export type TimeStudyFields = Changed<Omit<TimeStudy, 'id' | 'elements'>>;
export type TimedElementFields = Changed<Omit<TimeStudyElement, 'id' | 'readings'>>;
export type ComparisonFields = Changed<Omit<Comparison, 'id'>>;
type InTimeStudy = { readonly timeStudy: string };

/** Changes of time studies and comparisons. */
export type TimeEdit =
  | { readonly type: 'time-study.add'; readonly timeStudy: TimeStudy; readonly index?: number }
  | { readonly type: 'time-study.remove'; readonly timeStudy: TimeStudy }
  | ({
      readonly type: 'time-study.change';
      readonly to: TimeStudyFields;
      readonly was: TimeStudyFields;
    } & InTimeStudy)
  | ({
      readonly type: 'timed-element.add';
      readonly element: TimeStudyElement;
      readonly index?: number;
    } & InTimeStudy)
  | ({ readonly type: 'timed-element.remove'; readonly element: TimeStudyElement } & InTimeStudy)
  | ({
      readonly type: 'timed-element.change';
      readonly element: string;
      readonly to: TimedElementFields;
      readonly was: TimedElementFields;
    } & InTimeStudy)
  /** One reading: of its cycle there is none yet when `was` is null, and none left when `to` is; both name one cycle. */
  | ({
      readonly type: 'reading.set';
      readonly element: string;
      readonly to: TimeStudyReading | null;
      readonly was: TimeStudyReading | null;
    } & InTimeStudy)
  | { readonly type: 'comparison.add'; readonly comparison: Comparison; readonly index?: number }
  | { readonly type: 'comparison.remove'; readonly comparison: Comparison }
  | {
      readonly type: 'comparison.change';
      readonly comparison: string;
      readonly to: ComparisonFields;
      readonly was: ComparisonFields;
    };

export const timeEditNames: Readonly<Record<TimeEdit['type'], string>> = {
  'time-study.add': 'begin a time study',
  'time-study.remove': 'remove a time study',
  'time-study.change': 'change a time study',
  'timed-element.add': 'add an element to the time study',
  'timed-element.remove': 'remove an element of the time study',
  'timed-element.change': 'change an element of the time study',
  'reading.set': 'write a reading',
  'comparison.add': 'begin a comparison',
  'comparison.remove': 'remove a comparison',
  'comparison.change': 'change a comparison',
};
