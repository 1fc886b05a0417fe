import { readFileSync } from 'node:fs';
import { developReportSchema } from '@evenhand/core/develop';
import { machinesReportSchema } from '@evenhand/core/evaluate';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';

const root = new URL('../../../../', import.meta.url);
const demo = readFileSync(new URL('examples/couplings/couplings.evenhand.json', root), 'utf8');
const guide = readFileSync(new URL('docs/work-format.md', root), 'utf8');
const [, example = ''] = /```json\n([\s\S]*?)```/.exec(guide) ?? [];
const world = { files: { 'w.json': example, 'd.json': demo } };

function issues(schema: typeof developReportSchema | typeof machinesReportSchema, out: string) {
  const read = schema.safeParse(JSON.parse(out));
  return read.success ? [] : read.error.issues;
}

describe('what develop and evaluate machines print as JSON', () => {
  it.each<[string, number]>([
    ['develop w.json', 0],
    ['develop w.json --closed --times d.json', 0],
    ['develop w.json --changes fixture,guide', 0],
    ['develop w.json --changes fixture,guide --costs fixture=600..800..1200,guide=300', 0],
    ['develop w.json --units 2 --changes fixture', 0],
    ['develop w.json --layout --seconds 1', 0],
    ['develop d.json --method improved --seconds 1', 0],
    ['develop work d.json -o new.json', 0],
    ['develop w.json --changes magic', 2],
    ['develop gone.json', 2],
    ['develop work d.json --cycle 9', 2],
  ])('%s --json keeps to the published schema', async (words, wanted) => {
    const { code, out } = await call([...words.split(' '), '--json'], {
      ...world,
      now: () => performance.now(),
    });
    expect(code).toBe(wanted);
    expect(issues(developReportSchema, out)).toEqual([]);
    expect(JSON.parse(out).ok).toBe(wanted === 0);
    expect(out).not.toMatch(/NaN|null|Infinity/);
  });

  it.each<[string, number]>([
    ['--together 5 --worker-alone 1 --machine-alone 20', 0],
    ['--together 5 --machine-alone 20 --hourly-cost 10 --machine-cost 30', 0],
    ['--together 5 --machine-alone 20 --machines 3', 0],
    ['--stopped 10', 0],
    ['--stopped 10 --machines 20 --workers 2 --hours 7.5', 0],
    ['--stopped 10 --hours 0', 2],
    ['--together 5', 2],
  ])('evaluate machines %s --json keeps to the published schema', async (words, wanted) => {
    const { code, out } = await call(['evaluate', 'machines', ...words.split(' '), '--json']);
    expect(code).toBe(wanted);
    expect(issues(machinesReportSchema, out)).toEqual([]);
    expect(JSON.parse(out).ok).toBe(wanted === 0);
    expect(out).not.toMatch(/NaN|null|Infinity/);
  });
});
