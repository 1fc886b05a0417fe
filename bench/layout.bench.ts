import { readFileSync } from 'node:fs';
import process from 'node:process';
import {
  assignmentCost,
  type BenchSpot,
  benchMethod,
  bestAssignment,
  compose,
  developed,
  exactAssignment,
  figureAtOnce,
  type Instance,
  instanceOf,
  ordersOf,
  predictWork,
  type QuadraticAssignment,
  tabuAssignment,
  type Work,
  workFromRecord,
} from '@evenhand/core/develop';
import { readMethod } from '@evenhand/core/examine';
import { seededRandom } from '@evenhand/core/ground/numerics';
import { parseStudy } from '@evenhand/core/ground/study';
import { benchWork } from '../tests/helpers/bench-works.ts';
import { matrixOf, publishedAssignments } from '../tests/reference/published-assignments.ts';
import { fixed, printTable, quantile } from './harness.ts';

/** Best places: published quadratic assignments, benches of growing size, and layout and method together. Processor time. */

function timed<T>(run: () => T): { readonly value: T; readonly ms: number } {
  const begun = process.cpuUsage();
  const value = run();
  const { user, system } = process.cpuUsage(begun);
  return { value, ms: (user + system) / 1000 };
}

const seeds = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

function published(): void {
  const rows = publishedAssignments.map(({ name, first, second, optimum }) => {
    const [flow, distance] = [matrixOf(first), matrixOf(second)];
    const items = Math.sqrt(flow.length);
    const problem = { items, spots: items, flow, distance, linear: new Float64Array(items * items) };
    const runs = seeds.map((seed) => timed(() => tabuAssignment(problem, { seed, starts: 1, moves: 1000 })));
    const hits = runs.filter(
      ({ value }) => value !== undefined && assignmentCost(problem, value) === optimum,
    );
    const good = tabuAssignment(problem, { seed: 1, starts: 10, moves: 1000 });
    const proof = timed(() => exactAssignment(problem, { known: good, nodes: 10_000_000 }));
    const alone = timed(() => exactAssignment(problem, { nodes: 10_000_000 }));
    return [
      name,
      String(optimum),
      String(proof.value.cost),
      proof.value.proven && alone.value.cost === optimum ? 'proven' : 'not proven',
      fixed(proof.ms),
      fixed(alone.ms),
      String(proof.value.nodes),
      `${hits.length} of ${runs.length}`,
      fixed(
        quantile(
          runs.map(({ ms }) => ms),
          0.5,
        ),
      ),
    ];
  });
  printTable(
    'published quadratic assignments (QAPLIB); ms of the proof with and without a good start, of one search by chance of 1,000 moves',
    ['', 'published', 'found', '', 'proof', 'alone', 'nodes', 'search hits', 'search'],
    rows,
  );
}

/** Items with trips to a fixture, and between each other with a given chance, on spots of an arc in two rows. */
function benchLike(seed: number, items: number, spots: number, density: number): QuadraticAssignment {
  const random = seededRandom(seed);
  const at = Array.from({ length: spots }, (_, spot) => {
    const angle = Math.PI * ((Math.floor(spot / 2) + 0.5) / Math.ceil(spots / 2));
    const away = spot % 2 === 0 ? 250 : 380;
    return { x: away * Math.cos(angle), y: away * Math.sin(angle) };
  });
  const trips = () => 1 + Math.floor(random() * 4);
  const weight = Array.from({ length: items }, trips);
  const flow = Float64Array.from({ length: items * items }, (_, index) =>
    Math.floor(index / items) !== index % items && random() < density ? trips() : 0,
  );
  return {
    items,
    spots,
    flow,
    distance: Float64Array.from({ length: spots * spots }, (_, index) => {
      const [a, b] = [at[Math.floor(index / spots)], at[index % spots]];
      return Math.round(Math.hypot((a?.x ?? 0) - (b?.x ?? 0), (a?.y ?? 0) - (b?.y ?? 0)));
    }),
    linear: Float64Array.from({ length: items * spots }, (_, index) => {
      const spot = at[index % spots];
      return Math.round(
        (weight[Math.floor(index / spots)] ?? 1) * Math.hypot(spot?.x ?? 0, (spot?.y ?? 0) - 220),
      );
    }),
  };
}

function benches(): void {
  const rows = [
    [8, 8, 0.1],
    [8, 12, 0.1],
    [10, 14, 0.1],
    [12, 16, 0.1],
    [10, 10, 0.3],
    [10, 14, 0.3],
    [12, 12, 0.3],
    [12, 12, 0.8],
  ].map(([items = 0, spots = 0, density = 0]) => {
    const runs = seeds
      .slice(0, 5)
      .map((seed) =>
        timed(() => bestAssignment(benchLike(seed, items, spots, density), { seed: 1, nodes: 60_000 })),
      );
    const gaps = runs.map(({ value }) => value.cost / value.bound - 1);
    return [
      `${items} on ${spots}, density ${density}`,
      fixed(
        quantile(
          runs.map(({ ms }) => ms),
          0.5,
        ),
      ),
      fixed(Math.max(...runs.map(({ ms }) => ms))),
      `${runs.filter(({ value }) => value.proven).length} of ${runs.length}`,
      `${fixed(Math.max(...gaps) * 100)} %`,
    ];
  });
  printTable(
    'items on spots, most trips to a fixture, 5 seeds each, at the most 60,000 nodes',
    ['', 'median ms', 'most ms', 'proven', 'largest gap'],
    rows,
  );
}

