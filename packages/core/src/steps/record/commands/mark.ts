import { type Edit, editName, type MotionFields, type SingleEdit } from '../../../ground/edit/index.ts';
import { findItem, type Hand, itemAt, type Method, type Motion } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';

/** Where a command of the record desk acts. */
export interface Target {
  readonly method: Method;
  readonly hand: Hand;
}

/** Motions in which a hand has something in it, so that the thing goes on from one to the next. */
const loaded: ReadonlySet<MotionKind> = new Set(['G', 'TL', 'H', 'P', 'PP', 'U', 'A', 'DA', 'I', 'RL']);

export interface MarkOptions {
  /** Carry the object on from the motion before while the hand keeps it. */
  readonly carryObject: boolean;
}

/**
 * Ends the hand's present motion at a boundary and begins the new one there; where a motion already begins exactly
 * there, it is named anew. Undefined when that changes nothing or the boundary lies outside the row.
 */
export function markMotion(
  { method, hand }: Target,
  at: number,
  kind: MotionKind,
  newId: () => string,
  options: MarkOptions,
): Edit | undefined {
  const row = method[hand];
  const first = row.items[0];
  const present = itemAt(row, at);
  if (at >= row.end || at < 0) return undefined;
  const object = options.carryObject ? carriedObject({ method, hand }, at, kind) : undefined;
  const carried = object === undefined ? {} : { object };
  if (present?.start === at) return relabelAt({ method, hand }, present.item, kind, carried);
  if (present === undefined && first === undefined) return undefined;
  const motion: Motion = { id: newId(), start: at, kind, ...carried, said: 'marked' };
  return { type: 'motion.mark', method: method.id, hand, motion };
}

function relabelAt(
  target: Target,
  motion: Motion,
  kind: MotionKind,
  carried: { object?: string },
): Edit | undefined {
  if (motion.kind === kind && motion.said !== 'proposed') return undefined;
  const object = motion.object === undefined ? carried : {};
  return changeMotion(target, motion, { kind, said: 'marked', ...object });
}

/** What the hand has in it when the motion before ends, if the new motion still has it. */
function carriedObject({ method, hand }: Target, at: number, kind: MotionKind): string | undefined {
  if (!loaded.has(kind) || kind === 'G') return undefined;
  const before = itemAt(method[hand], at - 1)?.item;
  return before !== undefined && loaded.has(before.kind) && before.kind !== 'RL' ? before.object : undefined;
}

/** What becomes of a proposed motion when a person mends it: they have said it themselves now. */
function mended(motion: Motion): MotionFields {
  const sure = motion.confidence === undefined ? {} : { confidence: null };
  return motion.said === 'proposed' ? { said: 'confirmed', ...sure } : sure;
}

/**
 * Sets fields of one motion; `null` takes an optional one away. A proposed motion is confirmed by it. Undefined when
 * nothing would change.
 */
export function changeMotion(
  { method, hand }: Target,
  motion: Motion,
  to: MotionFields,
): SingleEdit | undefined {
  const values = motion as Readonly<Record<string, unknown>>;
  const differs = ([key, value]: [string, unknown]) => (value ?? undefined) !== values[key];
  if (!Object.entries(to).some(differs)) return undefined;
  const changed = Object.entries({ ...mended(motion), ...to }).filter(differs);
  const was = Object.fromEntries(changed.map(([key]) => [key, values[key] ?? null]));
  return {
    type: 'motion.change',
    method: method.id,
    hand,
    motion: motion.id,
    to: Object.fromEntries(changed),
    was,
  };
}

/**
 * Cuts the motion at a boundary in two of the same name; a proposed one is confirmed by it. Undefined when a boundary
 * already stands there.
 */
export function splitMotion({ method, hand }: Target, at: number, newId: () => string): Edit | undefined {
  const present = itemAt(method[hand], at);
  if (present === undefined || present.start === at) return undefined;
  const { confidence: _, ...item } = present.item;
  const said = item.said === 'proposed' ? 'marked' : item.said;
  const cut: SingleEdit = {
    type: 'motion.mark',
    method: method.id,
    hand,
    motion: { ...item, said, id: newId(), start: at },
  };
  return withMending({ method, hand }, [present.item], cut);
}

/** An edit together with what it says of the proposed motions that it mends, as one step. */
function withMending(target: Target, motions: readonly (Motion | undefined)[], edit: SingleEdit): Edit {
  const said = motions.flatMap((motion) =>
    motion?.said === 'proposed' ? (changeMotion(target, motion, mended(motion)) ?? []) : [],
  );
  return said.length === 0 ? edit : { type: 'group', name: editName(edit), edits: [edit, ...said] };
}

/** Takes the boundary at a motion's start away: the motion before it goes on. Undefined for the first of a row. */
export function joinWithPrevious({ method, hand }: Target, motionId: string): Edit | undefined {
  const found = findItem(method[hand], motionId);
  if (found === undefined || found.index === 0) return undefined;
  const before = method[hand].items[found.index - 1];
  const edit: SingleEdit = { type: 'motion.remove', method: method.id, hand, motion: found.item };
  return withMending({ method, hand }, [before], edit);
}

/** Moves a motion's start as far towards `to` as its neighbours allow; that confirms a proposed one. Undefined when it cannot move. */
export function moveStart({ method, hand }: Target, motionId: string, to: number): Edit | undefined {
  const row = method[hand];
  const found = findItem(row, motionId);
  if (found === undefined) return undefined;
  const least = found.index === 0 ? 0 : (row.items[found.index - 1] as Motion).start + 1;
  const goal = Math.min(Math.max(to, least), found.end - 1);
  if (goal === found.start) return undefined;
  const where = { method: method.id, hand, motion: motionId };
  const edit: SingleEdit = { type: 'motion.move', ...where, to: goal, was: found.start };
  return withMending({ method, hand }, [found.item], edit);
}

/** Moves the end of a row; no further back than one step after its last start. */
export function moveRowEnd({ method, hand }: Target, to: number, last: number): Edit | undefined {
  const row = method[hand];
  const goal = Math.min(Math.max(to, (row.items.at(-1)?.start ?? -1) + 1), last);
  if (goal === row.end) return undefined;
  return { type: 'row.end', method: method.id, hand, to: goal, was: row.end };
}

/** One change on several motions under one name. Undefined when none of them changes. */
export function changeMotions(
  method: Method,
  chosen: readonly { readonly hand: Hand; readonly motion: Motion }[],
  to: MotionFields,
  name: string,
): Edit | undefined {
  const edits = chosen
    .map(({ hand, motion }) => changeMotion({ method, hand }, motion, to))
    .filter((edit): edit is SingleEdit => edit !== undefined);
  return edits.length === 0 ? undefined : { type: 'group', name, edits };
}
