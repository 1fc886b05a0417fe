import { z } from 'zod';
import { reportParts } from '../../ground/findings/index.ts';
import { studyParts } from '../../ground/study/index.ts';
import { causes } from './decomposition/decomposition.ts';
import { type CaseField, caseFields } from './money/outlook.ts';

const unitTime = z.number().describe('Microseconds for one unit.');
const share = z.number().describe('A share: 0.36 for 36 %.');
const amount = z.number().describe('In the currency of the money case.');
const interval = z
  .strictObject({ low: z.number(), high: z.number(), confidence: z.number() })
  .meta({ id: 'Interval' });

const sample = z
  .strictObject({
    n: z.int().min(1),
    mean: unitTime,
    deviation: unitTime.optional(),
    variation: share.optional(),
    interval: interval.optional(),
  })
  .meta({ id: 'UnitTimes', title: 'Times for one unit over the cycles that count' });

const saving = z
  .strictObject({
    timeSaved: share,
    outputGained: share,
    times: z.number().describe('How many times as much comes out in the same time.'),
  })
  .meta({ id: 'Saving', title: 'Time saved and output gained: two figures, never one' });

const side = z
  .strictObject({
    method: z.string(),
    name: z.string(),
    unitsPerCycle: z.int().min(1),
    cycles: z.array(z.int().min(0)).describe('Numbers of the cycles that count; 0 is the whole record.'),
    sample,
  })
  .meta({ id: 'ComparedSide' });

const difference = z
  .strictObject({
    saving,
    saved: unitTime,
    savedInterval: interval.optional(),
    ratio: z.strictObject({ value: z.number(), interval, degrees: z.number() }).optional(),
    timeSaved: interval.optional(),
    outputGained: interval.optional(),
    drawn: z
      .strictObject({
        saved: interval,
        ratio: interval,
        shorter: share,
        draws: z.int(),
        seed: z.int(),
      })
      .optional(),
    chance: share.optional(),
    verdict: z.enum(['shorter', 'longer', 'open', 'unknown']),
    odds: z.string(),
    more: z
      .strictObject({
        ofEach: z.int().optional(),
        power: share,
        most: z.int(),
        words: z.string(),
      })
      .optional(),
  })
  .meta({ id: 'Difference' });

const pace = z
  .strictObject({
    ratio: z.number().optional().describe('Time of the same motions after ÷ before.'),
    interval: interval.optional(),
    share,
    motions: z.int().min(0),
    equal: z.strictObject({ after: unitTime, saving, timeSaved: interval.optional() }).optional(),
    explained: share.optional(),
    rule: z.string(),
  })
  .meta({ id: 'EqualPace' });

const cause = z.enum(causes as unknown as [string, ...string[]]);
const byHand = z.strictObject({ left: unitTime, right: unitTime });
const decomposition = z
  .strictObject({
    saved: unitTime,
    totals: z.strictObject(Object.fromEntries(causes.map((name) => [name, unitTime]))),
    byHand,
    rule: z.string(),
    rows: z.array(
      z.strictObject({
        name: z.string(),
        kind: z.string(),
        object: z.string().optional(),
        saved: unitTime,
        byHand,
        parts: z.array(z.strictObject({ cause, saved: unitTime })),
      }),
    ),
  })
  .meta({ id: 'Decomposition', title: 'Where the difference comes from; all parts add up to it' });

const payback = z
  .strictObject({
    years: z.number().optional(),
    missing: amount,
    lostAgain: z.boolean(),
    words: z.string(),
  })
  .meta({ id: 'Payback' });

const changeMoney = z
  .strictObject({
    yearly: z.strictObject({
      timeSaved: share,
      outputGained: share,
      times: z.number(),
      timeAUnit: unitTime,
      hours: z.number(),
      money: amount,
    }),
    learning: z.strictObject({ units: z.number(), hours: z.number(), money: amount }),
    flows: z.array(amount),
    netPresentValue: amount,
    payback,
    discountedPayback: payback,
    breakEven: z.strictObject({ units: z.number().optional(), unitsAYear: z.number().optional() }),
    conventions: z.array(z.string()),
  })
  .meta({ id: 'ChangeMoney' });

const end = z.strictObject({ value: z.number(), netPresentValue: amount });
const money = z
  .strictObject({
    given: studyParts.comparison.shape.money.unwrap(),
    basis: z.string(),
    low: changeMoney,
    likely: changeMoney,
    high: changeMoney,
    tornado: z.array(
      z.strictObject({
        field: z.enum(Object.keys(caseFields) as [CaseField, ...CaseField[]]),
        name: z.string(),
        low: end,
        high: end,
        swing: amount,
      }),
    ),
  })
  .meta({ id: 'Money' });

const done = z.strictObject({
  ok: z.literal(true),
  reportVersion: z.literal(1),
  study: z.strictObject({ id: z.string(), title: z.string(), demo: z.boolean() }),
  comparison: z.strictObject({ id: z.string(), name: z.string().optional() }),
  before: side,
  after: side,
  claim: z.strictObject({ sentence: z.string(), restsOn: z.array(z.string()) }),
  difference,
  pace,
  decomposition,
  money: money.optional(),
  files: z.array(z.string()).describe('What was written.'),
  notes: z.array(z.strictObject({ code: z.string(), message: z.string() })),
});

/** What `evenhand evaluate --json` prints: the comparison, or why it could not be made. */
export const evaluateReportSchema = z
  .discriminatedUnion('ok', [
    done.meta({ id: 'EvaluateReport', title: 'Two methods compared' }),
    reportParts.refused,
  ])
  .meta({ title: 'What evenhand evaluate prints as JSON' });

export type EvaluateReport = z.infer<typeof done>;

/** The published JSON Schema (draft 2020-12) of the report. */
export function evaluateReportJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(evaluateReportSchema) as Record<string, unknown>;
}
