import { readFileSync } from 'node:fs';
import {
  changeOf,
  developed,
  ordersOf,
  periodInterval,
  workFromRecord,
  worthOf,
} from '@evenhand/core/develop';
import { readMethod } from '@evenhand/core/examine';
import { parseStudy } from '@evenhand/core/ground/study';
import { expect, it } from 'vitest';

/**
 * The demonstration has two films. From the record of the present method alone, the work is drawn and the changes are made
 * that the other film shows: a fixture, two couplings at once, drop delivery. The other film was scripted by itself and is
 * read by the computation of no figure here.
 */
it('the improved film of the demonstration lies inside the 90 % interval predicted from the present one', () => {
  const file = new URL('../../examples/couplings/couplings.evenhand.json', import.meta.url);
  const demo = parseStudy(readFileSync(file, 'utf8'));
  if (!demo.ok) throw new Error('the demonstration cannot be read');
  const [present, improved] = [readMethod(demo.value, 'present'), readMethod(demo.value, 'improved')];
  const drawn = workFromRecord(demo.value, 'present');
  if (!present.ok || !improved.ok || !drawn.ok) throw new Error('no record');
  const meanOf = ({ cycles, method }: typeof present.value) =>
    cycles.reduce((sum, { duration }) => sum + duration, 0) / cycles.length / method.unitsPerCycle;
  const wish = { readings: [present.value], seed: 1, rounds: 10, states: 60_000, draws: 20 };
  const base = developed(drawn.value.work, wish);
  const changes = (['fixture', 'two-units', 'drop-delivery'] as const).flatMap(
    (id) => changeOf(id, drawn.value.work) ?? [],
  );
  const worth = base.ok ? worthOf(base.value, drawn.value.work, changes, wish) : undefined;
  if (worth === undefined) throw new Error('no method');
  const { work, times, instance, composed } = worth.method;
  expect(work.unitsPerCycle).toBe(2);
  const expected = periodInterval(work, times, ordersOf(instance, composed.schedule), { draws: 400 });
  if (expected === undefined) throw new Error('no interval');
  const film = meanOf(improved.value);
  const { low, high } = expected.interval;
  expect(film).toBeGreaterThan(low / 2);
  expect(film).toBeLessThan(high / 2);
  // The interval says something: the present method lies outside it, and it is no wider than half of what it speaks of.
  expect(meanOf(present.value)).toBeGreaterThan(high / 2);
  expect(high - low).toBeLessThan(0.5 * expected.likely);
});
