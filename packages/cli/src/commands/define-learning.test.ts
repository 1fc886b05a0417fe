import { describe, expect, it } from 'vitest';
import { titled } from '../../../../tests/reference/check.ts';
import {
  averageBatches,
  cumulativeAverages,
  sources,
} from '../../../../tests/reference/published-learning.ts';
import {
  sources as totalSources,
  unitTotals,
} from '../../../../tests/reference/published-learning-totals.ts';
import { sources as unitSources, unitTimes } from '../../../../tests/reference/published-learning-units.ts';
import { call } from '../testing/fake-io.ts';

const learning = (...more: string[]) => call(['define', 'learning', ...more]);
const asJson = async (model: string, a: number, r: number, ...more: string[]) =>
  JSON.parse(
    (await learning('--model', model, '--first', `${a}`, '--rate', `${r * 100}%`, '--json', ...more)).out,
  );

/** Traps use another exponent or model than they say; what is right about them is held where the model is tested. */
const plain = <Item extends { readonly check: { readonly trap?: boolean } }>(list: readonly Item[]) =>
  list.filter(({ check }) => check.trap !== true);

describe('evenhand define learning: published figures', () => {
  it.each(plain(titled(unitTimes, unitSources)))('unit model $title', async ({ check }) => {
    const { a, n, r } = check.inputs;
    const { unit } = await asJson('unit', a, r, '--unit', `${n}`);
    expect(unit.time).toBeCloseTo(Number(check.computed.y), 7);
  });

  it.each(plain(titled(unitTotals, totalSources)))('unit model, totals $title', async ({ check }) => {
    const { a, n1, n2, r } = check.inputs;
    const { batch } = await asJson('unit', a, r, '--batch', `${n1}-${n2}`);
    expect(batch.total / Number(check.computed.total)).toBeCloseTo(1, 9);
  });

  it.each(titled(cumulativeAverages, sources))('average model $title', async ({ check }) => {
    const { a, n, r } = check.inputs;
    const { unit } = await asJson('average', a, r, '--unit', `${n}`);
    expect(unit.average).toBeCloseTo(Number(check.computed.avg), 7);
    if (check.computed.total !== undefined) expect(unit.total).toBeCloseTo(Number(check.computed.total), 6);
    if (check.computed.unit !== undefined) expect(unit.time).toBeCloseTo(Number(check.computed.unit), 6);
  });

  it.each(titled(averageBatches, sources))('average model, batches $title', async ({ check }) => {
    const { a, m, n, r } = check.inputs;
    const { batch } = await asJson('average', a, r, '--batch', `${m}-${n}`);
    expect(batch.total).toBeCloseTo(Number(check.computed.total), 6);
  });
});

describe('evenhand define learning', () => {
  const base = ['--first', '100', '--rate', '80'];

  it('names the model in every result', async () => {
    const more = ['--unit', '4', '--batch', '3-4', '--reach', '60'];
    const unit = await learning('--model', 'unit', ...base, ...more);
    const average = await learning('--model', 'average', ...base, ...more);
    expect(unit.out).toContain('Unit model (Crawford)');
    expect(average.out).toContain('Cumulative average model (Wright)');
    // Unit model: 100, 80, …, 64 at the fourth. Average model: the average of four is 64, of two 80, so 256 − 160 for two.
    expect(unit.out).toContain('Unit 4 takes 64.0000 (unit model)');
    expect(average.out).toContain('Units 3 to 4 take 96.0000, on average 48.0000 (cumulative average model)');
    expect(average.out).toContain('60.0000 is reached at unit 2.00, so from unit 2 on');
    for (const { out } of [unit, average]) {
      const results = out
        .split('\n')
        .filter((line) => /takes?|reached/.test(line) && !line.includes('rate to'));
      expect(
        results.filter((line) => line.startsWith('Unit') || line.includes('reached')).length,
      ).toBeGreaterThan(3);
    }
    const json = JSON.parse((await learning('--model', 'average', ...base, '--unit', '4', '--json')).out);
    expect(json).toMatchObject({ ok: true, model: 'cumulative-average', rate: 0.8 });
    expect(json.words).toContain('Wright');
  });

  it.each<[readonly string[], RegExp]>([
    [
      [...base, '--unit', '4'],
      /The model must be said: --model unit \(.+Crawford.+--model average \(.+Wright/,
    ],
    [['--model', 'log', ...base, '--unit', '4'], /--model log is not known/],
    [['--model', 'unit', '--rate', '80', '--unit', '4'], /--first TIME is missing/],
    [['--model', 'unit', '--first', '5', '--unit', '4'], /--rate PERCENT is missing/],
    [['--model', 'unit', ...base], /Say what is wanted/],
    [['--model', 'unit', ...base, '--unit', '0'], /The unit must be a whole number of at least 1/],
    [['--model', 'unit', ...base, '--batch', '4'], /--batch 4 is no stretch of units/],
    [['--model', 'unit', ...base, '--batch', '9-4'], /9-4 runs backwards\. Write 4-9/],
    [
      ['--model', 'unit', '--first', '0', '--rate', '80', '--unit', '4'],
      /time of the first unit must be a number above 0/,
    ],
    [['--model', 'unit', '--first', '5', '--rate', '120', '--unit', '4'], /learning rate must be/],
    [['--model', 'unit', '--first', '5', '--rate', '0.8', '--unit', '4'], /write 80/],
    [
      ['--model', 'average', '--first', '5', '--rate', '50', '--unit', '4'],
      /a further unit would take no time/,
    ],
    [['--model', 'unit', '--first', '5', '--rate', '100', '--reach', '4'], /never reached/],
  ])('%j is refused in words', async (more, words) => {
    const { code, out, err } = await learning(...more);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(words);
    expect(err).not.toMatch(/NaN|undefined|\{\w+\}/);
  });
});
