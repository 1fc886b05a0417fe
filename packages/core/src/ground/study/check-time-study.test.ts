import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../../../tests/helpers/plain-study.ts';
import { readStudy } from './index.ts';

const element = { id: 'a', name: 'fit hose', work: 'worker', readings: [{ cycle: 1, us: 4_200_000 }] };
const timeStudy = {
  id: 't',
  name: 'By the watch',
  source: { kind: 'readings', timing: 'typed' },
  unit: 'minutes',
  scale: '0-100',
  ratingError: 0,
  confidence: 0.95,
  precision: { kind: 'relative', share: 0.05 },
  allowances: {
    convention: 'share-of-shift',
    relaxation: { kind: 'share', share: 0.12 },
    process: 0,
    contingency: 0,
  },
  piecesPerCycle: 1,
  elements: [element],
};
const comparison = { id: 'c', before: { method: 'm' }, after: { method: 'n' }, confidence: 0.95 };

/** Codes and places of what is wrong with a time study as it came from a file. */
function faultsOf(parts: object): [string, string | undefined][] {
  const read = readStudy({ ...plainStudy(), timeStudies: [{ ...timeStudy, ...parts }] });
  return read.ok ? [] : read.error.map(({ code, where }) => [code, where.pointer]);
}

describe('a time study of a file', () => {
  it('holds', () => expect(faultsOf({})).toEqual([]));

  it.each<[string, object, string, string]>([
    [
      'a method that is not there',
      { source: { kind: 'record', method: 'gone' }, elements: [] },
      'study/names-unknown-method',
      '/source/method',
    ],
    [
      'two readings of one cycle',
      { elements: [{ ...element, readings: [{ cycle: 2 }, { cycle: 2 }] }] },
      'study/reading-order',
      '/elements/0/readings/1',
    ],
    [
      'a time beside a record',
      { source: { kind: 'record', method: 'm' } },
      'study/reading-of-record',
      '/elements/0/readings/0',
    ],
    [
      'a sitting before the one before it',
      {
        sittings: [
          { id: 's', start: 5 },
          { id: 'r', start: 5 },
        ],
      },
      'study/sitting-order',
      '/sittings/1/start',
    ],
    ['two elements with one id', { elements: [element, element] }, 'study/duplicate-id', '/elements/1/id'],
    [
      'an element that is not there',
      { foreign: [{ id: 'f', cycle: 1, element: 'z', us: 1, what: 'spoken to' }] },
      'study/foreign-element',
      '/foreign/0/element',
    ],
    ['a rating of 0', { rating: 0 }, 'study/shape', '/rating'],
    [
      'a time in parts of a microsecond',
      { elements: [{ ...element, readings: [{ cycle: 1, us: 1.5 }] }] },
      'study/shape',
      '/elements/0/readings/0/us',
    ],
    [
      'a cycle 0',
      { elements: [{ ...element, readings: [{ cycle: 0, us: 1 }] }] },
      'study/shape',
      '/elements/0/readings/0/cycle',
    ],
    [
      'a name in the place of a date',
      { sittings: [{ id: 's', start: 1, date: 'Monday' }] },
      'study/shape',
      '/sittings/0/date',
    ],
    ['a confidence of 1', { confidence: 1 }, 'study/shape', '/confidence'],
    ['a unit that is none', { unit: 'jiffies' }, 'study/shape', '/unit'],
    ['a field that is not known', { pace: 95 }, 'study/shape', ''],
  ])('with %s is refused at its place', (_, parts, code, pointer) => {
    expect(faultsOf(parts)).toEqual([[code, `/timeStudies/0${pointer}`]]);
  });
});

describe('a comparison of a file', () => {
  it.each<[string, object, string, string]>([
    ['a method that is not there', {}, 'study/names-unknown-method', '/comparisons/0/after/method'],
    [
      'a method beside itself',
      { after: { method: 'm' } },
      'study/compared-with-itself',
      '/comparisons/0/after/method',
    ],
  ])('with %s is refused at its place', (_, parts, code, pointer) => {
    const read = readStudy({ ...plainStudy(), comparisons: [{ ...comparison, ...parts }] });
    expect(read.ok ? [] : read.error.map((item) => [item.code, item.where.pointer])).toEqual([
      [code, pointer],
    ]);
  });
});
