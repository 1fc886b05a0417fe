import {
  type Answer,
  type Clock,
  type Cycle,
  clockFault,
  type Decision,
  type ElementMark,
  type Examination,
  type ExaminationSubject,
  encodeFrameTimes,
  type Film,
  type FrameTimes,
  formatVersion,
  frameCount,
  type Hand,
  type Method,
  type Motion,
  type Place,
  type Study,
} from '@evenhand/core/ground/study';
import {
  decisionChoices,
  examinationQuestions,
  type MotionKind,
  motionKinds,
} from '@evenhand/core/ground/tables';
import fc from 'fast-check';
import { comparisonArb, timeStudyArb } from './time-arbitraries.ts';
import { keptWorkArb } from './work-arbitraries.ts';

/** Studies that keep every invariant, small enough to shrink well. */

/** Deltas as films have them: constant, 29.97 a second, milliseconds 33/33/34, and anything at all. */
export const deltasArb: fc.Arbitrary<{
  readonly ticksPerSecond: number;
  readonly deltas: readonly number[];
}> = fc.oneof(
  fc
    .integer({ min: 1, max: 60 })
    .map((frames) => ({ ticksPerSecond: 30_000, deltas: Array(frames).fill(1001) })),
  fc.integer({ min: 1, max: 60 }).map((frames) => ({
    ticksPerSecond: 1000,
    deltas: Array.from({ length: frames }, (_, k) => (k % 3 === 2 ? 34 : 33)),
  })),
  fc.record({
    ticksPerSecond: fc.constantFrom(600, 1000, 12_800, 90_000),
    deltas: fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 1, maxLength: 60 }),
  }),
  fc.record({
    ticksPerSecond: fc.constant(90_000),
    deltas: fc.array(fc.constantFrom(3003, 3003, 3003, 1501, 6006), { minLength: 1, maxLength: 60 }),
  }),
);

export const frameTimesArb: fc.Arbitrary<FrameTimes> = fc
  .tuple(deltasArb, fc.integer({ min: 0, max: 10_000 }))
  .map(([{ ticksPerSecond, deltas }, start]) => {
    const ticks: number[] = [];
    let at = start;
    for (const delta of deltas) {
      ticks.push(at);
      at += delta;
    }
    return encodeFrameTimes(ticks, at, ticksPerSecond);
  });

/** Clocks that fit the film: the pieces may run faster or slower, never backwards. */
export function clockArb(frameTimes: FrameTimes): fc.Arbitrary<Clock> {
  const frames = frameCount(frameTimes);
  const points = fc
    .tuple(
      fc.uniqueArray(fc.integer({ min: 0, max: frames }), {
        minLength: 2,
        maxLength: Math.min(6, frames + 1),
      }),
      fc.array(fc.integer({ min: 500_000, max: 5_000_000 }), { minLength: 6, maxLength: 6 }),
    )
    .map(([at, steps]): Clock => {
      let realUs = 1_000_000_000;
      const sorted = [...at].sort((a, b) => a - b);
      return {
        kind: 'points',
        points: sorted.map((frame, index) => {
          realUs += steps[index] ?? 1_000_000;
          return { frame, realUs };
        }),
      };
    });
  const clock = fc.oneof(
    fc.constant<Clock>({ kind: 'identity' }),
    fc
      .constantFrom(0.125, 1, 1.001, 10, 1 / 3)
      .map((realPerFilm): Clock => ({ kind: 'factor', realPerFilm })),
    points,
  );
  return clock.filter((made) => clockFault({ frameTimes, clock: made }, frames) === undefined);
}

const textArb = fc.oneof(
  fc.constantFrom(
    'ring',
    'body, large',
    'he said “stop”',
    'a "quoted" word',
    '=1+1',
    'Schlauch ß',
    '\u{1f9e4}',
    ' spaced ',
  ),
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 20 }),
);

