import { describe, expect, it } from 'vitest';
import { type InstanceKind, twoHandInstance } from '../../../../../../tests/helpers/two-hand-instances.ts';
import {
  leastApartByTrial,
  leastTravelByTrial,
  occupied,
  shortestByTrial,
} from '../../../../../../tests/oracles/two-hand-composer.ts';
import { milpSolver } from '../../../../../../tests/oracles/two-hand-milp.ts';
import { checkSchedule } from './check-schedule.ts';
import { type Composed, compose } from './compose.ts';
import type { CycleKind, Instance, Mode, Schedule, Task } from './instance.ts';
import { begunTogether } from './schedule.ts';

const kinds: readonly CycleKind[] = ['open', 'closed'];
const composed = (instance: Instance, kind: CycleKind, seed = 1): Composed => {
  const made = compose(instance, { kind, seed });
  if (!made.ok) throw new Error(made.error.message);
  return made.value;
};

const small: readonly InstanceKind[] = [
  { parts: 1, units: 1, base: 'fixture' },
  { parts: 1, units: 1, base: 'hand' },
  { parts: 2, units: 1, base: 'hand' },
];

describe('the composer against trying everything', () => {
  for (const kind of kinds) {
    for (const what of small) {
      it(`${kind} cycle, ${what.parts} parts, base in a ${what.base}: the same period on every instance`, () => {
        for (let seed = 1; seed <= (what.parts === 1 ? 40 : 15); seed += 1) {
          const instance = twoHandInstance(seed, what);
          const { schedule, proven, bound } = composed(instance, kind);
          expect(schedule.period, `seed ${seed}`).toBe(shortestByTrial(instance, kind));
          expect([proven, bound]).toEqual([true, schedule.period]);
        }
      });
    }
  }
});

/** The same work with processes between its steps, or with hands that begin and end at fixed places. */
function varied(instance: Instance, seed: number): Instance {
  const tasks = instance.tasks.map((task, index) => ({
    ...task,
    after: task.after.map((wait) => ({ ...wait, lag: ((index * 7 + seed) % 5) * 120_000 })),
  }));
  if (seed % 3 === 0) return { ...instance, tasks };
  return seed % 3 === 1 ? { ...instance, home: { left: 1, right: 0 } } : { ...instance, gazeGap: 400_000 };
}

describe('varied works against trying everything', () => {
  it.each(kinds)('%s cycle: lags, fixed homes and slow eyes change nothing about it', (kind) => {
    for (let seed = 101; seed <= 145; seed += 1) {
      const instance = varied(twoHandInstance(seed, small[seed % 3] as InstanceKind), seed);
      if (instance.tasks.length > 6) continue;
      const made = compose(instance, { kind, seed: 1 });
      expect(made.ok ? made.value.schedule.period : undefined, `seed ${seed}`).toBe(
        shortestByTrial(instance, kind),
      );
    }
  });
});

describe('ties of period', () => {
  it.each(kinds)('%s cycle: no method of the least period travels less, tried by every order', (kind) => {
    for (let seed = 301; seed <= 316; seed += 1) {
      const instance = varied(twoHandInstance(seed, small[seed % 2] as InstanceKind), seed);
      const { schedule, travel } = composed(instance, kind);
      expect([travel, schedule.travel], `seed ${seed}`).toEqual([
        'least',
        leastTravelByTrial(instance, kind, schedule.period),
      ]);
    }
  });

  it.each(kinds)('%s cycle: of those none occupies both hands more alike, tried by every order', (kind) => {
    for (let seed = 301; seed <= 316; seed += 1) {
      const instance = varied(twoHandInstance(seed, small[seed % 2] as InstanceKind), seed);
      const { schedule, evenness } = composed(instance, kind);
      const modes = schedule.placed.map(({ mode }) => mode);
      const apart = occupied(instance, schedule.left, modes, 'left');
      const other = occupied(instance, schedule.right, modes, 'right');
      expect([evenness, Math.abs(apart - other)], `seed ${seed}`).toEqual([
        'most',
        leastApartByTrial(instance, kind, schedule.period, schedule.travel),
      ]);
    }
  });

  it.each(kinds)(
    '%s cycle: of equals the one whose hands begin most steps together, reckoned by hand',
    (kind) => {
      const step = (hand: 'left' | 'right', time: number): Task => ({
        name: `${hand} ${time}`,
        modes: [{ [hand]: { place: 0, before: 0, after: 0 }, time }],
        after: [],
      });
      const steps = [step('left', 300), step('left', 100), step('right', 100), step('right', 300)];
      const orders = [
        [0, 1, 2, 3],
        [2, 0, 1, 3],
        [3, 1, 0, 2],
      ];
      for (const order of orders) {
        const instance: Instance = {
          tasks: order.map((index) => steps[index] as Task),
          places: ['table'],
          loads: ['nothing'],
          travel: () => 0,
          apart: () => false,
          gazeGap: 0,
          spots: [],
          home: 'free',
        };
        const { schedule } = composed(instance, kind);
        // Either both hands do the long step first or both the short one: two starts coincide; else one.
        expect([schedule.period, begunTogether(schedule)], order.join()).toEqual([400, 2]);
      }
    },
  );
});

