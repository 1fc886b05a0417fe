import { readFileSync } from 'node:fs';
import { checkWork, workFromRecord } from '@evenhand/core/develop';
import type { Edit } from '@evenhand/core/ground/edit';
import { type KeptWork, parseStudy, type Study } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { expectEditLaws } from '../../../../../tests/helpers/edit-laws.ts';
import { keepDrawn, typedWork } from './begin-work.ts';
import {
  addStep,
  changeStep,
  movePlaces,
  moveStep,
  removeStep,
  repeatUnits,
  takeChanges,
  takenChanges,
} from './work-edits.ts';
import { workFaults } from './work-faults.ts';

function demo(methodIndex = 0): { study: Study; kept: KeptWork } {
  const file = new URL('../../../../../examples/couplings/couplings.evenhand.json', import.meta.url);
  const study = parseStudy(readFileSync(file, 'utf8'));
  if (!study.ok) throw new Error('the demonstration cannot be read');
  const method = study.value.methods[methodIndex];
  const drawn = method === undefined ? undefined : workFromRecord(study.value, method.id);
  if (method === undefined || drawn === undefined || !drawn.ok) throw new Error('nothing drawn');
  const kept = keepDrawn(drawn.value, method, 'w');
  return { study: after(study.value, { type: 'work.add', work: kept }), kept };
}

function after(study: Study, edit: Edit | undefined): Study {
  if (edit === undefined) throw new Error('nothing to edit');
  const applied = expectEditLaws(study, edit);
  if (!applied.ok) throw new Error(applied.error.message);
  return applied.value.study;
}

const keptOf = (study: Study) => study.works?.[0] as KeptWork;

