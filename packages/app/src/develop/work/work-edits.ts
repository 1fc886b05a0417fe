import type { ChangeId } from '@evenhand/core/develop';
import {
  type Edit,
  type SingleEdit,
  sameData,
  type WorkFields,
  type WorkPlaceFields,
  type WorkStepFields,
} from '@evenhand/core/ground/edit';
import type { KeptWork, WorkPlace, WorkStep } from '@evenhand/core/ground/study';

/** What the desk does with a kept work, as edits of the study. Undefined where nothing would change. */

function presentFields<Fields extends object>(target: object, to: Fields): Fields {
  const values = target as Readonly<Record<string, unknown>>;
  return Object.fromEntries(Object.keys(to).map((key) => [key, values[key] ?? null])) as Fields;
}

function grouped(name: string, edits: readonly (SingleEdit | undefined)[]): Edit | undefined {
  const made = edits.filter((edit) => edit !== undefined);
  return made.length === 0 ? undefined : { type: 'group', name, edits: made };
}

export function changeWork(kept: KeptWork, to: WorkFields): SingleEdit | undefined {
  const was = presentFields({ ...kept.work, currency: kept.currency }, to);
  return sameData(to, was) ? undefined : { type: 'work.change', work: kept.id, to, was };
}

export function changeStep(kept: KeptWork, step: WorkStep, to: WorkStepFields): SingleEdit | undefined {
  const was = presentFields(step, to);
  if (sameData(to, was)) return undefined;
  return { type: 'work-step.change', work: kept.id, step: step.id, to, was };
}

export function changePlace(kept: KeptWork, place: WorkPlace, to: WorkPlaceFields): SingleEdit | undefined {
  const was = presentFields(place, to);
  if (sameData(to, was)) return undefined;
  return { type: 'work-place.change', work: kept.id, place: place.id, to, was };
}

/** “step-4”, with the first number that is free. */
export function freeId(stem: string, taken: readonly { readonly id: string }[]): string {
  const used = new Set(taken.map(({ id }) => id));
  let count = taken.length + 1;
  while (used.has(`${stem}-${count}`)) count += 1;
  return `${stem}-${count}`;
}

/** A step to be written, behind another at the same place for the same unit; it comes after that one. */
export function addStep(
  kept: KeptWork,
  behind: WorkStep | undefined,
): SingleEdit & { type: 'work-step.add' } {
  const { places, steps } = kept.work;
  const step: WorkStep = {
    id: freeId('step', steps),
    name: 'New step',
    motions: [{ kind: 'U' }],
    hand: 'either',
    place: behind?.place ?? places[0]?.id ?? '',
    ...(behind?.after === undefined ? {} : { before: behind.after, after: behind.after }),
    eyes: false,
    ...(behind === undefined ? {} : { follows: [{ step: behind.id }] }),
    unit: behind?.unit ?? 1,
  };
  const index = behind === undefined ? 0 : steps.findIndex(({ id }) => id === behind.id) + 1;
  return { type: 'work-step.add', work: kept.id, step, index };
}

/** Steps that came after it then come after what it came after; spots that it took or freed are gone. */
export function removeStep(kept: KeptWork, step: WorkStep): Edit | undefined {
  const { steps, spots = [] } = kept.work;
  const before = step.follows ?? [];
  const relinked = steps.map((other) => {
    if (other.id === step.id || !other.follows?.some((link) => link.step === step.id)) return undefined;
    const rest = other.follows.filter((link) => link.step !== step.id);
    const known = new Set([other.id, ...rest.map((link) => link.step)]);
    const follows = [...rest, ...before.filter((link) => !known.has(link.step))];
    return changeStep(kept, other, { follows: follows.length === 0 ? null : follows });
  });
  const left = spots.filter((spot) => spot.claimedBy !== step.id && spot.releasedBy !== step.id);
  const freed =
    left.length === spots.length
      ? undefined
      : changeWork(kept, { spots: left.length === 0 ? null : [...left] });
  return grouped('remove a step of the work', [
    ...relinked,
    freed,
    { type: 'work-step.remove', work: kept.id, step },
  ]);
}

/** One place up (−1) or down (1) in the list, which is for reading only: what comes first is said by the links. */
export function moveStep(kept: KeptWork, step: WorkStep, by: -1 | 1): SingleEdit | undefined {
  const { steps } = kept.work;
  const index = steps.findIndex(({ id }) => id === step.id);
  const behind = by === 1 ? steps[index + 1] : steps[index - 2];
  if (index + by < 0 || index + by >= steps.length) return undefined;
  const was = steps[index - 1]?.id ?? null;
  return { type: 'work-step.move', work: kept.id, step: step.id, to: behind?.id ?? null, was };
}

export type Points = Readonly<Record<string, { readonly x: number; readonly y: number }>>;