describe('the composer against HiGHS 1.15.3 as a mixed-integer program', () => {
  const eight: readonly InstanceKind[] = [
    { parts: 2, units: 1, base: 'fixture' },
    { parts: 3, units: 1, base: 'hand' },
    { parts: 1, units: 2, base: 'hand' },
    { parts: 3, units: 1, base: 'fixture' },
  ];
  it.each(kinds)('%s cycle: the same period on works of up to ten steps', async (kind) => {
    const solve = await milpSolver();
    for (let seed = 201; seed <= 206; seed += 1) {
      const instance = varied(twoHandInstance(seed, eight[seed % 4] as InstanceKind), seed);
      const { schedule, proven } = composed(instance, kind);
      const { status, period } = solve(instance, kind, schedule.period);
      expect([status, proven]).toEqual(['Optimal', true]);
      // Periods of these whole milliseconds are at least 50 µs apart; the solver keeps its rows within a few.
      expect(Math.abs((period ?? 0) - schedule.period), `seed ${seed}`).toBeLessThan(20);
    }
  });
});

const middle: readonly InstanceKind[] = [
  { parts: 3, units: 1, base: 'fixture' },
  { parts: 4, units: 1, base: 'hand' },
  { parts: 1, units: 2, base: 'fixture' },
  { parts: 1, units: 2, base: 'hand' },
];
const cases = middle.flatMap((what) => [11, 12, 13].map((seed) => ({ seed, ...what })));

describe('laws of the composer', () => {
  it.each(cases)(
    '$parts parts × $units, base in a $base, seed $seed: the checker finds nothing, and the bound holds',
    (what) => {
      const instance = twoHandInstance(what.seed, what);
      const [open, closed] = kinds.map((kind) => composed(instance, kind)) as [Composed, Composed];
      for (const { schedule, bound, proven } of [open, closed]) {
        expect(checkSchedule(instance, schedule)).toEqual([]);
        expect(bound).toBeLessThanOrEqual(schedule.period);
        expect(proven).toBe(true);
      }
      // Hands that wait for each other are never quicker.
      expect(open.schedule.period).toBeLessThanOrEqual(closed.schedule.period);
    },
  );

  it.each(cases.slice(0, 6))('seed $seed, $parts parts: mirrored, scaled and relieved works', (what) => {
    const instance = twoHandInstance(what.seed, what);
    const { period } = composed(instance, 'open').schedule;
    expect(composed(mirrored(instance), 'open').schedule.period).toBe(period);
    expect(composed(scaled(instance, 3), 'open').schedule.period).toBe(3 * period);
    const seen = { ...instance, apart: () => false };
    expect(composed(seen, 'open').schedule.period).toBeLessThanOrEqual(period);
    const roomy = { ...instance, spots: [] };
    expect(composed(roomy, 'open').schedule.period).toBeLessThanOrEqual(period);
    const free: Instance = {
      ...instance,
      tasks: instance.tasks.map((task) => ({ ...task, modes: [...task.modes, ...task.modes.map(turned)] })),
    };
    expect(composed(free, 'open').schedule.period).toBeLessThanOrEqual(period);
  });

  it('the same seed gives the same method', () => {
    const instance = twoHandInstance(5, { parts: 3, units: 1, base: 'fixture' });
    expect(composed(instance, 'open', 9)).toEqual(composed(instance, 'open', 9));
  });
});

describe('what the checker finds', () => {
  const instance = twoHandInstance(2, { parts: 2, units: 1, base: 'fixture' });
  const good = composed(instance, 'open').schedule;
  const reasons = (schedule: Schedule) =>
    checkSchedule(instance, schedule)
      .map(({ message }) => message)
      .join(' ');
  const moved = (task: number, by: number): Schedule => ({
    ...good,
    placed: good.placed.map((item) => (item.task === task ? { ...item, start: item.start + by } : item)),
  });
  it.each([
    ['a step that is missing', { ...good, placed: good.placed.slice(1) }, /not every step/],
    [
      'a period that is too short',
      { ...good, period: Math.floor(good.period / 2) },
      /in time|free|too far apart/,
    ],
    ['a step before what it needs', moved(instance.tasks.length - 1, -5_000_000), /before|in time/],
    ['an order that is not that of the steps', { ...good, left: [], right: [] }, /names other steps/],
  ])('%s', (_, schedule, words) => {
    expect(reasons(schedule)).toMatch(words);
  });
});

