import { takeBack } from './take-back.ts';
import {
  runningElement,
  type WatchChange,
  type WatchCommand,
  type WatchReading,
  type WatchState,
  type WatchStep,
} from './watch-state.ts';

type Timed = Extract<WatchCommand, { readonly at: number }>;

/**
 * One press. Every microsecond from the beginning to the end goes to exactly one thing: a reading, a foreign element, a
 * pause, or what was lost. An element that is read twice in a cycle has the sum of both.
 *
 * A missed reading: on a watch that runs on, the end of the element went by unseen, so this element and the one after it have
 * no time each (as `timesFromRunningWatch` has it), and what both took together is kept as their joint time. On a watch that
 * goes back to zero the press sets it to zero: only the element that ended has no time, and the next one begins with the
 * press.
 */
export function watchStep(state: WatchState, command: WatchCommand): WatchStep {
  if (command.do === 'take-back') return takeBack(state, watchStep);
  const step = carryOut(state, command);
  if (step.refused !== undefined) return step;
  const latest = 'at' in command ? command.at : state.latest;
  return { ...step, state: { ...step.state, latest, before: { state, press: command } } };
}

function carryOut(state: WatchState, command: Exclude<WatchCommand, { do: 'take-back' }>): WatchStep {
  if (command.do === 'plan') return { state: whole({ ...state, plan: command.plan }), changes: [] };
  if (command.do === 'rate') return rate(state, command.of, command.rating);
  const refused = whyNot(state, command);
  if (refused !== undefined) return { state, changes: [], refused };
  switch (command.do) {
    case 'begin': {
      const { at } = command;
      return { state: whole({ ...state, phase: 'running', since: at, begun: at }), changes: [] };
    }
    case 'read':
      return read(state, runningElement(state), command.at);
    case 'read-as':
      return read(state, command.element, command.at);
    case 'miss':
      return miss(state, command.at);
    case 'skip':
      return { state: doneWith(state, runningElement(state)), changes: [] };
    case 'foreign':
      return foreign(state, command.at);
    case 'pause':
      return { state: pauseOrGoOn(state, command.at), changes: [] };
    case 'new-cycle':
      return { state: newCycle(state, command.at), changes: [] };
    case 'end':
      return end(state, command.at);
  }
}

function whyNot(state: WatchState, command: Timed): string | undefined {
  const { phase, plan } = state;
  if (!Number.isSafeInteger(command.at) || command.at < 0)
    return 'The press has no time, so it was not taken.';
  if (phase === 'ended') return 'The watch has ended. Begin anew.';
  if (command.do === 'begin') {
    if (phase !== 'ready') return 'The watch is running.';
    return plan.order.length === 0 ? 'Name an element first: there is nothing to time.' : undefined;
  }
  if (phase === 'ready') return 'Begin the watch first.';
  if (command.at < state.latest) return 'The clock of this machine went back; the press was not taken.';
  if (command.do === 'end' || command.do === 'pause') return undefined;
  if (phase === 'paused') return 'The watch stands still. Go on first.';
  if (state.foreign !== undefined && command.do !== 'foreign')
    return 'A foreign element goes on. End it first.';
  if (plan.order.length === 0) return 'No element is left to time.';
  const known = (id: string) => plan.order.includes(id) || plan.occasional.includes(id);
  return command.do === 'read-as' && !known(command.element)
    ? 'The time study has no such element.'
    : undefined;
}

function ownTime(state: WatchState, at: number): number {
  return at - state.since - state.off;
}

function read(state: WatchState, element: string | undefined, at: number): WatchStep {
  if (element === undefined) return { state, changes: [] };
  const own = ownTime(state, at);
  const { unsplit } = state;
  const taken = take(state, element, unsplit === undefined && own > 0 ? own : undefined, own);
  const joint =
    unsplit === undefined
      ? state.joint
      : { ...unsplit, elements: [...unsplit.elements, element], us: unsplit.us + own };
  const after = { ...taken.state, since: at, off: 0, unsplit: undefined, joint };
  return { ...taken, state: doneWith(after, element) };
}

function miss(state: WatchState, at: number): WatchStep {
  const element = runningElement(state);
  if (element === undefined) return { state, changes: [] };
  const own = ownTime(state, at);
  const taken = take(state, element, undefined, own);
  const { cycle, elements, us } = state.unsplit ?? { cycle: state.cycle, elements: [], us: 0 };
  const together = { cycle, elements: [...elements, element], us: us + own };
  const after =
    state.timing === 'continuous'
      ? { ...taken.state, since: at, off: 0, unsplit: together }
      : { ...taken.state, since: at, off: 0, unsplit: undefined };
  return { ...taken, state: doneWith(after, element) };
}

