import { describe, expect, it } from 'vitest';
import { expectEditLaws } from '../../../../../tests/helpers/edit-laws.ts';
import { plainStudy } from '../../../../../tests/helpers/plain-study.ts';
import type { Comparison, Method, Study } from '../study/index.ts';
import type { Edit } from './index.ts';

const plain = plainStudy();
const [present] = plain.methods as [Method];
const better: Method = { ...present, id: 'n', name: 'Better method' };
const empty: Study = { ...plain, methods: [present, better] };
const comparison: Comparison = {
  id: 'c',
  before: { method: 'm' },
  after: { method: 'n', cycles: [1, 2] },
  confidence: 0.95,
};
const study: Study = { ...empty, comparisons: [comparison] };
const money = {
  currency: '€',
  basis: 'measured',
  unitsAYear: 180_000,
  hourlyCost: 34,
  cost: 5200,
  years: 3,
  discountRate: 0.08,
  ranges: { cost: { low: 4000, high: 8000 } },
} as const;

function after(start: Study, edit: Edit): Study {
  const applied = expectEditLaws(start, edit);
  if (!applied.ok) throw new Error(applied.error.message);
  return applied.value.study;
}

const change = (to: object, was: object) => ({ type: 'comparison.change', comparison: 'c', to, was }) as Edit;

describe('edits of a comparison', () => {
  it('the list comes with the first comparison and goes with the last', () => {
    expect(after(empty, { type: 'comparison.add', comparison }).comparisons).toEqual([comparison]);
    expect('comparisons' in after(study, { type: 'comparison.remove', comparison })).toBe(false);
  });

  it('a money case comes and goes as a whole', () => {
    const costed = after(study, change({ money }, { money: null }));
    expect(costed.comparisons?.[0]?.money).toEqual(money);
    expect(after(costed, change({ money: null }, { money }))).toEqual(study);
  });

  it.each<[string, Edit, string]>([
    ['an id that is taken', { type: 'comparison.add', comparison }, 'edit/taken'],
    [
      'a method that is not there',
      change({ after: { method: 'gone' } }, { after: comparison.after }),
      'study/names-unknown-method',
    ],
    [
      'a method beside itself',
      change({ before: { method: 'n' } }, { before: comparison.before }),
      'study/compared-with-itself',
    ],
    ['what is another by now', change({ confidence: 0.9 }, { confidence: 0.99 }), 'edit/changed-meanwhile'],
    [
      'one that is gone',
      { type: 'comparison.remove', comparison: { ...comparison, id: 'd' } },
      'edit/no-comparison',
    ],
    [
      'a method that is compared, taken out of the study',
      { type: 'method.remove', method: better },
      'edit/in-use',
    ],
  ])('is refused in words: %s', (_, edit, code) => {
    const applied = expectEditLaws(study, edit);
    expect(applied.ok ? undefined : applied.error.code).toBe(code);
  });
});
