import { fail, ok, type Result } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import { boundsFault, firstOf } from '../inputs.ts';

/** An order that several like machines share, each set up for it once. */
export interface Order {
  /** Good pieces wanted, above 0. */
  readonly pieces: number;
  /** Minutes for one piece. */
  readonly minutesAPiece: number;
  /** Share of the pieces that is scrapped, 0 to below 1. */
  readonly scrapped: number;
  /** Hours until the order is due, and the share of them in which a machine can run. */
  readonly hours: number;
  readonly available: number;
  /** Hours for setting up one machine. */
  readonly setUpHours: number;
}

export interface MachinesNeeded {
  /** Hours of running that the order takes, scrap counted in. */
  readonly workload: number;
  /** Workload ÷ (hours · available − set-up), not rounded. */
  readonly machines: number;
  readonly rounded: number;
}

/** Machines that an order needs: workload ÷ the hours that one machine has for it after it was set up. */
export function machinesNeeded(order: Order): Result<MachinesNeeded, Finding> {
  const { pieces, minutesAPiece, scrapped, hours, available, setUpHours } = order;
  const fault = firstOf(
    boundsFault('The number of pieces', pieces, { above: 0 }),
    boundsFault('The minutes for a piece', minutesAPiece, { above: 0 }),
    boundsFault('The share that is scrapped', scrapped, { least: 0, below: 1 }),
    boundsFault('The hours until the order is due', hours, { above: 0 }),
    boundsFault('The share of the time in which a machine can run', available, { above: 0, most: 1 }),
    boundsFault('The hours for setting up', setUpHours, { least: 0, below: hours * available }),
  );
  if (fault !== undefined) return fail(fault);
  const workload = (pieces * minutesAPiece) / 60 / (1 - scrapped);
  const machines = workload / (hours * available - setUpHours);
  const near = Math.round(machines);
  const rounded = Math.abs(machines - near) <= 1e-9 * Math.max(1, machines) ? near : Math.ceil(machines);
  return ok({ workload, machines, rounded: Math.max(1, rounded) });
}
