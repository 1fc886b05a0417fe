import { type Finding, finding } from '../findings/index.ts';
import type { Comparison } from './comparison-schema.ts';
import type { Study } from './schema.ts';
import type { TimeStudy, TimeStudyElement } from './time-study-schema.ts';

/** What the shape of a time study cannot say. `pointer` is where it stands in the document. */
export function checkTimeStudy(study: Study, timeStudy: TimeStudy, pointer: string): Finding[] {
  const { source, elements, sittings = [], foreign = [] } = timeStudy;
  const found: Finding[] = [];
  if (source.method !== undefined && !study.methods.some(({ id }) => id === source.method)) {
    found.push(unknownMethod(timeStudy.name, source.method, `${pointer}/source/method`));
  }
  elements.forEach((element, index) => {
    found.push(...checkReadings(element, source.kind, `${pointer}/elements/${index}`));
  });
  sittings.forEach(({ start }, index) => {
    const before = sittings[index - 1];
    if (before !== undefined && start <= before.start) {
      const where = { pointer: `${pointer}/sittings/${index}/start` };
      found.push(finding('study/sitting-order', where, { cycle: start }));
    }
  });
  for (const list of ['elements', 'sittings', 'foreign'] as const) {
    const taken = new Set<string>();
    (timeStudy[list] ?? []).forEach(({ id }, index) => {
      if (taken.has(id))
        found.push(finding('study/duplicate-id', { pointer: `${pointer}/${list}/${index}/id` }, { id }));
      taken.add(id);
    });
  }
  const known = new Set(elements.map(({ id }) => id));
  foreign.forEach(({ element, what }, index) => {
    if (element === undefined || known.has(element)) return;
    const where = { pointer: `${pointer}/foreign/${index}/element` };
    found.push(finding('study/foreign-element', where, { what, element }));
  });
  return found;
}

function checkReadings(
  { name, readings }: TimeStudyElement,
  source: TimeStudy['source']['kind'],
  pointer: string,
): Finding[] {
  const found: Finding[] = [];
  readings.forEach(({ cycle, us }, index) => {
    const where = { pointer: `${pointer}/readings/${index}` };
    const before = readings[index - 1];
    if (before !== undefined && cycle <= before.cycle) {
      found.push(finding('study/reading-order', where, { element: name, cycle }));
    }
    if (source === 'record' && us !== undefined) {
      found.push(finding('study/reading-of-record', where, { element: name, cycle }));
    }
  });
  return found;
}

/** Its two methods are in the study and are two. */
export function checkComparison(study: Study, comparison: Comparison, pointer: string): Finding[] {
  const { before, after } = comparison;
  const found = (['before', 'after'] as const).flatMap((side) => {
    const { method } = comparison[side];
    if (study.methods.some(({ id }) => id === method)) return [];
    return [unknownMethod(comparison.name ?? comparison.id, method, `${pointer}/${side}/method`)];
  });
  if (before.method === after.method) {
    const where = { pointer: `${pointer}/after/method` };
    found.push(finding('study/compared-with-itself', where, { method: before.method }));
  }
  return found;
}

function unknownMethod(name: string, method: string, pointer: string): Finding {
  return finding('study/names-unknown-method', { pointer }, { name, method });
}

export function checkTimes(study: Study): Finding[] {
  return [
    ...(study.timeStudies ?? []).flatMap((item, index) =>
      checkTimeStudy(study, item, `/timeStudies/${index}`),
    ),
    ...(study.comparisons ?? []).flatMap((item, index) =>
      checkComparison(study, item, `/comparisons/${index}`),
    ),
  ];
}
