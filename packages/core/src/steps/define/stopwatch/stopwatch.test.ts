import { describe, expect, it } from 'vitest';
import { timesFromRunningWatch } from '../reading.ts';
import {
  comingElement,
  elapsedTime,
  readyWatch,
  recentReadings,
  runningElement,
  runningTime,
  type WatchCommand,
  type WatchPlan,
  type WatchTiming,
  watchPlan,
  watchStep,
} from './index.ts';

const plan = watchPlan([
  { id: 'a' },
  { id: 'b' },
  { id: 'c' },
  { id: 'box', occurs: { times: 1, cycles: 10 } },
]);
const s = (seconds: number) => seconds * 1_000_000;

function commandOf(press: string): WatchCommand {
  const [word = '', at = '0'] = press.split(' ');
  const [doing = '', what = ''] = word.split(':');
  if (doing === 'rate')
    return { do: 'rate', of: what as 'last', rating: at === '-' ? undefined : Number(at) };
  if (doing === 'take-back') return { do: 'take-back' };
  const time = { at: s(Number(at)) };
  return doing === 'read-as'
    ? { do: doing, element: what, ...time }
    : ({ do: doing, ...time } as WatchCommand);
}

/** Presses one after another, "do at" or "read-as:ID at" in seconds; gives what the time study then holds. */
function run(presses: readonly string[], timing: WatchTiming = 'continuous', of: WatchPlan = plan) {
  let state = readyWatch(of, timing);
  const held = new Map<string, string>();
  const refused: string[] = [];
  for (const press of presses) {
    const step = watchStep(state, commandOf(press));
    state = step.state;
    if (step.refused !== undefined) refused.push(step.refused);
    for (const change of step.changes) {
      const key = change.kind === 'foreign' ? `foreign${change.count}` : `${change.element}${change.cycle}`;
      if (change.to === null) held.delete(key);
      else if (change.kind === 'foreign') held.set(key, `in ${change.to.element} ${change.to.us / 1e6}`);
      else {
        const { us, rating } = change.to;
        const time = us === undefined ? 'missed' : String(us / 1e6);
        held.set(key, rating === undefined ? time : `${time} at ${rating}`);
      }
    }
  }
  return { state, refused, held: Object.fromEntries(held) };
}