describe('a work on the desk', () => {
  it('drawn, it has no faults; typed from nothing, it can be kept', () => {
    const { study } = demo();
    expect(workFaults(keptOf(study).work).count).toBe(0);
    const typed = typedWork({ ...study, places: [] }, 'typed');
    expect(checkWork(typed.work)).toEqual([]);
    expect(after(study, { type: 'work.add', work: typed }).works?.length).toBe(2);
  });

  it('a step that is taken out hands on what it came after, so that the order of the others stays', () => {
    const { study, kept } = demo();
    const step = kept.work.steps.find(({ name }) => name === 'Position collar');
    if (step === undefined) throw new Error('no such step');
    const next = kept.work.steps.find(({ follows }) => follows?.some((link) => link.step === step.id));
    const changed = keptOf(after(study, removeStep(kept, step))).work;
    expect(changed.steps.some(({ id }) => id === step.id)).toBe(false);
    const follows = changed.steps.find(({ id }) => id === next?.id)?.follows?.map((link) => link.step);
    expect(follows).toEqual(expect.arrayContaining(step.follows?.map((link) => link.step) ?? ['none']));
    // What it did to the load is missing now, and that is said at a step.
    expect(changed.steps.some(({ id }) => workFaults(changed).ofStep(id).length > 0)).toBe(
      step.before !== step.after,
    );
  });

  it('a new step goes on with what the one before leaves in the hand, and breaks nothing', () => {
    const { study, kept } = demo();
    for (const behind of kept.work.steps) {
      const added = keptOf(after(study, addStep(kept, behind))).work;
      expect(added.steps.length).toBe(kept.work.steps.length + 1);
      expect(workFaults(added).count).toBe(0);
    }
  });

  it('a step moves up and down, and not beyond the ends', () => {
    const { study, kept } = demo();
    const [first, second] = kept.work.steps;
    if (first === undefined || second === undefined) throw new Error('two steps');
    const down = keptOf(after(study, moveStep(kept, first, 1))).work.steps;
    expect(down.slice(0, 2).map(({ id }) => id)).toEqual([second.id, first.id]);
    expect(moveStep(kept, first, -1)).toBeUndefined();
    expect(moveStep(kept, kept.work.steps.at(-1) ?? first, 1)).toBeUndefined();
    const up = keptOf(after(study, moveStep(kept, second, -1))).work.steps;
    expect(up.map(({ id }) => id)).toEqual(down.map(({ id }) => id));
  });

  it('names a fault at its step: a place that is not there, a circle, a load nobody takes up', () => {
    const { study, kept } = demo();
    const [one, two] = kept.work.steps;
    if (one === undefined || two === undefined) throw new Error('two steps');
    const faultsAfter = (step: typeof one, to: Parameters<typeof changeStep>[2]) =>
      workFaults(keptOf(after(study, changeStep(kept, step, to))).work);
    expect(faultsAfter(one, { place: 'nowhere' }).ofStep(one.id)[0]).toContain('nowhere');
    expect(faultsAfter(one, { before: 'a hammer', after: 'body' }).ofStep(one.id)[0]).toContain('a hammer');
    expect(faultsAfter(one, { follows: [{ step: one.id }] }).ofStep(one.id)[0]).toContain(
      'wait for each other',
    );
  });

  it.each([2, 4])(
    'for %i units every step is there for each, without faults, and one unit again is as before',
    (units) => {
      for (const which of [0, 1]) {
        const { study, kept } = demo(which);
        const present = Math.max(...kept.work.steps.map(({ unit }) => unit));
        const edit = repeatUnits(kept, units);
        if (edit === undefined) {
          expect(kept.work.unitsPerCycle).toBe(units);
          continue;
        }
        const more = after(study, edit);
        const { work } = keptOf(more);
        expect(work.unitsPerCycle).toBe(units);
        expect(work.steps.length).toBe((kept.work.steps.length * units) / present);
        expect(workFaults(work).count).toBe(0);
        const back = keptOf(after(more, repeatUnits(keptOf(more), kept.work.unitsPerCycle))).work;
        expect(back.steps).toEqual(kept.work.steps);
        expect(back.spots).toEqual(kept.work.spots);
      }
    },
  );

  it('units are doubled twice as well as at once, and back to one', () => {
    const { study, kept } = demo();
    const two = after(study, repeatUnits(kept, 2));
    const four = after(two, repeatUnits(keptOf(two), 4));
    const { work } = keptOf(four);
    expect(work.steps.length).toBe(4 * kept.work.steps.length);
    expect([...new Set(work.steps.map(({ unit }) => unit))].sort()).toEqual([1, 2, 3, 4]);
    expect(workFaults(work).count).toBe(0);
    const back = keptOf(after(four, repeatUnits(keptOf(four), 1))).work;
    expect(back.steps).toEqual(kept.work.steps);
  });

  it('what serves one unit at a time is taken by the next unit when the one before has left it', () => {
    const { study, kept } = demo();
    const [first, last] = [kept.work.steps[0], kept.work.steps.at(-1)];
    if (first === undefined || last === undefined) throw new Error('steps');
    const spots = [{ name: 'Nest', claimedBy: first.id, releasedBy: last.id }];
    const spotted: KeptWork = { ...kept, id: 'v', work: { ...kept.work, spots } };
    const start = after(study, { type: 'work.add', work: spotted });
    const workOf = (of: Study) => of.works?.[1] as KeptWork;
    const three = after(start, repeatUnits(spotted, 3));
    const { steps, spots: now } = workOf(three).work;
    const claims = steps.filter(({ id }) => id.startsWith(`${first.id}-u`));
    expect(claims.map(({ follows }) => follows?.map(({ step }) => step))).toEqual([
      [last.id],
      [`${last.id}-u2`],
    ]);
    expect(now).toEqual([{ name: 'Nest', claimedBy: first.id, releasedBy: `${last.id}-u3` }]);
    expect(workOf(after(three, repeatUnits(workOf(three), 2))).work.spots?.[0]?.releasedBy).toBe(
      `${last.id}-u2`,
    );
    expect(workOf(after(three, repeatUnits(workOf(three), 1))).work.spots).toEqual(spots);
  });

  it('places move together as one step of the history; a change is taken and taken back, its cost stays', () => {
    const { study, kept } = demo();
    const [place] = kept.work.places;
    if (place === undefined) throw new Error('a place');
    const moved = keptOf(after(study, movePlaces(kept, { [place.id]: { x: 5, y: 6 } })));
    expect(moved.work.places[0]?.at).toEqual({ x: 5, y: 6 });
    expect(movePlaces(kept, {})).toBeUndefined();
    const costed = after(study, {
      type: 'work-change.set',
      work: 'w',
      to: { change: 'fixture', cost: 850 },
      was: null,
    });
    const taken = after(costed, takeChanges(keptOf(costed), ['fixture', 'guide']));
    expect(takenChanges(keptOf(taken))).toEqual(['fixture', 'guide']);
    const back = after(taken, takeChanges(keptOf(taken), []));
    expect(keptOf(back).changes).toEqual([{ change: 'fixture', cost: 850 }]);
  });
});
