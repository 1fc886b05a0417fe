import { z } from 'zod';
import {
  type AllowanceColumn,
  type AllowanceEditionId,
  type AllowanceRowId,
  allowanceEditions,
  type RatingScaleId,
  ratingScales,
} from '../tables/index.ts';
import { type TimeUnit, timeUnitNames } from '../units/index.ts';
import { type Frozen, id, longText, shortText } from './schema-parts.ts';

/** A time of a watch: whole microseconds of real time, up to 11 days. */
const watchTime = z.int().min(0).max(1e12);
const cycleNumber = z.int().min(1).max(1_000_000).describe('Number of a cycle of the time study, from 1.');
/** Above 0; whether it can be one of its scale is judged where the standard is worked out. */
const rating = z.number().positive().max(1000);
const share = z.number().min(0).max(10);
const names = <Name extends string>(known: Readonly<Record<Name, unknown>>) =>
  z.enum(Object.keys(known) as [Name, ...Name[]]);
const columns: readonly AllowanceColumn[] = ['one', 'men', 'women'];
const rows = [
  ...new Set(
    Object.values(allowanceEditions).flatMap((edition) =>
      edition.rows.map((row: { readonly id: AllowanceRowId }) => row.id),
    ),
  ),
];

const reading = z
  .strictObject({
    cycle: cycleNumber,
    us: watchTime
      .optional()
      .describe(
        'Left out where the reading was missed, and in a study whose times are those of a marked record.',
      ),
    rating: rating.optional().describe('Of this reading alone, on the scale of the time study.'),
    setAside: shortText
      .min(1)
      .optional()
      .describe('Why it does not count; it then is in no sum and in no number of readings.'),
  })
  .meta({ id: 'Reading', title: 'One element in one cycle' });

const timedElement = z
  .strictObject({
    id,
    name: shortText.min(1),
    work: z
      .enum(['worker', 'process', 'inside'])
      .describe('Paced by the worker, paced by a machine, or done by the worker while the machine runs.'),
    endsWhen: shortText.min(1).optional().describe('The break point: what is seen or heard when it ends.'),
    occurs: z
      .strictObject({ times: z.int().min(1).max(10_000), cycles: z.int().min(1).max(1_000_000) })
      .optional()
      .describe('So many times in so many cycles; left out, once in each.'),
    rating: rating.optional().describe('For all readings without one of their own.'),
    relaxation: share
      .optional()
      .describe('Relaxation of this element alone as a share, in the convention of the time study.'),
    readings: z.array(reading).describe('In the order of their cycles, at most one for each.'),
  })
  .meta({ id: 'TimedElement', title: 'An element of the work and its readings' });

const source = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('record'),
      method: id,
      cycles: z.array(cycleNumber).min(1).optional().describe('Left out, all cycles of the record.'),
      proposed: z.boolean().optional().describe('Proposed motions count that nobody has confirmed.'),
    }),
    z.strictObject({
      kind: z.literal('readings'),
      method: id.optional().describe('The method that was timed.'),
      timing: z
        .enum(['continuous', 'repetitive', 'typed'])
        .describe('A watch that ran on, one that went back to zero at each reading, or figures typed in.'),
    }),
  ])
  .meta({ id: 'TimeStudySource', title: 'Where the times come from' });

const sitting = z
  .strictObject({
    id,
    start: cycleNumber,
    operatorCode: shortText.min(1).optional().describe('A code for the person at work; never a name.'),
    observer: shortText.min(1).optional(),
    date: z
      .string()
      .regex(/^\d{4}-\d{2}-\d{2}$/, 'a date is written as 2026-03-31')
      .optional(),
    note: longText.optional(),
  })
  .meta({
    id: 'Sitting',
    title: 'Cycles timed at one time of one operator; it lasts until the next one starts',
  });

const foreign = z
  .strictObject({
    id,
    cycle: cycleNumber,
    element: id.optional().describe('The element during which it happened.'),
    us: watchTime,
    what: shortText.min(1),
  })
  .meta({
    id: 'ForeignElement',
    title: 'Something that is no part of the work; its time is in no reading',
  });

const relaxation = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('share'), share }),
    z.strictObject({
      kind: z.literal('table'),
      edition: names<AllowanceEditionId>(allowanceEditions),
      column: z.enum(columns as [AllowanceColumn, ...AllowanceColumn[]]),
      choices: z
        .array(
          z.strictObject({
            row: z.enum(rows as [AllowanceRowId, ...AllowanceRowId[]]),
            level: z.int().min(0).max(100).describe('Position of the level in the row, from 0.'),
          }),
        )
        .describe('At most one for each row.'),
    }),
  ])
  .meta({
    id: 'Relaxation',
    title: 'Allowance on the work of the worker: agreed, or from a published table',
  });

const allowances = z
  .strictObject({
    convention: z
      .enum(['share-of-basic-time', 'share-of-shift'])
      .describe(
        'What an agreed share is a share of. A published table is always one of basic time and is turned into the convention.',
      ),
    relaxation,
    process: share.describe('On machine-paced time.'),
    contingency: z.number().min(0).lt(1).describe('On top of the sum with its relaxation.'),
  })
  .meta({ id: 'Allowances' });

const precision = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('relative'), share: z.number().gt(0).lt(1) }),
    z.strictObject({ kind: z.literal('absolute'), us: watchTime.min(1) }),
  ])
  .meta({ id: 'Precision', title: 'Wanted half width of the interval of each mean' });

export const timeStudy = z
  .strictObject({
    id,
    name: shortText.min(1),
    source,
    unit: z
      .enum(timeUnitNames as [TimeUnit, ...TimeUnit[]])
      .describe('The unit in which the study sheet is written; readings are kept in microseconds.'),
    scale: names<RatingScaleId>(ratingScales),
    rating: rating.optional().describe('For all elements without one of their own.'),
    ratingError: z
      .number()
      .min(0)
      .max(0.5)
      .describe('Standard deviation of the level of the rater as a share of the rating; 0 carries none.'),
    confidence: z.number().gt(0.5).lt(1),
    precision,
    allowances,
    piecesPerCycle: z.number().positive().max(1_000_000),
    elements: z.array(timedElement),
    sittings: z.array(sitting).min(1).optional().describe('In the order of their first cycles.'),
    foreign: z.array(foreign).min(1).optional(),
    note: longText.optional(),
  })
  .meta({ id: 'TimeStudy', title: 'A time study: elements, readings, rating and allowances' });

export const timeStudyParts = { timedElement, reading };

export type TimeStudy = Frozen<z.infer<typeof timeStudy>>;
export type TimeStudyElement = TimeStudy['elements'][number];
/** The reading of one element in one cycle, as it stands in the study. */
export type TimeStudyReading = TimeStudyElement['readings'][number];
export type TimeStudySource = TimeStudy['source'];
export type Sitting = NonNullable<TimeStudy['sittings']>[number];
export type ForeignElement = NonNullable<TimeStudy['foreign']>[number];
export type TimeStudyAllowances = TimeStudy['allowances'];
