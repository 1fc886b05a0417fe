export { fontFiles, svgFonts } from './font-files.ts';
export { type PdfOptions, scenesToPdf } from './scenes-to-pdf.ts';
