import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Stretch, watchedWork } from '../../../../../../tests/oracles/watched-work.ts';
import {
  type JointTime,
  readyWatch,
  type WatchChange,
  type WatchCommand,
  type WatchState,
  type WatchTiming,
  watchPlan,
  watchStep,
} from './index.ts';

const order = ['a', 'b', 'c', 'd'];
const plan = watchPlan([...order.map((id) => ({ id })), { id: 'box', occurs: { times: 1, cycles: 9 } }]);
const timings = fc.constantFrom<WatchTiming>('continuous', 'repetitive');

/** A watch in use, and the time study as the changes leave it. */
function inUse(timing: WatchTiming, begin: number) {
  let state: WatchState = readyWatch(plan, timing);
  const readings = new Map<string, number | undefined>();
  const foreign = new Map<number, { readonly cycle: number; readonly us: number }>();
  const joint: JointTime[] = [];
  const write = (change: WatchChange) => {
    if (change.kind === 'foreign') {
      if (change.to === null) foreign.delete(change.count);
      else foreign.set(change.count, { cycle: change.to.cycle, us: change.to.us });
    } else if (change.to === null) readings.delete(`${change.element} ${change.cycle}`);
    else readings.set(`${change.element} ${change.cycle}`, change.to.us);
  };
  const press = (command: WatchCommand) => {
    const step = watchStep(state, command);
    if (step.state.joint !== state.joint) {
      if (command.do === 'take-back') joint.pop();
      else if (step.state.joint !== undefined) joint.push(step.state.joint);
    }
    state = step.state;
    step.changes.forEach(write);
    return step.refused;
  };
  press({ do: 'begin', at: begin });
  return { press, now: () => state, readings, foreign, joint };
}

const time = fc.integer({ min: 1, max: 9_000_000 });
const part = fc.record({ kind: fc.constantFrom<'foreign' | 'pause'>('foreign', 'pause'), us: time });
const stretch = fc.record({
  first: time,
  breaks: fc.array(fc.record({ part, after: time }), { maxLength: 2 }),
  seen: fc.boolean().chain((coin) => (coin ? fc.constant(true) : fc.boolean())),
  mistake: fc.constantFrom<'none' | 'read' | 'foreign' | 'miss'>(
    'none',
    'none',
    'none',
    'read',
    'foreign',
    'miss',
  ),
});
const cycle = fc.record({
  elements: fc.shuffledSubarray(order, { minLength: 1 }),
  box: fc.option(fc.nat(4), { freq: 3 }),
  stretches: fc.array(stretch, { minLength: 5, maxLength: 5 }),
});

type Drawn = typeof cycle extends fc.Arbitrary<infer Value> ? Value : never;

/** What happened and, beside it, what an observer presses who sees it happen. */
class Observer {
  readonly happened: Stretch[] = [];
  readonly presses: WatchCommand[] = [];
  readonly #timing: WatchTiming;
  #at: number;
  /** Presses that wait until it is noticed that an end went by. */
  #late: ((at: number) => WatchCommand)[] = [];

  constructor(timing: WatchTiming, begin: number) {
    this.#timing = timing;
    this.#at = begin;
  }

  cycle(number: number, drawn: Drawn): void {
    const place = Math.min(drawn.box ?? 0, drawn.elements.length - 1);
    const elements = drawn.box === null ? drawn.elements : drawn.elements.toSpliced(place, 0, 'box');
    const open = new Set(order);
    for (const [index, element] of elements.entries()) {
      // What is not done in this cycle is skipped as soon as it is the next to be expected.
      for (const next of order.filter((id) => open.has(id))) {
        if (elements.slice(index).includes(next)) break;
        this.#press((at) => ({ do: 'skip', at }));
        open.delete(next);
      }
      const expected = order.find((id) => open.has(id)) === element;
      this.#stretch(number, element, expected, drawn.stretches[index] as Drawn['stretches'][number]);
      open.delete(element);
    }
    for (const _ of open) this.#press((at) => ({ do: 'skip', at }));
  }

  finish(): number {
    this.#notice(this.#at);
    return this.#at;
  }

