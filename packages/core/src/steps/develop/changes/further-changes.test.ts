import { describe, expect, it } from 'vitest';
import { compose } from '../compose/index.ts';
import { predictWork } from '../predict/index.ts';
import { checkWork, instanceOf, type Work, type WorkStep } from '../work/index.ts';
import type { ChangeId } from './change.ts';
import { changedBy, changeOf, changesFor } from './rules.ts';

const step = (facts: Partial<WorkStep> & Pick<WorkStep, 'id' | 'place' | 'motions'>): WorkStep => ({
  name: facts.id,
  hand: 'either',
  eyes: false,
  unit: 1,
  ...facts,
});
const link = (...steps: string[]) => steps.map((id) => ({ step: id }));

/** Invented: a plate is laid into a nest, a screw is set, driven with one tool and sealed with another, a clamp is worked by hand. */
const plate: Work = {
  workFormat: 1,
  title: 'Plate, invented',
  demo: true,
  unitsPerCycle: 1,
  home: 'free',
  places: [
    { id: 'plates', name: 'Plates', kind: 'bin', at: { x: -300, y: 400 } },
    { id: 'screws', name: 'Screws', kind: 'bin', at: { x: 150, y: 420 } },
    { id: 'nest', name: 'Nest', kind: 'fixture', at: { x: 0, y: 200 } },
    { id: 'lever', name: 'Lever', kind: 'machine', at: { x: 200, y: 200 } },
    { id: 'driver-rest', name: 'Driver', kind: 'tool', at: { x: 320, y: 300 } },
    { id: 'brush-rest', name: 'Brush', kind: 'tool', at: { x: 360, y: 180 } },
    { id: 'box', name: 'Box', kind: 'exit', at: { x: -380, y: 150 } },
  ],
  steps: [
    step({ id: 'get-plate', place: 'plates', motions: [{ kind: 'G', object: 'plate' }], after: 'plate' }),
    step({
      id: 'lay-in',
      place: 'nest',
      motions: [{ kind: 'P' }, { kind: 'RL' }],
      before: 'plate',
      eyes: true,
      follows: link('get-plate'),
    }),
    step({ id: 'clamp', place: 'lever', motions: [{ kind: 'U', us: 700_000 }], follows: link('lay-in') }),
    step({ id: 'get-screw', place: 'screws', motions: [{ kind: 'G', object: 'screw' }], after: 'screw' }),
    step({
      id: 'set',
      place: 'nest',
      motions: [
        { kind: 'P', us: 400_000 },
        { kind: 'RL', us: 80_000 },
      ],
      before: 'screw',
      eyes: true,
      follows: link('get-screw', 'clamp'),
    }),
    step({
      id: 'take-driver',
      place: 'driver-rest',
      motions: [
        { kind: 'G', object: 'driver' },
        { kind: 'PP', object: 'driver' },
      ],
      after: 'driver',
    }),
    step({
      id: 'drive',
      place: 'nest',
      motions: [{ kind: 'P' }, { kind: 'U', object: 'driver', us: 900_000 }],
      before: 'driver',
      after: 'driver',
      eyes: true,
      follows: link('take-driver', 'set'),
    }),
    step({
      id: 'lay-driver',
      place: 'driver-rest',
      motions: [{ kind: 'P', object: 'driver' }, { kind: 'RL' }],
      before: 'driver',
      eyes: true,
      follows: link('drive'),
    }),
    step({
      id: 'take-brush',
      place: 'brush-rest',
      motions: [{ kind: 'G', object: 'brush' }],
      after: 'brush',
    }),
    step({
      id: 'seal',
      place: 'nest',
      motions: [{ kind: 'U', object: 'brush', us: 600_000 }],
      before: 'brush',
      after: 'brush',
      eyes: true,
      follows: link('take-brush', 'drive'),
    }),
    step({
      id: 'lay-brush',
      place: 'brush-rest',
      motions: [{ kind: 'RL' }],
      before: 'brush',
      follows: link('seal'),
    }),
    step({
      id: 'lift-out',
      place: 'nest',
      motions: [{ kind: 'G' }],
      after: 'plate done',
      follows: link('seal'),
    }),
    step({
      id: 'aside',
      place: 'box',
      motions: [{ kind: 'P' }, { kind: 'RL' }],
      before: 'plate done',
      follows: link('lift-out'),
    }),
  ],
  spots: [{ name: 'Nest', place: 'nest', claimedBy: 'lay-in', releasedBy: 'lift-out' }],
};

