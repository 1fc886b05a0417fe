import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the program: the nearest one above this file whose package is named `evenhand`. */
export function programFolder(): string {
  let folder = path.dirname(fileURLToPath(import.meta.url));
  for (;;) {
    const manifest = path.join(folder, 'package.json');
    if (
      existsSync(manifest) &&
      (JSON.parse(readFileSync(manifest, 'utf8')) as { name?: string }).name === 'evenhand'
    )
      return folder;
    const above = path.dirname(folder);
    if (above === folder) throw new Error('the folder of the program cannot be found');
    folder = above;
  }
}