export const filmArb = (id: string): fc.Arbitrary<Film> =>
  frameTimesArb.chain((frameTimes) =>
    fc.record(
      {
        id: fc.constant(id),
        sha256: fc.constant('0123456789abcdef'.repeat(4)),
        name: textArb,
        bytes: fc.nat(),
        container: fc.constant('MP4'),
        codec: fc.constant('avc1.64001f'),
        width: fc.integer({ min: 1, max: 4000 }),
        height: fc.integer({ min: 1, max: 4000 }),
        rotation: fc.constantFrom<0 | 90 | 180 | 270>(0, 90, 180, 270),
        frameTimes: fc.constant(frameTimes),
        clock: clockArb(frameTimes),
        operatorCode: fc.constant('K7'),
        agreed: fc.boolean(),
        note: textArb,
      },
      {
        requiredKeys: [
          'id',
          'sha256',
          'name',
          'bytes',
          'container',
          'codec',
          'width',
          'height',
          'rotation',
          'frameTimes',
          'clock',
        ],
      },
    ),
  );

const placeIds = ['bin-1', 'bin-2', 'fixture', 'exit'];

const placesArb: fc.Arbitrary<Place[]> = fc
  .subarray(placeIds)
  .chain((ids) =>
    fc.tuple(
      ...ids.map((id) =>
        fc.record(
          {
            id: fc.constant(id),
            name: textArb,
            at: fc.record({ x: fc.integer({ min: -900, max: 900 }), y: fc.integer({ min: 0, max: 900 }) }),
            mirror: fc.constantFrom(...ids),
          },
          { requiredKeys: ['id', 'name'] },
        ),
      ),
    ),
  )
  .map((places) => places.map((place) => ({ ...place })));

const kindArb = fc.constantFrom<MotionKind>(...motionKinds);

/** A row of at most eight items: starts that grow, and an end after the last, none beyond `last`. */
function boundariesArb(last: number): fc.Arbitrary<{ starts: number[]; end: number }> {
  return fc
    .uniqueArray(fc.integer({ min: 0, max: last }), { minLength: 1, maxLength: Math.min(9, last + 1) })
    .map((at) => [...at].sort((a, b) => a - b))
    .map((at) => ({ starts: at.slice(0, -1), end: at.at(-1) ?? 0 }));
}

function motionsArb(hand: Hand, last: number, places: readonly Place[]): fc.Arbitrary<Method['left']> {
  const place = places.length > 0 ? fc.constantFrom(...places.map((item) => item.id)) : undefined;
  const details = fc.record(
    {
      kind: kindArb,
      object: textArb,
      ...(place === undefined ? {} : { from: place, to: place }),
      note: textArb,
      said: fc.constantFrom<Motion['said']>('marked', 'proposed', 'confirmed'),
    },
    { requiredKeys: ['kind', 'said'] },
  );
  return boundariesArb(last).chain(({ starts, end }) =>
    fc.array(details, { minLength: starts.length, maxLength: starts.length }).map((list) => ({
      items: list.map(
        (item, index) => ({ ...item, id: `${hand[0]}${index}`, start: starts[index] ?? 0 }) as Motion,
      ),
      end,
    })),
  );
}

function cyclesArb(last: number): fc.Arbitrary<Method['cycles']> {
  const details = fc.record({ name: textArb, setAside: textArb }, { requiredKeys: [] });
  return boundariesArb(last).chain(({ starts, end }) =>
    fc.array(details, { minLength: starts.length, maxLength: starts.length }).map((list) => ({
      items: list.map((item, index) => ({ ...item, id: `c${index}`, start: starts[index] ?? 0 }) as Cycle),
      end,
    })),
  );
}

/** Elements that begin inside the film, in any order, no two at the same boundary. */
function elementsArb(last: number): fc.Arbitrary<ElementMark[]> {
  const details = fc.record({ name: textArb, hand: fc.constantFrom<Hand>('left', 'right') });
  return fc
    .uniqueArray(fc.integer({ min: 0, max: last - 1 }), { minLength: 1, maxLength: Math.min(3, last) })
    .chain((starts) =>
      fc
        .array(details, { minLength: starts.length, maxLength: starts.length })
        .map((list) => list.map((item, index) => ({ ...item, id: `e${index}`, at: starts[index] ?? 0 }))),
    );
}