const instanceAt = (work: Work): Instance => instanceOf(work, predictWork(work, []));

/** Periods of every layout, each composed by itself. */
function every(work: Work, spots: readonly BenchSpot[]): readonly number[] {
  const movable = work.places.filter(({ stays }) => stays !== true);
  const fixedPlaces = work.places.filter(({ stays }) => stays === true);
  const periods: number[] = [];
  const go = (put: Work['places']) => {
    const place = movable[put.length];
    if (place === undefined) {
      const made = compose(instanceAt({ ...work, places: [...put, ...fixedPlaces] }), { seed: 1, rounds: 0 });
      if (made.ok) periods.push(made.value.schedule.period);
      return;
    }
    for (const { at } of spots) {
      if (put.every((other) => other.at !== at)) go([...put, { ...place, at }]);
    }
  };
  go([]);
  return periods;
}

function together(): void {
  const rows: string[][] = [];
  for (const [parts, spotCount, whole] of [
    [1, 5, true],
    [2, 5, true],
    [3, 5, true],
    [3, 7, false],
    [4, 6, false],
    [4, 8, false],
  ] as const) {
    for (const seed of [1, 2]) {
      const { work, spots } = benchWork(seed, parts, spotCount);
      // Spots of these benches are far enough apart, and everybody's arm is long enough for the comparison.
      const limits = { reach: { people: 'men', posture: 'sitting' } as const, spots, gap: 0 };
      const found = timed(() => benchMethod(work, { limits, instanceAt, seed: 1, layouts: 2000 }));
      const tried = whole ? timed(() => every(work, spots)) : undefined;
      if (!found.value.ok) {
        rows.push([`${parts} parts, seed ${seed}`, found.value.error.message]);
        continue;
      }
      const { schedule, bound, proven, layouts } = found.value.value;
      const mean =
        tried === undefined ? 0 : tried.value.reduce((sum, one) => sum + one, 0) / tried.value.length;
      rows.push([
        `${parts} parts, ${work.steps.length} steps, ${spotCount} spots, seed ${seed}`,
        fixed(schedule.period / 1e6),
        proven ? 'proven' : `gap ${fixed((schedule.period / bound - 1) * 100)} %`,
        String(layouts),
        fixed(found.ms),
        tried === undefined ? '' : String(tried.value.length),
        tried === undefined ? '' : `× ${fixed(tried.ms / found.ms)}`,
        tried === undefined ? '' : `+ ${fixed((mean / schedule.period - 1) * 100)} %`,
      ]);
    }
  }
  printTable(
    'layout and method together; every layout composed by itself for comparison (reach left out of account there)',
    ['', 'period s', '', 'looked at', 'ms', 'layouts', 'all of them', 'mean layout'],
    rows,
  );
}

/** A bin of the demonstration is moved step by step: the known order timed anew, and everything composed anew. */
function atOnce(): void {
  const study = parseStudy(
    readFileSync(new URL('../examples/couplings/couplings.evenhand.json', import.meta.url), 'utf8'),
  );
  if (!study.ok) throw new Error(study.error[0]?.message);
  const drawn = workFromRecord(study.value, 'present');
  const reading = readMethod(study.value, 'present');
  if (!drawn.ok || !reading.ok) throw new Error('the present method should be there');
  const readings = [reading.value];
  const { work } = drawn.value;
  const first = developed(work, { readings, seed: 1 });
  if (!first.ok) throw new Error(first.error.message);
  const known = [ordersOf(first.value.instance, first.value.composed.schedule)];
  const [figures, anew]: [number[], number[]] = [[], []];
  let longer = 0;
  for (let step = 1; step <= 60; step += 1) {
    const places = work.places.map((place) =>
      place.id === 'ring-bin' && place.at !== undefined
        ? { ...place, at: { x: place.at.x - 4 * step, y: place.at.y - 3 * step } }
        : place,
    );
    const moved = { ...work, places };
    const figure = timed(() => figureAtOnce(moved, readings, known));
    const whole = timed(() => developed(moved, { readings, seed: 1 }));
    figures.push(figure.ms);
    anew.push(whole.ms);
    if (whole.value.ok && (figure.value?.unitTime ?? 0) > whole.value.value.unitTime + 1) longer += 1;
  }
  printTable(
    'a bin of the demonstration moved in 60 steps: ms to a valid figure (wanted: at most 100)',
    ['', 'median', 'longest', 'longer than the shortest'],
    [
      [
        'known order timed anew',
        fixed(quantile(figures, 0.5)),
        fixed(Math.max(...figures)),
        `${longer} of 60`,
      ],
      ['composed anew, proven', fixed(quantile(anew, 0.5)), fixed(Math.max(...anew)), ''],
    ],
  );
}

published();
benches();
together();
atOnce();
