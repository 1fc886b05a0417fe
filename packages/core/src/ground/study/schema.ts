import { z } from 'zod';
import {
  type DecisionChoice,
  decisionChoices,
  type ExaminationQuestion,
  examinationQuestions,
} from '../tables/index.ts';
import { comparison } from './comparison-schema.ts';
import { boundary, count, type Frozen, hand, id, longText, motionKind, shortText } from './schema-parts.ts';
import { timeStudy, timeStudyParts } from './time-study-schema.ts';
import { keptWork, workParts } from './work-schema.ts';

/** The format this program writes. Older ones are brought up to it by `migrations.ts`; newer ones are refused. */
export const formatVersion = 4;

const frameTimes = z
  .strictObject({
    ticksPerSecond: z.int().min(1).describe('Length of one tick: the time scale of the film itself.'),
    start: z.int().min(0).describe('Presentation time of frame 0, in ticks.'),
    steps: z
      .array(
        z.strictObject({
          repeat: z.int().min(1),
          deltas: z.array(z.int().min(1)).min(1).max(64),
        }),
      )
      .min(1)
      .describe(
        'Ticks from each frame to the next, the last to the end of the film; each list of deltas is run through `repeat` times.',
      ),
  })
  .meta({ id: 'FrameTimes', title: 'Exact presentation times of every frame' });

const clock = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('identity') }),
    z.strictObject({
      kind: z.literal('factor'),
      realPerFilm: z
        .number()
        .positive()
        .max(1e6)
        .describe(
          'Real seconds for one second of film: 0.125 for film taken at 240 and stored at 30 frames a second.',
        ),
    }),
    z.strictObject({
      kind: z.literal('points'),
      points: z
        .array(z.strictObject({ frame: boundary, realUs: z.int().min(0) }))
        .min(2)
        .max(10_000)
        .describe(
          'Readings of a clock in the picture: at this frame it showed this real time in microseconds.',
        ),
    }),
  ])
  .meta({ id: 'Clock', title: 'From film time to real time' });

const picturePoint = z
  .strictObject({ x: z.number(), y: z.number() })
  .describe('In the picture as shown, in pixels from its upper left corner.');
const millimetres = z.number().positive().max(100_000);

const calibration = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('length'),
      ends: z.tuple([picturePoint, picturePoint]),
      millimetres: millimetres.describe('True distance of the two ends.'),
    }),
    z.strictObject({
      kind: z.literal('rectangle'),
      at: z
        .strictObject({ x: z.number(), y: z.number() })
        .optional()
        .describe(
          'Where on the bench the near left corner lies, in millimetres; left out, the middle of the near edge is the origin.',
        ),
      corners: z
        .tuple([picturePoint, picturePoint, picturePoint, picturePoint])
        .describe('Near left, near right, far right, far left, as the operator sees the rectangle.'),
      across: millimetres.describe('From left to right, in millimetres.'),
      away: millimetres.describe('From the near to the far edge, in millimetres.'),
    }),
  ])
  .meta({ id: 'Calibration', title: 'From the picture to millimetres on the bench' });

const filmTrack = z
  .strictObject({
    id,
    sha256: z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 is 64 lower-case hexadecimal digits'),
    name: shortText.min(1),
    bytes: count,
    source: z
      .enum(['landmarks', 'bands', 'energy', 'table'])
      .describe('Hand landmarks, coloured wristbands, movement in drawn regions, or a table from elsewhere.'),
    frames: count,
  })
  .meta({
    id: 'FilmTrack',
    title: 'Where the hands are in each frame; the data stand in a file beside the film',
  });

