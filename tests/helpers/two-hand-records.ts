import {
  emptyStudy,
  type Hand,
  type Method,
  type Motion,
  type Place,
  type Study,
} from '@evenhand/core/ground/study';
import type { MotionKind } from '@evenhand/core/ground/tables';
import fc from 'fast-check';

/** Small records in microseconds with few kinds of motion, so that both hands often do the same: for slow oracles. */

const places: readonly Place[] = ['bin', 'bench', 'box'].map((id) => ({ id, name: `The ${id}` }));

const kindArb = fc.constantFrom<MotionKind>('TE', 'TL', 'G', 'A', 'H', 'UD', 'R', 'F', 'unmarked');
const placeArb = fc.constantFrom('bin', 'bench', 'box');

function rowArb(hand: Hand, last: number): fc.Arbitrary<Method['left']> {
  const details = fc.record(
    {
      kind: kindArb,
      said: fc.constantFrom<Motion['said']>('marked', 'confirmed', 'marked', 'proposed'),
      object: fc.constantFrom('ring', 'body'),
      from: placeArb,
      to: placeArb,
    },
    { requiredKeys: ['kind', 'said'] },
  );
  return fc.uniqueArray(fc.integer({ min: 0, max: last }), { minLength: 1, maxLength: 14 }).chain((at) => {
    const [end = 0, ...starts] = [...at].sort((a, b) => b - a);
    return fc.array(details, { minLength: starts.length, maxLength: starts.length }).map((list) => ({
      items: list.map((item, index): Motion => {
        const start = starts[starts.length - 1 - index] ?? 0;
        return { ...item, id: `${hand[0]}${index}`, start };
      }),
      end,
    }));
  });
}

function cyclesArb(last: number): fc.Arbitrary<Method['cycles']> {
  return fc.uniqueArray(fc.integer({ min: 0, max: last }), { minLength: 1, maxLength: 5 }).map((at) => {
    const [end = 0, ...starts] = [...at].sort((a, b) => b - a);
    return { items: starts.reverse().map((start, index) => ({ id: `c${index}`, start })), end };
  });
}

/** A study with one method `m`: rows of at most thirteen motions within `last` microseconds, none to four cycles. */
export function twoHandStudyArb(last = 120): fc.Arbitrary<Study> {
  return fc
    .record({ left: rowArb('left', last), right: rowArb('right', last), cycles: cyclesArb(last) })
    .map((rows) => studyOf(rows));
}

export function studyOf(rows: Pick<Method, 'left' | 'right' | 'cycles'>): Study {
  const method: Method = {
    id: 'm',
    name: 'Present method',
    kind: 'recorded',
    base: { kind: 'micros' },
    unitsPerCycle: 1,
    ...rows,
  };
  return { ...emptyStudy('s', 'Couplings'), places: [...places], methods: [method] };
}

/** Every boundary of the only method, changed in the same way. */
export function withBoundaries(study: Study, change: (at: number) => number): Study {
  const moved = <Item extends { readonly start: number }>(row: {
    readonly items: readonly Item[];
    readonly end: number;
  }) => ({
    items: row.items.map((item) => ({ ...item, start: change(item.start) })),
    end: change(row.end),
  });
  return {
    ...study,
    methods: study.methods.map((method) => ({
      ...method,
      left: moved(method.left),
      right: moved(method.right),
      cycles: moved(method.cycles),
    })),
  };
}

/** The same with left and right exchanged. */
export function mirrored(study: Study): Study {
  return {
    ...study,
    methods: study.methods.map((method) => ({ ...method, left: method.right, right: method.left })),
  };
}

/** "TE 300 to=bin, G 200 o=ring": kind, duration in milliseconds, then `o=` an object, `to=` or `from=` a place. */
export function rowOf(hand: Hand, text: string): Method['left'] {
  let at = 0;
  const items = text
    .trim()
    .split(/\s*,\s*/)
    .map((line, index): Motion => {
      const [kind, duration, ...details] = line.split(' ');
      const start = at;
      at += Number(duration) * 1000;
      const named = Object.fromEntries(details.map((detail) => detail.split('=')));
      const { o, ...where } = named as { o?: string };
      const object = o === undefined ? {} : { object: o };
      return {
        id: `${hand[0]}${index}`,
        start,
        kind: kind as MotionKind,
        said: 'marked',
        ...object,
        ...where,
      };
    });
  return { items, end: at };
}
