import { readFileSync } from 'node:fs';
import { parseWork, type Work, writeWork } from '@evenhand/core/develop';
import { parseStudy } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';

const root = new URL('../../../../', import.meta.url);
const demo = readFileSync(new URL('examples/couplings/couplings.evenhand.json', root), 'utf8');
const guide = readFileSync(new URL('docs/work-format.md', root), 'utf8');
const blocks = (language: string) =>
  [...guide.matchAll(new RegExp(`\`\`\`${language}\\n([\\s\\S]*?)\`\`\``, 'g'))].map(
    ([, text]) => text ?? '',
  );
const [example = ''] = blocks('json');
const [ownTable = ''] = blocks('csv');

const develop = (text: string, ...more: string[]) =>
  call(['develop', 'w.json', ...more], { files: { 'w.json': text, 't.csv': ownTable, 'demo.json': demo } });
const asJson = async (text: string, ...more: string[]) =>
  JSON.parse((await develop(text, '--json', ...more)).out);

function small(): Work {
  const work = parseWork(example);
  if (!work.ok) throw new Error(work.error.map(({ message }) => message).join(' '));
  return work.value;
}

/** The example with one step changed. */
function changed(id: string, more: Partial<Work['steps'][number]>): string {
  const work = small();
  return writeWork({
    ...work,
    steps: work.steps.map((step) => (step.id === id ? { ...step, ...more } : step)),
  });
}

describe('evenhand develop: a work file', () => {
  it('finds a method for the work of docs/work-format.md, proves it and says where its times come from', async () => {
    const { code, out, err } = await develop(example);
    expect(code).toBe(0);
    expect(out).toContain('proven to be the shortest');
    expect(out).toMatch(/90 % interval [\d.]+ s to [\d.]+ s/);
    expect(err).toContain('nobody has measured');
    const json = await asJson(example);
    expect(json.method.proven).toBe(true);
    expect(json.expected.interval.low).toBeLessThan(json.method.period * 1.2);
    const select = json.method.steps.find(({ id }: { id: string }) => id === 'get-ring');
    expect(select.motions[0]).toMatchObject({ us: 240_000, source: 'given in the work' });
  });

  it('takes the times of a record, and then of a time table', async () => {
    const source = async (...more: string[]) => {
      const { method } = await asJson(example, ...more);
      return method.steps[0].motions[0];
    };
    expect((await source()).source).toContain('by the law');
    expect(await source('--table', 't.csv')).toMatchObject({
      us: 150_000,
      source: 'from the time table “t.csv”',
    });
    expect((await source('--times', 'demo.json', '--table', 't.csv')).source).toContain(
      'measured in the record',
    );
  });

  it('a closed cycle is never shorter than one whose hands go on', async () => {
    const [open, closed] = [await asJson(example), await asJson(example, '--closed')];
    expect(closed.method.kind).toBe('closed');
    expect(closed.method.period).toBeGreaterThanOrEqual(open.method.period);
  });

  it('the same seed gives the same, another one other draws', async () => {
    const [one, again, other] = [
      await asJson(example, '--seed', '7'),
      await asJson(example, '--seed', '7'),
      await asJson(example, '--seed', '8'),
    ];
    expect(again).toEqual(one);
    expect(other.expected.interval).not.toEqual(one.expected.interval);
    expect(other.method.period).toBe(one.method.period);
  });

  it('a change that is named is worth about what the two methods differ by, within its interval', async () => {
    const json = await asJson(example, '--changes', 'fixture');
    expect(json.chosen.changes).toEqual(['fixture']);
    const differ = json.method.unitTime - json.chosen.method.unitTime;
    expect(Math.abs(json.chosen.saved - differ)).toBeLessThan(0.15 * json.chosen.method.unitTime);
    expect(json.chosen.saved).toBeGreaterThanOrEqual(json.chosen.interval.low);
    expect(json.chosen.saved).toBeLessThanOrEqual(json.chosen.interval.high);
  });
});

