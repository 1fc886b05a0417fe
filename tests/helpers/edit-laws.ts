import { type ApplyResult, applyEdit, type Edit, readEdit, sameData } from '@evenhand/core/ground/edit';
import { findingTexts } from '@evenhand/core/ground/findings';
import { checkStudy, parseStudy, type Study, writeStudy } from '@evenhand/core/ground/study';
import { expect } from 'vitest';

/**
 * Holds one edit against every law of edits: the study that came in is not touched; what comes out keeps every
 * invariant and survives its file; the inverse gives back the same bytes; undo can itself be undone; the edit and its
 * inverse survive JSON and then do the same. A refused edit must say why. Returns what applying gave.
 */
export function expectEditLaws(study: Study, edit: Edit): ApplyResult {
  deepFreeze(study);
  deepFreeze(edit);
  const applied = applyEdit(study, edit);
  if (!applied.ok) {
    expect(applied.error.severity).toBe('error');
    const { code, message } = applied.error;
    const blanks = findingTexts[code].text.match(/\{\w+\}/g) ?? [];
    expect(blanks.filter((blank) => message.includes(blank))).toEqual([]);
    return applied;
  }
  const { study: after, inverse } = applied.value;
  deepFreeze(after);
  expect(checkStudy(after)).toEqual([]);
  expectFileRoundTrip(after);
  expectSame(after, studyAfter(study, overTheWire(edit)), 'the edit does the same after JSON');
  const undone = applyEdit(after, inverse);
  expect(undone.ok ? undefined : undone.error, 'the inverse holds').toBeUndefined();
  if (undone.ok) {
    expectSame(undone.value.study, study, 'apply and invert is identity');
    expectSame(studyAfter(study, undone.value.inverse), after, 'redo gives the edited study');
  }
  expectSame(studyAfter(after, overTheWire(inverse)), study, 'the inverse does the same after JSON');
  return applied;
}

/** The file of a study reads back as the same study and is written again as the same bytes. */
export function expectFileRoundTrip(study: Study): void {
  const text = writeStudy(study);
  const read = parseStudy(text);
  expect(read.ok ? [] : read.error).toEqual([]);
  if (!read.ok) return;
  expect(sameData(read.value, study), 'the file gives back the study').toBe(true);
  expect(writeStudy(read.value)).toBe(text);
}

/** Equal data and equal bytes. */
export function expectSame(found: Study, wanted: Study, law: string): void {
  expect(writeStudy(found), law).toBe(writeStudy(wanted));
  expect(sameData(found, wanted), law).toBe(true);
}

function studyAfter(study: Study, edit: Edit): Study {
  const applied = applyEdit(study, edit);
  if (!applied.ok) throw new Error(`the edit was refused: ${applied.error.message}`);
  return applied.value.study;
}

function overTheWire(edit: Edit): Edit {
  const read = readEdit(JSON.parse(JSON.stringify(edit)));
  if (!read.ok) throw new Error(`the edit does not survive JSON: ${JSON.stringify(read.error)}`);
  return read.value;
}

export function deepFreeze(value: unknown): void {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return;
  Object.freeze(value);
  for (const item of Object.values(value)) deepFreeze(item);
}
