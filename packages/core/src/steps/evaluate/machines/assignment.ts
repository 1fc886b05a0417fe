import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { boundsFault, firstOf } from '../inputs.ts';

/**
 * Work of one person at like machines that are served one after the other, as times that come anew in every cycle
 * (synchronous servicing). Times are in minutes.
 */
export interface ServedMachine {
  /** Worker and machine together: loading, unloading. */
  readonly together: number;
  /** Worker alone, while the machine can run: inspecting, walking to the next machine. */
  readonly workerAlone: number;
  /** Machine alone. */
  readonly machineAlone: number;
}

export interface AssignmentPlan extends ServedMachine {
  /** Machines that one worker serves, 1 to 1000. */
  readonly machines: number;
  /** Pieces that one machine makes in a cycle; 1 when left out. */
  readonly piecesACycle?: number;
  /** Cost of one hour of the worker and of one machine, in any currency. */
  readonly workerCost: number;
  readonly machineCost: number;
}

export interface Assignment {
  readonly machines: number;
  /** Minutes from one service of a machine to its next: the longer one of the machine's own time and the worker's round. */
  readonly cycle: number;
  /** Who is waited for: the machines wait for the worker, the worker for the machines, or nobody. */
  readonly bound: 'worker' | 'machine' | 'both';
  /** Minutes a cycle, and minutes an hour. */
  readonly workerIdle: number;
  readonly workerIdleAnHour: number;
  /** Of each machine. */
  readonly machineIdle: number;
  readonly machineIdleAnHour: number;
  /** Pieces an hour from one machine, and from all. */
  readonly piecesAnHourOfOne: number;
  readonly piecesAnHour: number;
  readonly costAPiece: number;
}

export const mostMachines = 1000;

/**
 * Machines that would keep both the worker and the machines busy, not rounded:
 * (together + machine alone) ÷ (together + worker alone).
 */
export function idealMachines(served: ServedMachine): Result<number, Finding> {
  const fault = servedFault(served);
  return fault === undefined ? ok(idealOf(served)) : fail(fault);
}

/**
 * What an assignment gives: cycle = max(together + machine alone, machines · (together + worker alone)); cost of a piece
 * = (worker + machines · machine) · cycle ÷ (60 · pieces · machines).
 */
export function assignment(plan: AssignmentPlan): Result<Assignment, Finding> {
  const fault = planFault(plan);
  return fault === undefined ? ok(assignmentOf(plan)) : fail(fault);
}

export interface BestAssignment {
  readonly ideal: number;
  /** The whole number below the ideal and the one above; one of them when the ideal is whole or below 1. */
  readonly candidates: readonly Assignment[];
  /** The one with the lower cost of a piece; at equal cost the one with fewer machines. */
  readonly best: Assignment;
}

/** The cheaper one of the two whole numbers of machines beside the ideal. */
export function bestAssignment(plan: Omit<AssignmentPlan, 'machines'>): Result<BestAssignment, Finding> {
  const fault = planFault({ ...plan, machines: 1 });
  if (fault !== undefined) return fail(fault);
  const ideal = idealOf(plan);
  if (ideal > mostMachines) return fail(finding('evaluate/machines-beyond', {}, { most: mostMachines }));
  const near = Math.round(ideal);
  const whole = Math.abs(ideal - near) < 1e-9 ? [near] : [Math.floor(ideal), Math.ceil(ideal)];
  const candidates = whole
    .filter((machines) => machines >= 1)
    .map((machines) => assignmentOf({ ...plan, machines }));
  const [first, second] = candidates;
  if (first === undefined) throw new RangeError(`no whole number of machines beside ${ideal}`);
  const best = second !== undefined && second.costAPiece < first.costAPiece ? second : first;
  return ok({ ideal, candidates, best });
}

function idealOf({ together, workerAlone, machineAlone }: ServedMachine): number {
  return (together + machineAlone) / (together + workerAlone);
}

function assignmentOf(plan: AssignmentPlan): Assignment {
  const { machines, piecesACycle = 1 } = plan;
  const machineTime = plan.together + plan.machineAlone;
  const round = machines * (plan.together + plan.workerAlone);
  const cycle = Math.max(machineTime, round);
  const [workerIdle, machineIdle] = [cycle - round, cycle - machineTime];
  const piecesAnHourOfOne = (60 * piecesACycle) / cycle;
  return {
    machines,
    cycle,
    bound: machineTime === round ? 'both' : machineTime > round ? 'machine' : 'worker',
    workerIdle,
    workerIdleAnHour: (60 * workerIdle) / cycle,
    machineIdle,
    machineIdleAnHour: (60 * machineIdle) / cycle,
    piecesAnHourOfOne,
    piecesAnHour: machines * piecesAnHourOfOne,
    costAPiece: (plan.workerCost + machines * plan.machineCost) / (machines * piecesAnHourOfOne),
  };
}

/** So many minutes are 190 years: longer times are slips. */
const longest = 1e8;

function servedFault({ together, workerAlone, machineAlone }: ServedMachine): Finding | undefined {
  const time = { least: 0, most: longest };
  return firstOf(
    boundsFault('The time of worker and machine together', together, time),
    boundsFault('The time of the worker alone', workerAlone, time),
    boundsFault('The time of the machine alone', machineAlone, time),
    boundsFault('The time of the worker at one machine', together + workerAlone, { above: 0 }),
    boundsFault('The time of a machine in a cycle', together + machineAlone, { above: 0 }),
  );
}

function planFault(plan: AssignmentPlan): Finding | undefined {
  return firstOf(
    servedFault(plan),
    boundsFault('The number of machines', plan.machines, { least: 1, most: mostMachines, whole: true }),
    boundsFault('The pieces a cycle', plan.piecesACycle ?? 1, { above: 0 }),
    boundsFault('The cost of an hour of the worker', plan.workerCost, { least: 0 }),
    boundsFault('The cost of an hour of a machine', plan.machineCost, { least: 0 }),
  );
}
