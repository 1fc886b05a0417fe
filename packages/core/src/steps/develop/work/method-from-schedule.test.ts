import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { twoHandStudyArb } from '../../../../../../tests/helpers/two-hand-records.ts';
import { checkStudy, emptyStudy, type Method, parseStudy } from '../../../ground/study/index.ts';
import { readMethod } from '../../examine/index.ts';
import { compose, type Instance, type Schedule } from '../compose/index.ts';
import { predictWork, type WorkTimes } from '../predict/index.ts';
import { checkWork } from './check-work.ts';
import { workFromRecord } from './from-record.ts';
import { instanceOf } from './instance-of.ts';
import { methodFromSchedule } from './method-from-schedule.ts';
import type { Work } from './work-schema.ts';

interface Made {
  readonly work: Work;
  readonly times: WorkTimes;
  readonly instance: Instance;
  readonly schedule: Schedule;
  readonly method: Method;
}

function madeFrom(
  work: Work,
  readings: Parameters<typeof predictWork>[1],
  kind: 'open' | 'closed',
): Made | undefined {
  const times = predictWork(work, readings);
  const instance = instanceOf(work, times);
  const composed = compose(instance, { seed: 1, kind, rounds: 2, states: 3000 });
  if (!composed.ok) return undefined;
  const { schedule } = composed.value;
  const method = methodFromSchedule(work, times, instance, schedule, { id: 'c', name: 'Composed' });
  return { work, times, instance, schedule, method };
}

/** What must be so of every composed method. */
function expectFaithful({ work, times, instance, schedule, method }: Made): void {
  const study = {
    ...emptyStudy('s', 'S'),
    places: work.places.map(({ id, name }) => ({ id, name })),
    methods: [method],
  };
  expect(checkStudy(study)).toEqual([]);
  for (const hand of ['left', 'right'] as const) {
    const { items, end } = method[hand];
    expect(items[0]?.start).toBe(0);
    expect(end).toBe(schedule.period);
    const starts = items.map(({ start }) => start);
    expect(starts).toEqual([...new Set(starts)].sort((a, b) => a - b));
  }
  const reading = readMethod(study, 'c');
  if (!reading.ok) throw new Error(reading.error.message);
  const [cycle] = reading.value.cycles;
  expect(cycle?.duration).toBe(schedule.period);
  // Time of each kind of motion that a step is made of: as long in both rows as the steps say.
  const shown = new Map<string, number>();
  for (const piece of [...(cycle?.left ?? []), ...(cycle?.right ?? [])]) {
    shown.set(piece.kind, (shown.get(piece.kind) ?? 0) + piece.duration);
  }
  const wanted = new Map<string, number>();
  work.steps.forEach((step) => {
    step.motions.forEach(({ kind }, index) => {
      const us = times.steps.get(step.id)?.motions[index]?.us ?? 0;
      wanted.set(kind, (wanted.get(kind) ?? 0) + us * (step.hand === 'both' ? 2 : 1));
    });
  });
  for (const [kind, us] of wanted) {
    if (kind !== 'H' && kind !== 'UD') expect(shown.get(kind) ?? 0, kind).toBe(us);
  }
  expect((shown.get('TE') ?? 0) + (shown.get('TL') ?? 0)).toBe(schedule.travel);
  expect(instance.tasks).toHaveLength(work.steps.length);
}

describe('a schedule as a composed method', () => {
  const demo = parseStudy(
    readFileSync(
      new URL('../../../../../../examples/couplings/couplings.evenhand.json', import.meta.url),
      'utf8',
    ),
  );

  it.each([
    ['present', 'open'],
    ['present', 'closed'],
    ['improved', 'open'],
    ['improved', 'closed'],
  ] as const)('the demonstration, %s, %s cycle: nothing lost, nothing added', (id, kind) => {
    if (!demo.ok) throw new Error('demo');
    const drawn = workFromRecord(demo.value, id);
    const reading = readMethod(demo.value, id);
    if (!drawn.ok || !reading.ok) throw new Error('work');
    const made = madeFrom(drawn.value.work, [reading.value], kind);
    if (made === undefined) throw new Error('no method');
    expectFaithful(made);
    expect(made.method.left.end).toBe(made.schedule.period);
  });

  it('any record that gives a work that can be done', () => {
    let made = 0;
    fc.assert(
      fc.property(twoHandStudyArb(), fc.constantFrom('open' as const, 'closed' as const), (study, kind) => {
        const drawn = workFromRecord(study, study.methods[0]?.id ?? '');
        if (!drawn.ok || checkWork(drawn.value.work).length > 0) return;
        const method = madeFrom(drawn.value.work, [], kind);
        if (method === undefined) return;
        made += 1;
        expectFaithful(method);
      }),
      { numRuns: 400, seed: 9 },
    );
    expect(made).toBeGreaterThan(30);
  }, 60_000);
});
