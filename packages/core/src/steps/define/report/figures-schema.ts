import { z } from 'zod';
import { reportParts } from '../../../ground/findings/index.ts';
import { studyParts } from '../../../ground/study/index.ts';

const share = z.number().describe('A share: 0.12 for 12 %.');
const interval = z
  .strictObject({ low: z.number(), high: z.number(), confidence: share })
  .meta({ id: 'Interval' });
const convention = studyParts.timeStudy.shape.allowances.shape.convention;
const notes = z.array(reportParts.finding);

const formNeeded = z
  .strictObject({
    form: z.enum(['population', 'normal', 'student', 'student-iterated']),
    multiplier: z.number(),
    deviation: z.number().describe('That the form takes: of the population, or of the sample.'),
    halfWidth: z.number().describe('That is wanted, in the unit of the readings.'),
    unrounded: z.number(),
    needed: z.int().describe('Rounded up.'),
    more: z.int().min(0).describe('Than the pilot has.'),
  })
  .meta({ id: 'FormNeeded' });

const cycles = z
  .strictObject({
    ok: z.literal(true),
    figure: z.literal('cycles'),
    pilot: z.strictObject({
      n: z.int().min(2),
      mean: z.number(),
      deviation: z.number().describe('Of the sample (n − 1).'),
    }),
    precision: z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('relative'), share }),
      z.strictObject({ kind: z.literal('absolute'), amount: z.number() }),
    ]),
    confidence: share,
    reached: z
      .strictObject({ halfWidth: z.number(), share, multiplier: z.number() })
      .describe('How close the mean of the pilot is known (t).'),
    forms: z.array(formNeeded),
    notes,
  })
  .meta({ id: 'CyclesReport', title: 'Cycles needed after a pilot' });

const sampledDay = z
  .strictObject({
    name: z.string(),
    seen: z.int().min(0),
    count: z.int().min(1),
    share,
    standardError: z.number(),
    low: share,
    high: share,
    outside: z.boolean(),
  })
  .meta({ id: 'SampledDay' });

const sampledPiece = z
  .strictObject({
    observed: z.number(),
    basic: z.number(),
    standard: z.number(),
    convention,
    allowance: share,
    rated: z.boolean().describe('False where standard pace was taken because none was given.'),
    interval: interval.optional().describe('Sampling error of the share; left out where it was not seen.'),
    words: z.string(),
  })
  .meta({ id: 'SampledPiece', title: 'Times of one piece from work sampling' });

const sampling = z
  .strictObject({
    ok: z.literal(true),
    figure: z.literal('sampling'),
    assurance: z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('confidence'), confidence: share }),
      z.strictObject({ kind: z.literal('multiplier'), multiplier: z.number() }),
    ]),
    precision: z.strictObject({ kind: z.enum(['of-the-whole', 'of-the-share']), amount: share }),
    needed: z
      .strictObject({ share, unrounded: z.number(), needed: z.int().min(1), multiplier: z.number() })
      .optional(),
    seen: z
      .strictObject({
        times: z.int().min(0),
        count: z.int().min(1),
        share,
        standardError: z.number(),
        halfWidth: share,
        interval,
        wilson: interval,
      })
      .optional(),
    chart: z
      .strictObject({ share, days: z.array(sampledDay) })
      .optional()
      .describe('p-chart: three standard errors about the share of all days.'),
    piece: sampledPiece.optional(),
    seed: z.int().optional(),
    times: z.array(z.strictObject({ day: z.int().min(1), clock: z.string() })).optional(),
    notes,
  })
  .meta({ id: 'SamplingReport', title: 'Work sampling: of work and machines, never of a person' });

const learning = z
  .strictObject({
    ok: z.literal(true),
    figure: z.literal('learning'),
    model: z.enum(['unit', 'cumulative-average']),
    first: z.number().describe('In the unit of time of all times here.'),
    rate: share,
    words: z.string(),
    exponent: z.number(),
    fit: z
      .strictObject({
        rateInterval: interval,
        deviation: z.number().describe('Of the logarithm of a time about the curve.'),
        explained: share,
        points: z.int().min(3),
      })
      .optional(),
    unit: z
      .strictObject({ number: z.int(), time: z.number(), total: z.number(), average: z.number() })
      .optional(),
    batch: z.strictObject({ from: z.int(), to: z.int(), total: z.number(), average: z.number() }).optional(),
    reach: z.strictObject({ time: z.number(), unit: z.number(), whole: z.number() }).optional(),
  })
  .meta({ id: 'LearningReport', title: 'Times on a learning curve' });

/** What `evenhand define cycles`, `define sampling` and `define learning` print with `--json`. */
export const defineFiguresSchema = z
  .union([z.discriminatedUnion('figure', [cycles, sampling, learning]), reportParts.refused])
  .meta({ title: 'What evenhand define cycles, sampling and learning print as JSON' });

/** The published JSON Schema (draft 2020-12) of these figures. */
export function defineFiguresJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(defineFiguresSchema) as Record<string, unknown>;
}
