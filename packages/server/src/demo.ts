import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { parseStudy } from '@evenhand/core/ground/study';
import type { DataStore } from '@evenhand/store';

/** A study file with the files of its films. */
export interface Demo {
  readonly study: string;
  readonly films: readonly string[];
}

/** The demo study as it lies in the folder of the program. */
export function demoIn(program: string): Demo {
  const folder = path.join(program, 'examples', 'couplings');
  const films = ['present.mp4', 'improved.mp4'].map((name) => path.join(folder, name));
  return { study: path.join(folder, 'couplings.evenhand.json'), films };
}

/**
 * Puts the demo study and its films into a store that has no study yet. One that was put away counts as there, so it
 * does not come back. The study is written last: a start that is cut off begins anew.
 * @returns whether it was put in; findings when a file of the demo is missing or cannot be read, and nothing is shown then
 */
export async function seedDemo(store: DataStore, demo: Demo): Promise<Result<boolean, readonly Finding[]>> {
  if ((await store.studies.list()).length > 0) return ok(false);
  const text = await readFile(demo.study, 'utf8').catch(() => undefined);
  if (text === undefined)
    return fail([finding('cli/file', {}, { file: demo.study, reason: 'it is not there' })]);
  const study = parseStudy(text);
  if (!study.ok) return study;
  for (const file of demo.films) {
    const taken = await store.films.copyIn(file, path.basename(file));
    if (!taken.ok) return fail([taken.error]);
  }
  const made = await store.studies.create(study.value);
  return made.ok ? ok(true) : fail([made.error]);
}
