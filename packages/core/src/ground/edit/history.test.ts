import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectSame } from '../../../../../tests/helpers/edit-laws.ts';
import { editFrom, pickArb } from '../../../../../tests/helpers/edit-picks.ts';
import { studyArb } from '../../../../../tests/helpers/study-arbitraries.ts';
import type { Study } from '../study/index.ts';
import { emptyStudy } from '../study/index.ts';
import {
  applyEdit,
  dropUndo,
  emptyHistory,
  type History,
  perform,
  redo,
  redoName,
  type Step,
  undo,
  undoName,
} from './index.ts';

type Move = (study: Study, history: History) => ReturnType<typeof undo>;

/** Repeats a move until there is nothing left; every step of it must hold. */
function all(
  move: Move,
  study: Study,
  history: History,
): Pick<Step, 'study' | 'history'> & { steps: number } {
  let at = { study, history, steps: 0 };
  for (let step = move(at.study, at.history); step !== undefined; step = move(at.study, at.history)) {
    if (!step.ok) throw new Error(step.error.message);
    at = { study: step.value.study, history: step.value.history, steps: at.steps + 1 };
  }
  return at;
}

describe('undo and redo', () => {
  it('of everything give back the start and then the end, as often as one likes', () => {
    fc.assert(
      fc.property(studyArb, fc.array(pickArb, { maxLength: 10 }), (start, picks) => {
        let [study, history] = [start, emptyHistory];
        for (const [index, pick] of picks.entries()) {
          const edit = editFrom(study, pick, `n${index}`);
          const step = edit === undefined ? undefined : perform(study, history, edit);
          if (step?.ok) [study, history] = [step.value.study, step.value.history];
        }
        const back = all(undo, study, history);
        expectSame(back.study, start, 'all undone');
        const again = all(redo, back.study, back.history);
        expectSame(again.study, study, 'all redone');
        expect(again.steps).toBe(back.steps);
        expectSame(all(undo, again.study, again.history).study, start, 'all undone again');
      }),
      { seed: 77, numRuns: 100 },
    );
  });

  it('a new edit takes away what could be redone, and the names follow', () => {
    const start = emptyStudy('s', 'One');
    const title = (to: string, was: string) =>
      ({ type: 'study.change', to: { title: to }, was: { title: was } }) as const;
    const first = perform(start, emptyHistory, title('Two', 'One'));
    if (!first.ok) throw new Error('refused');
    expect(undoName(first.value.history)).toBe('change the heading');
    const back = undo(first.value.study, first.value.history);
    if (!back?.ok) throw new Error('refused');
    expect(redoName(back.value.history)).toBe('change the heading');
    const other = perform(back.value.study, back.value.history, title('Three', 'One'));
    if (!other.ok) throw new Error('refused');
    expect(redo(other.value.study, other.value.history)).toBeUndefined();
  });

  it('an undo that no longer holds says why and can be dropped', () => {
    const start = emptyStudy('s', 'One');
    const step = perform(start, emptyHistory, {
      type: 'study.change',
      to: { title: 'Two' },
      was: { title: 'One' },
    });
    if (!step.ok) throw new Error('refused');
    const back = undo({ ...step.value.study, title: 'Somebody else’s' }, step.value.history);
    expect(back?.ok === false && back.error.code).toBe('edit/changed-meanwhile');
    expect(undoName(dropUndo(step.value.history))).toBeUndefined();
  });
});

describe('edits that were found wrong once', () => {
  it('taking a field away and undoing that gives the same bytes, not only the same data', () => {
    const start: Study = {
      ...emptyStudy('s', 'S'),
      places: [{ id: 'p', name: 'bin', at: { x: 1, y: 2 }, mirror: 'p' }],
    };
    const edit = { type: 'place.change', place: 'p', to: { at: null }, was: { at: { x: 1, y: 2 } } } as const;
    const applied = applyEdit(start, edit);
    if (!applied.ok) throw new Error(applied.error.message);
    const undone = applyEdit(applied.value.study, applied.value.inverse);
    expect(undone.ok).toBe(true);
    if (undone.ok) expectSame(undone.value.study, start, 'undone');
  });

  it('seed −6075594: a name in braces is no blank of the message', () => {
    const film = {
      ...{
        id: 'f',
        sha256: '0'.repeat(64),
        name: 'ring',
        bytes: 0,
        container: 'MP4',
        codec: 'avc1',
        width: 1,
        height: 1,
        rotation: 0 as const,
      },
    };
    const frameTimes = { ticksPerSecond: 600, start: 0, steps: [{ repeat: 1, deltas: [1] }] };
    const row = { items: [], end: 0 };
    const filmed = { ...film, frameTimes, clock: { kind: 'identity' as const } };
    const start: Study = {
      ...emptyStudy('s', 'S'),
      films: [filmed],
      methods: [
        {
          id: 'm',
          name: '{0}',
          kind: 'recorded',
          base: { kind: 'frames', film: 'f' },
          unitsPerCycle: 1,
          left: row,
          right: row,
          cycles: row,
        },
      ],
    };
    const applied = applyEdit(start, { type: 'film.remove', film: filmed });
    expect(applied.ok ? '' : applied.error.message).toBe(
      'The film ring is still used by the method {0}. Change or remove that first.',
    );
  });
});
