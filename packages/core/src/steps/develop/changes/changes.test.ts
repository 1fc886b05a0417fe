import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { twoHandStudyArb } from '../../../../../../tests/helpers/two-hand-records.ts';
import { parseStudy } from '../../../ground/study/index.ts';
import { readMethod } from '../../examine/index.ts';
import { checkWork, type Work, type WorkStep, workFromRecord } from '../work/index.ts';
import type { ChangeId } from './change.ts';
import { changeOf, changesFor } from './rules.ts';
import { worthOf, worthOfChanges } from './worth.ts';

const change = (id: ChangeId, work: Work = small) => {
  const found = changeOf(id, work);
  if (found === undefined) throw new Error(id);
  return found;
};
const step = (facts: Partial<WorkStep> & Pick<WorkStep, 'id' | 'place' | 'motions'>): WorkStep => ({
  name: facts.id,
  hand: 'either',
  eyes: false,
  unit: 1,
  ...facts,
});

/** A ring is put on a body that a hand holds; the coupling is laid far away. */
const small: Work = {
  workFormat: 1,
  title: 'Ring on body',
  unitsPerCycle: 1,
  home: 'free',
  places: [
    { id: 'bodies', name: 'Bodies', kind: 'bin', at: { x: -300, y: 600 } },
    { id: 'rings', name: 'Rings', kind: 'bin', at: { x: 0, y: 400 } },
    { id: 'front', name: 'Front', kind: 'bench', at: { x: 0, y: 200 } },
    { id: 'box', name: 'Box', kind: 'exit', at: { x: -400, y: 200 } },
  ],
  steps: [
    step({ id: 'body', place: 'bodies', motions: [{ kind: 'G', object: 'body' }], after: 'body' }),
    step({
      id: 'ring',
      place: 'rings',
      motions: [
        { kind: 'Sh' },
        { kind: 'St' },
        { kind: 'G', object: 'ring' },
        { kind: 'PP', object: 'ring' },
      ],
      after: 'ring',
      eyes: true,
    }),
    step({
      id: 'fit',
      place: 'front',
      motions: [{ kind: 'P', object: 'ring' }, { kind: 'A', object: 'ring' }, { kind: 'I' }, { kind: 'RL' }],
      before: 'ring',
      eyes: true,
      held: { object: 'body', place: 'front', by: 'hand', becomes: 'coupling' },
      follows: [{ step: 'body' }, { step: 'ring' }],
    }),
    step({
      id: 'aside',
      place: 'box',
      motions: [{ kind: 'RL', object: 'coupling' }],
      before: 'coupling',
      follows: [{ step: 'fit' }],
    }),
  ],
};
const after = (id: ChangeId, work = small): Work => {
  const changed = change(id, work).apply(work);
  if (changed === undefined) throw new Error(`${id} has nothing to change`);
  expect(checkWork(changed), id).toEqual([]);
  return changed;
};
const kinds = (work: Work, id: string) =>
  work.steps.find((item) => item.id === id)?.motions.map(({ kind }) => kind);
const where = (work: Work, id: string) => work.places.find((place) => place.id === id)?.at;

describe('each change on a small work, by hand', () => {
  it('the small work itself is one that can be done', () => {
    expect(checkWork(small)).toEqual([]);
  });

  it('fixture: laid in before the ring is fitted, lifted out after, and no hand holds', () => {
    const work = after('fixture');
    const [layIn, liftOut] = work.steps.slice(-2);
    expect(layIn).toMatchObject({ place: 'front', before: 'body', eyes: true, follows: [{ step: 'body' }] });
    expect(layIn?.after).toBeUndefined();
    expect(liftOut).toMatchObject({ place: 'front', after: 'coupling', follows: [{ step: 'fit' }] });
    const fit = work.steps.find(({ id }) => id === 'fit');
    expect(fit?.held).toEqual({ object: 'body', place: 'front', by: 'fixture' });
    expect(new Set(fit?.follows?.map(({ step: id }) => id))).toEqual(new Set([layIn?.id, 'ring']));
    expect(work.steps.find(({ id }) => id === 'aside')?.follows).toEqual([{ step: liftOut?.id }]);
    expect(work.spots).toEqual([
      { name: 'Fixture at Front', place: 'front', claimedBy: layIn?.id, releasedBy: liftOut?.id },
    ]);
    expect(change('fixture').apply(work)).toBeUndefined();
  });

  it('two units: only where no hand holds; then everything twice, mirrored about the middle', () => {
    expect(change('two-units').apply(small)).toBeUndefined();
    const one = after('fixture');
    const work = after('two-units', one);
    expect(work.unitsPerCycle).toBe(2);
    expect(work.steps).toHaveLength(2 * one.steps.length);
    expect(work.steps.filter(({ unit }) => unit === 2)).toHaveLength(one.steps.length);
    for (const { id, at, mirror } of work.places) {
      const twin = work.places.find((place) => place.id === mirror);
      expect(twin?.at, id).toEqual({ x: -(at?.x ?? 0), y: at?.y });
    }
    expect(work.spots).toHaveLength(2);
  });

  it('drop delivery: the exit stands 90 mm from the work, in the same direction', () => {
    expect(where(after('drop-delivery'), 'box')).toEqual({ x: -90, y: 200 });
    expect(change('drop-delivery').apply(after('drop-delivery'))).toBeUndefined();
  });

  it('closer places: what is farther than 230 mm comes to 230 mm, what is nearer stays', () => {
    const work = after('closer-places');
    // 300 to the left and 400 beyond the work are 500 mm: 3:4:5, so 138 and 184 mm.
    expect(where(work, 'bodies')).toEqual({ x: -138, y: 384 });
    expect(where(work, 'rings')).toEqual(where(small, 'rings'));
    expect(where(work, 'box')).toEqual(where(small, 'box'));
  });

  it('what stays where it is is not moved', () => {
    const fixed = { ...small, places: small.places.map((place) => ({ ...place, stays: true })) };
    expect(change('closer-places').apply(fixed)).toBeUndefined();
    expect(change('drop-delivery').apply(fixed)).toBeUndefined();
  });

  it('aligned supply: nothing is searched or selected, and it need not be looked at for that', () => {
    expect(kinds(after('aligned-supply'), 'ring')).toEqual(['G', 'PP']);
    expect(kinds(after('tool-at-hand'), 'ring')).toEqual(['Sh', 'St', 'G']);
    expect(kinds(after('without-inspection'), 'fit')).toEqual(['P', 'A', 'RL']);
  });

  it('guide: half of the position is left, known to a quarter; the rest of the step as it was', () => {
    const fit = after('guide').steps.find(({ id }) => id === 'fit');
    expect(fit?.motions[0]).toMatchObject({ kind: 'P', share: 0.5, spread: 0.25 });
    expect(fit?.motions.slice(1)).toEqual(small.steps[2]?.motions.slice(1));
    // It is inspected, so it is still looked at.
    expect(fit?.eyes).toBe(true);
  });
});

