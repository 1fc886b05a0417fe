import type { KeptWork, StepMotion, Work, WorkPlace, WorkStep } from '@evenhand/core/ground/study';
import fc from 'fast-check';

/**
 * Kept works of the studies in `study-arbitraries.ts`. They have the shape of a work and nothing more: a work may be kept
 * half written, so a step may name a place that is not there, carry what nobody took up, or wait for itself.
 */

const textArb = fc.oneof(
  fc.constantFrom('body', 'ring', 'he said “stop”', '=1+1', 'Schlauch ß'),
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }),
);
const placeIds = ['bin', 'front', 'exit'] as const;
const stepIds = ['get', 'fit', 'aside'] as const;
const placeIdArb = fc.constantFrom(...placeIds, 'gone');
const stepIdArb = fc.constantFrom(...stepIds, 'gone');
const handArb = fc.constantFrom<'left' | 'right'>('left', 'right');

const placeArb = (id: string): fc.Arbitrary<WorkPlace> =>
  fc.record(
    {
      id: fc.constant(id),
      name: textArb,
      kind: fc.constantFrom<WorkPlace['kind']>('bin', 'fixture', 'tool', 'exit', 'machine', 'bench'),
      at: fc.record({ x: fc.integer({ min: -900, max: 900 }), y: fc.integer({ min: 0, max: 900 }) }),
      width: fc.constantFrom(25, 80.5),
      size: fc.constant({ x: 200, y: 120 }),
      angle: fc.constantFrom(-90, 12.5),
      mirror: placeIdArb,
      stays: fc.boolean(),
    },
    { requiredKeys: ['id', 'name', 'kind'] },
  );

const motionArb: fc.Arbitrary<StepMotion> = fc.record(
  {
    kind: fc.constantFrom<StepMotion['kind']>('G', 'P', 'A', 'RL', 'St'),
    object: textArb,
    clearance: fc.constantFrom(0.5, 3),
    us: fc.integer({ min: 0, max: 9_000_000 }),
    share: fc.constantFrom(0, 0.5),
    spread: fc.constantFrom(0, 0.1),
  },
  { requiredKeys: ['kind'] },
);

const stepArb = (id: string): fc.Arbitrary<WorkStep> =>
  fc.record(
    {
      id: fc.constant(id),
      name: textArb,
      motions: fc.array(motionArb, { minLength: 1, maxLength: 3 }),
      hand: fc.constantFrom<WorkStep['hand']>('either', 'left', 'right', 'both'),
      place: placeIdArb,
      rightPlace: placeIdArb,
      before: textArb,
      after: textArb,
      held: fc.record(
        {
          object: textArb,
          place: placeIdArb,
          by: fc.constantFrom<'hand' | 'fixture'>('hand', 'fixture'),
          becomes: textArb,
        },
        { requiredKeys: ['object', 'place', 'by'] },
      ),
      eyes: fc.boolean(),
      follows: fc.array(
        fc.record({ step: stepIdArb, lag: fc.integer({ min: 0, max: 9000 }) }, { requiredKeys: ['step'] }),
        { maxLength: 2 },
      ),
      unit: fc.integer({ min: 1, max: 2 }),
      from: fc.array(fc.record({ method: fc.constant('filmed'), hand: handArb, motion: fc.constant('l0') }), {
        minLength: 1,
        maxLength: 2,
      }),
    },
    { requiredKeys: ['id', 'name', 'motions', 'hand', 'place', 'eyes', 'unit'] },
  );

const benchArb: fc.Arbitrary<NonNullable<Work['bench']>> = fc.record(
  {
    width: fc.constantFrom(1200, 900.5),
    depth: fc.constant(600),
    people: fc.constantFrom('women', 'men', 'mixed'),
    posture: fc.constantFrom('sitting', 'standing'),
    height: fc.record({ from: fc.constantFrom('elbow', 'floor'), mm: fc.integer({ min: -300, max: 1200 }) }),
    kindOfWork: fc.constantFrom('precision', 'light', 'heavy'),
  },
  { requiredKeys: ['width', 'depth'] },
);

const workArb: fc.Arbitrary<Work> = fc
  .tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 3 }))
  .chain(([places, steps]) =>
    fc.record(
      {
        workFormat: fc.constant<1>(1),
        title: textArb,
        demo: fc.boolean(),
        unitsPerCycle: fc.integer({ min: 1, max: 4 }),
        home: fc.constantFrom<Work['home']>('free', { left: 'front', right: 'gone' }),
        places: fc.tuple(...placeIds.slice(0, places).map(placeArb)),
        bench: benchArb,
        steps: fc.tuple(...stepIds.slice(0, steps).map(stepArb)),
        spots: fc.array(
          fc.record({ name: textArb, place: placeIdArb, claimedBy: stepIdArb, releasedBy: stepIdArb }),
          { maxLength: 2 },
        ),
        objects: fc.array(fc.record({ name: textArb, grams: fc.constantFrom(0, 120.5) }), { maxLength: 2 }),
        sight: fc.constant({ field: 150, change: 150_000 }),
        note: textArb,
      },
      { requiredKeys: ['workFormat', 'title', 'unitsPerCycle', 'home', 'places', 'steps'] },
    ),
  );

/** Names of changes in the order in which they stand. */
const changeNames = ['aligned-supply', 'fixture', 'two-units'];

export const keptWorkArb = (id: string): fc.Arbitrary<KeptWork> =>
  fc.record(
    {
      id: fc.constant(id),
      drawnFrom: fc.constantFrom<NonNullable<KeptWork['drawnFrom']>>(
        { method: 'filmed' },
        { method: 'plain', cycle: 2 },
      ),
      work: workArb,
      currency: fc.constantFrom('€', 'CHF'),
      changes: fc.subarray(changeNames, { minLength: 1 }).chain((names) =>
        fc.tuple(
          ...names.map((change) =>
            fc.record(
              {
                change: fc.constant(change),
                taken: fc.boolean(),
                cost: fc.constantFrom(0, 850.5),
                note: textArb,
              },
              { requiredKeys: ['change'] },
            ),
          ),
        ),
      ),
    },
    { requiredKeys: ['id', 'work'] },
  );
