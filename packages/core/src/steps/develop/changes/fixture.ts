import type { Work, WorkStep } from '../work/index.ts';
import type { ChangeRule } from './change.ts';
import { freshId } from './work-parts.ts';

/** A fixture that holds what a hand held. */
export const fixture: ChangeRule = {
  code: 'fixture',
  name: 'Fixture instead of hold',
  what: 'A fixture where the hand holds now; the part is laid in and lifted out.',
  principle: 18,
  supposes: 'Laying in and lifting out take a position, a release and a grasp each.',
  apply: (work) => {
    const held = work.steps.filter((step) => step.held?.by === 'hand');
    if (held.length === 0) return undefined;
    let next = work;
    for (const unit of new Set(held.map((step) => step.unit))) next = fixtureFor(next, unit);
    return next;
  },
};

function fixtureFor(work: Work, unit: number): Work {
  const own = work.steps.filter((step) => step.unit === unit && step.held?.by === 'hand');
  const [first] = own;
  if (first?.held === undefined) return work;
  const { object, place } = first.held;
  const finished = own.find((step) => step.held?.becomes !== undefined)?.held?.becomes ?? object;
  const taker = work.steps.find((step) => step.unit === unit && step.after === object);
  const user = work.steps.find(
    (step) => step.unit === unit && step.before === finished && !own.includes(step),
  );
  const ids = new Set(work.steps.map(({ id }) => id));
  const [layIn, liftOut] = [freshId(ids, `lay-in-${unit}`), freshId(ids, `lift-out-${unit}`)];
  const steps = work.steps.flatMap((step): WorkStep[] => {
    if (own.includes(step)) {
      const { held: _, ...rest } = step;
      const follows = (step.follows ?? []).map((link) =>
        link.step === taker?.id ? { ...link, step: layIn } : link,
      );
      return [
        {
          ...rest,
          held: { object, place, by: 'fixture' },
          follows: follows.length === 0 ? [{ step: layIn }] : follows,
        },
      ];
    }
    if (step === user) {
      const follows = (step.follows ?? []).filter((link) => !own.some(({ id }) => id === link.step));
      return [{ ...step, follows: [...follows, { step: liftOut }] }];
    }
    return [step];
  });
  const added: WorkStep[] = [
    {
      id: layIn,
      name: `Lay ${object} in`,
      motions: [
        { kind: 'P', object },
        { kind: 'RL', object },
      ],
      hand: 'either',
      place,
      before: object,
      eyes: true,
      unit,
      ...(taker === undefined ? {} : { follows: [{ step: taker.id }] }),
    },
    {
      id: liftOut,
      name: `Lift ${finished} out`,
      motions: [{ kind: 'G', object: finished }],
      hand: 'either',
      place,
      after: finished,
      eyes: false,
      unit,
      follows: own.map(({ id }) => ({ step: id })),
    },
  ];
  const name = work.places.find(({ id }) => id === place)?.name ?? place;
  return {
    ...work,
    steps: [...steps, ...added],
    places: work.places.map((item) => (item.id === place ? { ...item, kind: 'fixture' } : item)),
    spots: [
      ...(work.spots ?? []),
      { name: `Fixture at ${name}`, place, claimedBy: layIn, releasedBy: liftOut },
    ],
  };
}
