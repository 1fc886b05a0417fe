import { describe, expect, it } from 'vitest';
import { tenth, twoHandStudy } from '../../../../../../tests/helpers/two-hand-study.ts';
import type { ElementMark, Study, TimeStudy, TimeStudyElement } from '../../../ground/study/index.ts';
import { timeStudyFromRecord } from './begin.ts';
import { timeStudySheet } from './sheet.ts';

const mark = (id: string, name: string, at: number): ElementMark => ({
  id,
  name,
  hand: 'right',
  at: at * tenth,
});

/** Three cycles of 1.8, 2.0 and 2.2 s with two elements of 1.0, 1.2, 1.4 s and 0.8 s each. */
function recorded(marks: readonly ElementMark[], aside?: string): Study {
  const made = twoHandStudy(
    [2, 3, 4].map((long) => ({
      left: 'UD 1',
      right: `TE ring ${long}, G ring 1, TL ring ${long + 1}, A ring 4, TE nut 3, A nut 5`,
    })),
  );
  const [method] = made.methods;
  if (method === undefined) throw new Error('no method');
  const items = method.cycles.items.map((item, index) =>
    index === 1 && aside !== undefined ? { ...item, setAside: aside } : item,
  );
  const own = marks.length === 0 ? {} : { elements: [...marks] };
  return { ...made, methods: [{ ...method, ...own, cycles: { ...method.cycles, items } }] };
}

const two = [mark('m1', 'fit ring', 0), mark('m2', 'fit nut', 10)];
let ids = 0;
function begun(study: Study): TimeStudy {
  const made = timeStudyFromRecord(study, 'm', 'timed from the film', () => `new-${++ids}`);
  if (!made.ok) throw new Error(made.error.message);
  return made.value;
}
const changed = (of: TimeStudy, id: string, fields: Partial<TimeStudyElement>): TimeStudy => ({
  ...of,
  elements: of.elements.map((element) => (element.id === id ? { ...element, ...fields } : element)),
});
const secondsOf = (study: Study, of: TimeStudy) =>
  timeStudySheet(study, of).rows.map(({ element, cells }) => [
    element.name,
    ...cells.map(({ time }) => time),
  ]);

describe('a time study from a record', () => {
  it('begins with the elements of the record and takes their times from it, storing none', () => {
    const study = recorded(two);
    const made = begun(study);
    expect(made.elements.map(({ id, name, readings }) => [id, name, readings])).toEqual([
      ['m1', 'fit ring', []],
      ['m2', 'fit nut', []],
    ]);
    expect(secondsOf(study, made)).toEqual([
      ['fit ring', 1, 1.2, 1.4],
      ['fit nut', 0.8, 0.8, 0.8],
    ]);
    const sheet = timeStudySheet(study, made);
    expect(sheet.faults).toEqual([]);
    expect(sheet.standard?.standard.standard).toBeCloseTo(2, 12);
    expect(sheet.whole.cycles.map(({ time }) => time?.toFixed(1))).toEqual(['1.8', '2.0', '2.2']);
  });

  it('without elements is one of the whole cycle', () => {
    const study = recorded([]);
    expect(secondsOf(study, begun(study))).toEqual([['whole cycle', 1.8, 2, 2.2]]);
  });

  it('adds the ratings and the readings set aside of the study; a cycle set aside in the record stays aside', () => {
    const study = recorded(two, 'dropped the ring');
    const rated = changed(begun(study), 'm1', {
      readings: [
        { cycle: 1, rating: 110 },
        { cycle: 2, setAside: 'spoken to' },
        { cycle: 9, rating: 80 },
      ],
    });
    const [ring, nut] = timeStudySheet(study, rated).rows;
    expect(ring?.cells.map(({ cycle, us, rating, setAside }) => [cycle, us, rating, setAside])).toEqual([
      [1, 1_000_000, 110, undefined],
      [2, 1_200_000, undefined, 'spoken to'],
      [3, 1_400_000, undefined, undefined],
    ]);
    expect(nut?.cells[1]?.setAside).toBe('dropped the ring');
    // (1.0 · 1.1 + 1.4) / 2
    expect(ring?.rated?.basic.mean).toBeCloseTo(1.25, 12);
  });

  it('keeps its elements when they are renamed on either side, and knows those of another hand by their name', () => {
    const made = begun(recorded(two));
    const renamed = recorded([mark('m1', 'put ring on', 0), mark('m2', 'fit nut', 10)]);
    expect(secondsOf(renamed, made)[0]).toEqual(['fit ring', 1, 1.2, 1.4]);
    const own = changed(made, 'm1', { name: 'ring' });
    expect(secondsOf(recorded(two), own)[0]).toEqual(['ring', 1, 1.2, 1.4]);
    const byName = { ...made, elements: made.elements.map((element, at) => ({ ...element, id: `x${at}` })) };
    expect(secondsOf(recorded(two), byName)).toEqual(secondsOf(recorded(two), made));
  });

  it('offers what it does not have, and says of an element that the record does not have where it stands', () => {
    const study = recorded(two);
    const made = begun(study);
    const one = timeStudySheet(study, { ...made, elements: made.elements.slice(0, 1) });
    expect(one.missing).toEqual(['fit nut']);
    expect(one.rows[0]?.summary?.n).toBe(3);
    const stranger: TimeStudyElement = { id: 'z', name: 'sweep', work: 'worker', readings: [] };
    const more = timeStudySheet(study, { ...made, elements: [...made.elements, stranger] });
    expect(more.standard).toBeUndefined();
    expect(more.faults.map(({ finding, element }) => [finding.code, element])).toEqual([
      ['define/not-in-record', 'z'],
      ['define/no-reading', 'z'],
    ]);
    expect(more.rows[0]?.summary?.mean).toBeCloseTo(1.2, 12);
  });

  it('never counts an element of the record twice', () => {
    const study = recorded(two);
    const made = begun(study);
    const double: TimeStudyElement = { id: 'z', name: 'fit ring', work: 'worker', readings: [] };
    const sheet = timeStudySheet(study, { ...made, elements: [double, ...made.elements] });
    expect(sheet.faults.map(({ finding, element }) => [finding.code, element])).toContainEqual([
      'define/record-taken',
      'z',
    ]);
    expect(sheet.rows[0]?.cells).toEqual([]);
    expect(sheet.rows[1]?.summary?.n).toBe(3);
  });

  it('of a method that is gone gives its head and the reason', () => {
    const study = recorded(two);
    const made: TimeStudy = { ...begun(study), source: { kind: 'record', method: 'gone' } };
    const sheet = timeStudySheet(study, made);
    expect(sheet.rows.length).toBe(2);
    expect(sheet.faults[0]).toMatchObject({ field: 'source' });
    expect(timeStudyFromRecord(study, 'gone', 'x', () => 'y').ok).toBe(false);
  });
});
