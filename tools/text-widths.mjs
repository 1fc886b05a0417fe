// Reads the advance widths of IBM Plex Sans from its TrueType files and writes them as a table for the core,
// which measures text without a font at hand. Run by hand when the font package changes: node tools/text-widths.mjs
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';

const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const FONTS = 'node_modules/@expo-google-fonts/ibm-plex-sans';
const TARGET = 'packages/core/src/ground/scene/plex-sans-widths.ts';

/** Every character of the basic plane below the private use area. */
const LAST = 0xdfff;

/** @type {ReadonlyArray<readonly [400 | 600, string]>} */
const FILES = [
  [400, '400Regular/IBMPlexSans_400Regular.ttf'],
  [600, '600SemiBold/IBMPlexSans_600SemiBold.ttf'],
];

/**
 * The advance width of every character of a TrueType font, in thousandths of the size.
 * @param {Buffer} font
 * @returns {(code: number) => number | undefined} undefined where the font has no glyph
 */
export function readWidths(font) {
  const tables = tablesOf(font);
  const at = (/** @type {string} */ name) => {
    const offset = tables.get(name);
    if (offset === undefined) throw new Error(`the font has no table ${name}`);
    return offset;
  };
  const perEm = font.readUInt16BE(at('head') + 18);
  const metrics = font.readUInt16BE(at('hhea') + 34);
  const glyphOf = readCharacterMap(font, at('cmap'));
  return (code) => {
    const glyph = glyphOf(code);
    if (glyph === 0) return undefined;
    const advance = font.readUInt16BE(at('hmtx') + 4 * Math.min(glyph, metrics - 1));
    return (advance * 1000) / perEm;
  };
}

/** @param {Buffer} font */
function tablesOf(font) {
  const count = font.readUInt16BE(4);
  /** @type {Map<string, number>} */
  const tables = new Map();
  for (let index = 0; index < count; index += 1) {
    const record = 12 + index * 16;
    tables.set(font.toString('latin1', record, record + 4), font.readUInt32BE(record + 8));
  }
  return tables;
}

/**
 * Segment mapping to delta values (format 4), the map that every font for the basic plane carries.
 * @param {Buffer} font
 * @param {number} cmap
 * @returns {(code: number) => number} the glyph, 0 for none
 */
function readCharacterMap(font, cmap) {
  const offsets = Array.from(
    { length: font.readUInt16BE(cmap + 2) },
    (_, index) => cmap + font.readUInt32BE(cmap + 8 + index * 8),
  );
  const table = offsets.find((offset) => font.readUInt16BE(offset) === 4);
  if (table === undefined) throw new Error('the font has no character map of format 4');
  const segments = font.readUInt16BE(table + 6) / 2;
  const [ends, starts] = [table + 14, table + 16 + segments * 2];
  const [deltas, ranges] = [starts + segments * 2, starts + segments * 4];
  return (code) => {
    for (let index = 0; index < segments; index += 1) {
      if (font.readUInt16BE(ends + index * 2) < code) continue;
      const start = font.readUInt16BE(starts + index * 2);
      if (start > code) return 0;
      const delta = font.readUInt16BE(deltas + index * 2);
      const range = font.readUInt16BE(ranges + index * 2);
      if (range === 0) return (code + delta) & 0xffff;
      const glyph = font.readUInt16BE(ranges + index * 2 + range + (code - start) * 2);
      return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
    }
    return 0;
  };
}

/**
 * Runs of characters that all have a glyph.
 * @param {(code: number) => number | undefined} widthOf
 */
function runs(widthOf) {
  /** @type {{ first: number, widths: number[] }[]} */
  const found = [];
  let open = false;
  for (let code = 0x20; code <= LAST; code += 1) {
    const width = widthOf(code);
    if (width === undefined) open = false;
    else if (open) found.at(-1)?.widths.push(width);
    else found.push({ first: code, widths: [width] });
    open = width !== undefined;
  }
  return found;
}

function source() {
  const blocks = FILES.map(([weight, file]) => {
    const rows = runs(readWidths(readFileSync(path.join(ROOT, FONTS, file)))).map(
      ({ first, widths }) => `  [0x${first.toString(16)}, '${widths.join(' ')}'],`,
    );
    return `export const widths${weight}: readonly WidthRun[] = [\n${rows.join('\n')}\n];\n`;
  });
  const { version } = JSON.parse(readFileSync(path.join(ROOT, FONTS, 'package.json'), 'utf8'));
  return [
    `// Written by tools/text-widths.mjs from @expo-google-fonts/ibm-plex-sans ${version}; not edited by hand.\n`,
    '/** First code point, then the advance width of each character from there on, in thousandths of the size. */',
    'export type WidthRun = readonly [first: number, widths: string];\n',
    blocks.join('\n'),
  ].join('\n');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(path.join(ROOT, TARGET), source());
  console.log(`${TARGET} written`);
}
