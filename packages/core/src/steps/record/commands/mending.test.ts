import { describe, expect, it } from 'vitest';
import { expectEditLaws } from '../../../../../../tests/helpers/edit-laws.ts';
import { plainStudy } from '../../../../../../tests/helpers/plain-study.ts';
import type { Edit } from '../../../ground/edit/index.ts';
import type { Method, Motion, Study } from '../../../ground/study/index.ts';
import {
  changeMotion,
  copyToNextCycle,
  copyToOtherHand,
  joinWithPrevious,
  markCycle,
  markMotion,
  moveCycleMark,
  moveStart,
  setCycleAside,
  splitMotion,
} from './index.ts';

let made = 0;
const newId = () => `n${made++}`;

/** The left hand reaches and grasps, both proposed; a cycle is proposed at 2 s. */
function proposed(): Study {
  const base = plainStudy();
  const [method] = base.methods as [Method];
  const said = { said: 'proposed', confidence: 0.7 } as const;
  const left: Motion[] = [
    { id: 'a', start: 0, kind: 'TE', ...said },
    { id: 'b', start: 2_000_000, kind: 'G', object: 'ring', ...said },
  ];
  const cycles = [
    { id: 'c', start: 0 },
    { id: 'd', start: 2_000_000, ...said },
  ];
  return {
    ...base,
    methods: [
      { ...method, left: { ...method.left, items: left }, cycles: { items: cycles, end: 10_000_000 } },
    ],
  };
}

const study = proposed();
const [method] = study.methods as [Method];
const target = { method, hand: 'left' } as const;
const motions = method.left.items as [Motion, Motion];

function after(edit: Edit | undefined): Method {
  if (edit === undefined) throw new Error('the command gave no edit');
  const result = expectEditLaws(study, edit);
  if (!result.ok) throw new Error(result.error.message);
  return result.value.study.methods[0] as Method;
}

const saidOf = (made: Method) =>
  made.left.items.map(({ kind, said, confidence }) => `${kind} ${said} ${confidence ?? '–'}`);

describe('a proposed motion that a person mends is theirs, and its confidence is gone', () => {
  it.each([
    [
      'a change of what it is',
      changeMotion(target, motions[1], { kind: 'PP' }),
      ['TE proposed 0.7', 'PP confirmed –'],
    ],
    [
      'another object',
      changeMotion(target, motions[1], { object: 'body' }),
      ['TE proposed 0.7', 'G confirmed –'],
    ],
    ['a move of its start', moveStart(target, 'b', 1_500_000), ['TE proposed 0.7', 'G confirmed –']],
    ['a split', splitMotion(target, 3_000_000, newId), ['TE proposed 0.7', 'G confirmed –', 'G marked –']],
    ['the loss of its end', joinWithPrevious(target, 'b'), ['TE confirmed –']],
    [
      'its key, pressed at its start',
      markMotion(target, 2_000_000, 'G', newId, { carryObject: false }),
      ['TE proposed 0.7', 'G marked –'],
    ],
    [
      'another key, pressed inside it, leaves it proposed',
      markMotion(target, 3_000_000, 'TL', newId, { carryObject: false }),
      ['TE proposed 0.7', 'G proposed 0.7', 'TL marked –'],
    ],
  ])('%s', (_, edit, wanted) => expect(saidOf(after(edit))).toEqual(wanted));

  it('a copy of it is marked', () => {
    const span = { from: 2_000_000, to: 10_000_000 };
    const right = after(copyToOtherHand(study, target, span, newId)).right.items;
    expect(right.map(({ kind, said, confidence }) => [kind, said, confidence])).toContainEqual([
      'G',
      'marked',
      undefined,
    ]);
    const next = copyToNextCycle(method, ['left'], { from: 0, to: 2_000_000 }, newId);
    expect(saidOf(after(next?.edit))).toEqual(['TE proposed 0.7', 'TE marked –']);
  });

  it('nothing changes where nothing is changed', () => {
    expect(changeMotion(target, motions[1], { object: 'ring' })).toBeUndefined();
    expect(moveStart(target, 'b', 2_000_000)).toBeUndefined();
  });
});

describe('so is a proposed cycle mark', () => {
  it.each([
    ['moved', moveCycleMark(method, 'd', 2_500_000), { id: 'd', start: 2_500_000, said: 'confirmed' }],
    [
      'marked again where it stands',
      markCycle(method, 2_000_000, newId),
      { id: 'd', start: 2_000_000, said: 'confirmed' },
    ],
    [
      'set aside',
      setCycleAside(method, 'd', 'a visitor'),
      { id: 'd', start: 2_000_000, said: 'confirmed', setAside: 'a visitor' },
    ],
  ])('%s', (_, edit, wanted) => expect(after(edit).cycles.items[1]).toEqual(wanted));

  it('a mark of a person cannot be set twice', () => expect(markCycle(method, 0, newId)).toBeUndefined());
});