const after = (ids: readonly ChangeId[], work = plate): Work => {
  const changes = ids.map((id) => {
    const change = changeOf(id, work);
    if (change === undefined) throw new Error(id);
    return change;
  });
  const changed = changedBy(work, changes);
  if (changed === undefined) throw new Error(`${ids.join()} has nothing to change`);
  expect(checkWork(changed)).toEqual([]);
  return changed;
};
const of = (work: Work, id: string) => work.steps.find((item) => item.id === id);
const period = (work: Work): number => {
  const composed = compose(instanceOf(work, predictWork(work, [])), { seed: 1 });
  if (!composed.ok) throw new Error(composed.error.message);
  return composed.value.schedule.period / work.unitsPerCycle;
};

describe('each further change on a plate with two tools, by hand', () => {
  it('the plate itself can be done', () => {
    expect(checkWork(plate)).toEqual([]);
    expect(period(plate)).toBeGreaterThan(2_000_000);
  });

  it('foot pedal: the lever goes, and what came after it waits as long as the hand took', () => {
    const work = after(['foot-pedal:clamp']);
    expect(of(work, 'clamp')).toBeUndefined();
    expect(of(work, 'set')?.follows).toEqual([{ step: 'get-screw' }, { step: 'lay-in', lag: 700_000 }]);
    expect(
      changesFor(plate)
        .filter(({ code }) => code === 'foot-pedal')
        .map(({ id }) => id),
    ).toEqual(['foot-pedal:clamp']);
    // What carries something cannot be done by a foot.
    expect(changeOf('foot-pedal:drive', plate)?.apply(plate)).toBeUndefined();
  });

  it('foot pedal: a hand that held while the other worked the lever still holds', () => {
    const held: Work = {
      ...plate,
      steps: [
        step({ id: 'get', place: 'plates', motions: [{ kind: 'G' }], after: 'plate' }),
        step({
          id: 'press',
          place: 'lever',
          motions: [{ kind: 'U', us: 500_000 }],
          held: { object: 'plate', place: 'nest', by: 'hand', becomes: 'pressed' },
          follows: link('get'),
        }),
        step({
          id: 'aside',
          place: 'box',
          motions: [{ kind: 'RL' }],
          before: 'pressed',
          follows: link('press'),
        }),
      ],
      spots: [],
    };
    const work = after(['foot-pedal:press'], held);
    expect(of(work, 'press')).toMatchObject({
      place: 'nest',
      before: 'plate',
      after: 'pressed',
      motions: [{ kind: 'H', us: 500_000 }],
    });
    expect(of(work, 'press')?.held).toBeUndefined();
  });

  it('two tools in one: taken up once, laid down once, at the rest of the one used first', () => {
    const work = after(['combine-tools:driver+brush']);
    expect(work.steps.map(({ id }) => id)).not.toContain('lay-driver');
    expect(work.steps.map(({ id }) => id)).not.toContain('take-brush');
    expect(of(work, 'seal')).toMatchObject({ before: 'driver and brush', after: 'driver and brush' });
    expect(of(work, 'lay-brush')).toMatchObject({ place: 'driver-rest', before: 'driver and brush' });
    expect(period(work)).toBeLessThan(period(plate));
  });

  it('hung tool: 150 mm from the work, not turned, and only let go', () => {
    const work = after(['hung-tool']);
    const at = work.places.find(({ id }) => id === 'driver-rest')?.at;
    // The middle of nest, lever and rests, where something is put to use or aimed.
    const worked = plate.places.filter(({ id }) => ['nest', 'lever', 'driver-rest', 'box'].includes(id));
    const middle = (axis: 'x' | 'y') =>
      worked.reduce((sum, place) => sum + (place.at?.[axis] ?? 0), 0) / worked.length;
    expect(Math.hypot((at?.x ?? 0) - middle('x'), (at?.y ?? 0) - middle('y'))).toBeCloseTo(150, 0);
    expect(of(work, 'take-driver')?.motions.map(({ kind }) => kind)).toEqual(['G']);
    expect(of(work, 'lay-driver')).toMatchObject({ motions: [{ kind: 'RL' }], eyes: false });
  });

  it('chute under the work: let go at the nest, and not carried to the box', () => {
    expect(of(after(['chute']), 'aside')).toMatchObject({ place: 'nest', motions: [{ kind: 'RL' }] });
    expect(
      changedBy(
        plate,
        [...['chute', 'drop-delivery']].flatMap((id) => changeOf(id, plate) ?? []),
      ),
    ).toBeUndefined();
  });

  it('bins that feed by gravity: the lips 150 mm from the work, tools where they were', () => {
    const work = after(['gravity-feed']);
    expect(work.places.find(({ id }) => id === 'plates')?.name).toBe('Plates, lip');
    expect(work.places.find(({ id }) => id === 'driver-rest')).toEqual(plate.places[4]);
  });

  it('stop: seven tenths of a position whose time is known, without a look where nothing else asks for one', () => {
    const set = of(after(['stop']), 'set');
    expect(set?.motions[0]).toMatchObject({ kind: 'P', us: 280_000, spread: 0.25 });
    expect(set?.eyes).toBe(false);
  });

  it('a step left out: what came after it comes after what came before', () => {
    const work = after(['without-step:clamp']);
    expect(of(work, 'set')?.follows).toEqual([{ step: 'get-screw' }, { step: 'lay-in' }]);
    // What takes or frees the nest, or would leave a hand full, cannot be left out alone.
    expect(changeOf('without-step:lift-out', plate)?.apply(plate)).toBeUndefined();
    expect(changeOf('without-step:get-screw', plate)?.apply(plate)).toBeUndefined();
    expect(changeOf('without-step:nowhere', plate)?.apply(plate)).toBeUndefined();
  });

  it('two steps in one: what both have is done once, and the later one’s followers follow the one', () => {
    const twice: Work = {
      ...plate,
      steps: plate.steps.flatMap((item) =>
        item.id === 'drive'
          ? [
              item,
              step({
                id: 'check',
                place: 'nest',
                motions: [{ kind: 'P' }, { kind: 'I', us: 300_000 }],
                before: 'driver',
                after: 'driver',
                eyes: true,
                follows: link('drive'),
              }),
            ]
          : item.id === 'lay-driver'
            ? [{ ...item, follows: link('check') }]
            : [item],
      ),
    };
    expect(checkWork(twice)).toEqual([]);
    const work = after(['combine-steps:drive+check'], twice);
    expect(of(work, 'drive')?.motions.map(({ kind }) => kind)).toEqual(['P', 'U', 'I']);
    expect(of(work, 'lay-driver')?.follows).toEqual(link('drive'));
    expect(of(work, 'check')).toBeUndefined();
  });

  it('four units: two nests on each side, bins shared; each unit once, and no place in another’s way', () => {
    const work = after(['four-units']);
    expect(work.unitsPerCycle).toBe(4);
    expect(work.steps).toHaveLength(4 * plate.steps.length);
    expect(new Set(work.steps.map(({ unit }) => unit)).size).toBe(4);
    expect(work.places.filter(({ name }) => name.startsWith('Nest'))).toHaveLength(4);
    expect(work.places.filter(({ name }) => name.startsWith('Plates'))).toHaveLength(2);
    expect(new Set(work.steps.map(({ id }) => id)).size).toBe(work.steps.length);
    expect(
      changedBy(
        plate,
        ['two-units', 'four-units'].flatMap((id) => changeOf(id, plate) ?? []),
      ),
    ).toBeUndefined();
  });

  it('two units: each unit has all its places on its own side, and a step bound to a hand changes hands', () => {
    const bound = {
      ...plate,
      steps: plate.steps.map((item) => (item.id === 'drive' ? { ...item, hand: 'right' as const } : item)),
    };
    const work = after(['two-units'], bound);
    for (const { unit, place } of work.steps) {
      const x = work.places.find(({ id }) => id === place)?.at?.x ?? 0;
      expect(Math.sign(x)).toBe(unit === 1 ? -1 : 1);
    }
    expect(work.steps.filter(({ name }) => name === 'drive').map(({ hand }) => hand)).toEqual([
      'right',
      'left',
    ]);
  });

  it('slide: all screws of two units taken and set at once, and what followed each follows the one', () => {
    const work = after(['two-units', 'gang:screw']);
    const screws = work.steps.filter(({ after: carried }) => carried === 'screw');
    expect(screws).toHaveLength(1);
    const set = work.steps.filter(({ name }) => name.startsWith('set'));
    expect(set).toHaveLength(1);
    const [first] = set;
    expect(first?.motions[0]).toMatchObject({ kind: 'P', us: 400_000, spread: 0.25 });
    for (const drive of work.steps.filter(({ name }) => name === 'drive'))
      expect(drive.follows?.map(({ step: id }) => id)).toContain(first?.id);
    // It waits for both nests to be clamped.
    expect(first?.follows?.filter(({ step: id }) => id.startsWith('clamp'))).toHaveLength(2);
    // One unit alone has nothing that could be done several at once.
    expect(changeOf('gang:screw', plate)?.apply(plate)).toBeUndefined();
    expect(changesFor(plate).map(({ id }) => id)).toContain('gang:screw');
  });

  it('the order in which changes are named does not matter', () => {
    const ids: ChangeId[] = ['two-units', 'guide', 'closer-places', 'chute'];
    expect(after([...ids].reverse())).toEqual(after(ids));
  });
});