/** Writes what an element took; with what it took before in this cycle, of which one unknown part leaves the whole unknown. */
function take(state: WatchState, element: string, us: number | undefined, own: number): WatchStep {
  const { cycle, inCycle, rating, spent } = state;
  const earlier = inCycle.find((item) => item.element === element)?.reading;
  const total =
    us === undefined || (earlier !== undefined && earlier.us === undefined)
      ? undefined
      : us + (earlier?.us ?? 0);
  const rated = rating ?? earlier?.rating;
  const reading = {
    cycle,
    ...(total === undefined ? {} : { us: total }),
    ...(rated === undefined ? {} : { rating: rated }),
  };
  const more = (total ?? 0) - (earlier?.us ?? 0);
  const last: WatchReading = { element, reading };
  const changes: readonly WatchChange[] = [{ kind: 'reading', element, cycle, to: reading }];
  const after = {
    ...state,
    rating: undefined,
    last,
    inCycle: [...inCycle.filter((item) => item.element !== element), last],
    spent: { ...spent, readings: spent.readings + more, lost: spent.lost + own - more },
  };
  return { state: after, changes };
}

function doneWith(state: WatchState, element: string | undefined): WatchState {
  if (element === undefined || !state.plan.order.includes(element)) return state;
  return whole({ ...state, done: [...state.done, element] });
}

/** After the last element of the order the next cycle. */
function whole(state: WatchState): WatchState {
  const { plan, phase } = state;
  if (plan.order.length === 0 || phase === 'ready' || runningElement(state) !== undefined) return state;
  return { ...state, cycle: state.cycle + 1, done: [], inCycle: [] };
}

function foreign(state: WatchState, at: number): WatchStep {
  if (state.foreign === undefined)
    return { state: { ...state, foreign: { since: at, off: 0 } }, changes: [] };
  const us = at - state.foreign.since - state.foreign.off;
  const count = state.foreignCount + 1;
  const after = {
    ...state,
    foreign: undefined,
    foreignCount: count,
    off: state.off + us,
    spent: { ...state.spent, foreign: state.spent.foreign + us },
  };
  const to = { cycle: state.cycle, element: runningElement(state), us };
  return { state: after, changes: us === 0 ? [] : [{ kind: 'foreign', count, to }] };
}

function pauseOrGoOn(state: WatchState, at: number): WatchState {
  if (state.phase !== 'paused') return { ...state, phase: 'paused', pausedSince: at };
  const paused = at - (state.pausedSince ?? at);
  return {
    ...state,
    phase: 'running',
    pausedSince: undefined,
    off: state.off + paused,
    foreign: state.foreign === undefined ? undefined : { ...state.foreign, off: state.foreign.off + paused },
    spent: { ...state.spent, paused: state.spent.paused + paused },
  };
}

/** The cycle is given up: its running element has no reading, and the next cycle begins with the press. */
function newCycle(state: WatchState, at: number): WatchState {
  const spent = { ...state.spent, lost: state.spent.lost + ownTime(state, at) };
  const fresh = { done: [], inCycle: [], off: 0, unsplit: undefined, rating: undefined };
  return { ...state, ...fresh, cycle: state.cycle + 1, since: at, spent };
}

/** The running element is not finished, so it has no reading. */
function end(state: WatchState, at: number): WatchStep {
  const going = state.phase === 'paused' ? pauseOrGoOn(state, at) : state;
  const { state: done, changes } =
    going.foreign === undefined ? { state: going, changes: [] } : foreign(going, at);
  const spent = { ...done.spent, lost: done.spent.lost + ownTime(done, at) };
  return { state: { ...done, phase: 'ended', since: at, off: 0, unsplit: undefined, spent }, changes };
}

/** A rating of the element that runs goes with its reading once it is taken; one of the last reading is written at once. */
function rate(state: WatchState, of: 'running' | 'last', rating: number | undefined): WatchStep {
  if (rating !== undefined && !(rating > 0 && rating <= 1000))
    return { state, changes: [], refused: 'A rating is a number above 0, such as 95.' };
  if (of === 'running') {
    return state.phase === 'running' || state.phase === 'paused'
      ? { state: { ...state, rating }, changes: [] }
      : { state, changes: [], refused: 'Begin the watch first.' };
  }
  if (state.last === undefined)
    return { state, changes: [], refused: 'Take a reading first; its rating comes after it.' };
  const { element, reading: was } = state.last;
  const { rating: _, ...rest } = was;
  const reading = rating === undefined ? rest : { ...rest, rating };
  const last = { element, reading };
  const same = (item: WatchReading) => item.element === element && item.reading.cycle === reading.cycle;
  const inCycle = state.inCycle.map((item) => (same(item) ? last : item));
  return {
    state: { ...state, last, inCycle },
    changes: [{ kind: 'reading', element, cycle: reading.cycle, to: reading }],
  };
}