describe('evenhand develop: units, costs and a new study', () => {
  it('two units at once with a fixture: the same as the two changes named', async () => {
    const units = await asJson(example, '--units', '2', '--changes', 'fixture');
    const named = await asJson(example, '--changes', 'two-units,fixture');
    expect(units.chosen.method.unitsPerCycle).toBe(2);
    expect(units.chosen).toEqual(named.chosen);
  });

  it('costs give the front of time against cost, as text and as JSON', async () => {
    const options = ['--changes', 'fixture,guide', '--costs', 'fixture=600..800..1200,guide=300'];
    const { combinations } = await asJson(example, ...options);
    expect(combinations.axis).toBe('cost');
    expect(combinations.front[0].changes).toEqual([]);
    const found = combinations.front.map(({ cost }: { cost: { likely: number } }) => cost.likely);
    expect(found).toEqual([...found].sort((a, b) => a - b));
    const times = combinations.front.map((point: { method: { unitTime: number } }) => point.method.unitTime);
    expect(times).toEqual([...times].sort((a, b) => b - a));
    const { out } = await develop(example, ...options);
    expect(out).toContain('Which changes together: time for a unit against cost');
    expect(out).toContain('Guide or funnel');
  });

  it('a work file becomes a study of its own with -o, or goes to the study that gave the times', async () => {
    const alone = await develop(example, '-o', 'new.json');
    const made = parseStudy(String(alone.files['new.json']));
    expect(made.ok ? made.value.methods.map(({ kind }) => kind) : made.error).toEqual(['composed']);
    const beside = await develop(example, '--times', 'demo.json', '-o', 'new.json');
    const added = parseStudy(String(beside.files['new.json']));
    expect(added.ok ? added.value.methods.at(-1)?.kind : added.error).toBe('composed');
    expect(added.ok ? added.value.methods.length : 0).toBe(3);
  });
});

describe('evenhand develop: a study', () => {
  it('draws, composes, ranks all changes, and writes the best as a composed method', async () => {
    const { code, out, files } = await call(
      ['develop', 'd.json', '--method', 'present', '--changes', 'all', '--seconds', '1', '-o', 'new.json'],
      { files: { 'd.json': demo }, now: () => performance.now() },
    );
    expect(code).toBe(0);
    expect(out).toContain('Which changes together: time for a unit against the number of changes');
    const study = parseStudy(String(files['new.json']));
    expect(study.ok ? study.value.methods.map(({ kind }) => kind) : study.error).toEqual([
      'recorded',
      'recorded',
      'composed',
    ]);
  }, 60_000);

  it('writes the work, which can be read again', async () => {
    const { code, files, out } = await call(
      ['develop', 'work', 'd.json', '--method', 'improved', '-o', 'w.json'],
      {
        files: { 'd.json': demo },
      },
    );
    expect(code).toBe(0);
    expect(out + String(files['w.json'])).toContain('"workFormat": 1');
    expect(parseWork(String(files['w.json'])).ok).toBe(true);
  });
});

