import {
  type ElementMark,
  type Film,
  formatVersion,
  type Method,
  type Motion,
  type Study,
} from '@evenhand/core/ground/study';
import type { Script, ScriptMotion } from './motions.ts';
import { improvedScript } from './script-improved.ts';
import { presentScript } from './script-present.ts';
import { demoComparisons, demoTimeStudies, improvedElements, presentElements } from './time-studies.ts';
import { studyPlaces } from './workplace.ts';

/** The demonstration's study: both films with everything marked as their scripts have it. The same films give the same study. */
export function demoStudy(films: { readonly present: Film; readonly improved: Film }): Study {
  return {
    formatVersion,
    id: 'couplings',
    title: 'Hose couplings',
    demo: true,
    operation: {
      name: 'Put hose couplings together',
      part: 'Hose coupling: body, sealing ring, collar',
      number: '40',
      department: 'Hand assembly',
      unitsAYear: 180_000,
      note: 'Invented for trying the program: the bench, the films and all figures. Nobody was filmed; the hands are drawn.',
    },
    films: [films.present, films.improved],
    places: [...studyPlaces()],
    methods: [
      method(
        presentScript(),
        'Present method',
        1,
        'The left hand holds the body throughout; the right hand does the work.',
        presentElements,
      ),
      method(
        improvedScript(),
        'Improved method',
        2,
        'A fixture holds two bodies; both hands do the same work at the same time.',
        improvedElements,
      ),
    ],
    timeStudies: [...demoTimeStudies()],
    comparisons: [...demoComparisons()],
  };
}

function method(
  script: Script,
  name: string,
  unitsPerCycle: number,
  note: string,
  elements: readonly ElementMark[],
): Method {
  const row = (motions: readonly ScriptMotion[], hand: 'l' | 'r') => ({
    items: motions.map((motion, index) => motionEntry(motion, `${hand}${index + 1}`)),
    end: script.frames,
  });
  return {
    id: script.id,
    name,
    kind: 'recorded',
    base: { kind: 'frames', film: script.id },
    unitsPerCycle,
    left: row(script.left, 'l'),
    right: row(script.right, 'r'),
    cycles: {
      items: script.cycles.map((cycle, index) => ({ id: `c${index + 1}`, ...cycle })),
      end: script.cyclesEnd,
    },
    elements: [...elements],
    note,
  };
}

function motionEntry({ kind, start, object, from, to, note }: ScriptMotion, id: string): Motion {
  return {
    id,
    start,
    kind,
    ...(object === undefined ? {} : { object }),
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    ...(note === undefined ? {} : { note }),
    said: 'marked',
  };
}