describe('any work', () => {
  it('a change never leaves a work that cannot be tried, alone or after another', () => {
    const changed = new Map<string, number>();
    fc.assert(
      fc.property(twoHandStudyArb(), fc.nat(), fc.nat(), (study, one, other) => {
        const drawn = workFromRecord(study, study.methods[0]?.id ?? '');
        if (!drawn.ok || checkWork(drawn.value.work).length > 0) return;
        const { work } = drawn.value;
        const changes = changesFor(work);
        const a = changes[one % changes.length];
        const once = a?.apply(work);
        if (a === undefined || once === undefined) return;
        changed.set(a.code, (changed.get(a.code) ?? 0) + 1);
        expect(checkWork(once), a.id).toEqual([]);
        const more = changesFor(once);
        const b = more[other % more.length];
        const twice = b?.apply(once);
        if (twice !== undefined) expect(checkWork(twice), `${a.id} ${b?.id}`).toEqual([]);
      }),
      { numRuns: 1500, seed: 4 },
    );
    expect([...changed.values()].reduce((sum, count) => sum + count, 0)).toBeGreaterThan(50);
    expect(changed.size).toBeGreaterThan(4);
  }, 60_000);
});

describe('the demonstration', () => {
  const demo = parseStudy(
    readFileSync(
      new URL('../../../../../../examples/couplings/couplings.evenhand.json', import.meta.url),
      'utf8',
    ),
  );

  it('ranks the changes, saves more with each one taken, and holds the improved film in its interval', () => {
    if (!demo.ok) throw new Error('demo');
    const drawn = workFromRecord(demo.value, 'present');
    const reading = readMethod(demo.value, 'present');
    const improved = readMethod(demo.value, 'improved');
    if (!drawn.ok || !reading.ok || !improved.ok) throw new Error('records');
    const worth = worthOfChanges(drawn.value.work, {
      readings: [reading.value],
      seed: 1,
      rounds: 10,
      states: 60_000,
      draws: 60,
    });
    if (!worth.ok) throw new Error(worth.error.message);
    const { base, single } = worth.value;
    const saved = single.map((item) => item.saved);
    expect(saved).toEqual([...saved].sort((a, b) => b - a));
    expect(single[0]?.changes).toEqual(['fixture']);
    for (const { saved: middle, interval, method } of single) {
      expect(middle).toBeGreaterThanOrEqual(interval.low);
      expect(middle).toBeLessThanOrEqual(interval.high);
      // Two hands that work at once may be up to 15 % slower than each alone; that much less is saved at most.
      expect(Math.abs(middle - (base.unitTime - method.unitTime))).toBeLessThan(0.15 * method.unitTime);
    }
    // The film shows a fixture, two units and a drop chute; its mean time for one unit.
    const { work } = base;
    const built = worthOf(base, work, [change('fixture', work), change('two-units', work)], {
      readings: [reading.value],
      seed: 1,
      rounds: 10,
      states: 60_000,
      draws: 60,
    });
    expect(built?.saved).toBeGreaterThan(single[0]?.saved ?? 0);
    const { cycles } = improved.value;
    const film = cycles.reduce((sum, { duration }) => sum + duration, 0) / cycles.length / 2;
    const [low, high] = [
      base.unitTime - (built?.interval.high ?? 0),
      base.unitTime - (built?.interval.low ?? 0),
    ];
    expect(film).toBeGreaterThan(low);
    expect(film).toBeLessThan(high);
  }, 60_000);
});
