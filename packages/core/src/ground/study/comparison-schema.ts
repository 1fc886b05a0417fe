import { z } from 'zod';
import { type Frozen, id, longText, shortText } from './schema-parts.ts';

const side = z
  .strictObject({
    method: id,
    cycles: z
      .array(z.int().min(1).max(1_000_000))
      .min(1)
      .optional()
      .describe('Numbers of the cycles from 1; left out, all that are not set aside.'),
  })
  .meta({ id: 'ComparedMethod' });

const money = z.number().min(-1e12).max(1e12);
const unitTime = z.number().positive().max(1e13).describe('Microseconds for one unit.');
const field = {
  unitsAYear: z.number().min(0).max(1e9),
  hourlyCost: z.number().min(0).max(1e6),
  cost: z.number().min(0).max(1e12),
  years: z.int().min(1).max(50),
  discountRate: z.number().min(0).max(10),
  runningCost: money,
  firstUnit: z.number().min(1).max(1000).describe('Time of the first unit ÷ the learned time.'),
  learningRate: z.number().gt(0).lt(1),
};
const range = (value: z.ZodNumber) => z.strictObject({ low: value, high: value }).optional();

const moneyCase = z
  .strictObject({
    currency: z.string().min(1).max(10).describe('As it is written beside an amount, such as “€”.'),
    basis: z
      .enum(['measured', 'equal-pace'])
      .describe('Whether the saving as measured counts, or the saving at equal pace.'),
    unitsAYear: field.unitsAYear,
    hourlyCost: field.hourlyCost.describe('Cost of an hour of the worker’s time.'),
    cost: field.cost.describe('Cost of the change, paid at the start.'),
    years: field.years,
    discountRate: field.discountRate.describe('Yearly, as a share.'),
    runningCost: field.runningCost
      .optional()
      .describe('What the new method costs each year beyond the old one; below 0 where it saves.'),
    learning: z.strictObject({ firstUnit: field.firstUnit, rate: field.learningRate }).optional(),
    ranges: z
      .strictObject({
        before: range(unitTime),
        after: range(unitTime),
        unitsAYear: range(field.unitsAYear),
        hourlyCost: range(field.hourlyCost),
        cost: range(field.cost),
        years: range(field.years),
        discountRate: range(field.discountRate),
        runningCost: range(field.runningCost),
        firstUnit: range(field.firstUnit),
        learningRate: range(field.learningRate),
      })
      .optional()
      .describe('The lowest and the highest value of what is uncertain.'),
  })
  .meta({ id: 'MoneyCase', title: 'A change of method as a matter of money' });

export const comparison = z
  .strictObject({
    id,
    name: shortText.min(1).optional(),
    before: side,
    after: side,
    proposed: z.boolean().optional().describe('Proposed motions count that nobody has confirmed.'),
    confidence: z.number().gt(0.5).lt(1),
    money: moneyCase.optional(),
    note: longText.optional(),
  })
  .meta({ id: 'Comparison', title: 'Two methods side by side' });

export type Comparison = Frozen<z.infer<typeof comparison>>;
export type MoneyCase = NonNullable<Comparison['money']>;
