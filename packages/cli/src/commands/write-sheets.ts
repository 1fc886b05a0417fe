import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { PaperName, Scene, SheetName } from '@evenhand/core/ground/scene';
import { sceneToSvg } from '@evenhand/draw';
import { stream, writeResult } from '../files.ts';
import type { Io } from '../io.ts';

/** What sheets can be written as. */
export const sheetFormats = ['svg', 'pdf'] as const;

export interface SheetOutput<Paper extends SheetName = PaperName> {
  readonly output: string;
  readonly format: (typeof sheetFormats)[number];
  readonly paper: Paper;
}

/** Writes sheets, several as one PDF or as numbered SVG files, and tells which files they went to. */
export async function writeSheets(
  io: Io,
  { output, format, paper }: SheetOutput<SheetName>,
  pages: readonly Scene[],
): Promise<Result<readonly string[], Finding>> {
  if (format === 'pdf') {
    const pdf = await io.pdf(pages, { paper, title: pages[0]?.title ?? 'Sheets' });
    const written = await writeResult(io, output, pdf);
    return written.ok ? ok([output]) : written;
  }
  if (output === stream && pages.length > 1) return fail(finding('cli/pages', {}, { pages: pages.length }));
  const fonts = await io.svgFonts();
  const files: string[] = [];
  for (const [index, page] of pages.entries()) {
    const file = pages.length === 1 ? output : output.replace(/(\.svg)?$/i, `-${index + 1}.svg`);
    const written = await writeResult(io, file, sceneToSvg(page, { fonts }));
    if (!written.ok) return written;
    files.push(file);
  }
  return ok(files);
}
