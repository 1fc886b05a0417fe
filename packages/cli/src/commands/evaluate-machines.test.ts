import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';

const machines = (...more: string[]) => call(['evaluate', 'machines', ...more]);
// The worked example of the reference checks (7-09): 5 min together, 1 min walking, 20 min of running, 10 and 30 an hour.
const round = ['--together', '5', '--worker-alone', '1', '--machine-alone', '20'];
const costs = ['--hourly-cost', '10', '--machine-cost', '30'];

describe('evenhand evaluate machines', () => {
  it('in a fixed round tells the numbers beside the ideal and which makes a piece cheapest', async () => {
    const { code, out } = await machines(...round, ...costs);
    expect(code).toBe(0);
    // By hand: (5 + 20) ÷ (5 + 1) = 4.17; with 4 machines (10 + 4 · 30) · 25 ÷ 60 ÷ 4 = 13.54, with 5 (10 + 5 · 30) · 30 ÷ 60 ÷ 5 = 16.
    expect(out).toContain('all be busy with 4.17 machines');
    expect(out).toMatch(/^4 +25\.00 min .* 13\.5417$/m);
    expect(out).toMatch(/^5 +30\.00 min .* 16\.0000$/m);
    expect(out).toContain('A piece costs least with 4 machines.');
    const json = JSON.parse((await machines(...round, ...costs, '--machines', '3', '--json')).out);
    // Three machines take 18 of the 25 minutes of the worker.
    expect(json.rows).toHaveLength(1);
    expect(json.rows[0]).toMatchObject({
      machines: 3,
      cycle: 25,
      workerIdle: 7,
      machineIdle: 0,
      bound: 'machine',
    });
  });

  it('without costs names none the cheapest', async () => {
    const { out } = await machines(...round);
    expect(out).not.toMatch(/cost a piece|costs least/);
    const json = JSON.parse((await machines(...round, '--json')).out);
    expect(json.rows.map((row: { machines: number }) => row.machines)).toEqual([4, 5]);
    expect(json.rows[0].costAPiece).toBeUndefined();
    expect(json.cheapest).toBeUndefined();
  });

  it('at random keeps to the finite queuing tables (Peck and Hazelwood 1958: 20 machines, X = 0.10, one worker: F = 0.500, D = 0.999)', async () => {
    const { code, out } = await machines('--stopped', '10', '--machines', '20', '--json');
    expect(code).toBe(0);
    const [row] = JSON.parse(out).rows;
    expect(row.efficiency.toFixed(3)).toBe('0.500');
    expect(row.mustWait.toFixed(3)).toBe('0.999');
    expect(row.running + row.served + row.waiting).toBeCloseTo(20, 9);
    const text = (await machines('--stopped', '10')).out;
    expect(text).toMatch(/^1 +0\.90 +0\.00 +100\.0 % +0\.0 %/m);
    expect(text).toContain('machine-hours');
    expect((await machines('--stopped', '10', '--workers', '2')).out).not.toContain('binomial');
  });

  it.each<[readonly string[], RegExp]>([
    [[], /Say --together and --machine-alone for a fixed round, or --stopped/],
    [['--together', '5'], /Say --together and --machine-alone/],
    [[...round, '--stopped', '10'], /--together belongs to a fixed round and --stopped/],
    [[...round, '--hourly-cost', '10'], /needs both --hourly-cost N and --machine-cost N/],
    [['--together', 'x', '--machine-alone', '5'], /--together x is no number/],
    [['--together', '0', '--machine-alone', '5'], /time of the worker at one machine must be/],
    [[...round, '--machines', '0'], /number of machines must be a whole number/],
    [[...round, '--machines', '2.5'], /--machines 2\.5 is no whole number/],
    [['--together', '0.001', '--machine-alone', '5'], /More machines than 1000/],
    [['--workers', '2'], /--stopped PERCENT is missing/],
    [['--stopped', '0.1'], /write 10 or/],
    [['--stopped', '100'], /service factor must be/],
    [['--stopped', '10', '--workers', '0'], /number of workers must be/],
    [['--stopped', '10', '--hours', '0'], /hours of the shift must be/],
  ])('%j is refused in words', async (more, words) => {
    const { code, err, out } = await machines(...more, '--json');
    expect(code).toBe(2);
    expect(err).toMatch(words);
    expect(err).not.toMatch(/\{\w+\}|undefined|NaN/);
    expect(JSON.parse(out).ok).toBe(false);
  });
});