const film = z
  .strictObject({
    id,
    sha256: z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 is 64 lower-case hexadecimal digits'),
    name: shortText,
    bytes: count,
    container: shortText,
    codec: shortText,
    width: z.int().min(1).describe('Width as shown, after rotation, in pixels.'),
    height: z.int().min(1).describe('Height as shown, after rotation, in pixels.'),
    rotation: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]),
    frameTimes,
    clock,
    operatorCode: shortText.optional().describe('A code for the person filmed; never a name.'),
    agreed: z.boolean().optional().describe('The person filmed was told and agreed.'),
    mirrored: z
      .boolean()
      .optional()
      .describe('The picture is a mirror image: what looks like the left hand is the right one.'),
    calibration: calibration.optional(),
    tracks: z.array(filmTrack).min(1).optional(),
    note: longText.optional(),
  })
  .meta({ id: 'Film' });

const place = z
  .strictObject({
    id,
    name: shortText.min(1),
    at: z
      .strictObject({ x: z.number(), y: z.number() })
      .optional()
      .describe(
        'On the bench, in millimetres: x to the operator’s right, y away from the operator, 0,0 at the middle of the near edge.',
      ),
    mirror: id.optional().describe('The place that serves the other hand in the same way.'),
  })
  .meta({ id: 'Place' });

const confidence = z.number().min(0).max(1);

const motion = z
  .strictObject({
    id,
    start: boundary,
    kind: motionKind,
    object: shortText.min(1).optional(),
    from: id.optional().describe('Place the hand or the object comes from.'),
    to: id.optional().describe('Place the hand or the object goes to.'),
    confidence: confidence
      .optional()
      .describe(
        'Of a proposed motion: the chance that its kind is right and its start lies within a fifth of a second of where a person would put it.',
      ),
    note: longText.optional(),
    said: z
      .enum(['marked', 'proposed', 'confirmed'])
      .describe('Who says so: marked by hand, proposed by the program, or proposed and then confirmed.'),
  })
  .meta({ id: 'Motion', title: 'A motion; it lasts until the next one in its row starts' });

const cycle = z
  .strictObject({
    id,
    start: boundary,
    name: shortText.optional(),
    setAside: shortText
      .min(1)
      .optional()
      .describe('Why this cycle is not typical; it then counts in no figure unless asked for.'),
    confidence: confidence
      .optional()
      .describe('Of a proposed cycle: the chance that a cycle begins within a fifth of a second of here.'),
    said: z
      .enum(['marked', 'proposed', 'confirmed'])
      .optional()
      .describe('Proposed by the program, or proposed and then confirmed; left out, marked by hand.'),
  })
  .meta({ id: 'Cycle', title: 'A cycle; it lasts until the next one starts' });

const handRow = z.strictObject({ items: z.array(motion), end: boundary }).meta({ id: 'HandRow' });
const cycleRow = z.strictObject({ items: z.array(cycle), end: boundary }).meta({ id: 'CycleRow' });

const base = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('frames'), film: id }),
    z.strictObject({ kind: z.literal('micros') }),
  ])
  .meta({ id: 'TimeBase', title: 'What a boundary counts: frames of a film, or microseconds' });

const element = z
  .strictObject({
    id,
    name: shortText.min(1),
    hand: hand.describe('The hand whose motion begins the element.'),
    at: boundary.describe(
      'Where the element begins, in one cycle; it lasts until the next one in time begins, or to the end of that cycle.',
    ),
  })
  .meta({ id: 'Element', title: 'A named break point: here an element of the cycle begins' });

const method = z
  .strictObject({
    id,
    name: shortText.min(1),
    kind: z.enum(['recorded', 'composed']),
    base,
    unitsPerCycle: z.int().min(1).max(10_000),
    left: handRow,
    right: handRow,
    cycles: cycleRow,
    elements: z.array(element).min(1).optional(),
    note: longText.optional(),
  })
  .meta({ id: 'Method' });

const operation = z
  .strictObject({
    name: shortText,
    part: shortText.optional(),
    number: shortText.optional(),
    department: shortText.optional(),
    analyst: shortText.optional(),
    unitsAYear: z.int().min(0).optional(),
    note: longText.optional(),
  })
  .meta({ id: 'Operation' });

