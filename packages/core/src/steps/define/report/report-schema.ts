import { z } from 'zod';
import { reportParts } from '../../../ground/findings/index.ts';
import { studyParts } from '../../../ground/study/index.ts';
import { type TimeUnit, timeUnitNames } from '../../../ground/units/index.ts';

const { timeStudy } = studyParts;
const time = z.number().describe('In the unit of the report.');
const share = z.number().describe('A share: 0.12 for 12 %.');
const chance = z.number().min(0).max(1).optional();
const convention = timeStudy.shape.allowances.shape.convention;
const interval = z
  .strictObject({ low: z.number(), high: z.number(), confidence: share })
  .meta({ id: 'Interval' });

const reading = z
  .strictObject({
    cycle: z.int().min(1),
    time: time.optional().describe('Left out where the reading was missed.'),
    rating: z.number().optional(),
    setAside: z.string().optional().describe('Why it counts in no sum and in no number of readings.'),
  })
  .meta({ id: 'TimedReading' });

const sample = {
  n: z.int().min(1).describe('Readings that count.'),
  mean: time,
  deviation: time.optional().describe('Of the sample (n − 1).'),
  variation: share.optional(),
  interval: interval.optional(),
};

const summary = z
  .strictObject({
    ...sample,
    sum: time,
    median: time,
    least: time,
    most: time,
    missed: z.int().min(0),
    setAside: z.array(reading),
    proposals: z
      .array(z.strictObject({ cycle: z.int(), time, words: z.string() }))
      .describe('Readings that a rule asks to look at. They count until a person sets them aside.'),
    rule: z.strictObject({ low: time, high: time, words: z.string() }).optional(),
  })
  .meta({ id: 'ElementSummary' });

const rated = z
  .strictObject({
    basic: z.strictObject(sample),
    ratings: z.strictObject({
      mean: z.number(),
      least: z.number(),
      most: z.number(),
      deviation: z.number().optional(),
    }),
    ratedBy: z.enum(['reading', 'element', 'study', 'mixed']),
  })
  .meta({ id: 'RatedElement', title: 'Basic time and the spread of the ratings' });

const trend = z
  .strictObject({
    change: share.describe('From the first to the last cycle, of the mean.'),
    changeInterval: interval,
    chance,
    drifts: z.boolean(),
    words: z.string(),
  })
  .meta({ id: 'Trend' });

const operators = z
  .strictObject({
    ratio: z.number().optional().describe('F: mean square between over mean square within.'),
    degrees: z.tuple([z.int(), z.int()]),
    chance,
    explained: share.optional(),
    differs: z.boolean(),
    words: z.string(),
  })
  .meta({ id: 'OperatorVariance', title: 'Whether operators differ; it says nothing about a person' });

const needed = z
  .strictObject({
    form: z.enum(['population', 'normal', 'student', 'student-iterated']),
    multiplier: z.number(),
    unrounded: z.number(),
    needed: z.int().describe('Rounded up.'),
    more: z.int().min(0),
  })
  .meta({ id: 'CyclesNeeded' });

const element = z
  .strictObject({
    id: z.string().optional().describe('Of a time study that is stored.'),
    name: z.string(),
    work: z.enum(['worker', 'process', 'inside']),
    relaxation: share.optional().describe('Of this element alone, in the convention of the report.'),
    frequency: z.number().describe('Times in a cycle.'),
    readings: z.array(reading),
    summary,
    rated: rated.optional().describe('Left out of a process element, which is not rated.'),
    perCycle: time.describe('Basic time in one cycle.'),
    factor: z.number().describe('What the allowance multiplies it with.'),
    standard: time.describe('Standard time in one cycle, without contingency.'),
    trend: trend.optional(),
    operators: operators.optional(),
    needed: z.array(needed),
  })
  .meta({ id: 'ReportElement' });

const allowance = z
  .strictObject({
    share,
    convention,
    process: share,
    contingency: share,
    other: z.strictObject({ share, convention }).describe('The same allowance in the other convention.'),
    words: z.string(),
    table: z
      .strictObject({
        edition: z.string(),
        column: z.string(),
        parts: z.array(
          z
            .strictObject({ row: z.string(), words: z.string(), percent: z.number() })
            .describe('Percent of basic time.'),
        ),
        caution: z.string(),
        source: z.string(),
      })
      .optional(),
  })
  .meta({ id: 'ReportAllowance' });

const done = z.strictObject({
  ok: z.literal(true),
  reportVersion: z.literal(1),
  title: z.string(),
  demo: z.boolean().describe('Invented data.'),
  timeStudy: z.strictObject({ id: z.string(), name: z.string() }).optional(),
  method: z.string().optional(),
  basis: z
    .enum(['time-study', 'elements', 'cycle', 'table'])
    .describe('A stored time study, the elements of a record, its whole cycles, or a table.'),
  cycles: z.array(z.int().min(0)),
  piecesPerCycle: z.number(),
  unit: z.strictObject({
    id: z.enum(timeUnitNames as [TimeUnit, ...TimeUnit[]]),
    symbol: z.string(),
  }),
  confidence: share,
  precision: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('relative'), share }),
    z.strictObject({ kind: z.literal('absolute'), amount: time }),
  ]),
  rating: z.strictObject({
    rated: z.boolean(),
    scale: timeStudy.shape.scale,
    standard: z.number(),
    unrated: z.array(z.string()).describe('Elements whose pace was taken as standard.'),
    error: share,
  }),
  elements: z.array(element),
  whole: z
    .strictObject({
      cycles: z.array(z.strictObject({ cycle: z.int(), time: time.optional() })),
      trend: trend.optional(),
      operators: operators.optional(),
    })
    .describe('The cycle as a whole: elements of every cycle, without inside work.'),
  foreign: z.array(
    z.strictObject({ cycle: z.int(), element: z.string().optional(), time, what: z.string() }),
  ),
  allowance,
  cycle: z.strictObject({
    basic: time,
    relaxed: time,
    contingency: time,
    standard: time,
    parts: z.strictObject({ worker: time, process: time, inside: time }),
    interval: z
      .strictObject({
        interval,
        samplingError: time,
        ratingError: time,
        degrees: z.number().optional(),
        words: z.string(),
      })
      .optional(),
    draws: z
      .strictObject({
        interval,
        deviation: time.describe('Of the draws.'),
        draws: z.int(),
        seed: z.int(),
        repeated: z.int().min(0).describe('Draws without a reading of some element, drawn anew.'),
        words: z.string(),
      })
      .optional()
      .describe('Whole cycles drawn with replacement: a check beside the interval.'),
    noDraws: z.string().optional().describe('Why there are none although they were asked for.'),
  }),
  piece: z.strictObject({
    basic: time,
    standard: time,
    low: time.optional(),
    high: time.optional(),
    anHour: z.number(),
    wholeAnHour: z.number(),
  }),
  enough: z.strictObject({ enough: z.boolean(), moreCycles: z.number().optional(), words: z.string() }),
  rule: z.string().optional().describe('How elements were found in a record.'),
  notes: z.array(reportParts.finding),
});

/** What `evenhand define --json` prints: the sheet worked out, or why it could not be. */
export const defineReportSchema = z
  .discriminatedUnion('ok', [
    done.meta({ id: 'DefineReport', title: 'A time study worked out' }),
    reportParts.refused,
  ])
  .meta({ title: 'What evenhand define prints as JSON' });

export type DefineReport = z.infer<typeof done>;

/** The published JSON Schema (draft 2020-12) of the report. */
export function defineReportJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(defineReportSchema) as Record<string, unknown>;
}