describe('works that cannot be done', () => {
  it('are told with the step whose load nothing leaves', () => {
    const instance = twoHandInstance(3, { parts: 1, units: 1, base: 'fixture' });
    const tasks = instance.tasks.map((task, index) =>
      index === 1 ? { ...task, modes: [{ left: { place: 0, before: 2, after: 0 }, time: 1000 }] } : task,
    );
    const made = compose(
      { ...instance, tasks, loads: [...instance.loads, 'what nobody brings'] },
      { seed: 1 },
    );
    expect(made.ok ? '' : made.error.message).toMatch(/No method was found/);
  });
});

describe('works at the edge', () => {
  it('steps that wait for each other are named', () => {
    const instance = twoHandInstance(4, { parts: 1, units: 1, base: 'fixture' });
    const tasks = instance.tasks.map((task, index) =>
      index === 0 ? { ...task, after: [{ task: 1, lag: 0 }] } : task,
    );
    const made = compose({ ...instance, tasks }, { seed: 1 });
    expect(made.ok ? '' : made.error.message).toMatch(/“get base 0”, “place base 0”/);
  });

  it('a work of 200 steps gets a method that the checker accepts, and says how far the bound is', () => {
    const instance = twoHandInstance(1, { parts: 98, units: 1, base: 'fixture' });
    expect(instance.tasks).toHaveLength(200);
    const { schedule, bound, proven } = composed200(instance);
    expect(checkSchedule(instance, schedule)).toEqual([]);
    expect(bound).toBeGreaterThan(0.9 * schedule.period);
    expect(bound).toBeLessThanOrEqual(schedule.period);
    expect(proven).toBe(bound === schedule.period);
  });

  it('a work of one step, one without steps, and one that takes too long', () => {
    const instance = twoHandInstance(6, { parts: 1, units: 1, base: 'fixture' });
    const only = {
      name: 'press',
      modes: [{ left: { place: 0, before: 0, after: 0 }, time: 500_000 }],
      after: [],
    };
    const one: Instance = { ...instance, tasks: [only], spots: [] };
    expect(composed(one, 'open').schedule.period).toBe(500_000);
    expect(composed(one, 'closed').schedule.period).toBe(500_000);
    expect(compose({ ...instance, tasks: [], spots: [] }, { seed: 1 }).ok).toBe(false);
    const long = { ...one, tasks: [{ ...only, modes: [{ ...only.modes[0], time: 600_000_000 }] }] };
    const made = compose(long as Instance, { seed: 1 });
    expect(made.ok ? '' : made.error.message).toMatch(/eight minutes/);
  });

  it('it can be stopped at any time and still has a method and a bound', () => {
    const instance = twoHandInstance(3, { parts: 8, units: 1, base: 'fixture' });
    let asked = 0;
    let told = 0;
    const made = compose(instance, {
      seed: 1,
      stop: () => {
        asked += 1;
        return asked > 12;
      },
      onBetter: ({ bound, schedule }) => {
        told += 1;
        expect(bound).toBeLessThanOrEqual(schedule.period);
      },
    });
    expect(told).toBeGreaterThan(0);
    expect(made.ok && checkSchedule(instance, made.value.schedule)).toEqual([]);
    expect(made.ok && made.value.proven).toBe(false);
    expect(made.ok && made.value.words).toMatch(/^Whether there is a shorter method is not known/);
  });
});

function composed200(instance: Instance): Composed {
  const made = compose(instance, { seed: 1, states: 2000, rounds: 4 });
  if (!made.ok) throw new Error(made.error.message);
  return made.value;
}

function turned(mode: Mode): Mode {
  return {
    ...(mode.right === undefined ? {} : { left: mode.right }),
    ...(mode.left === undefined ? {} : { right: mode.left }),
    time: mode.time,
  };
}

function mirrored(instance: Instance): Instance {
  return { ...instance, tasks: instance.tasks.map((task) => ({ ...task, modes: task.modes.map(turned) })) };
}

function scaled(instance: Instance, factor: number): Instance {
  return {
    ...instance,
    tasks: instance.tasks.map((task) => ({
      ...task,
      modes: task.modes.map((mode) => ({ ...mode, time: mode.time * factor })),
      after: task.after.map(({ task: before, lag }) => ({ task: before, lag: lag * factor })),
    })),
    travel: (...way) => factor * instance.travel(...way),
    gazeGap: instance.gazeGap * factor,
  };
}
