import { describe, expect, it } from 'vitest';
import { type Composed, compose } from './compose.ts';
import type { CycleKind, Instance, Mode, Task } from './instance.ts';

const second = 1_000_000;

/** A step at a place of its own with empty hands, by either hand unless one is named. */
function step(place: number, more: Partial<Task> & { hand?: 'left' | 'right'; time?: number } = {}): Task {
  const { hand, time = second, ...rest } = more;
  const role = { place, before: 0, after: 0 };
  const modes: readonly Mode[] = [
    { left: role, time },
    { right: role, time },
  ];
  return {
    name: `step ${place}`,
    modes: modes.filter((mode) => hand === undefined || mode[hand] !== undefined),
    after: [],
    ...rest,
  };
}

function work(tasks: readonly Task[], more: Partial<Instance> = {}): Instance {
  return {
    tasks,
    places: tasks.map((_, place) => `place ${place}`),
    loads: ['nothing'],
    travel: (_, from, to) => (from === to ? 0 : 200_000),
    apart: (one, other) => one !== other,
    gazeGap: 150_000,
    spots: [],
    home: 'free',
    ...more,
  };
}

function made(instance: Instance, kind: CycleKind = 'open'): Composed {
  const found = compose(instance, { kind, seed: 1 });
  if (!found.ok) throw new Error(found.error.message);
  return found.value;
}

describe('which bound binds, by hand', () => {
  it('one hand: three steps of 1 s and three moves of 0.2 s are for the left hand alone', () => {
    const { schedule, binds, proven, words } = made(
      work([0, 1, 2].map((place) => step(place, { hand: 'left' }))),
    );
    expect([schedule.period, proven]).toEqual([3.6 * second, true]);
    expect(binds).toEqual({ kind: 'hand', hand: 'left' });
    expect(words).toContain('There is no shorter method with these times');
    expect(words).toContain('only the left hand can do');
  });

  it('the eyes: two steps of 1 s that cannot be seen at once, and 0.15 s from each to the other', () => {
    const { schedule, binds, words } = made(work([step(0, { eyes: 0 }), step(1, { eyes: 1 })]));
    expect(schedule.period).toBe(2.3 * second);
    expect(binds).toEqual({ kind: 'eyes' });
    expect(words).toContain('the eyes must look at');
  });

  it('the longest chain of a closed cycle: a process of 2 s between two steps', () => {
    const { schedule, binds, words } = made(
      work([step(0), step(1, { after: [{ task: 0, lag: 2 * second }] })]),
      'closed',
    );
    expect(schedule.period).toBe(4 * second);
    expect(binds).toEqual({ kind: 'chain', tasks: ['step 0', 'step 1'] });
    expect(words).toContain('from “step 0” to “step 1”');
  });

  it('a machine that serves one unit at a time: the same process binds an open cycle too', () => {
    const { schedule, binds, words } = made(
      work([step(0), step(1, { after: [{ task: 0, lag: 2 * second }] })], {
        spots: [{ name: 'the press', claimedBy: 0, releasedBy: 1 }],
      }),
    );
    expect(schedule.period).toBe(4 * second);
    expect(binds).toEqual({ kind: 'spot', name: 'the press' });
    expect(words).toContain('the time that the press is taken');
  });

  it('both hands: two steps for either hand are shared out, begun together, and nothing binds but the work', () => {
    const { schedule, binds, evenness } = made(work([step(0), step(1)]));
    expect(schedule.period).toBe(second);
    expect(schedule.placed.map(({ start }) => start)).toEqual([0, 0]);
    expect(evenness).toBe('most');
    expect(binds).toEqual({ kind: 'hands' });
  });
});
