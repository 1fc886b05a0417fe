import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { type Scene, type SheetName, sheets } from '@evenhand/core/ground/scene';
import { NodeCompiler, type NodeTypstDocument } from '@myriaddreamin/typst-ts-node-compiler';
import { cleanText } from '../clean-text.ts';
import { looks } from '../looks.ts';
import { fontFiles } from './font-files.ts';
import { paperData } from './page-data.ts';
import { typstSource } from './typst-source.ts';

export interface PdfOptions {
  /** The paper that the scenes were laid out for. */
  readonly paper: SheetName;
  readonly title: string;
  /** BCP 47; English when left out. */
  readonly language?: string | undefined;
}

let compiler: Promise<NodeCompiler> | undefined;

/** Made once, for finding the fonts costs more than setting a sheet. */
function typesetter(): Promise<NodeCompiler> {
  compiler ??= Promise.all(fontFiles().map((file) => readFile(file))).then((fontBlobs) =>
    NodeCompiler.create({ workspace: path.dirname(fontFiles()[0]), fontArgs: [{ fontBlobs }] }),
  );
  return compiler;
}

/**
 * Scenes as one PDF, a page each: real vectors, embedded fonts, text that can be selected and is tagged (PDF/UA-1:
 * headings, tables and figures with their words; the rest of the drawing as artifacts). The same scenes give the same
 * bytes, for no date is written.
 * A character that the typeface lacks is taken from the machine's fonts, and is an empty box where none has it.
 * @throws RangeError without pages, or for a page that is neither upright nor across on the paper
 * @throws Error when the sheets cannot be set, with the reason
 */
export async function scenesToPdf(pages: readonly Scene[], options: PdfOptions): Promise<Uint8Array> {
  if (pages.length === 0) throw new RangeError('a PDF needs at least one page');
  checkSizes(pages, options.paper);
  const data = JSON.stringify({
    ...paperData(pages, looks.print),
    title: cleanText(options.title).trim() || 'Drawing',
    description: cleanText(pages[0]?.description ?? ''),
    language: options.language ?? 'en',
  });
  const typst = await typesetter();
  const made = typst.compile({ mainFileContent: typstSource, inputs: { data } });
  const document = made.result;
  if (document === null) {
    throw new Error(
      `the sheets could not be set: ${JSON.stringify(made.takeDiagnostics()?.shortDiagnostics)}`,
    );
  }
  const pdf = exportPdf(typst, document);
  typst.evictCache(2);
  return new Uint8Array(pdf.buffer, pdf.byteOffset, pdf.byteLength);
}

/**
 * PDF/UA forbids a character that no font can show. Such a text is still worth having on paper: then the same tagged
 * document is written without the claim, with an empty box for the character.
 */
function exportPdf(typst: NodeCompiler, document: NodeTypstDocument): Buffer {
  try {
    return typst.pdf(document, { pdfStandard: 'ua-1' });
  } catch (error) {
    if (!(error instanceof Error) || !error.message.includes('could not be displayed with font')) throw error;
    return typst.pdf(document, { pdfTags: true });
  }
}

function checkSizes(pages: readonly Scene[], paper: SheetName): void {
  const { width, height } = sheets[paper];
  for (const [index, page] of pages.entries()) {
    const fits = (a: number, b: number) => Math.abs(page.width - a) < 1 && Math.abs(page.height - b) < 1;
    if (!fits(width, height) && !fits(height, width)) {
      throw new RangeError(
        `page ${index + 1} is ${page.width} × ${page.height} points, which is not ${paper}`,
      );
    }
  }
}
