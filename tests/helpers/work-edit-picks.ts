import type { SingleEdit, WorkEdit } from '@evenhand/core/ground/edit';
import type { KeptWork, Study, WorkPlace, WorkStep } from '@evenhand/core/ground/study';
import type { Pick } from './edit-picks.ts';

export const workEditTypes: readonly WorkEdit['type'][] = [
  ...(['work.add', 'work.add', 'work.remove', 'work.change', 'work-change.set'] as const),
  ...(['work-step.add', 'work-step.remove', 'work-step.change', 'work-step.move'] as const),
  ...(['work-place.add', 'work-place.remove', 'work-place.change'] as const),
];

function nth<T>(list: readonly T[], index: number): T | undefined {
  return list.length === 0 ? undefined : list[index % list.length];
}

/** The edit of a kept work that a pick means; undefined when there is nothing of the kind to edit. */
export function workEditFrom(study: Study, pick: Pick, name: string): SingleEdit | undefined {
  if (pick.type === 'work.add')
    return { type: 'work.add', work: begun(study, pick, name), index: pick.at % 2 };
  const kept = nth(study.works ?? [], pick.which);
  if (kept === undefined) return undefined;
  if (pick.type === 'work.remove') return { type: 'work.remove', work: kept };
  if (pick.type === 'work.change') return headEdit(kept, pick);
  if (pick.type === 'work-change.set') return changeEdit(kept, pick);
  return pick.type.startsWith('work-place.') ? placeEdit(kept, pick, name) : stepEdit(kept, pick, name);
}

/** A work to begin with; now and then with faults that must be refused. */
function begun(study: Study, pick: Pick, name: string): KeptWork {
  const known = nth(study.works ?? [], pick.which);
  if (known !== undefined) return { ...known, id: name };
  const method = pick.at % 7 === 0 ? 'gone' : (nth(study.methods, pick.method)?.id ?? 'gone');
  return {
    id: name,
    ...(pick.at % 3 === 0 ? {} : { drawnFrom: { method } }),
    work: {
      workFormat: 1,
      title: pick.text,
      unitsPerCycle: 1,
      home: 'free',
      places: [{ id: 'bin', name: 'Bin', kind: 'bin' }],
      steps: [stepOf('get', pick), stepOf(pick.at % 6 === 0 ? 'get' : 'fit', pick)],
    },
    ...(pick.at % 5 === 0 ? { changes: [{ change: 'b' }, { change: pick.at % 2 === 0 ? 'a' : 'c' }] } : {}),
  };
}

function stepOf(id: string, pick: Pick): WorkStep {
  const motions = [{ kind: 'G' as const, object: pick.text }];
  return { id, name: pick.text, motions, hand: 'either', place: 'bin', eyes: false, unit: 1 };
}

function headEdit({ id, work, currency }: KeptWork, pick: Pick): SingleEdit {
  return {
    type: 'work.change',
    work: id,
    to: {
      title: pick.text,
      note: pick.at % 2 === 0 ? null : pick.text,
      bench: pick.at % 5 === 0 ? null : { width: 900 + (pick.at % 100), depth: 600 },
      home: pick.at % 3 === 0 ? 'free' : { left: 'bin', right: 'bin' },
      currency: pick.at % 4 === 0 ? null : '€',
    },
    was: {
      title: work.title,
      note: work.note ?? null,
      bench: work.bench ?? null,
      home: work.home,
      currency: currency ?? null,
    },
  };
}

function changeEdit({ id, changes = [] }: KeptWork, pick: Pick): SingleEdit {
  const known = nth(changes, pick.at);
  if (known !== undefined && pick.at % 3 === 0)
    return { type: 'work-change.set', work: id, to: null, was: known };
  const change = nth(['fixture', 'aligned-supply', 'z', 'a'], pick.which) ?? 'a';
  const was = changes.find((entry) => entry.change === change) ?? null;
  // Another name than before now and then: that must be refused.
  const to = { change: pick.at % 17 === 0 ? `${change}-2` : change, taken: true, cost: pick.at };
  return { type: 'work-change.set', work: id, to, was };
}

function stepEdit({ id, work }: KeptWork, pick: Pick, name: string): SingleEdit | undefined {
  const at = { work: id };
  const step = nth(work.steps, pick.at);
  if (step === undefined) return undefined;
  if (pick.type === 'work-step.add') {
    const fresh = stepOf(pick.at % 6 === 0 ? step.id : name, pick);
    return { type: 'work-step.add', ...at, step: fresh, index: pick.at % 3 };
  }
  if (pick.type === 'work-step.remove') return { type: 'work-step.remove', ...at, step };
  if (pick.type === 'work-step.move') {
    const index = work.steps.indexOf(step);
    const to = pick.which % 4 === 0 ? null : (nth(work.steps, pick.which)?.id ?? null);
    return { type: 'work-step.move', ...at, step: step.id, to, was: work.steps[index - 1]?.id ?? null };
  }
  return {
    type: 'work-step.change',
    ...at,
    step: step.id,
    to: {
      name: pick.text,
      hand: pick.hand,
      before: pick.at % 2 === 0 ? null : pick.text,
      follows: pick.at % 3 === 0 ? null : [{ step: nth(work.steps, pick.which)?.id ?? 'gone', lag: pick.at }],
    },
    was: { name: step.name, hand: step.hand, before: step.before ?? null, follows: step.follows ?? null },
  };
}

function placeEdit({ id, work }: KeptWork, pick: Pick, name: string): SingleEdit | undefined {
  const at = { work: id };
  const place = nth(work.places, pick.at);
  if (place === undefined) return undefined;
  if (pick.type === 'work-place.add') {
    const fresh: WorkPlace = { id: pick.at % 6 === 0 ? place.id : name, name: pick.text, kind: 'exit' };
    return { type: 'work-place.add', ...at, place: fresh, index: pick.at % 3 };
  }
  if (pick.type === 'work-place.remove') return { type: 'work-place.remove', ...at, place };
  return {
    type: 'work-place.change',
    ...at,
    place: place.id,
    to: {
      at: pick.at % 3 === 0 ? null : { x: pick.at / 10, y: 1 },
      angle: pick.at % 4 === 0 ? null : pick.at % 90,
      stays: pick.at % 2 === 0 ? null : true,
    },
    was: { at: place.at ?? null, angle: place.angle ?? null, stays: place.stays ?? null },
  };
}
