import process from 'node:process';
import { type Composed, type CycleKind, checkSchedule, compose, type Instance } from '@evenhand/core/develop';
import { type InstanceKind, twoHandInstance } from '../tests/helpers/two-hand-instances.ts';
import { milpSolver } from '../tests/oracles/two-hand-milp.ts';
import { fixed, printTable, quantile } from './harness.ts';

/**
 * How long the composer takes to a proven optimum, how far its bound is from it at once, what it reaches in 20 s where
 * nothing can be proven, and a general solver on the same works. Times are processor seconds of this process, which a
 * busy machine stretches less than those of the clock.
 */

const kinds: readonly CycleKind[] = ['open', 'closed'];
/** Seconds after which a proof is given up. */
const patience = 60;

interface Row {
  readonly steps: number;
  readonly name: string;
  readonly seeds: number;
  readonly what: InstanceKind;
}

const row = (steps: number, parts: number, units: number, base: 'fixture' | 'hand', seeds: number): Row => ({
  steps,
  name: `${units} × ${parts} parts, base in a ${base}`,
  seeds,
  what: { parts, units, base },
});

const rows: readonly Row[] = [
  row(10, 3, 1, 'fixture', 9),
  row(10, 4, 1, 'hand', 9),
  row(14, 5, 1, 'fixture', 9),
  row(20, 8, 1, 'fixture', 9),
  row(20, 3, 2, 'fixture', 9),
  row(20, 9, 1, 'hand', 9),
  row(24, 10, 1, 'fixture', 5),
  row(24, 4, 2, 'fixture', 5),
  row(24, 1, 4, 'fixture', 5),
  row(28, 12, 1, 'fixture', 3),
  row(28, 5, 2, 'fixture', 3),
  row(28, 6, 2, 'hand', 3),
];

const large: readonly Row[] = [
  row(40, 18, 1, 'fixture', 2),
  row(40, 8, 2, 'fixture', 2),
  row(40, 3, 4, 'fixture', 2),
  row(40, 9, 2, 'hand', 2),
];

interface Run {
  readonly composed: Composed;
  readonly seconds: number;
  /** Share of the period that the first bound leaves open. */
  readonly rootGap: number;
}

function run(instance: Instance, kind: CycleKind, seconds: number): Run {
  const begun = process.cpuUsage();
  const taken = () => process.cpuUsage(begun).user / 1e6;
  let first: number | undefined;
  const made = compose(instance, {
    kind,
    seed: 1,
    states: 20_000_000,
    stop: () => taken() > seconds,
    onBetter: ({ bound }) => {
      first ??= bound;
    },
  });
  const used = taken();
  if (!made.ok) throw new Error(made.error.message);
  const { schedule, bound } = made.value;
  const faults = checkSchedule(instance, schedule);
  if (faults.length > 0) throw new Error(faults[0]?.message);
  return { composed: made.value, seconds: used, rootGap: 1 - (first ?? bound) / schedule.period };
}

const percent = (share: number) => `${(share * 100).toFixed(1)} %`;

function proofRows(kind: CycleKind): string[][] {
  return rows.map(({ steps, name, seeds, what }) => {
    const runs = Array.from({ length: seeds }, (_, seed) =>
      run(twoHandInstance(seed + 1, what), kind, patience),
    );
    const times = runs.map(({ seconds }) => seconds);
    const proven = runs.filter(({ composed }) => composed.proven).length;
    const roots = runs.map(({ rootGap }) => rootGap);
    return [
      `${steps} steps, ${name}`,
      fixed(quantile(times, 0.5)),
      fixed(Math.max(...times)),
      `${proven} of ${seeds}`,
      percent(quantile(roots, 0.5)),
      percent(Math.max(...roots)),
    ];
  });
}

// The first run pays for the compiler of the engine.
run(twoHandInstance(1, { parts: 5, units: 1, base: 'fixture' }), 'open', patience);
for (const kind of kinds) {
  printTable(
    `To the proven optimum, ${kind} cycle, s (wanted, medians: 20 steps 0.3, 24 steps 2, 28 steps 10)`,
    ['', 'median', 'longest', 'proven', 'root gap, median', 'largest'],
    proofRows(kind),
  );
}

const reached = large.flatMap(({ steps, name, seeds, what }) =>
  kinds.flatMap((kind) =>
    Array.from({ length: seeds }, (_, seed) => {
      const { composed } = run(twoHandInstance(seed + 1, what), kind, 20);
      const { schedule, bound } = composed;
      return [
        `${steps} steps, ${name}, seed ${seed + 1}, ${kind}`,
        (schedule.period / 1e6).toFixed(3),
        (bound / 1e6).toFixed(3),
        percent(1 - bound / schedule.period),
      ];
    }),
  ),
);
printTable('After 20 s (wanted: a gap below 5 %)', ['', 'period s', 'bound s', 'gap'], reached);

const solve = await milpSolver();
const against = [10, 12].flatMap((steps) =>
  kinds.map((kind) => {
    const [own, general]: [number[], number[]] = [[], []];
    for (let seed = 1; seed <= 5; seed += 1) {
      const instance = twoHandInstance(seed, { parts: (steps - 4) / 2, units: 1, base: 'fixture' });
      const { composed, seconds } = run(instance, kind, patience);
      own.push(seconds);
      const begun = process.cpuUsage();
      const { period } = solve(instance, kind, composed.schedule.period, patience);
      general.push(process.cpuUsage(begun).user / 1e6);
      if (period !== undefined && Math.abs(period - composed.schedule.period) > 20)
        throw new Error(`seed ${seed}: the general solver says ${period}`);
    }
    const [mine, its] = [quantile(own, 0.5), quantile(general, 0.5)];
    return [`${steps} steps, fixture, ${kind}`, fixed(mine), fixed(its), `× ${fixed(its / mine)}`];
  }),
);
printTable(
  'Beside HiGHS 1.15.3 as a mixed-integer program, medians of 5 (wanted: 10 times)',
  ['', 'composer s', 'HiGHS s', 'ratio'],
  against,
);
