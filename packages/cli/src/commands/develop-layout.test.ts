import { readFileSync } from 'node:fs';
import { parseStudy } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';

const root = new URL('../../../../', import.meta.url);
const guide = readFileSync(new URL('docs/work-format.md', root), 'utf8');
const example = /```json\n([\s\S]*?)```/.exec(guide)?.[1] ?? '';

/** A bench that is so narrow that there are only a few spots. */
const work = JSON.stringify({
  ...JSON.parse(example),
  bench: { width: 520, depth: 330, people: 'women' },
});
const develop = (...more: string[]) => call(['develop', 'w.json', ...more], { files: { 'w.json': work } });

describe('evenhand develop --layout', () => {
  it('finds places and method together, says that the pair is proven, and what was moved where', async () => {
    const { code, out } = await develop('--layout');
    expect(code).toBe(0);
    expect(out).toContain('Best places together with the method');
    expect(out).toMatch(/, [\d.]+ s less than with the places as they are, the pair proven/);
    expect(out).toMatch(/Ring bin: from 180, 370 mm to −?\d+, \d+ mm/);
    expect(out).toContain('local rules and qualified people decide');
    const { layout, method } = JSON.parse((await develop('--layout', '--json')).out);
    expect(layout.proven).toBe(true);
    expect(layout.bound).toBe(layout.period);
    expect(layout.period).toBeLessThan(method.period);
    for (const { to } of layout.moved) {
      expect(Math.abs(to.x)).toBeLessThanOrEqual(260);
      expect(to.y).toBeLessThanOrEqual(330);
    }
  });

  it('-o writes the composed method, and the work with its places where they were put', async () => {
    const { code, files, out } = await develop('--layout', '--json', '-o', 's.json');
    expect(code).toBe(0);
    const { layout } = JSON.parse(out);
    const study = parseStudy(String(files['s.json']));
    if (!study.ok) throw new Error(study.error[0]?.message);
    const [kept] = study.value.works ?? [];
    expect(layout.moved.length).toBeGreaterThan(0);
    for (const { place, to } of layout.moved)
      expect(kept?.work.places.find(({ id }) => id === place)?.at, place).toEqual(to);
    // The kept work is as short without moving anything, or shorter where a hand may reach further than everybody does.
    const again = await call(['develop', 'w.json', '--json'], {
      files: { 'w.json': JSON.stringify(kept?.work) },
    });
    expect(JSON.parse(again.out).method.period).toBeLessThanOrEqual(layout.period);
    expect(JSON.parse(again.out).method.period).toBeGreaterThan(0.95 * layout.period);
    const method = study.value.methods.at(-1);
    expect(method).toMatchObject({ kind: 'composed', name: 'Composed: best places' });
  });

  it('with changes arranges what they make of the work, and keeps which were taken', async () => {
    const { code, files, out } = await develop('--changes', 'fixture', '--layout', '--json', '-o', 's.json');
    expect(code).toBe(0);
    const { layout, chosen } = JSON.parse(out);
    expect(layout.unitTime).toBeLessThanOrEqual(chosen.method.unitTime);
    expect(layout.proven).toBe(false);
    // The bound of one layout is none of all layouts.
    expect('bound' in layout).toBe(false);
    const study = parseStudy(String(files['s.json']));
    expect(study.ok && study.value.works?.[0]?.changes).toEqual([{ change: 'fixture', taken: true }]);
  });

  it('a bench without room is told with the names of the places', async () => {
    const narrow = JSON.stringify({ ...JSON.parse(work), bench: { width: 120, depth: 60 } });
    const moved = narrow.replaceAll(/"at":\{[^}]*\},?/g, '').replaceAll(',}', '}');
    const { code, err } = await call(['develop', 'w.json', '--layout'], { files: { 'w.json': moved } });
    expect(code).not.toBe(0);
    expect(err).toContain('Body bin');
  });
});

describe('evenhand develop --plan', () => {
  it('writes the bench to scale: 100 mm of the scale bar are 20 mm of paper at 1:5 and 10 mm at 1:10', async () => {
    for (const scale of [5, 10]) {
      const { code, err, files } = await develop('--plan', 'bench.svg', '--scale', String(scale));
      expect(code).toBe(0);
      expect(err).toContain('Wrote bench.svg.');
      const svg = String(files['bench.svg']);
      expect(svg).toContain(`1:${scale} on A3`);
      const points = (520 / scale) * (72 / 25.4);
      const widths = [...svg.matchAll(/<rect[^>]* width="([\d.]+)"/g)].map(([, width]) => Number(width));
      expect(widths.some((width) => Math.abs(width - points) < 0.02)).toBe(true);
    }
  });

  it('as PDF on the sheet that is asked for', async () => {
    const { files } = await develop('--plan', 'bench.pdf', '--sheet', 'a4', '--scale', '10');
    expect(new TextDecoder().decode(files['bench.pdf'] as Uint8Array)).toMatch(
      /^%PDF of 1 on a4: Plan of the bench/,
    );
  });

  it.each([
    [['--scale', '7', '--plan', 'b.pdf'], '--scale 7 is not possible; it can be 5 or 10.'],
    [['--scale', '10'], '--scale is for a plan; name its file with --plan.'],
    [['--plan', 'b.png'], 'b.png does not end in .svg or .pdf.'],
    [['--plan', '-'], '--plan needs the name of a file'],
    [['--plan', 'b.pdf', '--sheet', 'a0'], '--sheet a0 is not known'],
  ])('%s is refused with a reason', async (more, sentence) => {
    const { code, err } = await develop(...more);
    expect(code).not.toBe(0);
    expect(err).toContain(sentence);
  });

  it('a bench that is too large for the sheet is told with what to do', async () => {
    const large = JSON.stringify({ ...JSON.parse(work), bench: { width: 3000, depth: 800 } });
    const { code, err } = await call(['develop', 'w.json', '--plan', 'b.pdf', '--sheet', 'a4'], {
      files: { 'w.json': large },
    });
    expect(code).not.toBe(0);
    expect(err).toContain('A bench of 3000 by 800 mm does not fit on A4 at 1:5.');
  });
});
