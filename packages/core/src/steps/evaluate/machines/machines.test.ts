import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assignment, bestAssignment, idealMachines } from './assignment.ts';
import { machinesCalling, serviceLoss, standingTogether } from './random-calls.ts';
import { machinesNeeded } from './workload.ts';

const served = { together: 3, workerAlone: 0.5, machineAlone: 14 };
const costs = { workerCost: 14, machineCost: 37 };

describe('synchronous servicing', () => {
  it('takes the cheaper one of the two whole numbers beside the ideal', () => {
    const found = bestAssignment({ ...served, ...costs });
    if (!found.ok) throw new Error(found.error.message);
    expect(found.value.ideal).toBeCloseTo(17 / 3.5, 12);
    expect(found.value.candidates.map(({ machines }) => machines)).toEqual([4, 5]);
    // Four: (14 + 4 · 37) · 17 ÷ 240 = 11.475; five: (14 + 5 · 37) · 17.5 ÷ 300 = 11.608.
    expect(found.value.candidates.map(({ costAPiece }) => Number(costAPiece.toFixed(3)))).toEqual([
      11.475, 11.608,
    ]);
    expect(found.value.best.machines).toBe(4);
  });

  it('no other number of machines is cheaper than the best of the two', () => {
    const time = fc.double({ min: 0.01, max: 60, noNaN: true });
    fc.assert(
      fc.property(
        time,
        time,
        time,
        time,
        time,
        (together, workerAlone, machineAlone, workerCost, machineCost) => {
          const plan = { together, workerAlone, machineAlone, workerCost, machineCost };
          const found = bestAssignment(plan);
          if (!found.ok) return;
          for (let machines = 1; machines <= 40; machines += 1) {
            const other = assignment({ ...plan, machines });
            if (other.ok) {
              expect(other.value.costAPiece).toBeGreaterThanOrEqual(
                found.value.best.costAPiece * (1 - 1e-12),
              );
              expect(Math.min(other.value.workerIdle, other.value.machineIdle)).toBeLessThan(1e-9);
            }
          }
        },
      ),
      { seed: 53, numRuns: 200 },
    );
  });

  it.each([
    [() => idealMachines({ ...served, together: -1 }), /worker and machine together must be/],
    [
      () => idealMachines({ together: 0, workerAlone: 0, machineAlone: 5 }),
      /the worker at one machine must be/,
    ],
    [() => assignment({ ...served, ...costs, machines: 0 }), /number of machines must be a whole number/],
    [() => assignment({ ...served, ...costs, machines: 2.5 }), /number of machines must be a whole number/],
    [
      () => bestAssignment({ together: 1e-6, workerAlone: 0, machineAlone: 1e4, ...costs }),
      /More machines than 1000/,
    ],
  ])('%# is refused in words', (ask, words) => {
    const found = ask();
    expect(found.ok ? '' : found.error.message).toMatch(words);
  });
});

describe('random servicing', () => {
  it('the shares of machines that stand add up to 1, also for many machines', () => {
    for (const machines of [1, 3, 60, 61, 400]) {
      for (const stopped of [0, 0.01, 0.4, 1]) {
        const shares = standingTogether(machines, stopped);
        expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
        expect(shares.reduce((sum, share, count) => sum + count * share, 0)).toBeCloseTo(
          machines * stopped,
          6,
        );
      }
    }
  });

  it('a group that calls is in balance: what is served is what the running machines call for', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200 }),
        fc.integer({ min: 1, max: 10 }),
        fc.double({ min: 0, max: 0.95, noNaN: true }),
        (machines, workers, serviceFactor) => {
          const found = machinesCalling({ machines, workers, serviceFactor });
          if (!found.ok) throw new Error(found.error.message);
          const { running, served: busy, waiting, efficiency, mustWait } = found.value;
          expect(running + busy + waiting).toBeCloseTo(machines, 9);
          expect(running * (serviceFactor / (1 - serviceFactor))).toBeCloseTo(busy, 6);
          expect(efficiency).toBeLessThanOrEqual(1 + 1e-12);
          expect(mustWait).toBeGreaterThanOrEqual(0);
          if (workers >= machines) expect([waiting, mustWait].map((value) => value + 1)).toEqual([1, 1]);
        },
      ),
      { seed: 54, numRuns: 200 },
    );
  });

  it.each([
    [
      () => serviceLoss({ machines: 3, stopped: 1.2, hours: 8 }),
      /share of time in which a machine stands must be/,
    ],
    [() => serviceLoss({ machines: 3, stopped: 0.2, hours: 0 }), /The hours of the shift must be/],
    [() => machinesCalling({ machines: 3, workers: 0, serviceFactor: 0.1 }), /The number of workers must be/],
    [() => machinesCalling({ machines: 3, workers: 1, serviceFactor: 1 }), /The service factor must be/],
    [
      () => machinesCalling({ machines: Number.NaN, workers: 1, serviceFactor: 0.1 }),
      /The number of machines must be/,
    ],
  ])('%# is refused in words', (ask, words) => {
    const found = ask();
    expect(found.ok ? '' : found.error.message).toMatch(words);
  });
});

it('an order that is due before a machine is set up is refused', () => {
  const order = { pieces: 10, minutesAPiece: 1, scrapped: 0, hours: 4, available: 1, setUpHours: 4 };
  const found = machinesNeeded(order);
  expect(found.ok ? '' : found.error.message).toMatch(
    /The hours for setting up must be a number of at least 0 and below 4/,
  );
  const exact = machinesNeeded({ ...order, pieces: 120, setUpHours: 3 });
  expect(exact).toMatchObject({ ok: true, value: { workload: 2, machines: 2, rounded: 2 } });
});
