import { z } from 'zod';

const time = z.number().describe('Microseconds.');
const boundary = z.int().min(0).describe('Frame of the film, or microseconds in a method without a film.');
const hand = z.enum(['left', 'right', 'both']);

const trace = z
  .strictObject({ cycle: z.int().min(0), hand, from: boundary, to: boundary })
  .meta({ id: 'Trace', title: 'Where it can be seen: a stretch of one cycle (0: a record without cycles)' });

const bounds = z
  .strictObject({ low: time, high: time })
  .meta({ id: 'Stake', title: 'Time at stake a cycle: at least, and at most' });
const hours = z.strictObject({ low: z.number(), high: z.number() }).meta({ id: 'HoursAYear' });

const evidence = z
  .strictObject({
    name: z.string(),
    value: z.number(),
    unit: z
      .enum(['time', 'share', 'count', 'length', 'ratio'])
      .describe('time: microseconds a cycle; share: 0 to 1; length: millimetres.'),
  })
  .meta({ id: 'EvidenceFigure' });

const lead = z
  .strictObject({
    id: z.string(),
    code: z.string(),
    name: z.string(),
    hand,
    about: z.string().optional(),
    cycles: z.array(z.int().min(0)),
    evidence: z.string(),
    figures: z.array(evidence),
    atStake: bounds,
    rule: z.string().describe('How the interval was computed.'),
    hoursAYear: hours.optional(),
    principles: z.array(
      z.strictObject({
        number: z.int().optional(),
        fact: z.string(),
        numbering: z.string(),
        source: z.string(),
      }),
    ),
    limit: z.string().optional().describe('A limit in the rule that is ours.'),
    remedies: z.array(z.strictObject({ how: z.string(), text: z.string() })),
    questions: z.array(z.string()),
    caution: z.string().optional(),
    traces: z.array(trace),
  })
  .meta({ id: 'Lead' });

const sample = z
  .strictObject({
    n: z.int().min(1),
    mean: z.number(),
    deviation: z.number().optional(),
    variation: z.number().optional().describe('Deviation as a share of the mean.'),
    interval: z.strictObject({ low: z.number(), high: z.number(), confidence: z.number() }).optional(),
  })
  .meta({ id: 'Sample', title: 'Mean, spread and confidence interval over cycles' });

const row = z
  .strictObject({
    section: z.string().describe('The table it belongs to.'),
    label: z.string(),
    hand: hand.optional(),
    unit: z
      .enum(['time', 'share', 'ratio', 'count', 'rate'])
      .describe('time: microseconds a cycle; share, ratio: 0 to 1; count: a cycle; rate: a minute.'),
    value: z
      .number()
      .optional()
      .describe(
        'Mean of the cycles; a share, rate or ratio: total over all cycles. Absent: nothing to divide by.',
      ),
    sample: sample.optional(),
    traces: z.array(trace).optional(),
  })
  .meta({ id: 'FigureRow' });

const run = z
  .strictObject({
    row: hand.describe('Whose motions; both: what the hands did at the same time.'),
    words: z.string(),
    length: z.int().min(2),
    count: z.int().min(2).describe('Occurrences that do not overlap.'),
    inexact: z.int().min(0).describe('Of these, occurrences that differ in one motion.'),
    timeACycle: time,
    sample,
    traces: z.array(trace),
  })
  .meta({ id: 'RepeatedRun', title: 'A sequence of motions that comes again' });

const bound = z
  .strictObject({ time, words: z.string(), traces: z.array(trace) })
  .meta({ id: 'PracticeBound', title: 'A time that practice may be held against' });

const spread = {
  sample: sample.optional(),
  least: time.optional(),
  lowerQuartile: time.optional(),
  median: time.optional(),
  upperQuartile: time.optional(),
  most: time.optional(),
};

const variation = z
  .strictObject({
    basis: z.enum(['elements', 'motions']),
    rule: z.string(),
    elements: z.array(z.strictObject({ name: z.string(), hand, ...spread, traces: z.array(trace) })),
    deviations: z.array(
      z.strictObject({ pattern: z.string(), words: z.string(), time, trace }).meta({ id: 'Deviation' }),
    ),
    best: bound.optional(),
    quartiles: bound.optional(),
    reasons: z.array(z.string()).describe('Why a bound is missing.'),
  })
  .meta({ id: 'Variation', title: 'How the cycles differ' });

const noted = z
  .strictObject({
    subject: z.string(),
    there: z.boolean().describe('False: it is not in the record any more.'),
    answers: z.array(
      z.strictObject({ question: z.string(), text: z.string(), by: z.enum(['record', 'analyst']) }),
    ),
    open: z.array(z.string()).describe('Questions without an answer.'),
    decision: z.strictObject({ choice: z.string(), reason: z.string() }).optional(),
  })
  .meta({ id: 'Noted', title: 'A critical examination' });

/** What `evenhand examine --json` prints; the published JSON Schema is exported from it. */
export const examinationReportSchema = z
  .strictObject({
    reportVersion: z.literal(1),
    study: z.strictObject({ id: z.string(), title: z.string(), demo: z.boolean() }),
    method: z.strictObject({ id: z.string(), name: z.string(), unitsPerCycle: z.int() }),
    base: z.enum(['frames', 'micros']).describe('What the boundaries of the traces count.'),
    cycles: z.array(z.strictObject({ number: z.int(), from: boundary, to: boundary, duration: time })),
    cycleTime: sample,
    notes: z.array(z.string()),
    leads: z
      .strictObject({
        list: z.array(lead),
        joint: z.strictObject({ atStake: bounds, hoursAYear: hours.optional(), rule: z.string() }),
      })
      .optional(),
    figures: z
      .strictObject({
        grouping: z.string(),
        rows: z.array(row),
        sameMotionLag: z
          .strictObject({ lag: time, leads: z.string(), agreement: z.number(), atZero: z.number() })
          .optional(),
        repeated: z.strictObject({ rule: z.string(), byCost: z.array(run), byCount: z.array(run) }),
        variation,
      })
      .optional(),
    examinations: z.array(noted),
  })
  .meta({ id: 'ExaminationReport', title: 'Evenhand examination of one method' });

export type ExaminationReport = z.infer<typeof examinationReportSchema>;

/** The published JSON Schema (draft 2020-12) of the report. */
export function examinationReportJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(examinationReportSchema) as Record<string, unknown>;
}
