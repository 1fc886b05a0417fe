import {
  assignment,
  idealMachines,
  machinesCalling,
  machinesNeeded,
  serviceLoss,
  standingTogether,
} from '@evenhand/core/evaluate';
import { describe, expect, it } from 'vitest';
import { expectCheck, tally, titled, told } from './check.ts';
import * as calling from './published-calling-groups.ts';
import * as published from './published-machines.ts';

const { sources } = published;

/** What was found under names that the second program computed too. */
function known(all: Record<string, number>, computed: object): Record<string, number> {
  return Object.fromEntries(Object.entries(all).filter(([name]) => name in computed));
}

function numbered(name: string, values: readonly number[]): Record<string, number> {
  return Object.fromEntries(values.map((value, index) => [`${name}${index}`, value]));
}

describe('synchronous servicing', () => {
  it.each(titled(published.idealNumbers, sources))('$title', ({ check }) => {
    const { l, m, w } = check.inputs;
    const n = told(idealMachines({ together: l, workerAlone: w, machineAlone: m }));
    expectCheck(check, { n, floor: Math.floor(n + 1e-9) });
  });

  it.each(titled(published.assignments, sources))('$title', ({ check }) => {
    const { a, b, t, m, Co, Cm } = check.inputs;
    const served = { together: a, workerAlone: b, machineAlone: t };
    const found = told(assignment({ ...served, machines: m, workerCost: Co, machineCost: Cm }));
    expectCheck(check, {
      nIdeal: told(idealMachines(served)),
      Tc: found.cycle,
      cost: found.costAPiece,
      opIdle: found.workerIdle,
      machIdle: found.machineIdle,
    });
  });

  it.each(titled(published.assignmentsOfPieces, sources))('$title', ({ check }) => {
    const { R, S, L, P, U, K } = check.inputs;
    const served = { together: S, workerAlone: 0, machineAlone: R };
    const found = told(
      assignment({ ...served, machines: K, piecesACycle: U, workerCost: L, machineCost: P }),
    );
    expectCheck(check, {
      kIdeal: told(idealMachines(served)),
      C: found.cycle,
      T: found.costAPiece,
      Q: found.piecesAnHourOfOne,
      opIdle: found.workerIdle,
      opIdleHour: found.workerIdleAnHour,
      machIdle: found.machineIdle,
      machIdleHour: found.machineIdleAnHour,
    });
  });
});

describe('random servicing', () => {
  it.each(titled(published.serviceLosses, sources))('$title', ({ check }) => {
    const { n, pDown, hours } = check.inputs;
    const found = told(serviceLoss({ machines: n, stopped: pDown, hours }));
    expectCheck(check, {
      ...numbered('p', found.standing),
      ...numbered('lost', found.lostHours),
      lost: found.lost,
      lostPct: 100 * found.lostShare,
      eff: 100 * (1 - found.lostShare),
    });
  });

  it.each(titled(published.standings, sources))('$title', ({ check }) => {
    const standing = standingTogether(check.inputs.n, check.inputs.p);
    const ge3 = standing.slice(3).reduce((sum, share) => sum + share, 0);
    expectCheck(check, known({ ...numbered('p', standing), ge3 }, check.computed));
  });

  it.each(titled(calling.callingGroups, calling.sources))('$title', ({ check }) => {
    const { K, X, c } = check.inputs;
    const found = told(machinesCalling({ machines: K, workers: c, serviceFactor: X }));
    const { efficiency: F, mustWait: D, waiting: L, served: H, running: J, down } = found;
    expectCheck(check, { F, D, L, H, J, down });
  });
});

describe('machines for an order', () => {
  it.each(titled(published.orders, sources))('$title', ({ check }) => {
    const { units, t, q, hours, avail, setup } = check.inputs;
    const found = told(
      machinesNeeded({
        pieces: units,
        minutesAPiece: t,
        scrapped: q,
        hours,
        available: avail,
        setUpHours: setup,
      }),
    );
    expectCheck(check, { wl: found.workload, n: found.machines, nCeil: found.rounded });
  });
});

it('49 published checks on machines ran, three of them wrong prints', () => {
  expect(tally()).toMatchObject({ checks: 49, traps: 3 });
});
