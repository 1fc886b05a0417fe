import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import process from 'node:process';
import { parseStudy } from '@evenhand/core/ground/study';
import type { DataStore } from '@evenhand/store';

const films = ['present.mp4', 'improved.mp4'];

/** Puts the demo study and its films into a store that has no study yet; one that was put away counts as there. */
export async function seedDemo(store: DataStore, program: string): Promise<void> {
  if ((await store.studies.list()).length > 0) return;
  const folder = path.join(program, 'examples', 'couplings');
  const missing = ['couplings.evenhand.json', ...films].find((name) => !existsSync(path.join(folder, name)));
  if (missing !== undefined) {
    process.stderr.write(`The demo study was left out: ${missing} is not in ${folder}.\n`);
    return;
  }
  const study = parseStudy(await readFile(path.join(folder, 'couplings.evenhand.json'), 'utf8'));
  if (!study.ok) throw new Error(`the demo study cannot be read: ${study.error[0]?.message ?? ''}`);
  for (const name of films) {
    const taken = await store.films.copyIn(path.join(folder, name), name);
    if (!taken.ok) throw new Error(taken.error.message);
  }
  await store.studies.create(study.value);
}
