import { frameCount } from './frame-times.ts';
import { type Film, formatVersion, type Method, type Study } from './schema.ts';

/** A study with nothing in it yet. */
export function emptyStudy(id: string, title: string): Study {
  return { formatVersion, id, title, operation: { name: title }, films: [], places: [], methods: [] };
}

/** A recorded method on a film in which nothing is marked yet: both rows are `unmarked` from the first frame to the last. */
export function unmarkedMethod(id: string, name: string, film: Film, newId: () => string): Method {
  const end = frameCount(film.frameTimes);
  const row = () => ({
    items: [{ id: newId(), start: 0, kind: 'unmarked' as const, said: 'marked' as const }],
    end,
  });
  return {
    id,
    name,
    kind: 'recorded',
    base: { kind: 'frames', film: film.id },
    unitsPerCycle: 1,
    left: row(),
    right: row(),
    cycles: { items: [], end },
  };
}
