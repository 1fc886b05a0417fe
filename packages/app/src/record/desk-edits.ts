import type { MotionFields } from '@evenhand/core/ground/edit';
import { type Hand, itemsBetween } from '@evenhand/core/ground/study';
import type { MotionKind } from '@evenhand/core/ground/tables';
import {
  changeMotions,
  clearSpan,
  copyToNextCycle,
  copyToOtherHand,
  endCycles,
  joinWithPrevious,
  markCycle as markCycleAt,
  markMotion,
  moveRowEnd,
  moveStart,
  removeCycleMark,
  setCycleAside,
  splitMotion,
} from '@evenhand/core/record';
import { randomId } from '../editor/page-ports.ts';
import { type RecordDesk, stillStep } from './desk.ts';

// Every command here builds one edit from the desk's state and hands it to the desk, which says why if it does not hold.

export function mark(desk: RecordDesk, hand: Hand, kind: MotionKind): void {
  const method = desk.method;
  if (method === undefined) return desk.say('Open a film first; then the keys mark its motions.');
  desk.showPressed(hand, kind);
  if (desk.proposals.rename(hand, kind)) return;
  const { carryObject } = desk.preferences.value();
  const edit = markMotion({ method, hand }, desk.playhead, kind, randomId, { carryObject });
  if (edit === undefined) return;
  if (desk.dispatch(edit) && desk.player?.state().playing !== true) desk.selectAtPlayhead(hand);
}

export function split(desk: RecordDesk): void {
  const method = desk.method;
  const hand = desk.selectedHands[0];
  if (method === undefined || hand === undefined)
    return desk.say('Select a motion to split it at the shown frame.');
  const edit = splitMotion({ method, hand }, desk.playhead, randomId);
  if (edit === undefined)
    return desk.say('A boundary stands at this frame already. Go to a frame inside the motion.');
  if (desk.dispatch(edit)) desk.selectAtPlayhead(hand);
}

/** Takes the boundary at the selected motion's start away. */
export function join(desk: RecordDesk): void {
  const method = desk.method;
  const chosen = desk.selectedMotion;
  if (method === undefined || chosen === undefined)
    return desk.say('Select a motion to join it with the one before.');
  const before = method[chosen.hand].items[chosen.index - 1];
  const edit = joinWithPrevious({ method, hand: chosen.hand }, chosen.item.id);
  if (edit === undefined || before === undefined)
    return desk.say('This is the first motion of the row; there is none before it to join with.');
  if (desk.dispatch(edit)) desk.select({ kind: 'motion', hand: chosen.hand, motionId: before.id });
}

/** Delete: a span is cleared, a motion is joined with the one before it. */
export function remove(desk: RecordDesk): void {
  if (desk.state().selection?.kind === 'span') clear(desk);
  else join(desk);
}

export function clear(desk: RecordDesk): void {
  const method = desk.method;
  const span = desk.selectedSpan;
  if (method === undefined || span === undefined) return desk.say('Select a motion or a span to clear it.');
  const edits = desk.selectedHands.flatMap((hand) => {
    const edit = clearSpan({ method, hand }, span, randomId);
    return edit?.type === 'group' ? edit.edits : [];
  });
  if (edits.length > 0) desk.dispatch({ type: 'group', name: 'clear marks', edits });
}

/** Moves the start (or the end) of the selected motion by whole frames. */
export function nudge(desk: RecordDesk, edge: 'start' | 'end', count: number): void {
  const method = desk.method;
  const chosen = desk.selectedMotion;
  if (method === undefined || chosen === undefined)
    return desk.say('Select a motion to move its boundaries.');
  const { hand } = chosen;
  const size = desk.clock?.unit === 'micros' ? stillStep : 1;
  const next = method[hand].items[chosen.index + 1];
  const goal = (edge === 'start' ? chosen.start : chosen.end) + count * size;
  const edit =
    edge === 'start'
      ? moveStart({ method, hand }, chosen.item.id, goal)
      : next === undefined
        ? moveRowEnd({ method, hand }, goal, desk.clock?.last ?? Number.MAX_SAFE_INTEGER)
        : moveStart({ method, hand }, next.id, goal);
  if (edit === undefined)
    return desk.say('The boundary cannot go further: every motion keeps at least one frame.');
  if (desk.dispatch(edit)) desk.jump(goal);
}

