import {
  bothHandsSlower,
  developed,
  instanceOf,
  ordersOf,
  periodInterval,
  scheduleOf,
  shareOfBothAtWork,
  slowedBy,
  type Work,
  workFromRecord,
} from '@evenhand/core/develop';
import { readMethod } from '@evenhand/core/examine';
import { type Random, seededRandom, standardNormalQuantile } from '@evenhand/core/ground/numerics';
import { describe, expect, it } from 'vitest';
import { type RecordedOperator, recordedOperator } from '../helpers/recorded-operator.ts';

/**
 * The interval of a whole cycle, composed from a drawn work, must hold the true time of that cycle as often as it says. The
 * operators are invented, so their true times are known.
 */

/** Draws of each interval; the program takes more, which makes its ends steadier and no wider. */
const draws = 60;

/** The true period of the composed method lies in its predicted interval. */
function holds(
  { study, truth }: RecordedOperator,
  record: 'all' | 'some',
  random: Random,
  seed: number,
): boolean {
  const [drawn, reading] = [workFromRecord(study, 'all'), readMethod(study, record)];
  if (!drawn.ok || !reading.ok) throw new Error('the record cannot be read');
  const { work } = drawn.value;
  const method = developed(work, { readings: [reading.value], seed: 1, rounds: 0, states: 0 });
  if (!method.ok) throw new Error(method.error.message);
  const { instance, composed, times } = method.value;
  const orders = ordersOf(instance, composed.schedule);
  const found = periodInterval(work, times, orders, { draws, seed })?.interval;
  const real = instanceOf(work, { step: (id) => trueStep(work, id, truth), travel: trueMove(truth) });
  const schedule = scheduleOf(real, orders);
  if (found === undefined || schedule === undefined) throw new Error('the orders cannot be kept');
  // How much two working hands slow each other is supposed, not predicted: it is drawn as the interval supposes it.
  const slower = bothHandsSlower.least + (bothHandsSlower.most - bothHandsSlower.least) * random();
  const period = schedule.period * slowedBy(shareOfBothAtWork(work, real, schedule), slower);
  return found.low <= period && period <= found.high;
}

function trueStep(work: Work, id: string, truth: RecordedOperator['truth']): number {
  const step = work.steps.find((item) => item.id === id);
  if (step === undefined) throw new Error(`no step ${id}`);
  const [from, to] = [step.place, step.place];
  return step.motions.reduce((sum, { kind, object }) => sum + truth({ kind, object, from, to }), 0);
}

function trueMove(truth: RecordedOperator['truth']) {
  return (_hand: unknown, from: string, to: string, load: string | undefined) =>
    truth({ kind: load === undefined ? 'TE' : 'TL', object: load, from, to });
}

/** Fewest and most of n that a share leaves with 99 %: exact binomial sums. */
function allowed(n: number, share: number): { readonly fewest: number; readonly most: number } {
  const chances = [(1 - share) ** n];
  for (let k = 1; k <= n; k += 1)
    chances.push(((chances[k - 1] ?? 0) * (n - k + 1) * share) / (k * (1 - share)));
  let [fewest, below] = [0, chances[0] ?? 0];
  while (below < 0.005) below += chances[++fewest] ?? 1;
  let [most, above] = [n, chances[n] ?? 0];
  while (above < 0.005) above += chances[--most] ?? 1;
  return { fewest, most };
}

function heldOf(n: number, seed: number, record: 'all' | 'some', parts: number): number {
  const random = seededRandom(seed);
  let held = 0;
  for (let operator = 0; operator < n; operator += 1) {
    const made = recordedOperator(random, { between: 0.2, within: 0.12 }, { parts, cycles: 6 });
    if (holds(made, record, random, operator + 1)) held += 1;
  }
  return held;
}

describe('the interval of a whole predicted cycle, called 90 %, of invented operators', () => {
  it('holds 90 % where two of five parts were never timed, as far as the number of trials tells', () => {
    const n = 60;
    const { fewest, most } = allowed(n, 0.9);
    const held = heldOf(n, 41, 'some', 5);
    expect(held).toBeGreaterThanOrEqual(fewest);
    expect(held).toBeLessThanOrEqual(most);
  }, 30_000);

  it('holds 90 % to 95.6 % where every part was timed six times: each mean is widened by Student’s t for its own five degrees of freedom, a sum would need less', () => {
    const n = 60;
    // 2.015 is t of five degrees at 95 %, from printed tables of Student's t.
    const widened = 1 - 2 * (1 - normalShare(2.015));
    expect(widened).toBeCloseTo(0.956, 3);
    const held = heldOf(n, 42, 'all', 3);
    expect(held).toBeGreaterThanOrEqual(allowed(n, 0.9).fewest);
    expect(held).toBeLessThanOrEqual(allowed(n, widened).most);
  }, 30_000);
});

/** Share of the standard normal distribution below z, by halving on its quantile. */
function normalShare(z: number): number {
  let [low, high] = [0, 1];
  for (let turn = 0; turn < 50; turn += 1) {
    const middle = (low + high) / 2;
    if (standardNormalQuantile(middle) < z) low = middle;
    else high = middle;
  }
  return low;
}