/** Subjects of every kind; the last motion, element and lead are not there. */
const subjects: readonly ExaminationSubject[] = [
  { kind: 'operation', method: 'filmed' },
  { kind: 'motion', method: 'filmed', hand: 'left', motion: 'l0' },
  { kind: 'motion', method: 'filmed', hand: 'right', motion: 'gone' },
  { kind: 'element', method: 'filmed', element: 'e0' },
  { kind: 'element', method: 'filmed', element: 'gone' },
  { kind: 'lead', method: 'filmed', lead: 'hold:left:body' },
];

export const answersArb: fc.Arbitrary<Answer[]> = fc
  .subarray(
    examinationQuestions.map(({ id }) => id),
    { minLength: 1, maxLength: 3 },
  )
  .chain((questions) =>
    fc
      .array(textArb, { minLength: questions.length, maxLength: questions.length })
      .map((texts) => questions.map((question, index) => ({ question, text: texts[index] ?? '' }))),
  );

export const decisionArb: fc.Arbitrary<Decision> = fc.record({
  choice: fc.constantFrom(...decisionChoices),
  reason: textArb,
});

const examinationsArb: fc.Arbitrary<Examination[]> = fc
  .subarray([...subjects], { minLength: 1, maxLength: 3 })
  .chain((chosen) =>
    fc
      .array(fc.record({ answers: answersArb, decision: decisionArb }, { requiredKeys: [] }), {
        minLength: chosen.length,
        maxLength: chosen.length,
      })
      .map((list) =>
        list.map((item, index) => ({
          id: `x${index}`,
          subject: chosen[index] as ExaminationSubject,
          ...item,
        })),
      ),
  );

export function methodArb(
  id: string,
  film: Film | undefined,
  places: readonly Place[],
): fc.Arbitrary<Method> {
  const last = film === undefined ? 9_000_000 : frameCount(film.frameTimes);
  return fc.record(
    {
      id: fc.constant(id),
      name: textArb,
      kind: fc.constantFrom<Method['kind']>('recorded', 'composed'),
      base: fc.constant<Method['base']>(
        film === undefined ? { kind: 'micros' } : { kind: 'frames', film: film.id },
      ),
      unitsPerCycle: fc.integer({ min: 1, max: 4 }),
      left: motionsArb('left', last, places),
      right: motionsArb('right', last, places),
      cycles: cyclesArb(last),
      elements: elementsArb(last),
      note: textArb,
    },
    { requiredKeys: ['id', 'name', 'kind', 'base', 'unitsPerCycle', 'left', 'right', 'cycles'] },
  );
}

/**
 * A study with one film, some places, a filmed method, one in microseconds, and sometimes things examined, all of them
 * in the filmed method.
 */
export const studyArb: fc.Arbitrary<Study> = fc.tuple(filmArb('film-1'), placesArb).chain(([film, places]) =>
  fc
    .record(
      {
        title: textArb,
        filmed: methodArb('filmed', film, places),
        plain: methodArb('plain', undefined, places),
        examinations: examinationsArb,
        timeStudies: fc.tuple(timeStudyArb('time-1')),
        comparisons: fc.tuple(comparisonArb('compared-1')),
        works: fc.tuple(keptWorkArb('work-1')),
      },
      { requiredKeys: ['title', 'filmed', 'plain'] },
    )
    .map(({ title, filmed, plain, examinations, timeStudies, comparisons, works }) => ({
      formatVersion,
      id: 'study-1',
      title,
      operation: { name: title },
      films: [film],
      places,
      methods: [filmed, plain],
      ...(examinations === undefined ? {} : { examinations }),
      ...(timeStudies === undefined ? {} : { timeStudies }),
      ...(comparisons === undefined ? {} : { comparisons }),
      ...(works === undefined ? {} : { works }),
    })),
);
