import regular from '@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-400-normal.woff2?url';
import semiBold from '@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-600-normal.woff2?url';
import type { EmbeddedFont } from '../svg/scene-to-svg.ts';

const files = [
  [400, regular],
  [600, semiBold],
] as const;

/** Loads the typeface into the page of a browser test, and gives it as a drawing carries it. */
export async function loadPageFonts(): Promise<readonly EmbeddedFont[]> {
  return Promise.all(
    files.map(async ([weight, url]) => {
      const bytes = new Uint8Array(await (await fetch(url)).arrayBuffer());
      document.fonts.add(await new FontFace('IBM Plex Sans', bytes, { weight: String(weight) }).load());
      return { weight, woff2: btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join('')) };
    }),
  );
}