describe('the stopwatch', () => {
  it('reads element after element and cycle after cycle', () => {
    const { held, state } = run(['begin 10', 'read 12', 'read 13', 'read 17', 'read 18.5']);
    expect(held).toEqual({ a1: '2', b1: '1', c1: '4', a2: '1.5' });
    expect([state.cycle, runningElement(state), comingElement(state)]).toEqual([2, 'b', 'c']);
    expect([runningTime(state, s(19)), elapsedTime(state, s(19))]).toEqual([s(0.5), s(9)]);
  });

  it('a missed reading of a watch that runs on leaves two elements without a time, and keeps their joint time', () => {
    const { held, state } = run(['begin 0', 'miss 2', 'read 5', 'read 6']);
    expect(held).toEqual({ a1: 'missed', b1: 'missed', c1: '1' });
    expect(state.joint).toEqual({ cycle: 1, elements: ['a', 'b'], us: s(5) });
    // The rule for figures that were read off a running watch: end of a missed, b at 5, c at 6.
    expect(timesFromRunningWatch([undefined, 5, 6])).toEqual({ ok: true, value: [undefined, undefined, 1] });
  });

  it('two readings missed one after another leave three elements without a time', () => {
    const { held, state } = run(['begin 0', 'miss 1', 'miss 2', 'read 4', 'read 5']);
    expect(held).toEqual({ a1: 'missed', b1: 'missed', c1: 'missed', a2: '1' });
    expect(state.joint).toEqual({ cycle: 1, elements: ['a', 'b', 'c'], us: s(4) });
  });

  it('a missed reading of a watch that goes back to zero leaves one element without a time', () => {
    const { held, state } = run(['begin 0', 'miss 2', 'read 5'], 'repetitive');
    expect(held).toEqual({ a1: 'missed', b1: '3' });
    expect(state.joint).toBeUndefined();
  });

  it('foreign and paused time is in no reading, in whatever order they lie within one another', () => {
    const { held, state } = run(['begin 0', 'foreign 1', 'foreign 4', 'pause 5', 'pause 9', 'read 10']);
    expect(held).toEqual({ foreign1: 'in a 3', a1: '3' });
    expect(state.spent).toEqual({ readings: s(3), foreign: s(3), paused: s(4), lost: 0 });
    const within = run(['begin 0', 'foreign 1', 'pause 2', 'pause 5', 'foreign 6', 'read 7']);
    expect(within.held).toEqual({ foreign1: 'in a 2', a1: '2' });
    expect(runningTime(run(['begin 0', 'foreign 1', 'pause 2', 'pause 5']).state, s(6))).toBe(s(1));
  });

  it('an element out of order is read by its name, and the one that was expected is still to come', () => {
    const { held, state } = run(['begin 0', 'read-as:c 2', 'read 3', 'read 5', 'read 6']);
    expect(held).toEqual({ c1: '2', a1: '1', b1: '2', a2: '1' });
    expect(state.cycle).toBe(2);
  });

  it('an occasional element is read by its name, and the cycle goes on where it was', () => {
    const { held, state } = run(['begin 0', 'read-as:box 12', 'read 13']);
    expect(held).toEqual({ box1: '12', a1: '1' });
    expect(runningElement(state)).toBe('b');
  });

  it('an element that is done twice in a cycle has the sum, unknown when one of the two is', () => {
    expect(run(['begin 0', 'read 2', 'read-as:a 3']).held).toEqual({ a1: '3' });
    const { held, state } = run(['begin 0', 'read 2', 'miss 3', 'read-as:a 5', 'read 6']);
    expect(held).toEqual({ a1: 'missed', b1: 'missed', c1: '1' });
    expect(state.spent).toEqual({ readings: s(1), foreign: 0, paused: 0, lost: s(5) });
  });

  it('what is skipped leaves its time to the next element; a cycle that is given up has no reading for it', () => {
    expect(run(['begin 0', 'skip 1', 'read 3']).held).toEqual({ b1: '3' });
    const { held, state } = run(['begin 0', 'read 1', 'new-cycle 3', 'read 4']);
    expect(held).toEqual({ a1: '1', a2: '1' });
    expect(state.spent.lost).toBe(s(2));
  });

  it('a rating goes with the running element, or is given to the last reading afterwards', () => {
    const { held } = run(['begin 0', 'rate:running 90', 'read 1', 'read 2', 'rate:last 110', 'read 3']);
    expect(held).toEqual({ a1: '1 at 90', b1: '1 at 110', c1: '1' });
    expect(run(['begin 0', 'rate:running 90', 'read 1', 'rate:last -']).held).toEqual({ a1: '1' });
    expect(run(['begin 0', 'rate:last 90', 'rate:running -5']).refused).toEqual([
      'Take a reading first; its rating comes after it.',
      'A rating is a number above 0, such as 95.',
    ]);
  });

  it('takes press after press back, out of the time study too', () => {
    const presses = ['begin 0', 'read 2', 'read-as:a 3', 'foreign 4', 'foreign 6'];
    const taken = (times: number) => run([...presses, ...Array<string>(times).fill('take-back')]);
    expect(taken(1).held).toEqual({ a1: '3' });
    expect(taken(1).state.foreign?.since).toBe(s(4));
    expect(taken(2).state.foreign).toBeUndefined();
    expect(taken(3).held).toEqual({ a1: '2' });
    expect(taken(4).held).toEqual({});
    expect(taken(5).refused).toEqual(['There is nothing to take back.']);
  });

  it('a pause since the reading that is taken back remains a pause, its rating falls away', () => {
    const { held, state } = run(
      ['begin 0', 'read 2', 'rate:last 80', 'pause 3', 'pause 8', 'take-back', 'read 10'],
      'continuous',
    );
    expect(held).toEqual({ a1: '5' });
    expect(state.spent.paused).toBe(s(5));
    expect(run(['begin 0', 'read 2', 'pause 3', 'take-back']).state.phase).toBe('paused');
  });

  it('an end that was pressed by mistake is taken back, and time has gone on', () => {
    expect(run(['begin 0', 'read 1', 'end 2', 'take-back', 'read 4']).held).toEqual({ a1: '1', b1: '3' });
  });

  it('begins within a cycle, and follows the elements when they change meanwhile', () => {
    const within = readyWatch(plan, 'continuous', { cycle: 4, done: ['a'] });
    const begun = watchStep(within, { do: 'begin', at: 0 }).state;
    expect([begun.cycle, runningElement(begun)]).toEqual([4, 'b']);
    const more = watchPlan([{ id: 'b' }, { id: 'new' }]);
    const replanned = watchStep(begun, { do: 'plan', plan: more }).state;
    expect(comingElement(replanned)).toBe('new');
    const read = watchStep(watchStep(replanned, { do: 'read', at: 5 }).state, { do: 'read', at: 9 });
    expect(read.changes).toEqual([{ kind: 'reading', element: 'new', cycle: 4, to: { cycle: 4, us: 4 } }]);
    expect(read.state.cycle).toBe(5);
  });

  it('two presses in one moment leave an element without a time, not with a time of 0', () => {
    expect(run(['begin 0', 'read 1', 'read 1', 'foreign 2', 'foreign 2', 'read 3']).held).toEqual({
      a1: '1',
      b1: 'missed',
      c1: '2',
    });
  });

  it('tells what was read last, with the rating that was given afterwards', () => {
    const { state } = run(['begin 0', 'read 1', 'miss 2', 'pause 3', 'pause 4', 'rate:last 90', 'read 6']);
    expect(recentReadings(state, 2)).toEqual([
      { element: 'c', reading: { cycle: 1 } },
      { element: 'b', reading: { cycle: 1, rating: 90 } },
    ]);
    expect(recentReadings(state, 9)).toHaveLength(3);
  });

  it('says why a press is not taken', () => {
    expect(run(['read 1']).refused).toEqual(['Begin the watch first.']);
    expect(run(['begin 0', 'begin 1']).refused).toEqual(['The watch is running.']);
    expect(run(['begin 0', 'pause 1', 'read 2']).refused).toEqual(['The watch stands still. Go on first.']);
    expect(run(['begin 0', 'foreign 1', 'read 2']).refused).toEqual([
      'A foreign element goes on. End it first.',
    ]);
    expect(run(['begin 5', 'read 4']).refused[0]).toMatch(/went back/);
    expect(run(['begin 0', 'end 1', 'read 2']).refused).toEqual(['The watch has ended. Begin anew.']);
    expect(run(['begin 0', 'read-as:nothing 1']).refused).toEqual(['The time study has no such element.']);
    expect(run(['begin 0'], 'continuous', watchPlan([])).refused[0]).toMatch(/Name an element first/);
    expect(run(['begin 0', 'read 0.1234567']).refused).toEqual([
      'The press has no time, so it was not taken.',
    ]);
  });
});