export function changeSelected(desk: RecordDesk, to: MotionFields, name: string): boolean {
  const method = desk.method;
  const span = desk.selectedSpan;
  if (method === undefined || span === undefined) return false;
  const one = desk.selectedMotion;
  const chosen =
    one === undefined
      ? desk.selectedHands.flatMap((hand) =>
          itemsBetween(method[hand], span.from, span.to).map(({ item }) => ({ hand, motion: item })),
        )
      : [{ hand: one.hand, motion: one.item }];
  const edit = changeMotions(
    method,
    chosen.filter(({ motion }) => motion.kind !== 'unmarked' || to.kind !== undefined),
    to,
    name,
  );
  return edit !== undefined && desk.dispatch(edit);
}

/** Sets the from or to place of the selection by name; a new name makes a new place. */
export function setPlace(desk: RecordDesk, end: 'from' | 'to', name: string): void {
  const text = name.trim();
  if (text === '') {
    changeSelected(desk, { [end]: null }, `take the ${end} place away`);
    return;
  }
  const known = desk.study.places.find((place) => place.name === text);
  const id = known?.id ?? randomId();
  if (known === undefined && !desk.dispatch({ type: 'place.add', place: { id, name: text } })) return;
  changeSelected(desk, { [end]: id }, `set the ${end} place`);
}

export function copyToOther(desk: RecordDesk): void {
  const method = desk.method;
  const span = desk.selectedSpan;
  const hand = desk.selectedHands.length === 1 ? desk.selectedHands[0] : undefined;
  if (method === undefined || span === undefined || hand === undefined) {
    return desk.say('Select a motion or a span of one hand to copy it to the other.');
  }
  const edit = copyToOtherHand(desk.study, { method, hand }, span, randomId);
  if (edit !== undefined && desk.dispatch(edit))
    desk.say(`Copied to the ${hand === 'left' ? 'right' : 'left'} hand.`);
}

export function copyToNext(desk: RecordDesk): void {
  const method = desk.method;
  const span = desk.selectedSpan;
  if (method === undefined || span === undefined)
    return desk.say('Select a motion, a span or a cycle to copy it to the next cycle.');
  const copy = copyToNextCycle(method, desk.selectedHands, span, randomId);
  if (copy === undefined) return desk.say('There is no next cycle to copy to. Mark where it begins.');
  if (!desk.dispatch(copy.edit)) return;
  const { selection } = desk.state();
  if (selection !== undefined) desk.select({ kind: 'span', hand: selection.hand, ...copy.span });
  desk.jump(copy.span.from);
  desk.say('Copied to the same part of the next cycle. Check its boundaries against the film.');
}

export function markCycle(desk: RecordDesk): void {
  const method = desk.method;
  const edit = method === undefined ? undefined : markCycleAt(method, desk.playhead, randomId);
  if (edit === undefined) return desk.say('A cycle begins at this frame already.');
  desk.dispatch(edit);
}

export function removeCycle(desk: RecordDesk): void {
  const method = desk.method;
  const cycle = desk.cycleHere;
  const edit =
    method === undefined || cycle === undefined ? undefined : removeCycleMark(method, cycle.item.id);
  if (edit !== undefined) desk.dispatch(edit);
}

export function endCyclesHere(desk: RecordDesk): void {
  const method = desk.method;
  const edit = method === undefined ? undefined : endCycles(method, desk.playhead, desk.end);
  if (edit !== undefined) desk.dispatch(edit);
}

export function setAside(desk: RecordDesk, cycleId: string, reason: string): void {
  const method = desk.method;
  const edit = method === undefined ? undefined : setCycleAside(method, cycleId, reason);
  if (edit !== undefined) desk.dispatch(edit);
}
