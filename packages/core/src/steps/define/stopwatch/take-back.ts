import type { WatchChange, WatchCommand, WatchState, WatchStep } from './watch-state.ts';

/** Standing still, ratings and changes of the plan have keys of their own to be undone by. */
const kept: readonly WatchCommand['do'][] = ['begin', 'pause', 'rate', 'plan'];

/**
 * Takes back the last press that read, missed, skipped, gave up, ended, or began or ended a foreign element. Time goes on as if it
 * had not been; pauses since then remain pauses, a rating since then falls away with what it was of.
 */
export function takeBack(
  state: WatchState,
  step: (state: WatchState, press: WatchCommand) => WatchStep,
): WatchStep {
  const later: WatchCommand[] = [];
  let link = state.before;
  while (link !== undefined && kept.includes(link.press.do)) {
    later.push(link.press);
    link = link.state.before;
  }
  if (link === undefined) return { state, changes: [], refused: 'There is nothing to take back.' };
  const { state: base, press } = link;
  let now = base;
  for (const each of later.toReversed()) if (each.do !== 'rate') now = step(now, each).state;
  return { state: now, changes: undone(base, step(base, press).changes), took: press };
}

/** What the time study held of the same places before. */
function undone(base: WatchState, changes: readonly WatchChange[]): readonly WatchChange[] {
  return changes.map((change): WatchChange => {
    if (change.kind === 'foreign') return { ...change, to: null };
    const earlier = base.inCycle.find(({ element }) => element === change.element);
    return { ...change, to: earlier?.reading ?? null };
  });
}
