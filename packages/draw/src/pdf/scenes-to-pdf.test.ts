import { inflateSync } from 'node:zlib';
import { papers } from '@evenhand/core/ground/scene';
import { describe, expect, it } from 'vitest';
import { drawnCharts, sceneOf } from '../testing/drawn-chart.ts';
import { fontFiles, svgFonts } from './font-files.ts';
import { scenesToPdf } from './scenes-to-pdf.ts';

/** The file and what its compressed streams hold, one behind the other, as Latin-1 text. */
function contents(pdf: Uint8Array): string {
  return [Buffer.from(pdf).toString('latin1'), ...streams(pdf)].join('\n');
}

function streams(pdf: Uint8Array): readonly string[] {
  const bytes = Buffer.from(pdf);
  const file = bytes.toString('latin1');
  const parts: string[] = [];
  for (const match of file.matchAll(/stream\r?\n/g)) {
    if (file.slice(match.index - 3, match.index) === 'end') continue;
    const start = match.index + match[0].length;
    const end = file.indexOf('endstream', start);
    try {
      parts.push(inflateSync(bytes.subarray(start, end)).toString('latin1'));
    } catch {
      // Some streams are not compressed.
      parts.push(file.slice(start, end));
    }
  }
  return parts;
}

const count = (text: string, pattern: RegExp) => [...text.matchAll(pattern)].length;

const line = { kind: 'text', x: 50, y: 50, size: 8, weight: 400, align: 'start', ink: 'ink' } as const;
const note = (text: string) =>
  sceneOf(
    [{ kind: 'group', role: 'note', nodes: [{ ...line, text }] }],
    papers.letter.width,
    papers.letter.height,
  );

