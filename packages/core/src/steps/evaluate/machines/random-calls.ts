import { fail, ok, type Result } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import { boundsFault, firstOf } from '../inputs.ts';
import { mostMachines } from './assignment.ts';

/** Machines that stop by chance, each on its own, served by one worker who can attend to one at a time. */
export interface ChanceStops {
  /** 1 to 1000. */
  readonly machines: number;
  /** Share of the time in which one machine stands and wants attention, 0 to 1. */
  readonly stopped: number;
  /** Hours of the shift, above 0. */
  readonly hours: number;
}

export interface ServiceLoss {
  /** Probability that exactly k machines stand at once, for k = 0 … machines. */
  readonly standing: readonly number[];
  /** Machine-hours that wait for the worker while k stand: (k − 1) · probability · hours. */
  readonly lostHours: readonly number[];
  readonly lost: number;
  /** Share of all machine-hours of the shift (machines · hours, not hours) that is lost to waiting; 0 to 1. */
  readonly lostShare: number;
}

/**
 * Random servicing by the binomial rule: of k machines that stand, one is served and k − 1 wait. It takes the shares of
 * standing as they would be if nobody waited, so it is an estimate; `machinesCalling` counts the waiting in.
 */
export function serviceLoss({ machines, stopped, hours }: ChanceStops): Result<ServiceLoss, Finding> {
  const fault = firstOf(
    machinesFault(machines),
    shareFault('The share of time in which a machine stands', stopped),
    boundsFault('The hours of the shift', hours, { above: 0, most: 1e6 }),
  );
  if (fault !== undefined) return fail(fault);
  const standing = standingTogether(machines, stopped);
  const lostHours = standing.map((share, count) => Math.max(0, count - 1) * share * hours);
  const lost = lostHours.reduce((sum, value) => sum + value, 0);
  return ok({ standing, lostHours, lost, lostShare: lost / (machines * hours) });
}

/** Probability that exactly k of n machines stand, each a share p of the time: C(n, k) · p^k · (1 − p)^(n − k). */
export function standingTogether(machines: number, stopped: number): readonly number[] {
  const logs: number[] = [0];
  for (let count = 1; count <= machines; count += 1) logs.push((logs[count - 1] ?? 0) + Math.log(count));
  return Array.from({ length: machines + 1 }, (_, count) => {
    if (stopped === 0 || stopped === 1) return count === (stopped === 0 ? 0 : machines) ? 1 : 0;
    if (machines <= 60)
      return choose(machines, count) * stopped ** count * (1 - stopped) ** (machines - count);
    const ways = (logs[machines] ?? 0) - (logs[count] ?? 0) - (logs[machines - count] ?? 0);
    return Math.exp(ways + count * Math.log(stopped) + (machines - count) * Math.log1p(-stopped));
  });
}

/** Exact up to n = 60 but for the last digit of a float. */
function choose(n: number, k: number): number {
  let ways = 1;
  for (let index = 1; index <= Math.min(k, n - k); index += 1) ways = (ways * (n - index + 1)) / index;
  return ways;
}

/** Machines that call for service at random times and wait for a free worker. */
export interface Calling {
  /** Machines in the group, 1 to 1000. */
  readonly machines: number;
  /** Workers who serve them, 1 or more. */
  readonly workers: number;
  /** Service factor: time of one service ÷ (time of one service + mean running time between calls); 0 to below 1. */
  readonly serviceFactor: number;
}

/** Long-run means of a group of machines. running + served + waiting = machines. */
export interface CallingGroup {
  readonly running: number;
  readonly served: number;
  readonly waiting: number;
  /** served + waiting. */
  readonly down: number;
  /** (running + served) ÷ machines: what is left of the output that there would be without waiting. */
  readonly efficiency: number;
  /** Probability that a machine that calls finds every worker busy. */
  readonly mustWait: number;
}

/**
 * A finite group with exponential running and service times (M/M/c with a finite source), solved exactly. The published
 * finite queuing tables (Peck and Hazelwood 1958) are this to three decimals: F is `efficiency`, D is `mustWait`.
 */
export function machinesCalling({
  machines,
  workers,
  serviceFactor,
}: Calling): Result<CallingGroup, Finding> {
  const fault = firstOf(
    machinesFault(machines),
    boundsFault('The number of workers', workers, { least: 1, most: mostMachines, whole: true }),
    boundsFault('The service factor', serviceFactor, { least: 0, below: 1 }),
  );
  if (fault !== undefined) return fail(fault);
  const down = shareDown(machines, workers, serviceFactor);
  const [served, waiting] = [
    expected(down, (count) => Math.min(count, workers)),
    expected(down, (count) => Math.max(0, count - workers)),
  ];
  const running = machines - served - waiting;
  // A machine that calls sees the others as they are in a group without it.
  const seen = machines === 1 ? [1] : shareDown(machines - 1, workers, serviceFactor);
  const mustWait = expected(seen, (count) => (count >= workers ? 1 : 0));
  const efficiency = (running + served) / machines;
  return ok({ running, served, waiting, down: served + waiting, efficiency, mustWait });
}

/** Long-run shares of time in which 0, 1, … machines are down, by balance between neighbours; scaled against overflow. */
function shareDown(machines: number, workers: number, serviceFactor: number): readonly number[] {
  const ratio = serviceFactor / (1 - serviceFactor);
  const logs = [0];
  for (let count = 1; count <= machines; count += 1) {
    const step = ((machines - count + 1) * ratio) / Math.min(count, workers);
    logs.push((logs[count - 1] ?? 0) + Math.log(step));
  }
  const top = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - top));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

function expected(shares: readonly number[], countsAs: (count: number) => number): number {
  return shares.reduce((sum, share, count) => sum + share * countsAs(count), 0);
}

function machinesFault(machines: number): Finding | undefined {
  return boundsFault('The number of machines', machines, { least: 1, most: mostMachines, whole: true });
}

function shareFault(what: string, share: number): Finding | undefined {
  return boundsFault(what, share, { least: 0, most: 1 });
}
