import { z } from 'zod';
import { reportParts } from '../../../ground/findings/index.ts';

const minutes = z.number().min(0).describe('Minutes.');
const share = z.number().min(0).max(1).describe('A share: 0.1 for 10 %.');
const machineCount = z.int().min(1).max(1000);

const roundGiven = z
  .strictObject({
    kind: z.literal('round'),
    together: minutes.describe('Worker and machine together at one machine, minutes.'),
    workerAlone: minutes,
    machineAlone: minutes,
    piecesACycle: z.number().positive(),
    costs: z
      .strictObject({ workerCost: z.number().min(0), machineCost: z.number().min(0) })
      .optional()
      .describe('Of an hour of the worker and of one machine.'),
    machines: machineCount.optional(),
  })
  .meta({ id: 'RoundGiven' });

const assignment = z
  .strictObject({
    machines: machineCount,
    cycle: minutes.describe('Minutes from one service of a machine to its next.'),
    bound: z.enum(['worker', 'machine', 'both']).describe('Who is waited for.'),
    workerIdle: minutes.describe('Minutes a cycle.'),
    workerIdleAnHour: minutes.describe('Minutes an hour.'),
    machineIdle: minutes.describe('Of each machine, minutes a cycle.'),
    machineIdleAnHour: minutes.describe('Of each machine, minutes an hour.'),
    piecesAnHourOfOne: z.number().min(0),
    piecesAnHour: z.number().min(0),
    costAPiece: z.number().min(0).optional().describe('Left out without costs.'),
  })
  .meta({ id: 'Assignment', title: 'Machines that one worker serves in a fixed round' });

const round = z.strictObject({
  ok: z.literal(true),
  reportVersion: z.literal(1),
  given: roundGiven,
  kind: z.literal('round'),
  ideal: z.number().min(0).describe('Machines that would keep everybody busy, not rounded.'),
  rows: z.array(assignment),
  cheapest: machineCount.optional().describe('Number of machines with the least cost of a piece.'),
});

const callsGiven = z
  .strictObject({
    kind: z.literal('calls'),
    stopped: share.describe('Share of the time in which a machine would stand if it never waited.'),
    workers: machineCount,
    hours: z.number().positive().describe('Hours of the shift.'),
    machines: machineCount.optional(),
  })
  .meta({ id: 'CallsGiven' });

const group = z
  .strictObject({
    machines: machineCount,
    running: z.number().min(0).describe('Machines, on average.'),
    served: z.number().min(0).describe('Machines, on average.'),
    waiting: z.number().min(0).describe('Machines, on average.'),
    down: z.number().min(0).describe('Served and waiting.'),
    efficiency: z
      .number()
      .min(0)
      .max(1)
      .describe('What is left of the output there would be without waiting.'),
    mustWait: z.number().min(0).max(1).describe('Chance that a machine that calls finds nobody free.'),
    lostHours: z
      .number()
      .min(0)
      .optional()
      .describe('Machine-hours of the shift by the binomial rule; for one worker only.'),
  })
  .meta({ id: 'CallingGroup', title: 'Machines that call at random' });

const calls = z.strictObject({
  ok: z.literal(true),
  reportVersion: z.literal(1),
  given: callsGiven,
  kind: z.literal('calls'),
  rows: z.array(group),
});

/** What `evenhand evaluate machines --json` prints: machines that a worker can serve, or why it could not be said. */
export const machinesReportSchema = z
  .union([
    round.meta({ id: 'RoundReport', title: 'A fixed round' }),
    calls.meta({ id: 'CallsReport', title: 'Machines that call at random' }),
    reportParts.refused,
  ])
  .meta({ title: 'What evenhand evaluate machines prints as JSON' });

/** The published JSON Schema (draft 2020-12) of the report. */
export function machinesReportJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(machinesReportSchema) as Record<string, unknown>;
}
