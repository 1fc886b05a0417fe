import { type Finding, finding } from '../findings/index.ts';
import type { Study } from './schema.ts';
import type { KeptWork } from './work-schema.ts';

/**
 * What must hold of a kept work whatever state it is in: its parts can be told apart and its method is there. Whether it
 * can be done is judged where it is developed, for a work may be kept half written.
 */
export function checkKeptWork(study: Study, kept: KeptWork, pointer: string): Finding[] {
  const { drawnFrom, work, changes = [] } = kept;
  const found: Finding[] = [];
  if (drawnFrom !== undefined && !study.methods.some(({ id }) => id === drawnFrom.method)) {
    const where = { pointer: `${pointer}/drawnFrom/method` };
    found.push(finding('study/names-unknown-method', where, { name: work.title, method: drawnFrom.method }));
  }
  for (const list of ['places', 'steps'] as const) {
    const taken = new Set<string>();
    work[list].forEach(({ id }, index) => {
      const where = { pointer: `${pointer}/work/${list}/${index}/id` };
      if (taken.has(id)) found.push(finding('study/duplicate-id', where, { id }));
      taken.add(id);
    });
  }
  changes.forEach(({ change }, index) => {
    const before = changes[index - 1];
    if (before === undefined || before.change < change) return;
    found.push(finding('study/change-order', { pointer: `${pointer}/changes/${index}/change` }, { change }));
  });
  return found;
}

export function checkKeptWorks(study: Study): Finding[] {
  return (study.works ?? []).flatMap((kept, index) => checkKeptWork(study, kept, `/works/${index}`));
}
