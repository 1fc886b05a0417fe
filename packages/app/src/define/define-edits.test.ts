import { emptyTimeStudy } from '@evenhand/core/define';
import { applyEdit, type Edit } from '@evenhand/core/ground/edit';
import type { Study, TimeStudy, TimeStudyReading } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../../tests/helpers/plain-study.ts';
import {
  changedReading,
  changeHeading,
  changeReading,
  copyTimeStudy,
  freeName,
  mergedReadings,
  moveElement,
  newElement,
  readingAt,
  removeElement,
  setCycleAside,
  setForeign,
  setReadings,
  setSittings,
} from './define-edits.ts';

const reading = (cycle: number, us: number): TimeStudyReading => ({ cycle, us });

/** Two elements over three cycles; the second was missed in cycle 2. */
function couplings(): TimeStudy {
  return {
    ...emptyTimeStudy({ id: 'bench', name: 'at the bench' }),
    elements: [
      { ...newElement('Take body', 'take'), readings: [reading(1, 10), reading(2, 12), reading(3, 11)] },
      { ...newElement('Put ring on', 'ring'), readings: [reading(1, 20), { cycle: 2 }, reading(3, 22)] },
    ],
  };
}

function studyWith(timeStudy: TimeStudy): Study {
  return { ...plainStudy(), timeStudies: [timeStudy] };
}

/** The time study after an edit, which must hold and must be undone without a trace. */
function after(timeStudy: TimeStudy, edit: Edit | undefined): TimeStudy {
  if (edit === undefined) throw new Error('an edit was expected');
  const study = studyWith(timeStudy);
  const applied = applyEdit(study, edit);
  if (!applied.ok) throw new Error(applied.error.message);
  const back = applyEdit(applied.value.study, applied.value.inverse);
  expect(back.ok && back.value.study).toEqual(study);
  return applied.value.study.timeStudies?.[0] as TimeStudy;
}

const elementOf = (timeStudy: TimeStudy, index: number) => {
  const element = timeStudy.elements[index];
  if (element === undefined) throw new Error('no such element');
  return element;
};

describe('a reading', () => {
  it('is found by its cycle, also between others, and undefined where there is none', () => {
    const element = { ...newElement('x', 'x'), readings: [reading(2, 5), reading(7, 6), reading(9, 7)] };
    expect([1, 2, 3, 7, 9, 10].map((cycle) => readingAt(element, cycle)?.us)).toEqual([
      undefined,
      5,
      undefined,
      6,
      7,
      undefined,
    ]);
  });

  it('keeps what a change does not name', () => {
    const was: TimeStudyReading = { cycle: 4, us: 9, rating: 95, setAside: 'fell' };
    expect(changedReading('readings', 4, was, { us: 8 })).toEqual({ ...was, us: 8 });
    expect(changedReading('readings', 4, was, { setAside: null })).toEqual({ cycle: 4, us: 9, rating: 95 });
  });

  it('of a record keeps no time, and nothing at all without rating and reason', () => {
    expect(changedReading('record', 4, undefined, { us: 8, rating: 95 })).toEqual({ cycle: 4, rating: 95 });
    expect(changedReading('record', 4, { cycle: 4, rating: 95 }, { rating: null })).toBeNull();
  });

  it('that stays the same is no edit', () => {
    const study = couplings();
    expect(changeReading(study, elementOf(study, 0), 1, { us: 10 })).toBeUndefined();
  });

  it('is written, changed and undone as one step', () => {
    const study = couplings();
    const written = after(study, changeReading(study, elementOf(study, 1), 2, { us: 21 }));
    expect(elementOf(written, 1).readings).toEqual([reading(1, 20), reading(2, 21), reading(3, 22)]);
  });
});

describe('a whole cycle', () => {
  it('is set aside for one reason where readings do not have one yet, and counted again', () => {
    const study = couplings();
    const aside = after(study, setCycleAside(study, 2, 'telephone'));
    expect(aside.elements.map((element) => readingAt(element, 2)?.setAside)).toEqual([
      'telephone',
      'telephone',
    ]);
    expect(after(aside, setCycleAside(aside, 2, null))).toEqual(study);
    expect(setCycleAside(aside, 2, 'again')).toBeUndefined();
  });
});

