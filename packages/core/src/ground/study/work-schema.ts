import { z } from 'zod';
import { type Frozen, hand, id, longText, motionKind, shortText } from './schema-parts.ts';

/** The format of a work file that this program writes and reads. */
export const workFormatVersion = 1;

const micros = z.int().min(0).max(3_600_000_000);

const workPlace = z
  .strictObject({
    id,
    name: shortText.min(1),
    kind: z
      .enum(['bin', 'fixture', 'tool', 'exit', 'machine', 'bench'])
      .describe(
        'What stands there: supply, fixture or nest, hung or lying tool, exit, machine, or bare bench.',
      ),
    at: z
      .strictObject({ x: z.number().min(-5000).max(5000), y: z.number().min(-5000).max(5000) })
      .optional()
      .describe(
        'Millimetres: x to the operator’s right, y away from the operator, 0,0 at the middle of the near edge.',
      ),
    width: z
      .number()
      .positive()
      .max(2000)
      .optional()
      .describe('Size of the target that the hand must hit there, in millimetres.'),
    size: z
      .strictObject({ x: z.number().positive().max(5000), y: z.number().positive().max(5000) })
      .optional()
      .describe('Room that it takes on the bench, in millimetres.'),
    angle: z
      .number()
      .min(-180)
      .max(180)
      .optional()
      .describe('How far it is turned on the bench, in degrees against the clock as seen from above.'),
    mirror: id.optional().describe('The place that serves the other hand in the same way.'),
    stays: z.boolean().optional().describe('It cannot be put anywhere else.'),
  })
  .meta({ id: 'WorkPlace' });

/** Largest bench that is drawn, millimetres across and deep. Ours. */
const largestBench = 5000;

const bench = z
  .strictObject({
    width: z.number().positive().max(largestBench).describe('From left to right, in millimetres.'),
    depth: z.number().positive().max(largestBench).describe('From the near to the far edge, in millimetres.'),
    people: z
      .enum(['women', 'men', 'mixed'])
      .optional()
      .describe(
        'For whom it is laid out: the 5th to the 95th percentile of women, of men, or from small women to large men; left out, the last.',
      ),
    posture: z.enum(['sitting', 'standing']).optional().describe('Left out, sitting.'),
    height: z
      .strictObject({ from: z.enum(['elbow', 'floor']), mm: z.number().min(-1000).max(3000) })
      .optional()
      .describe(
        'Where the hands work, in millimetres above the elbow or above the floor; left out, at the elbow.',
      ),
    kindOfWork: z
      .enum(['precision', 'light', 'heavy'])
      .optional()
      .describe('For which kind of work the height was sought; left out, light.'),
  })
  .meta({ id: 'Bench', title: 'The bench and for whom it is laid out' });

const content = z
  .strictObject({
    kind: motionKind,
    object: shortText.min(1).optional(),
    clearance: z
      .number()
      .positive()
      .max(1000)
      .optional()
      .describe('Play of the fit in millimetres, where a part is fitted.'),
    us: micros.optional().describe('Known time in microseconds; left out, it is predicted.'),
    share: z
      .number()
      .min(0)
      .max(10)
      .optional()
      .describe('What a change leaves of the predicted time, as a share of it.'),
    spread: z
      .number()
      .min(0)
      .max(5)
      .optional()
      .describe('Standard deviation of a known time, or of what a change leaves, as a share of it.'),
  })
  .meta({
    id: 'StepMotion',
    title: 'One fundamental motion of a step; moves between places are never part of a step',
  });

