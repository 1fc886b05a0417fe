import { type Study, writeStudy } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';
import { smallStudy } from '../testing/small-study.ts';

const files = { 'a.json': writeStudy(smallStudy), 'long.json': writeStudy(longStudy()) };
const chart = (...more: string[]) =>
  call(['record', 'chart', 'a.json', '--method', 'present', ...more], { files });

/** A cycle of 400 short motions in either hand, which no single sheet can show. */
function longStudy(): Study {
  const items = Array.from({ length: 400 }, (_, index) => ({
    id: `i${index}`,
    start: index * 250_000,
    kind: index % 2 === 0 ? ('TE' as const) : ('G' as const),
    said: 'marked' as const,
  }));
  const row = { items, end: 100_000_000 };
  const [method] = smallStudy.methods;
  if (method === undefined) throw new Error('no method');
  const cycles = { items: [{ id: 'c', start: 0 }], end: 100_000_000 };
  return { ...smallStudy, methods: [{ ...method, left: row, right: row, cycles }] };
}

describe('evenhand record chart', () => {
  it('draws one sheet as one SVG with the words of the study', async () => {
    const { code, out, err, files: after } = await chart('-o', 'c.svg');
    expect([code, out, err]).toEqual([0, '', 'Wrote c.svg.\n']);
    const svg = String(after['c.svg']);
    expect(svg).toMatch(/^<svg [^>]*xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
    for (const word of [
      'Hose couplings',
      'Present method',
      'Cycle 1 of 2',
      '2026-03-14',
      'winks',
      'base64,Zm9udA==',
    ])
      expect(svg).toContain(word);
  });

  it('draws another cycle, unit, date and paper', async () => {
    const { files: after } = await chart(
      '-o',
      'c.svg',
      '--cycle',
      '2',
      '--unit',
      'TMU',
      '--date',
      'in spring',
      '--paper',
      'letter',
    );
    const svg = String(after['c.svg']);
    for (const word of ['Cycle 2 of 2', 'TMU', 'in spring']) expect(svg).toContain(word);
    // US Letter is 8.5 by 11 inches of 72 points (ANSI/ASME Y14.1, size A).
    expect(svg).toMatch(/width="612pt" height="792pt"|width="792pt" height="612pt"/);
  });

  it('draws the process chart, whose words are those of the five symbols', async () => {
    const { code, files: after } = await chart('-o', 'p.svg', '--form', 'process');
    expect(code).toBe(0);
    for (const word of ['Hose couplings', 'operation', 'transport', 'hold']) {
      expect(String(after['p.svg']).toLowerCase()).toContain(word.toLowerCase());
    }
  });

  it('several sheets are numbered files as SVG and one file as PDF', async () => {
    const svg = await call(['record', 'chart', 'long.json', '-o', 'c.svg', '--json'], { files });
    const told = JSON.parse(svg.out);
    expect(told.sheets).toBeGreaterThan(1);
    expect(told.files).toEqual(Array.from({ length: told.sheets }, (_, index) => `c-${index + 1}.svg`));
    for (const file of told.files) expect(String(svg.files[file])).toMatch(/^<svg /);
    const pdf = await call(['record', 'chart', 'long.json', '-o', 'c.pdf'], { files });
    expect(new TextDecoder().decode(pdf.files['c.pdf'] as Uint8Array)).toContain(
      `%PDF of ${told.sheets} on a4`,
    );
  });

  it('writes to standard output when it is said what, but several SVG do not fit', async () => {
    expect((await chart('-o', '-', '--as', 'svg')).out).toMatch(/^<svg /);
    const { code, out, err } = await call(['record', 'chart', 'long.json', '-o', '-', '--as', 'svg'], {
      files,
    });
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/The chart has \d+ sheets, and standard output can take one SVG only/);
  });

  it('tells on stderr what is not marked', async () => {
    const text = files['a.json'].replace(
      '"start": 1500000, "kind": "TL", "object": "ring"',
      '"start": 1500000, "kind": "unmarked"',
    );
    const { code, err } = await call(['record', 'chart', 'a.json', '-o', 'c.svg', '--method', 'present'], {
      files: { 'a.json': text },
    });
    expect(code).toBe(0);
    expect(err).toContain('warning: a.json: In cycle 1 the right hand has 1.00 s that is not marked yet.');
  });

  it.each([
    [['-o', 'c.png'], 'c.png does not end in .svg or .pdf.'],
    [['-o', 'c.svg', '--cycle', '0'], '--cycle 0 is not a number of 1 or more.'],
    [['-o', 'c.svg', '--cycle', 'two'], '--cycle two is not a number'],
    [['-o', 'c.svg', '--cycle', '3'], 'There is no cycle 3; the method has 2.'],
    [['-o', 'c.svg', '--form', 'round'], '--form round is not known; it can be two-hand or process.'],
    [
      ['-o', 'c.svg', '--unit', 'days'],
      '--unit days is not known; it can be seconds, minutes, winks, tmu, hours.',
    ],
    [['-o', 'c.svg', '--paper', 'a3'], '--paper a3 is not known; it can be a4 or letter.'],
    [
      ['-o', 'c.svg', '--grouping', 'me'],
      '--grouping me is not known; it can be niebel-freivalds or groover.',
    ],
    [['-o', '-'], 'With -o - it must be said what to write: --as svg or pdf.'],
    [['-o', '-', '--as', 'svg', '--json'], 'both want standard output'],
    [['-o', 'full/c.svg'], 'the disk is full'],
    [['-o', 'full/c.pdf'], 'the disk is full'],
  ])('%j is refused: %s', async (more, message) => {
    const { code, err } = await chart(...more);
    expect(code).toBe(2);
    expect(err).toContain(message);
  });

  it('a method in which nothing is marked has no chart', async () => {
    const row = {
      items: [{ id: 'u', start: 0, kind: 'unmarked' as const, said: 'marked' as const }],
      end: 10,
    };
    const methods = smallStudy.methods
      .slice(0, 1)
      .map((method) => ({ ...method, left: row, right: row, cycles: { items: [], end: 10 } }));
    const { code, err } = await call(['record', 'chart', 'a.json', '-o', 'c.svg'], {
      files: { 'a.json': writeStudy({ ...smallStudy, methods }) },
    });
    expect([code, err.includes('Nothing is marked yet in the method “Present method”')]).toEqual([2, true]);
  });
});
