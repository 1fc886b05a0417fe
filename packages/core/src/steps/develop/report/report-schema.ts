import { z } from 'zod';
import { reportParts } from '../../../ground/findings/index.ts';
import { workSchema } from '../../../ground/study/index.ts';

const micros = z.number().min(0).describe('Microseconds.');
const period = z.int().min(0).describe('Microseconds a cycle.');
const unitTime = z.number().min(0).describe('Microseconds for one unit.');
const saved = z.number().describe('Microseconds saved for one unit; below 0 where it takes longer.');
const interval = z
  .strictObject({ low: z.number(), high: z.number(), confidence: z.number() })
  .meta({ id: 'Interval' });

const methodStep = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    start: z.int().describe('Microseconds from the beginning of the cycle.'),
    mode: z
      .int()
      .min(0)
      .describe('Which of the ways to do the step was chosen; of a step of either hand 0 is the left.'),
    time: micros,
    motions: z.array(
      z.strictObject({
        us: micros,
        low: micros.describe('Low end of the 90 % interval, microseconds.'),
        high: micros.describe('High end of the 90 % interval, microseconds.'),
        source: z.string().describe('Where the time comes from, in words.'),
      }),
    ),
  })
  .meta({ id: 'MethodStep' });

const method = z
  .strictObject({
    unitsPerCycle: z.int().min(1),
    steps: z.array(methodStep),
    left: z.array(z.string()).describe('Ids of the steps of this hand, in their order.'),
    right: z.array(z.string()).describe('Ids of the steps of this hand, in their order.'),
    kind: z.enum(['open', 'closed']).describe('Closed: both hands wait for each other between two cycles.'),
    period,
    bound: z.number().min(0).describe('No method has a shorter cycle, microseconds.'),
    proven: z.boolean().describe('The cycle is proven to be the shortest for these times.'),
    words: z.string(),
    unitTime,
    travel: z.int().min(0).describe('Microseconds that both hands move in a cycle.'),
  })
  .meta({ id: 'DevelopedMethod', title: 'A two-hand method and what is proven of it' });

const expected = z
  .strictObject({
    likely: micros.describe('Middle of the draws, microseconds a cycle.'),
    interval,
    draws: z.int().min(1),
    seed: z.int(),
    words: z.string(),
  })
  .meta({ id: 'PeriodInterval', title: 'How long a cycle takes at work' });

const pace = z
  .strictObject({
    factor: z.number().positive().describe('Recorded times over those of the published laws.'),
    n: z.int().min(2),
    shared: z.number().min(0).describe('Standard deviation of the logarithm that all times share.'),
    own: z.number().min(0).describe('Standard deviation of the logarithm of one motion about the law.'),
    interval,
  })
  .meta({ id: 'RecordPace' });

const worthShape = {
  changes: z.array(z.string()).describe('Names of the changes, such as “fixture”; none: the work as it is.'),
  name: z.string(),
  saved,
  interval,
  method,
};
const worth = z
  .strictObject(worthShape)
  .meta({ id: 'ChangeWorth', title: 'What changes, taken together, are worth' });

const cost = z
  .strictObject({ low: z.number().min(0), likely: z.number().min(0), high: z.number().min(0) })
  .meta({ id: 'CostRange' });

const combinations = z
  .strictObject({
    axis: z.enum(['cost', 'changes']),
    exact: z.boolean().describe('Every combination was looked at and every answer proven.'),
    words: z.string(),
    tried: z.int().min(0),
    ruledOut: z.int().min(0),
    withoutCost: z.array(z.string()).describe('Changes left out because nobody has said what they cost.'),
    front: z.array(
      z
        .strictObject({
          ...worthShape,
          cost: cost.optional(),
          more: z
            .strictObject({ saved, interval })
            .optional()
            .describe('Saved beyond the entry before; left out of the first.'),
        })
        .meta({ id: 'FrontPoint' }),
    ),
  })
  .meta({ id: 'Combinations', title: 'The front of time for a unit against cost, from the cheapest' });

const position = z
  .strictObject({ x: z.number(), y: z.number() })
  .describe('Millimetres, x to the operator’s right and y away from the operator.');
const layout = z
  .strictObject({
    work: workSchema.describe('The work with its places where they were put and its changes taken.'),
    moved: z.array(
      z.strictObject({ place: z.string(), name: z.string(), from: position.optional(), to: position }),
    ),
    period,
    unitTime,
    bound: z
      .number()
      .min(0)
      .optional()
      .describe('No pair has a shorter cycle; left out where none is known.'),
    proven: z.boolean(),
    words: z.string(),
    spots: z.int().min(0).describe('Spots that there were to choose from.'),
  })
  .meta({ id: 'BestLayout', title: 'Best places together with the method' });

const done = z.strictObject({
  ok: z.literal(true),
  reportVersion: z.literal(1),
  work: workSchema.describe('The work that was composed, as it was read or drawn.'),
  method,
  expected: expected.optional(),
  pace: pace.optional(),
  single: z.array(worth).optional().describe('With --changes all or costs: each change alone.'),
  combinations: combinations.optional(),
  chosen: worth.optional().describe('With a list of changes or with --units: all of them together.'),
  layout: layout.optional(),
  notes: z.array(z.strictObject({ code: z.string(), message: z.string() })),
});

const written = z.strictObject({
  ok: z.literal(true),
  reportVersion: z.literal(1),
  files: z.array(z.string()).describe('What was written.'),
  steps: z.int().min(1).describe('Steps of the work.'),
});

/** What `evenhand develop --json` and, with -o, `evenhand develop work --json` print; or why it could not be done. */
export const developReportSchema = z
  .union([
    done.meta({ id: 'DevelopReport', title: 'The shortest method for a work, and what changes are worth' }),
    written.meta({ id: 'WorkWritten', title: 'The work of a record was written' }),
    reportParts.refused,
  ])
  .meta({ title: 'What evenhand develop and evenhand develop work print as JSON' });

export type DevelopReport = z.infer<typeof done>;
export type WorkWrittenReport = z.infer<typeof written>;

/** The published JSON Schema (draft 2020-12) of the report. */
export function developReportJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(developReportSchema) as Record<string, unknown>;
}