describe('many readings at once', () => {
  it('are one step, with the elements that are made for them', () => {
    const study = couplings();
    const made = newElement('Screw collar', 'screw');
    const edit = setReadings(
      study,
      [
        { element: 'take', reading: reading(2, 99) },
        { element: 'screw', reading: reading(2, 50) },
        { element: 'screw', reading: reading(1, 40) },
      ],
      [made],
      'paste',
    );
    expect(edit?.type).toBe('group');
    const pasted = after(study, edit);
    expect(readingAt(elementOf(pasted, 0), 2)?.us).toBe(99);
    expect(elementOf(pasted, 2)).toEqual({ ...made, readings: [reading(1, 40), reading(2, 50)] });
  });

  it('give the same element whether they are few or so many that it is replaced', () => {
    const study = couplings();
    const many = Array.from({ length: 500 }, (_, index) => reading(index + 2, 30 + index));
    const pasted = after(
      study,
      setReadings(
        study,
        many.map((each) => ({ element: 'take', reading: each })),
        [],
        'paste',
      ),
    );
    expect(elementOf(pasted, 0).readings).toEqual(mergedReadings(elementOf(study, 0).readings, many));
    expect(pasted.elements.map(({ id }) => id)).toEqual(['take', 'ring']);
  });

  it('of one cycle: the later one holds, and they stand in the order of their cycles', () => {
    expect(mergedReadings([reading(5, 1), reading(8, 2)], [reading(8, 3), reading(6, 4)])).toEqual([
      reading(5, 1),
      reading(6, 4),
      reading(8, 3),
    ]);
  });
});

describe('elements', () => {
  it('move by one place and stay within the list', () => {
    const study = couplings();
    expect(after(study, moveElement(study, elementOf(study, 0), 1)).elements.map(({ id }) => id)).toEqual([
      'ring',
      'take',
    ]);
    expect(moveElement(study, elementOf(study, 0), -1)).toBeUndefined();
  });

  it('are removed although something foreign happened during them', () => {
    const base = couplings();
    const study: TimeStudy = {
      ...base,
      foreign: [{ id: 'f', cycle: 1, element: 'ring', us: 5, what: 'question' }],
    };
    const left = after(study, removeElement(study, elementOf(study, 1)));
    expect(left.elements.map(({ id }) => id)).toEqual(['take']);
    expect(left.foreign).toEqual([{ id: 'f', cycle: 1, us: 5, what: 'question' }]);
  });
});

describe('a copy', () => {
  it('has ids of its own everywhere, and its foreign elements name its own elements', () => {
    const study: TimeStudy = {
      ...couplings(),
      sittings: [{ id: 's', start: 1, operatorCode: 'A' }],
      foreign: [{ id: 'f', cycle: 1, element: 'ring', us: 5, what: 'question' }],
    };
    let count = 0;
    const copy = copyTimeStudy(study, 'copy', () => `new-${++count}`);
    const ids = (each: TimeStudy) => [
      each.id,
      ...each.elements.map(({ id }) => id),
      ...(each.sittings ?? []).map(({ id }) => id),
      ...(each.foreign ?? []).map(({ id }) => id),
    ];
    expect(ids(copy).filter((id) => ids(study).includes(id))).toEqual([]);
    expect(copy.foreign?.[0]?.element).toBe(copy.elements[1]?.id);
    expect(copy.elements.map(({ readings }) => readings)).toEqual(
      study.elements.map(({ readings }) => readings),
    );
  });

  it('of a study that takes its times from a record keeps the ids of the break points', () => {
    const study: TimeStudy = { ...couplings(), source: { kind: 'record', method: 'm' } };
    const copy = copyTimeStudy(study, 'copy', () => 'new');
    expect(copy.elements.map(({ id }) => id)).toEqual(['take', 'ring']);
  });

  it('has a name that is free', () => {
    expect(freeName('bench', ['bench', 'bench (2)'])).toBe('bench (3)');
    expect(freeName('bench', ['other'])).toBe('bench');
  });
});

describe('sittings, foreign elements and the heading', () => {
  it('stand in the order of their cycles, and an empty list is taken away', () => {
    const study = couplings();
    const noted = after(
      study,
      setSittings(study, [
        { id: 'b', start: 3 },
        { id: 'a', start: 1 },
      ]),
    );
    expect(noted.sittings?.map(({ id }) => id)).toEqual(['a', 'b']);
    expect(after(noted, setSittings(noted, []))).not.toHaveProperty('sittings');
    const foreign = after(study, setForeign(study, [{ id: 'f', cycle: 2, us: 5, what: 'question' }]));
    expect(after(foreign, setForeign(foreign, []))).not.toHaveProperty('foreign');
  });

  it('a field of the operation that is emptied goes away; its name stays', () => {
    const study = studyWith(couplings());
    const filled = applyEdit(study, changeHeading(study, 'analyst', ' KL ') as Edit);
    if (!filled.ok) throw new Error(filled.error.message);
    expect(filled.value.study.operation.analyst).toBe('KL');
    const emptied = applyEdit(filled.value.study, changeHeading(filled.value.study, 'analyst', '') as Edit);
    expect(emptied.ok && emptied.value.study.operation).not.toHaveProperty('analyst');
    expect(changeHeading(study, 'analyst', ' ')).toBeUndefined();
  });
});
