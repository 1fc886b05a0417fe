import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { EmbeddedFont } from '../svg/scene-to-svg.ts';

/** Where a file of an installed package lies, whether this module runs from its source or from a bundle beside node_modules. */
function installed(file: string): string {
  return createRequire(import.meta.url).resolve(file);
}

/** The TrueType files of the chart's typeface, regular and semi-bold. */
export function fontFiles(): readonly [regular: string, semiBold: string] {
  return [
    installed('@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf'),
    installed('@expo-google-fonts/ibm-plex-sans/600SemiBold/IBMPlexSans_600SemiBold.ttf'),
  ];
}

/** The typeface for `sceneToSvg`, read from the installed web fonts: Latin with its extension, both weights. */
export async function svgFonts(): Promise<readonly EmbeddedFont[]> {
  const ranges: Readonly<Record<string, string>> = JSON.parse(
    await readFile(installed('@fontsource/ibm-plex-sans/unicode.json'), 'utf8'),
  );
  const wanted = ['latin', 'latin-ext'].flatMap((subset) =>
    ([400, 600] as const).map((weight) => ({ subset, weight })),
  );
  return Promise.all(
    wanted.map(async ({ subset, weight }) => {
      const file = installed(
        `@fontsource/ibm-plex-sans/files/ibm-plex-sans-${subset}-${weight}-normal.woff2`,
      );
      return { weight, unicodeRange: ranges[subset], woff2: (await readFile(file)).toString('base64') };
    }),
  );
}
