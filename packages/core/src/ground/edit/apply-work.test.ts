import { describe, expect, it } from 'vitest';
import { expectEditLaws } from '../../../../../tests/helpers/edit-laws.ts';
import { plainStudy } from '../../../../../tests/helpers/plain-study.ts';
import type { KeptWork, Method, Study, WorkStep } from '../study/index.ts';
import { applyEdit, type Edit, type SingleEdit } from './index.ts';

const empty = plainStudy();
const [present] = empty.methods as [Method];
const step = (id: string, name: string): WorkStep => ({
  id,
  name,
  motions: [{ kind: 'G', object: 'body' }],
  hand: 'either',
  place: 'bin',
  eyes: false,
  unit: 1,
});
const [get, fit, aside] = [step('get', 'Get'), step('fit', 'Fit'), step('aside', 'Lay aside')] as const;
const kept: KeptWork = {
  id: 'w',
  drawnFrom: { method: present.id, cycle: 2 },
  work: {
    workFormat: 1,
    title: 'Ring on body',
    unitsPerCycle: 1,
    home: 'free',
    places: [
      { id: 'bin', name: 'Bin', kind: 'bin' },
      { id: 'box', name: 'Box', kind: 'exit' },
    ],
    steps: [get, fit, aside],
  },
};
const study: Study = { ...empty, works: [kept] };

function after(start: Study, edit: Edit): Study {
  const applied = expectEditLaws(start, edit);
  if (!applied.ok) throw new Error(applied.error.message);
  return applied.value.study;
}

const names = (of: Study) => of.works?.[0]?.work.steps.map(({ name }) => name);
const edit = (type: string, fields: object) => ({ type, work: 'w', ...fields }) as SingleEdit;

describe('edits of a kept work', () => {
  it('the list comes with the first work and goes with the last', () => {
    expect(after(empty, { type: 'work.add', work: kept }).works).toEqual([kept]);
    expect('works' in after(study, { type: 'work.remove', work: kept })).toBe(false);
  });

  it('a step goes to the beginning, behind another, and back', () => {
    const first = after(study, edit('work-step.move', { step: 'aside', to: null, was: 'fit' }));
    expect(names(first)).toEqual(['Lay aside', 'Get', 'Fit']);
    const last = after(first, edit('work-step.move', { step: 'get', to: 'fit', was: 'aside' }));
    expect(names(last)).toEqual(['Lay aside', 'Fit', 'Get']);
  });

  it('two windows change different fields of one step, and different steps, and both changes stay', () => {
    const edits = [
      edit('work-step.change', { step: 'fit', to: { hand: 'left' }, was: { hand: 'either' } }),
      edit('work-step.change', { step: 'fit', to: { eyes: true }, was: { eyes: false } }),
      edit('work-step.move', { step: 'aside', to: 'get', was: 'fit' }),
      edit('work-step.add', { step: step('wipe', 'Wipe') }),
    ];
    const orders = [edits, [...edits].reverse()];
    const made = orders.map((list) => list.reduce((current, item) => after(current, item), study));
    for (const one of made) {
      expect(one.works?.[0]?.work.steps.find(({ id }) => id === 'fit')).toMatchObject({
        hand: 'left',
        eyes: true,
      });
      expect(names(one)).toEqual(['Get', 'Lay aside', 'Fit', 'Wipe']);
    }
  });

  it('the currency stands beside the work, its heading in it', () => {
    const to = { title: 'Ring', currency: '€', note: 'as agreed' };
    const now = after(
      study,
      edit('work.change', { to, was: { title: 'Ring on body', currency: null, note: null } }),
    );
    expect(now.works?.[0]).toMatchObject({ currency: '€', work: { title: 'Ring', note: 'as agreed' } });
    expect(now.works?.[0]?.work).not.toHaveProperty('currency');
  });

  it('what is settled about changes stands in the order of their names, each once', () => {
    const set = (change: string, was: object | null) =>
      edit('work-change.set', { to: { change, taken: true, cost: 850 }, was });
    const two = after(after(study, set('two-units', null)), set('fixture', null));
    expect(two.works?.[0]?.changes?.map(({ change }) => change)).toEqual(['fixture', 'two-units']);
    const none = two.works?.[0]?.changes?.reduce(
      (current, was) => after(current, edit('work-change.set', { to: null, was })),
      two,
    );
    expect(none).toEqual(study);
  });

  it.each<[string, Edit, string]>([
    ['an id that is taken', { type: 'work.add', work: kept }, 'edit/taken'],
    [
      'a method that is not there',
      { type: 'work.add', work: { ...kept, id: 'v', drawnFrom: { method: 'gone' } } },
      'study/names-unknown-method',
    ],
    ['a step twice', edit('work-step.add', { step: { ...get, name: 'Again' } }), 'edit/taken'],
    [
      'a step that was changed meanwhile, taken out',
      edit('work-step.remove', { step: { ...fit, eyes: true } }),
      'edit/changed-meanwhile',
    ],
    [
      'a step that is gone',
      edit('work-step.change', { step: 'gone', to: { eyes: true }, was: { eyes: false } }),
      'edit/no-work-step',
    ],
    [
      'a step that stands elsewhere by now',
      edit('work-step.move', { step: 'aside', to: null, was: 'get' }),
      'edit/changed-meanwhile',
    ],
    [
      'behind itself',
      edit('work-step.move', { step: 'aside', to: 'aside', was: 'fit' }),
      'edit/no-work-step',
    ],
    [
      'a work that is gone',
      { ...edit('work-step.remove', { step: get }), work: 'v' } as Edit,
      'edit/no-work',
    ],
    [
      'a change under two names',
      edit('work-change.set', { to: { change: 'b' }, was: { change: 'a' } }),
      'edit/work-change-name',
    ],
    ['a method that a work was drawn from', { type: 'method.remove', method: present }, 'edit/in-use'],
  ])('is refused in words: %s', (_, refused, code) => {
    const applied = expectEditLaws(study, refused);
    expect(applied.ok ? undefined : applied.error.code).toBe(code);
  });

  it('keeps one step and one place, for the shape of a work has at least one of each', () => {
    const bare: Study = {
      ...study,
      works: [{ ...kept, work: { ...kept.work, steps: [get], places: kept.work.places.slice(0, 1) } }],
    };
    for (const [index, last] of [
      edit('work-step.remove', { step: get }),
      edit('work-place.remove', { place: kept.work.places[0] }),
    ].entries()) {
      const applied = applyEdit(bare, last);
      expect(applied.ok ? index : applied.error.code).toBe('edit/last-of-work');
    }
  });
});
