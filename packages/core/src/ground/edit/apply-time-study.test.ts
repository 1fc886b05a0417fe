import { describe, expect, it } from 'vitest';
import { expectEditLaws } from '../../../../../tests/helpers/edit-laws.ts';
import { plainStudy } from '../../../../../tests/helpers/plain-study.ts';
import { checkStudy, type Study, type TimeStudy, type TimeStudyReading } from '../study/index.ts';
import { applyEdit, type Edit, editName } from './index.ts';

const timeStudy: TimeStudy = {
  id: 't',
  name: 'By the watch',
  source: { kind: 'readings', method: 'm', timing: 'continuous' },
  unit: 'minutes',
  scale: '0-100',
  rating: 95,
  ratingError: 0.05,
  confidence: 0.95,
  precision: { kind: 'relative', share: 0.05 },
  allowances: {
    convention: 'share-of-basic-time',
    relaxation: { kind: 'share', share: 0.12 },
    process: 0,
    contingency: 0,
  },
  piecesPerCycle: 1,
  elements: [
    { id: 'a', name: 'fit hose', work: 'worker', readings: [{ cycle: 2, us: 4_200_000 }, { cycle: 5 }] },
    { id: 'b', name: 'press ring', work: 'process', readings: [] },
  ],
  sittings: [
    { id: 's1', start: 1, operatorCode: 'K1' },
    { id: 's2', start: 4, operatorCode: 'K2' },
  ],
  foreign: [{ id: 'f1', cycle: 2, element: 'a', us: 9_000_000, what: 'spoken to' }],
};
const empty = plainStudy();
const study: Study = { ...empty, timeStudies: [timeStudy] };
const at = { timeStudy: 't' };

/** The study after an edit that must hold, and that keeps every law of edits. */
function after(start: Study, edit: Edit): Study {
  const applied = expectEditLaws(start, edit);
  if (!applied.ok) throw new Error(applied.error.message);
  return applied.value.study;
}

function refusal(start: Study, edit: Edit): string | undefined {
  const applied = expectEditLaws(start, edit);
  return applied.ok ? undefined : applied.error.code;
}

const readings = (found: Study) => found.timeStudies?.[0]?.elements[0]?.readings;
const set = (was: TimeStudyReading | null, to: TimeStudyReading | null): Edit => ({
  type: 'reading.set',
  ...at,
  element: 'a',
  to,
  was,
});
const change = (to: object, was: object) => ({ type: 'time-study.change', ...at, to, was }) as Edit;

describe('edits of a time study', () => {
  it('the study it is tried on holds', () => expect(checkStudy(study)).toEqual([]));

  it('the list comes with the first time study and goes with the last', () => {
    const one = after(empty, { type: 'time-study.add', timeStudy });
    expect(one.timeStudies).toEqual([timeStudy]);
    expect('timeStudies' in after(one, { type: 'time-study.remove', timeStudy })).toBe(false);
  });

  it('the head changes field by field, and null takes one away', () => {
    const rated = after(study, change({ rating: 110, unit: 'tmu' }, { rating: 95, unit: 'minutes' }));
    expect(rated.timeStudies?.[0]).toEqual({ ...timeStudy, rating: 110, unit: 'tmu' });
    const bare = after(study, change({ sittings: null }, { sittings: timeStudy.sittings }));
    expect('sittings' in (bare.timeStudies?.[0] ?? {})).toBe(false);
  });

  it('an element takes its place among the others and keeps its readings when it is renamed', () => {
    const element = { id: 'c', name: 'lay down', work: 'worker', readings: [] } as const;
    const three = after(study, { type: 'timed-element.add', ...at, element, index: 1 });
    expect(three.timeStudies?.[0]?.elements.map(({ id }) => id)).toEqual(['a', 'c', 'b']);
    const to = { name: 'push hose', occurs: { times: 1, cycles: 10 } };
    const was = { name: 'fit hose', occurs: null };
    const renamed = after(study, { type: 'timed-element.change', ...at, element: 'a', to, was });
    expect(renamed.timeStudies?.[0]?.elements[0]).toEqual({ ...timeStudy.elements[0], ...to });
  });
});

describe('edits of a reading', () => {
  it.each<[string, Edit, readonly number[]]>([
    ['before all others', set(null, { cycle: 1, us: 1 }), [1, 2, 5]],
    ['between two', set(null, { cycle: 3, us: 1 }), [2, 3, 5]],
    ['behind all others', set(null, { cycle: 9 }), [2, 5, 9]],
    ['in the place of one', set({ cycle: 5 }, { cycle: 5, us: 7, setAside: 'part fell' }), [2, 5]],
    ['by taking one away', set({ cycle: 2, us: 4_200_000 }, null), [5]],
  ])('are in the order of the cycles: %s', (_, edit, cycles) => {
    expect(readings(after(study, edit))?.map(({ cycle }) => cycle)).toEqual(cycles);
  });

  it.each<[string, Edit, string]>([
    ['there is one already', set(null, { cycle: 2, us: 1 }), 'edit/changed-meanwhile'],
    ['it is another by now', set({ cycle: 2, us: 1 }, null), 'edit/changed-meanwhile'],
    ['there is none any more', set({ cycle: 3, us: 1 }, null), 'edit/changed-meanwhile'],
    ['two cycles are named', set({ cycle: 2, us: 4_200_000 }, { cycle: 3, us: 1 }), 'edit/reading-cycle'],
    ['no cycle is named', set(null, null), 'edit/reading-cycle'],
  ])('are refused where %s', (_, edit, code) => expect(refusal(study, edit)).toBe(code));
});

