import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Hand, type Method, parseStudy, type Study, writeStudy } from '@evenhand/core/ground/study';
import { decodeTrack, writeTrackCsv } from '@evenhand/core/record';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../../..');
const whole = parseStudy(readFileSync(path.join(root, 'examples/couplings/couplings.evenhand.json'), 'utf8'));
const track = decodeTrack(readFileSync(path.join(root, 'tests/films/tracks/present.track.bin')));
if (!whole.ok || !track.ok) throw new Error('the demonstration and its track cannot be read');
const demo: Study = whole.value;
const present = demo.methods[0] as Method;
const [, second, third] = present.cycles.items.map(({ start }) => start) as [number, number, number];

/** The demonstration in which only the second cycle is marked; with or without the marks of all cycles. */
function oneMarked(marks: 'one' | 'all'): Study {
  const row = (hand: Hand): Method['left'] => {
    const inside = present[hand].items.filter(({ start }) => start >= second && start < third);
    const bare = (id: string, start: number) => ({
      id,
      start,
      kind: 'unmarked' as const,
      said: 'marked' as const,
    });
    return { items: [bare(`${hand}-a`, 0), ...inside, bare(`${hand}-z`, third)], end: present[hand].end };
  };
  const one = { items: present.cycles.items.slice(1, 2), end: third };
  const all = {
    ...present.cycles,
    items: present.cycles.items.map(({ id, start }) => ({ id, start })),
  };
  const { elements: _, ...rest } = present;
  const method: Method = {
    ...rest,
    left: row('left'),
    right: row('right'),
    cycles: marks === 'one' ? one : all,
  };
  const { examinations: __, timeStudies: ___, comparisons: ____, ...study } = demo;
  return { ...study, methods: [method] };
}

/** The method with something marked in both hands from the first frame to the last. */
function wholly(method: Method): Method {
  const row = (hand: Hand): Method['left'] => ({
    ...method[hand],
    items: method[hand].items.map((motion) =>
      motion.kind === 'unmarked' ? { ...motion, kind: 'UD' as const } : motion,
    ),
  });
  return { ...method, left: row('left'), right: row('right') };
}

const csv = writeTrackCsv(track.value);
const files = {
  'one.json': writeStudy(oneMarked('one')),
  'all.json': writeStudy(oneMarked('all')),
  'hands.csv': csv,
};

function made(text: string | Uint8Array | undefined): Method {
  const study = parseStudy(String(text));
  if (!study.ok) throw new Error(study.error.map(({ message }) => message).join(' '));
  return study.value.methods[0] as Method;
}

