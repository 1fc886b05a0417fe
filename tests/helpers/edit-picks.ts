import type { Edit, SingleEdit } from '@evenhand/core/ground/edit';
import {
  type ElementMark,
  type Examination,
  type ExaminationSubject,
  type Film,
  frameCount,
  type Hand,
  type Method,
  type Motion,
  type Place,
  type Study,
} from '@evenhand/core/ground/study';
import { decisionChoices, examinationQuestions, motionKinds } from '@evenhand/core/ground/tables';
import fc from 'fast-check';
import { timeEditFrom, timeEditTypes } from './time-edit-picks.ts';
import { workEditFrom, workEditTypes } from './work-edit-picks.ts';

/** A choice that becomes an edit once there is a study to choose from: numbers stand for “the n-th of what is there”. */
export interface Pick {
  readonly type: Edit['type'];
  readonly which: number;
  readonly method: number;
  readonly hand: Hand;
  readonly at: number;
  readonly text: string;
  readonly parts: readonly Pick[];
}

export const editTypes: readonly SingleEdit['type'][] = [
  ...([
    'study.change',
    'film.add',
    'film.remove',
    'film.change',
    'place.add',
    'place.remove',
    'place.change',
  ] as const),
  ...([
    'method.add',
    'method.remove',
    'method.change',
    'motion.mark',
    'motion.remove',
    'motion.change',
  ] as const),
  ...([
    'motion.move',
    'row.end',
    'cycle.mark',
    'cycle.remove',
    'cycle.change',
    'cycle.move',
    'cycles.end',
  ] as const),
  ...(['element.add', 'element.remove', 'element.change'] as const),
  ...(['examination.add', 'examination.remove', 'examination.change'] as const),
  ...timeEditTypes,
  ...workEditTypes,
  // Most places and methods are in use, so an edit that takes one away seldom holds.
  ...(['place.add', 'place.remove', 'place.remove', 'method.add', 'method.remove', 'method.remove'] as const),
];

const pickOf = (types: readonly Edit['type'][], parts: fc.Arbitrary<readonly Pick[]>): fc.Arbitrary<Pick> =>
  fc.record({
    type: fc.constantFrom(...types),
    which: fc.nat(40),
    method: fc.nat(3),
    hand: fc.constantFrom<Hand>('left', 'right'),
    at: fc.nat(10_000),
    text: fc.string({ minLength: 1, maxLength: 8 }),
    parts,
  });

export const pickArb: fc.Arbitrary<Pick> = pickOf(
  [...editTypes, 'group', 'group'],
  fc.array(pickOf(editTypes, fc.constant([])), { maxLength: 4 }),
);

/** The edit that a pick means in a study; undefined when there is nothing of the kind to edit. `name` keeps new ids apart. */
export function editFrom(study: Study, pick: Pick, name: string): Edit | undefined {
  if (pick.type === 'group') {
    const edits = pick.parts
      .map((part, index) => editFrom(study, part, `${name}-${index}`))
      .filter((edit): edit is SingleEdit => edit !== undefined);
    return { type: 'group', name: `group ${name}`, edits };
  }
  if (pick.type === 'study.change') {
    return pick.which % 2 === 0
      ? { type: 'study.change', to: { title: pick.text }, was: { title: study.title } }
      : {
          type: 'study.change',
          to: { operation: { name: pick.text, unitsAYear: pick.at } },
          was: { operation: study.operation },
        };
  }
  if (pick.type.startsWith('film.')) return filmEdit(study, pick, name);
  if (pick.type.startsWith('place.')) return placeEdit(study, pick, name);
  if (pick.type.startsWith('method.')) return methodEdit(study, pick, name);
  if (timeEditTypes.some((type) => type === pick.type)) return timeEditFrom(study, pick, name);
  if (workEditTypes.some((type) => type === pick.type)) return workEditFrom(study, pick, name);
  if (pick.type.startsWith('examination.')) return examinationEdit(study, pick, name);
  const method = nth(study.methods, pick.method);
  if (method === undefined) return undefined;
  return pick.type.startsWith('element.')
    ? elementEdit(study, method, pick, name)
    : rowEdit(study, method, pick, name);
}