describe('scenes as PDF', () => {
  it('is tagged and says so: a structure tree, the mark, a language, a title and the claim of PDF/UA-1 (ISO 14289-1)', async () => {
    const { twoHand } = drawnCharts();
    const text = contents(await scenesToPdf(twoHand, { paper: 'a4', title: 'Chart of a cycle' }));
    expect(text.startsWith('%PDF-1.7')).toBe(true);
    for (const sign of [
      '/StructTreeRoot',
      '/MarkInfo',
      '/Marked true',
      '/Lang(en)',
      '/DisplayDocTitle true',
    ]) {
      expect(text.replace(/\s*([/(])/g, '$1').includes(sign.replace(/\s*([/(])/g, '$1')), sign).toBe(true);
    }
    expect(text).toContain('Chart of a cycle');
    expect(text).toMatch(/<pdfuaid:part>1</);
  });

  it('has headings, tables with heads, rows and cells, and figures with words', async () => {
    const { twoHand, process } = drawnCharts();
    const chart = contents(await scenesToPdf(twoHand, { paper: 'a4', title: 'Chart' }));
    expect(count(chart, /\/S\s*\/H1\b/g)).toBe(twoHand.length);
    expect(count(chart, /\/S\s*\/H2\b/g)).toBe(2 * twoHand.length);
    expect(count(chart, /\/S\s*\/TR\b/g)).toBeGreaterThan(36);
    expect(count(chart, /\/S\s*\/TH\b/g)).toBeGreaterThanOrEqual(6);
    const symbols = contents(await scenesToPdf(process, { paper: 'a4', title: 'Chart' }));
    expect(count(symbols, /\/Alt\s*\(transport\)/g)).toBeGreaterThanOrEqual(4);
  });

  it('draws vectors and no picture, with both fonts inside as subsets', async () => {
    const { twoHand } = drawnCharts();
    const text = contents(await scenesToPdf(twoHand, { paper: 'a4', title: 'Chart' }));
    expect(count(text, /\/Subtype\s*\/Image/g)).toBe(0);
    const fonts = new Set(
      [...text.matchAll(/\/BaseFont\s*\/([A-Z]{6}\+[\w-]+)/g)].map((match) => match[1]?.slice(7)),
    );
    expect([...fonts].sort()).toEqual(['IBMPlexSans-Regular', 'IBMPlexSans-SemiBold']);
    expect(count(text, /\/FontFile[23]/g)).toBe(2);
    expect(count(text, /\/PatternType 1/g)).toBeGreaterThan(8);
  });

  it('one page a scene, on the paper', async () => {
    const { twoHand, process } = drawnCharts();
    const text = contents(await scenesToPdf([...twoHand, ...process], { paper: 'a4', title: 'Charts' }));
    const boxes = [...text.matchAll(/\/MediaBox\s*\[([^\]]+)\]/g)].map((match) =>
      (match[1] ?? '').trim().split(/\s+/).map(Number),
    );
    expect(boxes).toHaveLength(twoHand.length + process.length);
    for (const [, , width = 0, height = 0] of boxes) {
      expect(width).toBeCloseTo((210 / 25.4) * 72, 2);
      expect(height).toBeCloseTo((297 / 25.4) * 72, 2);
    }
  });

  it('the same scenes give the same bytes', async () => {
    const { process } = drawnCharts();
    const options = { paper: 'a4', title: 'Chart' } as const;
    const first = await scenesToPdf(process, options);
    await scenesToPdf([note('another document between the two')], { paper: 'letter', title: 'Note' });
    expect(Buffer.compare(first, await scenesToPdf(process, options))).toBe(0);
  });

  it('what an analyst writes is never read as markup: it stands on the sheet letter by letter', async () => {
    for (const hostile of [
      '#panic("x")',
      '#read("/etc/passwd")',
      '*b* _i_ $x$ `c` @ref <l> \\ // [a] {b} = h',
      '"}\\u0022',
      '#',
    ]) {
      const pdf = await scenesToPdf([note(hostile)], { paper: 'letter', title: hostile });
      expect(extracted(pdf)).toBe(hostile);
    }
  });

  it('characters that the typeface or every typeface lacks do not stop a print', async () => {
    for (const text of ['部品', 'a\u0001b\u0000c', '\ud800 half', '\u{10380}\u{1F44D}', 'עברית', '']) {
      expect((await scenesToPdf([note(text)], { paper: 'letter', title: text })).length).toBeGreaterThan(
        1000,
      );
    }
  });

  it('refuses no page, and a page of another size than the paper, with the page named', async () => {
    await expect(scenesToPdf([], { paper: 'a4', title: 'x' })).rejects.toThrow(RangeError);
    await expect(scenesToPdf([note('x')], { paper: 'a4', title: 'x' })).rejects.toThrow('page 1');
  });
});

/** The text of a one-font document by its own map from glyphs to characters (ToUnicode, ISO 32000-1, 9.10.3). */
function extracted(pdf: Uint8Array): string {
  const text = streams(pdf)
    .filter((stream) => /\bBT\b|beginbfchar/.test(stream))
    .join('\n');
  const characters = new Map<string, string>();
  for (const [, block = ''] of text.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
    for (const [, glyph = '', code = ''] of block.matchAll(/<([0-9a-fA-F]+)>\s*<([0-9a-fA-F]+)>/g)) {
      characters.set(glyph.toLowerCase(), Buffer.from(code, 'hex').swap16().toString('utf16le'));
    }
  }
  const shown = [...text.matchAll(/\[([^\]]*)\]\s*TJ|(<[0-9a-fA-F]+>|\((?:\\[\s\S]|[^\\)])*\))\s*Tj/g)].map(
    (match) => match[1] ?? match[2] ?? '',
  );
  return shown.flatMap((part) => glyphsOf(part).map((glyph) => characters.get(glyph) ?? '?')).join('');
}

/** Two-byte glyph numbers of the strings in an operand, written in hexadecimal or as literal bytes with escapes. */
function glyphsOf(operand: string): string[] {
  return [...operand.matchAll(/<([0-9a-fA-F]+)>|\(((?:\\[\s\S]|[^\\)])*)\)/g)].flatMap(([, hex, literal]) => {
    const bytes =
      hex === undefined ? Buffer.from(unescaped(literal ?? ''), 'latin1') : Buffer.from(hex, 'hex');
    return bytes.toString('hex').match(/.{4}/g) ?? [];
  });
}

const escapes: Readonly<Record<string, string>> = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' };

function unescaped(literal: string): string {
  return literal.replace(/\\([0-7]{1,3}|[\s\S])/g, (_, sign: string) =>
    /^[0-7]/.test(sign) ? String.fromCharCode(Number.parseInt(sign, 8)) : (escapes[sign] ?? sign),
  );
}

describe('the fonts', () => {
  it('are TrueType files, and web fonts for SVG in both weights', async () => {
    for (const file of fontFiles()) expect(file).toMatch(/IBMPlexSans_(400Regular|600SemiBold)\.ttf$/);
    const fonts = await svgFonts();
    expect(fonts.map((font) => font.weight)).toEqual([400, 600, 400, 600]);
    // The signature of WOFF2 (W3C, WOFF File Format 2.0, 4.1).
    for (const { woff2 } of fonts) expect(Buffer.from(woff2, 'base64').toString('latin1', 0, 4)).toBe('wOF2');
  });
});