describe('evenhand develop: bad input is told in words', () => {
  it.each([
    [
      'a circle',
      changed('get-ring', { follows: [{ step: 'fit' }] }),
      'wait for each other',
      'Position and press ring',
    ],
    [
      'a step that no hand can do',
      changed('fit', { hand: 'both' }),
      'no hand is left to hold body',
      'Position and press ring',
    ],
    [
      'an object never put down',
      changed('aside', { before: 'body' }),
      'carries coupling',
      'Position and press ring',
    ],
    [
      'an object never taken up',
      changed('aside', { before: 'tube' }),
      'no step of the unit takes it up',
      'Lay coupling',
    ],
    [
      'a time of an hour',
      changed('fit', { motions: [{ kind: 'P', us: 3_600_000_000 }] }),
      'an hour or more',
      'Position and press ring',
    ],
    ['a negative time', example.replace('"us": 240000', '"us": -5'), 'at motions 0 us', 'Select, grasp ring'],
    [
      'a step without a place',
      example.replace('"hand": "either", "place": "rings"', '"hand": "either"'),
      'at place',
      'Select, grasp ring',
    ],
    [
      'a step for a third hand',
      example.replace('"hand": "either"', '"hand": "third"'),
      'at hand',
      'Grasp body',
    ],
    ['a place that is nowhere', example.replace('"x": -250', '"x": "left"'), 'at at x', 'Body bin'],
    [
      'a place out of reach',
      example.replace('"x": -300', '"x": -3000'),
      'out of everyone’s reach',
      'Finished box',
    ],
    [
      'an unknown place',
      example.replace('"place": "box"', '"place": "sky"'),
      'names the place sky',
      'Lay coupling',
    ],
    ['no JSON', '{ "workFormat": 1, ', 'no work file', ''],
    ['a newer format', example.replace('"workFormat": 1', '"workFormat": 9'), 'newer version', ''],
  ])('%s', async (_title, text, words, name) => {
    const { code, err, out } = await develop(text);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(words);
    expect(err).toContain(name);
    expect(err).not.toMatch(/NaN|undefined|at .*\.ts:/);
  });

  it.each([
    [['--seconds', 'soon'], '--seconds soon'],
    [['--seed', '1.5'], '--seed 1.5'],
    [['--changes', 'magic'], '--changes magic is not known; it can be all, without-step, without-inspection'],
    [['--times', 'none.json'], 'none.json'],
    [['--table', 'demo.json'], 'no time table'],
    [['--changes', 'hung-tool,drop-delivery'], 'Nothing in this work can be changed so: hung-tool'],
    [['--changes', 'drop-delivery,two-units'], '2 units at once ask for two free hands'],
    [['--changes', 'guide,stop'], '“Guide or funnel” and “Stop” cannot be made together'],
    [['--changes', 'without-step'], 'It can be without-step:get-body'],
    [['--changes', 'foot-pedal:fit'], 'Nothing in this work can be changed so: foot-pedal:fit'],
    [['--units', '3'], '--units 3 is not possible; it can be 2 or 4'],
    [['--units', '2'], 'but in “Position and press ring” a hand holds'],
    [['--costs', 'fixture=800'], 'name them with --changes'],
    [['--changes', 'guide', '--costs', 'fixture=800'], 'A cost is given for fixture'],
    [['--changes', 'fixture', '--costs', 'magic=1'], '--costs magic=1 is not understood'],
    [['--changes', 'fixture', '--costs', 'fixture=9..5..6'], 'rise in this order'],
    [['--changes', 'fixture', '--costs', 'fixture=5..6'], 'one number, or LOW..LIKELY..HIGH'],
    [['--changes', 'fixture', '--costs', 'fixture=cheap'], '--costs cheap'],
  ])('%j', async (options, words) => {
    const { code, err } = await develop(example, ...options);
    expect(code).toBe(2);
    expect(err).toContain(words);
  });

  it.each([10, 50])(
    'a work of %i units of four steps gets a method, with its gap or a proof',
    async (units) => {
      const base = small();
      const steps = Array.from({ length: units }, (_, unit) =>
        base.steps.map((step) => ({
          ...step,
          id: `${step.id}-${unit}`,
          unit: unit + 1,
          ...(step.follows === undefined
            ? {}
            : { follows: step.follows.map((link) => ({ step: `${link.step}-${unit}` })) }),
        })),
      ).flat();
      const begun = performance.now();
      const { out } = await call(['develop', 'w.json', '--json', '--seconds', '2'], {
        files: { 'w.json': writeWork({ ...base, unitsPerCycle: units, steps }) },
        now: () => performance.now(),
      });
      const { method } = JSON.parse(out);
      expect(method.steps).toHaveLength(4 * units);
      expect(method.bound).toBeLessThanOrEqual(method.period);
      expect(method.proven).toBe(method.bound === method.period);
      expect(method.left.length + method.right.length).toBeGreaterThanOrEqual(4 * units);
      expect(performance.now() - begun).toBeLessThan(60_000);
    },
    90_000,
  );
});