/** Made of a code, a hand and words of the record such as the name of an object, so longer than a name. */
const leadName = z
  .string()
  .min(1)
  .max(1000)
  .describe('What the lead is called from one reading to the next, such as “hold:left:body”.');

const subject = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('operation'), method: id }),
    z.strictObject({ kind: z.literal('motion'), method: id, hand, motion: id }),
    z.strictObject({ kind: z.literal('element'), method: id, element: id }),
    z.strictObject({
      kind: z.literal('lead'),
      method: id,
      lead: leadName,
    }),
  ])
  .meta({ id: 'Subject', title: 'What is examined; the motion, element or lead may be gone meanwhile' });

const answer = z
  .strictObject({
    question: z.enum(
      examinationQuestions.map((question) => question.id) as [ExaminationQuestion, ...ExaminationQuestion[]],
    ),
    text: longText.min(1),
  })
  .meta({ id: 'Answer', title: 'An answer to one of the twenty questions of the critical examination' });

const decision = z
  .strictObject({
    choice: z.enum(decisionChoices as [DecisionChoice, ...DecisionChoice[]]),
    reason: longText.min(1),
  })
  .meta({ id: 'Decision' });

const examination = z
  .strictObject({
    id,
    subject,
    answers: z.array(answer).min(1).optional().describe('At most one answer to each question.'),
    decision: decision.optional(),
  })
  .meta({ id: 'Examination', title: 'What was noted in the critical examination of one thing' });

/** The one schema of the study document; the published JSON Schema is exported from it. */
export const studySchema = z
  .strictObject({
    formatVersion: z.literal(formatVersion),
    id,
    title: shortText.min(1),
    demo: z.boolean().optional().describe('Invented data, for trying the program.'),
    operation,
    films: z.array(film),
    places: z.array(place),
    methods: z.array(method),
    examinations: z.array(examination).min(1).optional().describe('At most one for each subject.'),
    timeStudies: z.array(timeStudy).min(1).optional(),
    comparisons: z.array(comparison).min(1).optional(),
    works: z.array(keptWork).min(1).optional(),
  })
  .meta({ id: 'Study', title: 'Evenhand study' });

/** The parts that edits carry. */
export const studyParts = {
  id,
  boundary,
  film,
  clock,
  calibration,
  filmTrack,
  place,
  motion,
  cycle,
  element,
  method,
  examination,
  operation,
  hand,
  shortText,
  longText,
  timeStudy,
  comparison,
  ...timeStudyParts,
  ...workParts,
};

export type Study = Frozen<z.infer<typeof studySchema>>;
export type Film = Study['films'][number];
export type FrameTimes = Film['frameTimes'];
export type Clock = Film['clock'];
export type Calibration = NonNullable<Film['calibration']>;
/** What the study knows of a track; its data are `Track` of the record step. */
export type FilmTrack = NonNullable<Film['tracks']>[number];
export type Place = Study['places'][number];
export type Method = Study['methods'][number];
export type Motion = Method['left']['items'][number];
export type Cycle = Method['cycles']['items'][number];
/** A break point: where an element of this name begins, in one cycle of the method. */
export type ElementMark = NonNullable<Method['elements']>[number];
export type Examination = NonNullable<Study['examinations']>[number];
export type ExaminationSubject = Examination['subject'];
export type Answer = NonNullable<Examination['answers']>[number];
export type Decision = NonNullable<Examination['decision']>;
export type Operation = Study['operation'];
export type Hand = 'left' | 'right';
/** A contiguous row: items in order of their starts, each lasting until the next one starts, and one end for all. */
export interface Row<Item extends { readonly start: number }> {
  readonly items: readonly Item[];
  readonly end: number;
}

export const hands: readonly Hand[] = ['left', 'right'];

export function otherHand(hand: Hand): Hand {
  return hand === 'left' ? 'right' : 'left';
}

/** The published JSON Schema (draft 2020-12) of the study document. */
export function studyJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(studySchema, { io: 'input' }) as Record<string, unknown>;
}