const workStep = z
  .strictObject({
    id,
    name: shortText.min(1),
    motions: z.array(content).min(1).describe('What the working hand does there, in its order.'),
    hand: z.enum(['either', 'left', 'right', 'both']),
    place: id.describe('Where it is done; of a step of both hands, where the left hand does it.'),
    rightPlace: id
      .optional()
      .describe('Of a step of both hands: where the right hand does it, if elsewhere.'),
    before: shortText.min(1).optional().describe('What the hand carries when it comes; left out, nothing.'),
    after: shortText.min(1).optional().describe('What the hand carries when it leaves; left out, nothing.'),
    held: z
      .strictObject({
        object: shortText.min(1),
        place: id,
        by: z.enum(['hand', 'fixture']),
        becomes: shortText.min(1).optional().describe('What the object is called once the step is done.'),
      })
      .optional()
      .describe('An object that the other hand, or a fixture, must hold during the step.'),
    eyes: z.boolean().describe('It must be looked at.'),
    follows: z
      .array(
        z.strictObject({
          step: id,
          lag: micros
            .optional()
            .describe('Machine or process time between the end of that step and this one.'),
        }),
      )
      .optional(),
    unit: z.int().min(1).max(1000).describe('The unit of the cycle that it belongs to, from 1.'),
    from: z
      .array(z.strictObject({ method: id, hand, motion: id }))
      .min(1)
      .optional()
      .describe('The recorded motions it was drawn from.'),
  })
  .meta({ id: 'WorkStep' });

/** What must be done, without saying by which hand or when: the composer finds that. */
export const workSchema = z
  .strictObject({
    workFormat: z.literal(workFormatVersion),
    title: shortText.min(1),
    demo: z.boolean().optional(),
    unitsPerCycle: z.int().min(1).max(1000),
    home: z.union([z.literal('free'), z.strictObject({ left: id, right: id })]),
    places: z.array(workPlace).min(1),
    bench: bench.optional(),
    steps: z.array(workStep).min(1).max(1000),
    spots: z
      .array(
        z.strictObject({
          name: shortText.min(1),
          place: id.optional(),
          claimedBy: id.describe('The step at whose start it is taken.'),
          releasedBy: id.describe('The step at whose end it is free again.'),
        }),
      )
      .optional()
      .describe('Fixture spots and machines, which serve one unit at a time.'),
    objects: z
      .array(z.strictObject({ name: shortText.min(1), grams: z.number().min(0).max(50_000) }))
      .max(1000)
      .optional()
      .describe('What parts and tools weigh, in grams; left out, they are as light as a pencil.'),
    sight: z
      .strictObject({
        field: z
          .number()
          .positive()
          .max(5000)
          .describe('Targets nearer to each other are seen together, in mm.'),
        change: micros.describe('Time to look from one target to another, in microseconds.'),
      })
      .optional(),
    note: longText.optional(),
  })
  .meta({ id: 'Work', title: 'The work of one cycle' });

export type Work = Frozen<z.infer<typeof workSchema>>;
export type WorkPlace = Work['places'][number];
export type WorkBench = NonNullable<Work['bench']>;
export type WorkStep = Work['steps'][number];
export type StepMotion = WorkStep['motions'][number];

const keptChange = z
  .strictObject({
    change: z.string().min(1).max(1000).describe('What the change is called, such as “fixture”.'),
    taken: z.boolean().optional().describe('The method is developed with it.'),
    cost: z.number().min(0).max(1e12).optional().describe('What it costs once, in the currency of the work.'),
    costRange: z
      .strictObject({ low: z.number().min(0).max(1e12), high: z.number().min(0).max(1e12) })
      .optional()
      .describe('What it may cost at least and at most; left out, the cost is known.'),
    note: longText.min(1).optional(),
  })
  .meta({ id: 'KeptChange', title: 'What was settled about a change of a work' });

/** A work that is kept in the study, with what was settled about changes of it. */
export const keptWork = z
  .strictObject({
    id,
    drawnFrom: z
      .strictObject({ method: id, cycle: z.int().min(1).max(1_000_000).optional() })
      .optional()
      .describe('The recorded method it was drawn from and the number of the cycle; left out, it was typed.'),
    work: workSchema.describe('The work as it is before changes, as in a work file.'),
    currency: z.string().min(1).max(10).optional().describe('As it is written beside a cost, such as “€”.'),
    changes: z
      .array(keptChange)
      .min(1)
      .optional()
      .describe('In the order of their names, at most one entry for each.'),
  })
  .meta({ id: 'KeptWork', title: 'A work that is kept in the study' });

/** The parts that edits carry. */
export const workParts = { keptWork, workPlace, workStep, keptChange };

export type KeptWork = Frozen<z.infer<typeof keptWork>>;
export type KeptChange = NonNullable<KeptWork['changes']>[number];
