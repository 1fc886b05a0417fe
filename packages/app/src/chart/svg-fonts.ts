import type { EmbeddedFont } from '@evenhand/draw';
import latin400 from '@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-400-normal.woff2?url';
import latin600 from '@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-600-normal.woff2?url';

/** The page's own fonts as they go into an SVG file, so that it looks the same on any machine. */
export async function svgFonts(): Promise<readonly EmbeddedFont[]> {
  return [
    { weight: 400, woff2: await base64(latin400) },
    { weight: 600, woff2: await base64(latin600) },
  ];
}

async function base64(url: string): Promise<string> {
  const bytes = new Uint8Array(await (await fetch(url)).arrayBuffer());
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}
