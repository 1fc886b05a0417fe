import { type Hand, otherHand } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import type { CycleReading } from '../../examine/index.ts';
import { type Visit, visitsOf } from './visits.ts';

/** A step before it has its name, unit and precedence. Steps stand in the order of their starts in the record. */
export interface Draft {
  readonly visits: readonly [Visit] | readonly [left: Visit, right: Visit];
  readonly hand: Hand | 'both';
  readonly place: string | undefined;
  /** The place where the object that is worked on lies or is held; undefined where nothing is worked on. */
  readonly held: Held | undefined;
}

export interface Held {
  readonly object: string;
  readonly place: string | undefined;
  readonly by: 'hand' | 'fixture';
  /** The hold that the record shows; undefined of a fixture. */
  readonly visit: Visit | undefined;
  readonly becomes: string | undefined;
}

/** Motions that change the object at the place. */
const changing: ReadonlySet<MotionKind> = new Set(['P', 'A', 'DA', 'U', 'I']);

/** Drafts of the steps of one cycle, and the holds that serve no step. */
export function draftsOf(cycle: CycleReading): {
  readonly drafts: readonly Draft[];
  readonly idleHolds: readonly Visit[];
} {
  const visits = { left: visitsOf(cycle, 'left'), right: visitsOf(cycle, 'right') };
  const work = [...visits.left, ...visits.right]
    .filter(({ kind }) => kind === 'work')
    .sort((a, b) => a.start - b.start || (a.hand === 'left' ? -1 : 1));
  const holds = [...visits.left, ...visits.right].filter(({ kind }) => kind === 'hold');
  const drafts: Draft[] = [];
  const taken = new Set<Visit>();
  for (const visit of work) {
    if (taken.has(visit)) continue;
    const partner = work.find((other) => !taken.has(other) && joint(visit, other));
    if (partner !== undefined) {
      taken.add(partner);
      const pair = visit.hand === 'left' ? ([visit, partner] as const) : ([partner, visit] as const);
      drafts.push({ visits: pair, hand: 'both', place: pair[0].place, held: undefined });
      continue;
    }
    drafts.push({ visits: [visit], hand: visit.hand, place: visit.place, held: heldDuring(visit, holds) });
  }
  const used = new Set(drafts.map(({ held }) => held?.visit));
  return { drafts: withFixtures(renamed(drafts)), idleHolds: holds.filter((hold) => !used.has(hold)) };
}

/** Both hands do one thing: at one place, with one object, for most of the time of the shorter. */
function joint(visit: Visit, other: Visit): boolean {
  if (other.hand === visit.hand || visit.place === undefined || visit.place !== other.place) return false;
  const [a, b] = [objectOf(visit), objectOf(other)];
  if (a === undefined || a !== b || !changes(visit) || !changes(other)) return false;
  return overlap(visit, other) >= 0.8 * Math.min(visit.end - visit.start, other.end - other.start);
}

export function changes({ pieces }: Visit): boolean {
  return pieces.some(({ kind }) => changing.has(kind));
}

export function objectOf({ pieces }: Visit): string | undefined {
  return pieces.find(({ object }) => object !== undefined)?.object;
}

function overlap(a: Visit, b: Visit): number {
  return Math.min(a.end, b.end) - Math.max(a.start, b.start);
}

/** What is taken up while the other hand holds it passes from hand to hand. */
function takesOver(visit: Visit, hold: Visit): boolean {
  const taken = visit.before === undefined ? objectOf(visit) : undefined;
  return visit.after !== undefined && taken !== undefined && taken === objectOf(hold);
}

/** The hold of the other hand that goes on for at least half of the visit, where something is changed or taken over there. */
function heldDuring(visit: Visit, holds: readonly Visit[]): Held | undefined {
  const hold = holds.find(
    (other) =>
      other.hand === otherHand(visit.hand) &&
      (changes(visit) || takesOver(visit, other)) &&
      overlap(visit, other) * 2 >= Math.max(1, visit.end - visit.start) &&
      (other.place === undefined || visit.place === undefined || other.place === visit.place),
  );
  if (hold === undefined) return undefined;
  const object = objectOf(hold) ?? 'part';
  return { object, place: hold.place, by: 'hand', visit: hold, becomes: undefined };
}

/** What is called otherwise when it is taken away than while it was held was changed by the last step of the hold. */
function renamed(drafts: readonly Draft[]): readonly Draft[] {
  return drafts.map((draft, index) => {
    const { held } = draft;
    if (held?.visit === undefined) return draft;
    const last = !drafts.slice(index + 1).some((other) => other.held?.visit === held.visit);
    const { hand, end } = held.visit;
    const next = drafts.find(
      ({ visits: [visit], hand: by }) => by === hand && visit.start >= end && visit.before !== undefined,
    );
    const called = next?.visits[0].before;
    if (!last || called === undefined || called === held.object) return draft;
    return { ...draft, held: { ...held, becomes: called } };
  });
}

/**
 * What was put down at a place and is changed there later lies in a fixture: it needs no hand. It lies there until it
 * is taken up again.
 */
function withFixtures(drafts: readonly Draft[]): readonly Draft[] {
  const lying = new Map<string, string>();
  return drafts.map((draft): Draft => {
    const [visit] = draft.visits;
    const { place } = draft;
    if (place === undefined) return draft;
    const there = lying.get(place);
    let result = draft;
    if (there !== undefined && draft.held === undefined && changes(visit)) {
      result = {
        ...draft,
        held: { object: there, place, by: 'fixture', visit: undefined, becomes: undefined },
      };
    }
    if (visit.before !== undefined && visit.after === undefined && there === undefined)
      lying.set(place, visit.before);
    if (visit.before === undefined && visit.after !== undefined) lying.delete(place);
    return result;
  });
}
