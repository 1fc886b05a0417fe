import { writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeStudy } from '@evenhand/core/ground/study';
import { filmEntry } from './film-entry.ts';
import { demoStudy } from './study.ts';

/** Writes the study of the demonstration beside its films. */
const here = dirname(fileURLToPath(import.meta.url));
const study = demoStudy({
  present: await filmEntry('present', join(here, 'present.mp4')),
  improved: await filmEntry('improved', join(here, 'improved.mp4')),
});
await writeFile(join(here, 'couplings.evenhand.json'), writeStudy(study));
