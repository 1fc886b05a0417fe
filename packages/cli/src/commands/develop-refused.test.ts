import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';

const root = new URL('../../../../', import.meta.url);
const demo = readFileSync(new URL('examples/couplings/couplings.evenhand.json', root), 'utf8');
const guide = readFileSync(new URL('docs/work-format.md', root), 'utf8');
const [, example = ''] = /```json\n([\s\S]*?)```/.exec(guide) ?? [];
const files = {
  'w.json': example,
  'd.json': demo,
  'other.csv': 'code,tmu\nR1A,2.5\n',
  'one.csv': 'kind\nG\n',
};

// biome-ignore lint/suspicious/noExplicitAny: a work that is spoilt on purpose
type Spoilt = any;

/** The example of docs/work-format.md, spoilt. */
function spoilt(spoil: (work: Spoilt) => void): string {
  const work = JSON.parse(example);
  spoil(work);
  return JSON.stringify(work);
}

describe('evenhand develop: a spoilt work file is told at its place, with what to do', () => {
  it.each<[string, string, string]>([
    ['no steps', spoilt((work) => (work.steps = [])), 'at steps: it has too few entries; give 1 or more'],
    [
      'a time of half a microsecond',
      spoilt((work) => (work.steps[1].motions[0].us = 0.5)),
      '“Select, grasp ring” is not as it must be, at motions 0 us: it must be a whole number',
    ],
    ['no number', example.replace('240000', 'NaN'), 'a number is written such as 240000'],
    [
      'a field that is not known',
      spoilt((work) => (work.steps[2].colour = 'red')),
      'at its fields: colour is not known',
    ],
    [
      'a start that is no place',
      spoilt((work) => (work.home = { left: 'sky', right: 'box' })),
      'The start of the hands (home) names the place sky',
    ],
    ['a start of another shape', spoilt((work) => (work.home = 3)), 'at home: it is “free”'],
    [
      'a step that is not there',
      spoilt((work) => (work.steps[3].follows = [{ step: 'sky' }])),
      '“Lay coupling aside” names the step sky, which the work does not have. Correct the name',
    ],
    [
      'a unit beyond the cycle',
      spoilt((work) => {
        for (const step of work.steps) step.unit = 7;
      }),
      '“Grasp body” belongs to unit 7, but the cycle makes 1',
    ],
    [
      'a target finer than any hand',
      spoilt((work) => (work.places[0].width = 1e-300)),
      'The target at “Body bin” is 1e-300 mm',
    ],
    [
      'a fit finer than any hand',
      spoilt((work) => (work.steps[2].motions[0].clearance = 1e-9)),
      'The clearance in “Position and press ring” is 1e-9 mm',
    ],
    [
      'an hour of drying',
      spoilt((work) => (work.steps[3].follows[0].lag = 3_600_000_000)),
      'the longest is “Lay coupling aside”',
    ],
    ['neither a study nor a work', '[1, 2]', 'neither a study nor a work file'],
  ])('%s', async (_title, text, words) => {
    const { code, err, out } = await call(['develop', 'w.json'], { files: { 'w.json': text } });
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(words);
    expect(err).not.toMatch(/undefined|\{\w+\}|\.ts:/);
  });

  it('tells one fault once, with the bound that is nearer', async () => {
    const text = spoilt((work) => (work.steps[1].motions[0].us = 1e300));
    const { err } = await call(['develop', 'w.json'], { files: { 'w.json': text } });
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(err).toContain('it must be 3600000000 or less');
  });

  it('says that no step makes some of the units', async () => {
    const text = spoilt((work) => (work.unitsPerCycle = 5));
    const { code, err } = await call(['develop', 'w.json'], { files: { 'w.json': text } });
    expect(code).toBe(0);
    expect(err).toContain('No step belongs to unit 2 of the 5');
  });
});

describe('evenhand develop: what does not go together is refused', () => {
  it.each<[string, string]>([
    ['develop w.json --method present', '--method chooses in the record of a study'],
    ['develop w.json --cycle 2', '--cycle chooses in the record of a study'],
    ['develop d.json --times d.json', '--times gives a work file its times, and d.json is a study'],
    ['develop w.json --times w.json', 'w.json: This is a work file, and --times asks for a study'],
    ['develop w.json --library w.json', 'w.json: This is a work file, and --library asks for a study'],
    ['develop work w.json', 'This is a work file, and evenhand develop work asks for a study'],
    ['develop w.json --changes fixture,', '--changes has an empty name'],
    ['develop w.json --changes all,fixture', 'leave the other names out'],
    ['develop w.json --seconds -1', 'write --seconds=VALUE'],
    ['develop w.json --seconds=-1', '--seconds -1 is no whole number of 0 or more'],
    ['develop w.json --table other.csv', 'the columns kind and us are missing'],
    ['develop w.json --table one.csv', 'the column us is missing'],
    ['develop w.json -o - --json', 'both want standard output'],
    ['develop w.json -o d.json', 'd.json is there already and was left as it is'],
    ['develop work d.json -o w.json', 'w.json is there already and was left as it is'],
  ])('%s', async (words, told) => {
    const { code, err, files: after } = await call(words.split(' '), { files });
    expect(code).toBe(2);
    expect(err).toContain(told);
    expect(err).not.toMatch(/NaN|undefined|\{\w+\}|\.ts:/);
    expect(after).toEqual(files);
  });

  it('writes over a study or a work only where that is asked for', async () => {
    const study = await call(['develop', 'w.json', '-o', 'd.json', '--replace', '--seconds', '0'], { files });
    expect(study.code).toBe(0);
    expect(study.files['d.json']).not.toBe(demo);
    const work = await call(['develop', 'work', 'd.json', '-o', 'w.json', '--replace'], { files });
    expect(work.code).toBe(0);
    expect(work.files['w.json']).not.toBe(example);
  });

  it('with -o - only the study goes to standard output, what was found to standard error', async () => {
    const { code, out, err } = await call(['develop', 'w.json', '-o', '-', '--seconds', '0'], { files });
    expect(code).toBe(0);
    expect(JSON.parse(out).methods).toHaveLength(1);
    expect(err).toContain('Expected at work');
  });

  it('no time at all still gives a method', async () => {
    const { code, out } = await call(['develop', 'w.json', '--seconds', '0'], {
      files,
      now: () => performance.now(),
    });
    expect(code).toBe(0);
    expect(out).toMatch(/cycle [\d.]+ s, a unit [\d.]+ s/);
  });
});