function nth<T>(list: readonly T[], index: number): T | undefined {
  return list.length === 0 ? undefined : list[index % list.length];
}

function filmEdit(study: Study, pick: Pick, name: string): SingleEdit | undefined {
  const film: Film | undefined = nth(study.films, pick.which);
  if (film === undefined) return undefined;
  if (pick.type === 'film.add') return { type: 'film.add', film: { ...film, id: name }, index: pick.at % 3 };
  if (pick.type === 'film.remove') return { type: 'film.remove', film };
  return pick.at % 2 === 0
    ? {
        type: 'film.change',
        film: film.id,
        to: { operatorCode: pick.at % 4 === 0 ? null : pick.text },
        was: { operatorCode: film.operatorCode ?? null },
      }
    : {
        type: 'film.change',
        film: film.id,
        to: { clock: { kind: 'factor', realPerFilm: 0.5 }, agreed: true },
        was: { clock: film.clock, agreed: film.agreed ?? null },
      };
}

function placeEdit(study: Study, pick: Pick, name: string): SingleEdit | undefined {
  const place: Place | undefined = nth(study.places, pick.which);
  if (pick.type === 'place.add') {
    const mirror = pick.at % 2 === 0 || place === undefined ? {} : { mirror: place.id };
    return { type: 'place.add', place: { id: name, name: pick.text, ...mirror } };
  }
  if (place === undefined) return undefined;
  if (pick.type === 'place.remove') return { type: 'place.remove', place };
  const mirror = nth(study.places, pick.at)?.id ?? null;
  return {
    type: 'place.change',
    place: place.id,
    to: { at: pick.at % 3 === 0 ? null : { x: pick.at, y: 1 }, mirror: pick.at % 5 === 0 ? null : mirror },
    was: { at: place.at ?? null, mirror: place.mirror ?? null },
  };
}

function methodEdit(study: Study, pick: Pick, name: string): SingleEdit | undefined {
  const method = nth(study.methods, pick.method);
  if (method === undefined) return undefined;
  if (pick.type === 'method.add')
    return { type: 'method.add', method: { ...method, id: name }, index: pick.at % 3 };
  if (pick.type === 'method.remove') return { type: 'method.remove', method };
  return {
    type: 'method.change',
    method: method.id,
    to: { name: pick.text, note: pick.at % 2 === 0 ? null : pick.text },
    was: { name: method.name, note: method.note ?? null },
  };
}

/** A boundary, sometimes outside on purpose: an edit that does not fit must be refused, not half done. */
function boundaryOf(study: Study, { base }: Method, pick: Pick): number {
  const film = base.kind === 'frames' ? study.films.find((item) => item.id === base.film) : undefined;
  return film === undefined ? pick.at * 1000 : pick.at % (frameCount(film.frameTimes) + 2);
}

function rowEdit(study: Study, method: Method, pick: Pick, name: string): SingleEdit | undefined {
  const at = boundaryOf(study, method, pick);
  return pick.type.startsWith('cycle')
    ? cycleEdit(method, pick, name, at)
    : motionEdit(study, method, pick, name, at);
}

function motionEdit(
  study: Study,
  method: Method,
  pick: Pick,
  name: string,
  at: number,
): SingleEdit | undefined {
  const inRow = { method: method.id, hand: pick.hand };
  const row = method[pick.hand];
  if (pick.type === 'row.end') return { type: 'row.end', ...inRow, to: at, was: row.end };
  const kind = motionKinds[pick.which % motionKinds.length] ?? 'G';
  const place = nth(study.places, pick.which)?.id;
  if (pick.type === 'motion.mark') {
    const motion: Motion = {
      id: name,
      start: at,
      kind,
      said: 'marked',
      ...(place === undefined ? {} : { to: place }),
    };
    return { type: 'motion.mark', ...inRow, motion };
  }
  const motion = nth(row.items, pick.which);
  if (motion === undefined) return undefined;
  if (pick.type === 'motion.remove') return { type: 'motion.remove', ...inRow, motion };
  if (pick.type === 'motion.move')
    return { type: 'motion.move', ...inRow, motion: motion.id, to: at, was: motion.start };
  return {
    type: 'motion.change',
    ...inRow,
    motion: motion.id,
    to: { kind, object: pick.at % 2 === 0 ? null : pick.text, from: place ?? null },
    was: { kind: motion.kind, object: motion.object ?? null, from: motion.from ?? null },
  };
}

