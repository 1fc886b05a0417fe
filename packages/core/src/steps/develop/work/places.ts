import type { Study } from '../../../ground/study/index.ts';
import type { Draft } from './draft.ts';
import type { WorkPlace } from './work-schema.ts';

/**
 * The places that the steps name, with what stands there told from what is done: parts are taken up from a bin, worked on
 * in a fixture or on the bench, and laid down at an exit.
 */
export function placesOf(study: Study, drafts: readonly Draft[]): WorkPlace[] {
  const named = new Set(drafts.flatMap(({ visits, place, held }) => [place, visits[1]?.place, held?.place]));
  const known = study.places.filter(({ id }) => named.has(id));
  const ids = new Set(known.map(({ id }) => id));
  const places = known.map(
    ({ id, name, at, mirror }): WorkPlace => ({
      id,
      name,
      kind: kindOf(id, drafts),
      ...(at === undefined ? {} : { at }),
      ...(mirror === undefined || !ids.has(mirror) ? {} : { mirror }),
    }),
  );
  const unknown = [...named].filter((id): id is string => id !== undefined && !ids.has(id));
  return [...places, ...unknown.map((id): WorkPlace => ({ id, name: id, kind: 'bench' }))];
}

function kindOf(id: string, drafts: readonly Draft[]): WorkPlace['kind'] {
  const here = drafts.filter(({ place }) => place === id);
  if (drafts.some(({ held }) => held?.by === 'fixture' && held.place === id)) return 'fixture';
  if (drafts.some(({ held }) => held?.place === id)) return 'bench';
  if (here.length > 0 && here.every(({ visits: [visit] }) => visit.after !== undefined)) return 'bin';
  const lays = here.every(({ visits: [visit] }) => visit.before !== undefined && visit.after === undefined);
  return here.length > 0 &&
    lays &&
    here.every(({ visits: [visit] }) => visit.pieces.every(({ kind }) => kind === 'RL'))
    ? 'exit'
    : 'bench';
}