  #stretch(cycle: number, element: string, expected: boolean, drawn: Drawn['stretches'][number]): void {
    const { first, breaks, mistake } = drawn;
    this.#notice(this.#at + Math.floor(first / 2));
    const parts: Stretch['parts'][number][] = [{ kind: 'work', us: first }];
    this.#at += first;
    let wrong = mistake !== 'none';
    if (mistake !== 'none') this.presses.push({ do: mistake, at: this.#at });
    for (const { part, after } of breaks) {
      // A pause may lie between the mistake and its taking back.
      if (wrong && part.kind === 'foreign') this.presses.push({ do: 'take-back' });
      wrong &&= part.kind !== 'foreign';
      this.presses.push({ do: part.kind, at: this.#at }, { do: part.kind, at: this.#at + part.us });
      parts.push(part, { kind: 'work', us: after });
      this.#at += part.us + after;
    }
    if (wrong) this.presses.push({ do: 'take-back' });
    const seen = drawn.seen || !expected;
    this.happened.push({ cycle, element, parts, seen });
    if (seen)
      this.presses.push({ ...(expected ? { do: 'read' } : { do: 'read-as', element }), at: this.#at });
    else if (this.#timing === 'continuous') this.#late.push((at) => ({ do: 'miss', at }));
    else this.presses.push({ do: 'miss', at: this.#at });
  }

  #press(make: (at: number) => WatchCommand): void {
    if (this.#late.length > 0) this.#late.push(make);
    else this.presses.push(make(this.#at));
  }

  #notice(at: number): void {
    this.presses.push(...this.#late.map((make) => make(at)));
    this.#late = [];
  }
}

describe('laws of the stopwatch', () => {
  it('reads what happened: against a way that knows no watch', () => {
    fc.assert(
      fc.property(
        fc.array(cycle, { minLength: 1, maxLength: 5 }),
        timings,
        fc.nat(1e9),
        (cycles, timing, begin) => {
          const observer = new Observer(timing, begin);
          for (const [index, drawn] of cycles.entries()) observer.cycle(index + 1, drawn);
          const until = observer.finish();
          const { happened } = observer;
          const watch = inUse(timing, begin);
          for (const press of observer.presses) expect(watch.press(press)).toBeUndefined();
          const { times, foreign, together } = watchedWork(happened, timing);
          expect(Object.fromEntries(watch.readings)).toEqual(Object.fromEntries(times));
          expect([...watch.foreign.values()]).toEqual(foreign);
          expect(watch.joint.map(({ elements, us }) => ({ elements, us }))).toEqual(together);
          const { spent } = watch.now();
          watch.press({ do: 'end', at: until });
          const all = happened.flatMap(({ parts }) => parts).reduce((sum, { us }) => sum + us, 0);
          expect(spent.readings + spent.foreign + spent.paused + spent.lost).toBeLessThanOrEqual(all);
          const end = watch.now().spent;
          expect(end.readings + end.foreign + end.paused + end.lost).toBe(all);
        },
      ),
      { seed: 41, numRuns: 400 },
    );
  });

  const anyPress = fc.record({
    doing: fc.constantFrom(
      ...(['read', 'read', 'read', 'miss', 'skip', 'foreign', 'pause', 'new-cycle', 'read-as'] as const),
      ...(['take-back', 'rate', 'plan'] as const),
    ),
    element: fc.constantFrom('a', 'b', 'c', 'box', 'nothing'),
    wait: fc.nat(5_000_000),
  });

  function commandOf(doing: string, element: string, at: number): WatchCommand {
    if (doing === 'read-as') return { do: 'read-as', element, at };
    if (doing === 'take-back') return { do: 'take-back' };
    if (doing === 'rate')
      return { do: 'rate', of: at % 2 === 0 ? 'last' : 'running', rating: 50 + (at % 60) };
    if (doing === 'plan') {
      const left = order.filter((id) => id !== element);
      return { do: 'plan', plan: { order: at % 2 === 0 ? left : order, occasional: plan.occasional } };
    }
    return { do: doing, at } as WatchCommand;
  }

  it('every microsecond goes to exactly one thing, whatever is pressed', () => {
    fc.assert(
      fc.property(fc.array(anyPress, { maxLength: 60 }), timings, (presses, timing) => {
        let at = 1_000;
        const watch = inUse(timing, at);
        for (const { doing, element, wait } of presses) {
          at += wait;
          watch.press(commandOf(doing, element, at));
        }
        at += 77;
        watch.press({ do: 'end', at });
        const { spent, begun } = watch.now();
        const sum = (values: Iterable<number | undefined>) =>
          [...values].reduce<number>((total, us) => total + (us ?? 0), 0);
        expect(spent.readings).toBe(sum(watch.readings.values()));
        expect(spent.foreign).toBe(sum([...watch.foreign.values()].map(({ us }) => us)));
        expect(Math.min(...Object.values(spent))).toBeGreaterThanOrEqual(0);
        expect(spent.readings + spent.foreign + spent.paused + spent.lost).toBe(at - (begun ?? 0));
      }),
      { seed: 21, numRuns: 600 },
    );
  });

  it('what is taken back leaves the time study as it was before the press', () => {
    fc.assert(
      fc.property(fc.array(anyPress, { maxLength: 30 }), anyPress, timings, (presses, last, timing) => {
        let at = 1_000;
        const watch = inUse(timing, at);
        for (const { doing, element, wait } of presses) {
          at += wait;
          watch.press(commandOf(doing, element, at));
        }
        const kept = {
          readings: new Map(watch.readings),
          foreign: new Map(watch.foreign),
          state: watch.now(),
        };
        const command = commandOf(last.doing, last.element, at + last.wait);
        const own = !['take-back', 'rate', 'plan', 'pause'].includes(command.do);
        if (watch.press(command) !== undefined || !own) return;
        watch.press({ do: 'take-back' });
        expect(watch.readings).toEqual(kept.readings);
        expect(watch.foreign).toEqual(kept.foreign);
        expect(watch.now()).toEqual(kept.state);
      }),
      { seed: 5, numRuns: 400 },
    );
  });
});