describe('evenhand record propose', () => {
  it('tells now and then how far a long search is, and nothing of a short one', async () => {
    const words = ['record', 'propose', 'one.json', '--track', 'hands.csv', '--json'];
    const done = / % done, about \d+ s left/;
    expect((await call(words, { files })).err).not.toMatch(done);
    let now = 0;
    const slow = await call(words, { files, now: () => (now += 3000) });
    const lines = slow.err.split('\n').filter((line) => done.test(line));
    expect(lines.length).toBeGreaterThan(2);
    const shares = lines.map((line) => Number.parseInt(line, 10));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(slow.code).toBe(0);
  });

  it('a track in which nothing moves is refused, and nothing is written', async () => {
    const still = csv.replaceAll(/^(\d+,\w+),.*$/gm, '$1,100,100,,');
    const words = ['record', 'propose', 'one.json', '--track', 'still.csv', '-o', 'two.json'];
    const { code, err, files: after } = await call(words, { files: { ...files, 'still.csv': still } });
    expect(code).toBe(2);
    expect(err).toContain('In the track no hand moves or opens');
    expect(after['two.json']).toBeUndefined();
  });

  it('where nothing is left to propose the exit code is 1 and the study stays as it was', async () => {
    const words = ['record', 'propose', 'whole.json', '--track', 'hands.csv', '-o', 'two.json'];
    const whole: Study = { ...oneMarked('one'), methods: [wholly(present)] };
    const {
      code,
      err,
      files: after,
    } = await call(words, {
      files: { ...files, 'whole.json': writeStudy(whole) },
    });
    expect(code, err).toBe(1);
    expect(err).toContain('Nothing was proposed; why is said above.');
    expect(made(after['two.json'])).toEqual(whole.methods[0]);
  });

  it('from one marked cycle and a table of the hands to a study with all seven', async () => {
    const {
      code,
      err,
      files: after,
    } = await call(['record', 'propose', 'one.json', '--track', 'hands.csv', '-o', 'two.json'], { files });
    expect(code, err).toBe(0);
    const method = made(after['two.json']);
    const cycles = method.cycles.items.filter(({ setAside }) => setAside === undefined);
    // Where the marked cycle ends the next one begins, and that is a person’s word.
    const said = cycles.map((cycle) => cycle.said ?? 'marked');
    expect(said).toEqual(['proposed', 'marked', 'confirmed', ...Array(4).fill('proposed')]);
    present.cycles.items.forEach(({ start }, index) => {
      expect(Math.abs((cycles[index]?.start ?? 0) - start), `cycle ${index + 1}`).toBeLessThan(10);
    });
    for (const hand of ['left', 'right'] as const) {
      const theirs = method[hand].items.filter(({ start }) => start >= second && start < third);
      expect(theirs).toEqual(present[hand].items.filter(({ start }) => start >= second && start < third));
      const proposed = method[hand].items.filter(({ said }) => said === 'proposed');
      expect(proposed.length).toBeGreaterThan(20);
      for (const { confidence } of proposed) expect(confidence).toBeGreaterThan(0);
    }
  });

  it('where a person has marked the bounds of all cycles, they stay', async () => {
    const { code, files: after } = await call(
      ['record', 'propose', 'all.json', '--track', 'hands.csv', '-o', 'two.json'],
      { files },
    );
    expect(code).toBe(0);
    const method = made(after['two.json']);
    expect(method.cycles.items.map(({ start }) => start)).toEqual(
      present.cycles.items.map(({ start }) => start),
    );
    const named = method.right.items.filter(({ said }) => said === 'proposed').length;
    expect(named).toBeGreaterThan(60);
  });

  it('prints the proposal with real times as JSON', async () => {
    const { code, out } = await call(['record', 'propose', 'one.json', '--track', 'hands.csv', '--json'], {
      files,
    });
    const report = JSON.parse(out);
    expect([code, report.ok, report.cycles.length]).toEqual([0, true, 6]);
    expect(report.left[0]).toMatchObject({
      start: expect.any(Number),
      start_s: expect.any(Number),
      kind: 'TE',
    });
  });

  it.each([
    [['--track', 'hands.csv'], 'It must be said where to write the study (-o), or --json.'],
    [['--track', 'hands.csv', '-o', 'one.json'], 'one.json'],
    [['--track', 'none.csv', '-o', 'b.json'], 'none.csv'],
    [['--track', 'one.json', '-o', 'b.json'], 'one.json'],
    [['--track', 'hands.csv', '-o', 'b.json', '--rate', 'fast'], '--rate fast is not a rate'],
    [['-o', 'b.json'], '--track'],
  ])('%j is refused: %s', async (more, message) => {
    const { code, err, files: after } = await call(['record', 'propose', 'one.json', ...more], { files });
    expect(code).toBe(2);
    expect(err).toContain(message);
    expect(Object.keys(after).sort()).toEqual(Object.keys(files).sort());
  });

  it('a track of another film is refused with both counts of frames', async () => {
    const short = csv.split('\n').slice(0, 401).join('\n');
    const { code, err } = await call(['record', 'propose', 'one.json', '--track', 's.csv', '-o', 'b.json'], {
      files: { ...files, 's.csv': `${short}\n5000,left,1,1,0.5,1\n` },
    });
    expect(code).toBe(2);
    expect(err).toMatch(/5000|5001/);
  });
});
