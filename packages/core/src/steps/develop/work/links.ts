import type { Hand } from '../../../ground/study/index.ts';
import { changes, type Draft } from './draft.ts';

/** What must come before what, which unit a step belongs to, and which places serve one unit at a time. */
export interface Links {
  /** For each step the steps that must have ended before it, nearest ones only. */
  readonly before: readonly (readonly number[])[];
  /** From 1, in the order in which the units are begun. */
  readonly unit: readonly number[];
  readonly spots: readonly {
    readonly place: string;
    readonly claimedBy: number;
    readonly releasedBy: number;
  }[];
}

interface State {
  /** The step after which a hand carries what it carries. */
  readonly carrying: Map<Hand, number>;
  /** What was last done to the object that lies or is held at a place. */
  readonly lastAt: Map<string, number>;
  /** The step that laid down what lies at a place. */
  readonly claimed: Map<string, number>;
  /** Where a hand held something last. */
  readonly heldAt: Map<Hand, string>;
}

/**
 * Objects and places give the order: what is put down was taken up, what is changed at a place was brought there, and
 * one thing after another is done to it in the order of the record; what is taken away is finished.
 * @param drafts in the order of the record
 */
export function linksOf(drafts: readonly Draft[]): Links {
  const before = drafts.map((): Set<number> => new Set());
  const state: State = { carrying: new Map(), lastAt: new Map(), claimed: new Map(), heldAt: new Map() };
  const spots: { place: string; claimedBy: number; releasedBy: number }[] = [];
  drafts.forEach((draft, index) => {
    for (const step of needsOf(draft, state)) before[index]?.add(step);
    carry(draft, index, state);
    const released = layDown(draft, index, state);
    if (released !== undefined) spots.push({ ...released, releasedBy: index });
  });
  const nearest = withoutDetours(before);
  return { before: nearest, unit: unitsOf(nearest), spots };
}

/** The place where something is changed: that of the hold, else that of the step. */
function workPlace({ held, place }: Draft): string | undefined {
  return held?.place ?? place;
}

function needsOf(draft: Draft, { carrying, lastAt }: State): number[] {
  const needs = draft.visits.map(({ hand, before }) =>
    before === undefined ? undefined : carrying.get(hand),
  );
  if (draft.held?.visit !== undefined) needs.push(carrying.get(draft.held.visit.hand));
  const place = workPlace(draft);
  if (place !== undefined) needs.push(lastAt.get(place));
  return needs.filter((step) => step !== undefined);
}

function carry(draft: Draft, index: number, { carrying, lastAt, heldAt }: State): void {
  for (const { hand, before, after } of draft.visits) {
    const left = before === undefined ? undefined : heldAt.get(hand);
    // The hand has left the place where it held this, so what is done there next is done to another unit.
    if (left !== undefined) lastAt.delete(left);
    heldAt.delete(hand);
    if (after === undefined) carrying.delete(hand);
    else carrying.set(hand, index);
  }
  const { held } = draft;
  if (held?.visit === undefined) return;
  carrying.set(held.visit.hand, index);
  const at = workPlace(draft);
  if (at !== undefined) heldAt.set(held.visit.hand, at);
}

/** Tells the place that is free again, and the step that had claimed it, when the step takes up what lay there. */
function layDown(
  draft: Draft,
  index: number,
  { lastAt, claimed }: State,
): { readonly place: string; readonly claimedBy: number } | undefined {
  const [visit] = draft.visits;
  const { held, place } = draft;
  const at = workPlace(draft);
  if (at === undefined || place === undefined) return undefined;
  if (changes(visit) || held !== undefined) lastAt.set(at, index);
  const laysDown = visit.before !== undefined && visit.after === undefined && changes(visit);
  const fixed = held?.by === 'fixture' || (held === undefined && laysDown);
  if (fixed && !claimed.has(at)) claimed.set(at, index);
  if (visit.before !== undefined || visit.after === undefined) return undefined;
  const from = claimed.get(place);
  claimed.delete(place);
  lastAt.delete(place);
  return from === undefined ? undefined : { place, claimedBy: from };
}

/** Precedence that follows from other precedence is left out, so that a person reads only what matters. */
function withoutDetours(before: readonly ReadonlySet<number>[]): number[][] {
  const all: Set<number>[] = [];
  before.forEach((direct, index) => {
    const set = new Set<number>(direct);
    for (const step of direct) for (const earlier of all[step] ?? []) set.add(earlier);
    all[index] = set;
  });
  return before.map((direct) =>
    [...direct]
      .filter((step) => ![...direct].some((other) => other !== step && all[other]?.has(step) === true))
      .sort((a, b) => a - b),
  );
}

/** Steps that hang together belong to one unit. */
function unitsOf(before: readonly (readonly number[])[]): number[] {
  const root = before.map((_, index) => index);
  const find = (index: number): number => {
    let at = index;
    while (root[at] !== undefined && root[at] !== at) at = root[at] ?? at;
    return at;
  };
  before.forEach((steps, index) => {
    for (const step of steps) {
      const [a, b] = [find(step), find(index)];
      root[Math.max(a, b)] = Math.min(a, b);
    }
  });
  const numbers = new Map<number, number>();
  return before.map((_, index) => {
    const own = find(index);
    if (!numbers.has(own)) numbers.set(own, numbers.size + 1);
    return numbers.get(own) ?? 1;
  });
}
