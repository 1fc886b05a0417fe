import { describe, expect, it } from 'vitest';
import { tenth, twoHandStudy } from '../../../../../../tests/helpers/two-hand-study.ts';
import { applyEdit, type Edit } from '../../../ground/edit/index.ts';
import type { Method, Study } from '../../../ground/study/index.ts';
import { markElement, moveElement, removeElement, renameElement } from './commands.ts';

const start = twoHandStudy([{ left: 'TE 2, G 1', right: 'TE 1, G 2' }]);
const methodOf = (study: Study): Method => {
  const [method] = study.methods;
  if (method === undefined) throw new Error('no method');
  return method;
};

function after(study: Study, edit: Edit | undefined): Study {
  if (edit === undefined) throw new Error('no edit');
  const applied = applyEdit(study, edit);
  if (!applied.ok) throw new Error(applied.error.message);
  return applied.value.study;
}
const newId = () => 'e1';
const named = after(start, markElement(methodOf(start), 'left', 2 * tenth, ' fetch ', newId));

describe('the commands for elements', () => {
  it('name, rename, move and remove a break point', () => {
    expect(methodOf(named).elements).toEqual([{ id: 'e1', name: 'fetch', hand: 'left', at: 2 * tenth }]);
    const renamed = after(named, renameElement(methodOf(named), 'e1', 'take'));
    expect(methodOf(renamed).elements?.[0]?.name).toBe('take');
    const moved = after(named, moveElement(methodOf(named), 'e1', 0));
    expect(methodOf(moved).elements?.[0]?.at).toBe(0);
    const removed = after(named, removeElement(methodOf(named), 'e1'));
    expect(methodOf(removed).elements ?? []).toEqual([]);
  });

  it('do nothing where there is nothing to do', () => {
    const method = methodOf(named);
    expect(markElement(method, 'left', 2 * tenth, 'again', newId)).toBeUndefined();
    expect(markElement(method, 'right', 0, '  ', newId)).toBeUndefined();
    expect(renameElement(method, 'e1', 'fetch')).toBeUndefined();
    expect(moveElement(method, 'e1', 2 * tenth)).toBeUndefined();
    expect(removeElement(method, 'gone')).toBeUndefined();
  });
});
