import { type CycleFields, type Edit, editName, type SingleEdit } from '../../../ground/edit/index.ts';
import { type Cycle, findItem, itemAt, type Method } from '../../../ground/study/index.ts';

/** What becomes of a proposed mark when a person mends it. */
function mending({ said, confidence }: Cycle): { to: CycleFields; was: CycleFields } | undefined {
  if (said !== 'proposed') return undefined;
  return confidence === undefined
    ? { to: { said: 'confirmed' }, was: { said } }
    : { to: { said: 'confirmed', confidence: null }, was: { said, confidence } };
}

/**
 * Begins a cycle at a boundary; the cycle before it ends there. A mark that is proposed exactly there is confirmed.
 * Undefined when one already begins there.
 */
export function markCycle(method: Method, at: number, newId: () => string): Edit | undefined {
  if (at < 0 || at >= method.cycles.end) return undefined;
  const present = itemAt(method.cycles, at);
  if (present?.start === at) {
    const fields = mending(present.item);
    return fields && { type: 'cycle.change', method: method.id, cycle: present.item.id, ...fields };
  }
  return { type: 'cycle.mark', method: method.id, cycle: { id: newId(), start: at } };
}

/** Takes a cycle mark away; the cycle before it goes on. */
export function removeCycleMark(method: Method, id: string): Edit | undefined {
  const found = findItem(method.cycles, id);
  return found === undefined ? undefined : { type: 'cycle.remove', method: method.id, cycle: found.item };
}

/** Moves a cycle mark as far towards `to` as its neighbours allow; that confirms a proposed one. */
export function moveCycleMark(method: Method, id: string, to: number): Edit | undefined {
  const found = findItem(method.cycles, id);
  if (found === undefined) return undefined;
  const least = found.index === 0 ? 0 : (method.cycles.items[found.index - 1]?.start ?? 0) + 1;
  const goal = Math.min(Math.max(to, least), found.end - 1);
  if (goal === found.start) return undefined;
  const where = { method: method.id, cycle: id };
  const edit: SingleEdit = { type: 'cycle.move', ...where, to: goal, was: found.start };
  const said = mending(found.item);
  if (said === undefined) return edit;
  return { type: 'group', name: editName(edit), edits: [edit, { type: 'cycle.change', ...where, ...said }] };
}

/** Ends the last cycle at a boundary, so that what follows belongs to none. */
export function endCycles(method: Method, at: number, last: number): Edit | undefined {
  const least = (method.cycles.items.at(-1)?.start ?? -1) + 1;
  const goal = Math.min(Math.max(at, least), last);
  return goal === method.cycles.end
    ? undefined
    : { type: 'cycles.end', method: method.id, to: goal, was: method.cycles.end };
}

/** Sets a cycle aside as not typical, with a reason; an empty reason makes it count again. */
export function setCycleAside(method: Method, id: string, reason: string): Edit | undefined {
  const cycle = findItem(method.cycles, id)?.item;
  const text = reason.trim();
  if (cycle === undefined || (cycle.setAside ?? '') === text) return undefined;
  const said = mending(cycle);
  return {
    type: 'cycle.change',
    method: method.id,
    cycle: id,
    to: { ...said?.to, setAside: text === '' ? null : text },
    was: { ...said?.was, setAside: cycle.setAside ?? null },
  };
}