describe('an edit of a time study is refused in words', () => {
  const known = timeStudy.elements[1];
  if (known === undefined) throw new Error('no element');
  const fields = { name: 'x' };
  const foreign = timeStudy.foreign;
  it.each<[string, Edit, string]>([
    ['an id of a time study that is taken', { type: 'time-study.add', timeStudy }, 'edit/taken'],
    [
      'a method that is not there',
      {
        type: 'time-study.add',
        timeStudy: { ...timeStudy, id: 'u', source: { kind: 'record', method: 'gone' }, elements: [] },
      },
      'study/names-unknown-method',
    ],
    [
      'a time study that is gone',
      { ...(change({ rating: 90 }, { rating: 95 }) as object), timeStudy: 'u' } as Edit,
      'edit/no-time-study',
    ],
    ['a head that is another by now', change({ rating: 90 }, { rating: 91 }), 'edit/changed-meanwhile'],
    ['an element whose id is taken', { type: 'timed-element.add', ...at, element: known }, 'edit/taken'],
    [
      'an element that is gone',
      { type: 'timed-element.change', ...at, element: 'z', to: fields, was: fields },
      'edit/no-timed-element',
    ],
    [
      'an element that is another by now',
      { type: 'timed-element.remove', ...at, element: { ...known, name: 'other' } },
      'edit/changed-meanwhile',
    ],
    [
      'an element that a foreign one names',
      {
        type: 'timed-element.remove',
        ...at,
        element: timeStudy.elements[0] as (typeof timeStudy.elements)[0],
      },
      'study/foreign-element',
    ],
    [
      'two sittings with one id',
      change(
        {
          sittings: [
            { id: 's1', start: 1 },
            { id: 's1', start: 2 },
          ],
        },
        { sittings: timeStudy.sittings },
      ),
      'study/duplicate-id',
    ],
    [
      'two foreign elements with one id',
      change({ foreign: [...(foreign ?? []), ...(foreign ?? [])] }, { foreign }),
      'study/duplicate-id',
    ],
    [
      'times of a record where readings have their own',
      change({ source: { kind: 'record', method: 'm' } }, { source: timeStudy.source }),
      'study/reading-of-record',
    ],
    [
      'the method that was timed, taken out of the study',
      { type: 'method.remove', method: empty.methods[0] as (typeof empty.methods)[0] },
      'edit/in-use',
    ],
  ])('%s', (_, edit, code) => expect(refusal(study, edit)).toBe(code));

  it('a record takes over when no reading has a time of its own', () => {
    const bare = after(study, set({ cycle: 2, us: 4_200_000 }, null));
    const edit = change({ source: { kind: 'record', method: 'm' } }, { source: timeStudy.source });
    const derived = after(bare, edit);
    expect(derived.timeStudies?.[0]?.source).toEqual({ kind: 'record', method: 'm' });
    // And then a reading may say why it does not count, but not how long it took.
    expect(refusal(derived, set(null, { cycle: 7, us: 1 }))).toBe('study/reading-of-record');
    expect(refusal(derived, set(null, { cycle: 7, setAside: 'part fell' }))).toBeUndefined();
  });
});

describe('two windows at one time study', () => {
  const hold = (edits: readonly Edit[]) => edits.reduce(after, study);

  it('readings of two cycles come to the same study in either order', () => {
    const [one, other] = [set(null, { cycle: 3, us: 3 }), set(null, { cycle: 4, us: 4 })];
    expect(hold([one, other])).toEqual(hold([other, one]));
  });

  it('of two readings of one cycle the later is refused', () => {
    const [one, other] = [set(null, { cycle: 3, us: 3 }), set(null, { cycle: 3, us: 4 })];
    expect(refusal(hold([one]), other)).toBe('edit/changed-meanwhile');
  });

  it('a reading and the name of its element do not disturb one another', () => {
    const to = { name: 'push hose' };
    const rename: Edit = { type: 'timed-element.change', ...at, element: 'a', to, was: { name: 'fit hose' } };
    const reading = set(null, { cycle: 3, us: 3 });
    expect(hold([rename, reading])).toEqual(hold([reading, rename]));
  });

  it('every edit has a name for the history', () => {
    expect(editName(set(null, { cycle: 3, us: 3 }))).toBe('write a reading');
    expect(applyEdit(study, change({ rating: 90 }, { rating: 95 })).ok).toBe(true);
  });
});
