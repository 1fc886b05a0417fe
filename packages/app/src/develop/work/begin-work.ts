import { type DrawnWork, workFormatVersion } from '@evenhand/core/develop';
import type { KeptWork, Method, Study } from '@evenhand/core/ground/study';

/** A drawn work as it is kept; what had to be left out stands in its note. */
export function keepDrawn({ work, cycle, notes }: DrawnWork, method: Method, id: string): KeptWork {
  const note = notes.map(({ message }) => message).join('\n');
  return {
    id,
    drawnFrom: { method: method.id, ...(cycle < 1 ? {} : { cycle }) },
    work: note === '' ? work : { ...work, note: note.slice(0, 20_000) },
  };
}

/** A work to be typed, with the places of the study and one step to begin with. */
export function typedWork(study: Study, id: string): KeptWork {
  const places = study.places.map(({ id: place, name, at }) => ({
    id: place,
    name,
    kind: 'bench' as const,
    ...(at === undefined ? {} : { at }),
  }));
  const front = { id: 'front', name: 'Place in front', kind: 'bench' as const, at: { x: 0, y: 200 } };
  const all = places.length === 0 ? [front] : places;
  return {
    id,
    work: {
      workFormat: workFormatVersion,
      title: (study.operation.name || study.title).slice(0, 200),
      ...(study.demo === true ? { demo: true } : {}),
      unitsPerCycle: 1,
      home: 'free',
      places: all,
      steps: [
        {
          id: 'step-1',
          name: 'First step',
          motions: [{ kind: 'U' }],
          hand: 'either',
          place: all[0]?.id ?? front.id,
          eyes: false,
          unit: 1,
        },
      ],
    },
  };
}
