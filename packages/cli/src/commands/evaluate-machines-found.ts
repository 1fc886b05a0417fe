import {
  type Assignment,
  assignment,
  bestAssignment,
  type CallingGroup,
  idealMachines,
  machinesCalling,
  serviceLoss,
} from '@evenhand/core/evaluate';
import { ok, type Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';

export type MachinesAsked = RoundAsked | CallsAsked;

/** Times in minutes, costs of an hour. */
export interface RoundAsked {
  readonly kind: 'round';
  readonly together: number;
  readonly workerAlone: number;
  readonly machineAlone: number;
  readonly piecesACycle: number;
  readonly costs: { readonly workerCost: number; readonly machineCost: number } | undefined;
  readonly machines: number | undefined;
}

export interface CallsAsked {
  readonly kind: 'calls';
  /** Share of 1. */
  readonly stopped: number;
  readonly workers: number;
  readonly hours: number;
  readonly machines: number | undefined;
}

export type MachinesFound = RoundFound | CallsFound;

/** Without costs no cost of a piece is told, and none is the cheapest. */
export interface RoundFound {
  readonly kind: 'round';
  readonly ideal: number;
  readonly rows: readonly (Omit<Assignment, 'costAPiece'> & { readonly costAPiece?: number })[];
  readonly cheapest: number | undefined;
}

export interface CallsFound {
  readonly kind: 'calls';
  readonly rows: readonly CallsRow[];
}

export interface CallsRow extends CallingGroup {
  readonly machines: number;
  /** Machine-hours of the shift by the binomial rule; only for one worker. */
  readonly lostHours: number | undefined;
}

/** So many rows when no number of machines is asked for. */
const usualRows = 12;

export function machinesFound(asked: MachinesAsked): Result<MachinesFound, Finding> {
  return asked.kind === 'round' ? roundFound(asked) : callsFound(asked);
}

function roundFound({ costs, machines, ...served }: RoundAsked): Result<RoundFound, Finding> {
  const ideal = idealMachines(served);
  if (!ideal.ok) return ideal;
  const plan = { ...served, ...(costs ?? { workerCost: 0, machineCost: 0 }) };
  const told = ({ costAPiece, ...row }: Assignment) => (costs === undefined ? row : { ...row, costAPiece });
  if (machines !== undefined) {
    const one = assignment({ ...plan, machines });
    if (!one.ok) return one;
    return ok({ kind: 'round', ideal: ideal.value, rows: [told(one.value)], cheapest: undefined });
  }
  const best = bestAssignment(plan);
  if (!best.ok) return best;
  const cheapest = costs === undefined ? undefined : best.value.best.machines;
  return ok({ kind: 'round', ideal: ideal.value, rows: best.value.candidates.map(told), cheapest });
}

function callsFound({ stopped, workers, hours, machines }: CallsAsked): Result<CallsFound, Finding> {
  const numbers =
    machines === undefined ? Array.from({ length: usualRows }, (_, index) => index + 1) : [machines];
  const rows: CallsRow[] = [];
  for (const number of numbers) {
    const group = machinesCalling({ machines: number, workers, serviceFactor: stopped });
    if (!group.ok) return group;
    const loss = serviceLoss({ machines: number, stopped, hours });
    if (!loss.ok) return loss;
    rows.push({ machines: number, ...group.value, lostHours: workers === 1 ? loss.value.lost : undefined });
  }
  return ok({ kind: 'calls', rows });
}