export function movePlaces(kept: KeptWork, moved: Points): Edit | undefined {
  return grouped(
    'move places of the bench',
    kept.work.places.map((place) => {
      const at = moved[place.id];
      return at === undefined ? undefined : changePlace(kept, place, { at });
    }),
  );
}

/** Changes that are taken; what else was settled about a change stays. */
export function takenChanges({ changes = [] }: KeptWork): readonly ChangeId[] {
  return changes.flatMap(({ change, taken }) => (taken === true ? [change as ChangeId] : []));
}

export function takeChanges(kept: KeptWork, wanted: readonly ChangeId[]): Edit | undefined {
  const changes = kept.changes ?? [];
  const edits = [...new Set([...changes.map(({ change }) => change), ...wanted])].map(
    (change): SingleEdit | undefined => {
      const was = changes.find((entry) => entry.change === change) ?? null;
      const take = wanted.some((id) => id === change);
      if ((was?.taken === true) === take) return undefined;
      const { taken: _, ...rest } = was ?? { change };
      const settled = Object.keys(rest).length > 1;
      const to = take ? { ...rest, taken: true } : settled ? rest : null;
      return { type: 'work-change.set', work: kept.id, to, was };
    },
  );
  return grouped(wanted.length > takenChanges(kept).length ? 'take a change' : 'take a change back', edits);
}

/**
 * The work for so many units a cycle: what is done for the units there are is done again for more of them, at the same
 * places, and steps of units beyond are left out. A change that does two units at once gives them places of their own.
 */
export function repeatUnits(kept: KeptWork, units: number): Edit | undefined {
  const { steps, spots = [], unitsPerCycle } = kept.work;
  if (units === unitsPerCycle) return undefined;
  const present = Math.max(...steps.map(({ unit }) => unit));
  const gone = steps.filter(({ unit }) => unit > units);
  const turns = Math.max(0, Math.ceil((units - present) / present));
  const copy = copiesOf(steps, present);
  const added = Array.from({ length: turns }, (_, turn) => turn + 1)
    .flatMap((turn) => steps.map((step) => copyOf(step, turn, present, spots, copy)))
    .filter(({ unit }) => unit <= units);
  const here = new Set([...steps, ...added].filter(({ unit }) => unit <= units).map(({ id }) => id));
  const left = spots.flatMap((spot) => {
    const last = Array.from({ length: turns + 1 }, (_, back) => copy(spot.releasedBy, turns - back));
    const releasedBy = [...last, ...sameStep(spot.releasedBy, steps)].find((id) => here.has(id));
    return here.has(spot.claimedBy) && releasedBy !== undefined ? [{ ...spot, releasedBy }] : [];
  });
  return grouped('change the units of a cycle', [
    changeWork(kept, {
      unitsPerCycle: units,
      ...(sameData(left, spots) ? {} : { spots: left.length === 0 ? null : left }),
    }),
    ...gone.map((step): SingleEdit => ({ type: 'work-step.remove', work: kept.id, step })),
    ...added.map((step): SingleEdit => ({ type: 'work-step.add', work: kept.id, step })),
  ]);
}

type Spots = NonNullable<KeptWork['work']['spots']>;
type CopyId = (id: string, turn: number) => string;

const stem = (id: string) => id.replace(/-u\d+$/, '');

/** The id of the same step for a unit so many turns later: “step-4-u3”. */
function copiesOf(steps: readonly WorkStep[], present: number): CopyId {
  const units = new Map(steps.map(({ id, unit }) => [id, unit]));
  return (id, turn) =>
    turn === 0 ? id : `${stem(id).slice(0, 58)}-u${(units.get(id) ?? 1) + turn * present}`;
}

/** The same step for other units, the latest first. */
function sameStep(id: string, steps: readonly WorkStep[]): readonly string[] {
  const same = steps.filter((step) => stem(step.id) === stem(id));
  return same.sort((a, b) => b.unit - a.unit).map((step) => step.id);
}

/** The same for a later unit. What serves one unit at a time is taken only when the unit before has left it. */
function copyOf(step: WorkStep, turn: number, present: number, spots: Spots, copy: CopyId): WorkStep {
  const own = (step.follows ?? []).map((link) => ({ ...link, step: copy(link.step, turn) }));
  const freed = spots
    .filter(({ claimedBy }) => claimedBy === step.id)
    .map(({ releasedBy }) => ({ step: copy(releasedBy, turn - 1) }));
  const { follows: _, ...rest } = step;
  const known = new Set(own.map((link) => link.step));
  const follows = [...own, ...freed.filter((link) => !known.has(link.step))];
  return {
    ...rest,
    id: copy(step.id, turn),
    unit: step.unit + turn * present,
    ...(follows.length === 0 ? {} : { follows }),
  };
}
