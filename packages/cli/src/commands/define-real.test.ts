import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, inject, it } from 'vitest';
import { call } from '../testing/fake-io.ts';

/**
 * Times of elements in real work (Egocentric-10K, one worker bagging loose parts), labelled by others with whole seconds.
 * The table lies beside the folder of the real films and is never part of the project; without it these tests are counted
 * as skipped. Every expected figure is taken from the raw text by the few lines below.
 */
const films = inject('realFilms')?.folder;
const file =
  films === undefined
    ? undefined
    : path.resolve(films, '../records/egocentric10k_f001_w002_bagging_element_times_s.csv');
const there = file !== undefined && existsSync(file);
const text = there ? readFileSync(file, 'utf8') : '';
const [head = [], ...lines] = text
  .split(/\r?\n/)
  .filter((line) => line !== '')
  .map((line) => line.split(','));
const define = (...more: string[]) => call(['define', 'r.csv', ...more], { files: { 'r.csv': text } });
const skip = ['--skip', 'clip,start_s'];

/** Times of a column with their cycles. */
const filled = (at: number) =>
  lines.flatMap((cells) =>
    (cells[at] ?? '') === '' ? [] : [{ cycle: Number(cells[0]), time: Number(cells[at]) }],
  );

describe.skipIf(!there)('evenhand define: a real table of readings', () => {
  it('refuses the columns that are no element, by name and cell, and says how to leave them out', async () => {
    const { code, out, err } = await define();
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/r\.csv: line 2, column 2: The column “clip” holds no time.+name it with --skip/);
    const zeros = lines.flatMap((cells, index) => (Number(cells[2]) === 0 ? [index + 2] : []));
    expect(zeros.length).toBeGreaterThan(0);
    for (const line of zeros) expect(err).toContain(`line ${line}, column 3: The reading of “start_s”`);
    expect(err.trim().split('\n').length).toBe(zeros.length + 1);
  });

  it('counts every reading that is there, and tells every one that is missed', async () => {
    const { code, out, err } = await define(...skip, '--json');
    const json = JSON.parse(out);
    expect(code).toBe(0);
    expect(json.elements.map(({ name }: { name: string }) => name)).toEqual(head.slice(3));
    for (const [index, { name, summary }] of json.elements.entries()) {
      const readings = filled(index + 3);
      const sum = readings.reduce((total, { time }) => total + time, 0);
      expect(summary).toMatchObject({
        n: readings.length,
        missed: lines.length - readings.length,
        setAside: [],
      });
      expect(summary.mean).toBeCloseTo(sum / readings.length, 9);
      const missed = lines.length - readings.length;
      if (missed > 0)
        expect(err).toContain(`“${name}” has no reading in ${missed} of ${lines.length} cycles`);
    }
    expect(out).not.toMatch(/NaN|null|Infinity/);
  });

  it('proposes the interruption of 385 s as an outlier and lets it count', async () => {
    const interrupted = filled(3).find(({ time }) => time === 385);
    expect(interrupted).toEqual({ cycle: 3, time: 385 });
    const { out } = await define(...skip);
    expect(out).toMatch(/The reading 385\.00 s in cycle 3 lies above/);
    expect(out).toMatch(/outliers proposed\. .+?All of them\s+count\./s);
    const [, before = ''] = /drop loose parts into plastic bag +(\d+)/.exec(out) ?? [];
    expect(Number(before)).toBe(filled(3).length);
  });

  it('sets it aside only with a reason, and then it leaves the sum and n', async () => {
    const files = { 'r.csv': text.replace(',385.0,', ',385.0 (went away),') };
    const { out } = await call(['define', 'r.csv', ...skip, '--json'], { files });
    const { summary } = JSON.parse(out).elements[0];
    const kept = filled(3).filter(({ time }) => time !== 385);
    expect(summary.n).toBe(kept.length);
    expect(summary.mean).toBeCloseTo(kept.reduce((sum, { time }) => sum + time, 0) / kept.length, 9);
    expect(summary.setAside).toEqual([{ cycle: 3, time: 385, setAside: 'went away' }]);
  });
});
