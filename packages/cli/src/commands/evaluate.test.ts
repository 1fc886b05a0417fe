import { writeStudy } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';
import { smallStudy } from '../testing/small-study.ts';

const files = { 'a.json': writeStudy(smallStudy) };
const evaluate = (...more: string[]) => call(['evaluate', 'a.json', ...more], { files });
const both = ['--before', 'present', '--after', 'better'];

describe('evenhand evaluate', () => {
  it('says time saved and output gained for a unit, and adds up where it comes from', async () => {
    // 2.5 s and 1.5 s a cycle of one unit: mean 2 s. One cycle of 2 s for two units: 1 s. Half the time, twice the output.
    const { code, out } = await evaluate(...both);
    expect(code).toBe(0);
    expect(out.replace(/\s+/g, ' ')).toContain(
      '50.0 % of the time is saved, which is 100.0 % more output in the same time: 1.00 s a unit.',
    );
    expect(out).toMatch(/removed +\d/);
    expect(out).not.toMatch(/undefined|NaN/);
    const json = JSON.parse((await evaluate(...both, '--json')).out);
    expect(json.difference.saving).toMatchObject({ timeSaved: 0.5, outputGained: 1 });
    const sum = (list: readonly number[]) => list.reduce((total, value) => total + value, 0);
    expect(json.decomposition.saved).toBe(1_000_000);
    expect(sum(Object.values(json.decomposition.totals))).toBe(1_000_000);
    expect(sum(json.decomposition.rows.map((row: { saved: number }) => row.saved))).toBe(1_000_000);
  });

  it('says what one cycle cannot tell', async () => {
    const { err, out } = await evaluate(...both);
    expect(err + out).toMatch(/one cycle|1 cycle/i);
    expect(out).toContain('cannot be told from these cycles');
  });

  it.each<[readonly string[], RegExp]>([
    [['--before', 'present'], /--after/],
    [['--before', 'present', '--after', 'other'], /other/],
    [[...both, '--confidence', '0'], /confidence/i],
    [[...both, '--confidence', 'sure'], /--confidence sure is no percentage/],
    [[...both, '--unit', 'jiffies'], /--unit jiffies is not known/],
  ])('%j is refused in words', async (more, words) => {
    const { code, err } = await evaluate(...more);
    expect(code).toBe(2);
    expect(err).toMatch(words);
    expect(err).not.toMatch(/\{\w+\}|undefined|NaN/);
  });
});