function cycleEdit(method: Method, pick: Pick, name: string, at: number): SingleEdit | undefined {
  if (pick.type === 'cycles.end')
    return { type: 'cycles.end', method: method.id, to: at, was: method.cycles.end };
  if (pick.type === 'cycle.mark')
    return { type: 'cycle.mark', method: method.id, cycle: { id: name, start: at } };
  const cycle = nth(method.cycles.items, pick.which);
  if (cycle === undefined) return undefined;
  if (pick.type === 'cycle.remove') return { type: 'cycle.remove', method: method.id, cycle };
  if (pick.type === 'cycle.move')
    return { type: 'cycle.move', method: method.id, cycle: cycle.id, to: at, was: cycle.start };
  return {
    type: 'cycle.change',
    method: method.id,
    cycle: cycle.id,
    to: { setAside: pick.at % 2 === 0 ? null : pick.text },
    was: { setAside: cycle.setAside ?? null },
  };
}

function elementEdit(study: Study, method: Method, pick: Pick, name: string): SingleEdit | undefined {
  const at = boundaryOf(study, method, pick);
  if (pick.type === 'element.add') {
    const element: ElementMark = { id: name, name: pick.text, hand: pick.hand, at };
    const index = pick.which % 3 === 0 ? {} : { index: pick.which % 4 };
    return { type: 'element.add', method: method.id, element, ...index };
  }
  const element = nth(method.elements ?? [], pick.which);
  if (element === undefined) return undefined;
  if (pick.type === 'element.remove') return { type: 'element.remove', method: method.id, element };
  return {
    type: 'element.change',
    method: method.id,
    element: element.id,
    to: { name: pick.text, hand: pick.hand, at },
    was: { name: element.name, hand: element.hand, at: element.at },
  };
}

/** What a pick examines; now and then a method, a motion or a lead that is not there. */
function subjectOf(study: Study, pick: Pick): ExaminationSubject {
  const method = nth(study.methods, pick.method);
  const id = method === undefined || pick.at % 11 === 0 ? 'gone' : method.id;
  const motion = nth(method?.[pick.hand].items ?? [], pick.which)?.id ?? 'gone';
  const element = nth(method?.elements ?? [], pick.which)?.id ?? 'gone';
  const subjects: readonly ExaminationSubject[] = [
    { kind: 'operation', method: id },
    { kind: 'motion', method: id, hand: pick.hand, motion },
    { kind: 'element', method: id, element },
    { kind: 'lead', method: id, lead: `hold:${pick.hand}:body` },
  ];
  return subjects[pick.at % subjects.length] as ExaminationSubject;
}

function examinationEdit(study: Study, pick: Pick, name: string): SingleEdit | undefined {
  const question = (step: number) => nth(examinationQuestions, pick.which + step)?.id ?? 'purpose-1';
  // The same question twice now and then: that must be refused.
  const answers = [
    { question: question(0), text: pick.text },
    { question: question(pick.at % 5), text: pick.text },
  ];
  const decision = { choice: nth(decisionChoices, pick.which) ?? 'keep', reason: pick.text } as const;
  if (pick.type === 'examination.add') {
    const noted = pick.at % 3 === 0 ? { decision } : { answers, decision };
    const examination: Examination = { id: name, subject: subjectOf(study, pick), ...noted };
    const index = pick.which % 3 === 0 ? {} : { index: pick.which % 4 };
    return { type: 'examination.add', examination, ...index };
  }
  const examination = nth(study.examinations ?? [], pick.which);
  if (examination === undefined) return undefined;
  if (pick.type === 'examination.remove') return { type: 'examination.remove', examination };
  return {
    type: 'examination.change',
    examination: examination.id,
    to: { answers: pick.at % 2 === 0 ? null : answers, decision: pick.at % 3 === 0 ? null : decision },
    was: { answers: examination.answers ?? null, decision: examination.decision ?? null },
  };
}
