import {
  type ChangeCode,
  type ChangeWorth,
  type Combinations,
  changedBy,
  changeOf,
  changesFor,
  clashOf,
  combinationsOf,
  type DevelopedMethod,
  type DevelopWish,
  type Work,
  type WorkChange,
  worthOf,
} from '@evenhand/core/develop';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { DevelopChoice } from './develop-choice.ts';

/** What was found about changes. */
export interface TriedChanges {
  /** With `--changes all`: each alone, on top of the units that were asked for; largest saving first. */
  readonly single?: readonly ChangeWorth[] | undefined;
  /** With `--changes all` or costs: the front of their combinations. */
  readonly combinations?: Combinations | undefined;
  /** With a list of changes, or with units: all of them together. */
  readonly chosen?: ChangeWorth | undefined;
}

/** Of all combinations together, in times of the time of one method. */
const combinationShare = 6;

/** @param startClock begins the time of a method anew, for so many seconds */
export function tryChanges(
  base: DevelopedMethod,
  work: Work,
  wish: DevelopWish,
  choice: DevelopChoice,
  startClock: (seconds: number) => void,
): Result<TriedChanges, Finding> {
  const units = unitsOf(work, choice);
  if (!units.ok) return units;
  const wanted = wantedOf(work, choice);
  if (!wanted.ok) return wanted;
  const taken = units.value;
  if (choice.changes === 'none' && taken.length === 0) return ok({});
  if (choice.changes !== 'all' && choice.costs.size === 0) {
    startClock(choice.seconds);
    const chosen = together(base, work, wish, [...taken, ...wanted.value]);
    return chosen.ok ? ok({ chosen: chosen.value }) : chosen;
  }
  const stray = [...choice.costs.keys()].find((id) => !wanted.value.some((change) => change.id === id));
  if (stray !== undefined) return fail(finding('develop/cost-without-change', {}, { change: stray }));
  const single = wanted.value.flatMap((change) => {
    startClock(choice.seconds);
    const worth = worthOf(base, work, [...taken, change], wish);
    return worth === undefined ? [] : [worth];
  });
  single.sort((a, b) => b.saved - a.saved || a.name.localeCompare(b.name, 'en'));
  startClock(combinationShare * choice.seconds);
  const combinations = combinationsOf(work, wanted.value, { ...wish, taken, costs: choice.costs });
  return combinations.ok ? ok({ single, combinations: combinations.value }) : combinations;
}

function unitsOf(work: Work, { units }: DevelopChoice): Result<readonly WorkChange[], Finding> {
  if (units === undefined) return ok([]);
  const code: ChangeCode = units === 2 ? 'two-units' : 'four-units';
  const change = changeOf(code, work);
  if (change === undefined || units <= work.unitsPerCycle)
    return fail(finding('develop/units-taken', {}, { found: work.unitsPerCycle, units }));
  return ok([change]);
}

function wantedOf(work: Work, { changes, costs }: DevelopChoice): Result<readonly WorkChange[], Finding> {
  if (changes === 'none') return ok([]);
  const ids = changes === 'all' ? [...costs.keys()] : changes;
  const found: WorkChange[] = [];
  for (const id of ids) {
    const change = changeOf(id, work);
    if (change === undefined) return fail(unknownChange(work, id));
    found.push(change);
  }
  const all = changes === 'all' ? changesFor(work).filter(({ asked }) => !asked) : [];
  return ok([...all.filter(({ id }) => !found.some((change) => change.id === id)), ...found]);
}

/** Names what it can be: of one kind where the kind is known, else all kinds. */
function unknownChange(work: Work, id: string): Finding {
  const [code] = id.split(':');
  const own = changesFor(work).filter((change) => change.code === code);
  const known = own.length > 0 ? own : changesFor(work);
  return finding(
    'develop/unknown-change',
    {},
    { change: id, known: known.map((change) => change.id).join(', ') },
  );
}

function together(
  base: DevelopedMethod,
  work: Work,
  wish: DevelopWish,
  changes: readonly WorkChange[],
): Result<ChangeWorth, Finding> {
  const clash = clashOf(changes);
  if (clash !== undefined)
    return fail(finding('develop/changes-clash', {}, { one: clash[0].name, other: clash[1].name }));
  const worth = worthOf(base, work, changes, wish);
  if (worth !== undefined) return ok(worth);
  return fail(heldUnits(work, changes) ?? nothingToChange(work, changes));
}

/** Several units were asked for where a hand still holds. */
function heldUnits(work: Work, changes: readonly WorkChange[]): Finding | undefined {
  const units = changes.find(({ code }) => code === 'two-units' || code === 'four-units');
  if (units === undefined) return undefined;
  const before = changedBy(
    work,
    changes.filter((change) => change !== units),
  );
  const step = before?.steps.find(({ held, hand }) => held?.by === 'hand' || hand === 'both');
  if (step === undefined) return undefined;
  return finding('develop/units-held', {}, { units: units.code === 'two-units' ? 2 : 4, step: step.name });
}

/** Names those that have nothing to change; all of them where each has something by itself. */
function nothingToChange(work: Work, changes: readonly WorkChange[]): Finding {
  const idle = changes.filter((change) => change.apply(work) === undefined);
  const named = (idle.length > 0 ? idle : changes).map(({ id }) => id).join(', ');
  return finding('develop/nothing-to-change', {}, { changes: named });
}
