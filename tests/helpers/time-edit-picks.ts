import type { SingleEdit, TimeEdit } from '@evenhand/core/ground/edit';
import type { Comparison, Study, TimeStudy, TimeStudyElement } from '@evenhand/core/ground/study';
import type { Pick } from './edit-picks.ts';

export const timeEditTypes: readonly TimeEdit['type'][] = [
  ...(['time-study.add', 'time-study.remove', 'time-study.change'] as const),
  ...(['timed-element.add', 'timed-element.remove', 'timed-element.change'] as const),
  ...(['reading.set', 'reading.set', 'comparison.add', 'comparison.remove', 'comparison.change'] as const),
];

function nth<T>(list: readonly T[], index: number): T | undefined {
  return list.length === 0 ? undefined : list[index % list.length];
}

/** The edit of a time study or comparison that a pick means; undefined when there is nothing of the kind to edit. */
export function timeEditFrom(study: Study, pick: Pick, name: string): SingleEdit | undefined {
  return pick.type.startsWith('comparison.')
    ? comparisonEdit(study, pick, name)
    : timeStudyEdit(study, pick, name);
}

/** A time study to begin with; now and then with faults that must be refused. */
function begun(study: Study, pick: Pick, name: string): TimeStudy {
  const known = nth(study.timeStudies ?? [], pick.which);
  if (known !== undefined) return { ...known, id: name };
  const method = pick.at % 7 === 0 ? 'gone' : (nth(study.methods, pick.method)?.id ?? 'gone');
  const element = {
    id: pick.at % 5 === 0 ? 'a' : 'b',
    name: pick.text,
    work: 'worker',
    readings: [],
  } as const;
  return {
    id: name,
    name: pick.text,
    source: { kind: 'readings', method, timing: 'typed' },
    unit: 'minutes',
    scale: '0-100',
    ratingError: 0,
    confidence: 0.95,
    precision: { kind: 'relative', share: 0.05 },
    allowances: {
      convention: 'share-of-basic-time',
      relaxation: { kind: 'share', share: 0.1 },
      process: 0,
      contingency: 0,
    },
    piecesPerCycle: 1,
    elements: [element, { ...element, id: 'a', readings: [{ cycle: 1 + (pick.at % 9), us: pick.at }] }],
  };
}

function timeStudyEdit(study: Study, pick: Pick, name: string): SingleEdit | undefined {
  if (pick.type === 'time-study.add') {
    const index = pick.which % 3 === 0 ? {} : { index: pick.which % 3 };
    return { type: 'time-study.add', timeStudy: begun(study, pick, name), ...index };
  }
  const timeStudy = nth(study.timeStudies ?? [], pick.which);
  if (timeStudy === undefined) return undefined;
  if (pick.type === 'time-study.remove') return { type: 'time-study.remove', timeStudy };
  if (pick.type === 'time-study.change') return headEdit(study, timeStudy, pick);
  const at = { timeStudy: timeStudy.id };
  if (pick.type === 'timed-element.add') {
    const element: TimeStudyElement = {
      id: pick.at % 6 === 0 ? (timeStudy.elements[0]?.id ?? name) : name,
      name: pick.text,
      work: 'worker',
      readings: pick.at % 4 === 0 ? [{ cycle: 3, us: 1_000_000 }] : [],
    };
    return { type: 'timed-element.add', ...at, element, index: pick.at % 3 };
  }
  const element = nth(timeStudy.elements, pick.at);
  if (element === undefined) return undefined;
  if (pick.type === 'timed-element.remove') return { type: 'timed-element.remove', ...at, element };
  if (pick.type === 'reading.set') return readingEdit(timeStudy, element, pick);
  return {
    type: 'timed-element.change',
    ...at,
    element: element.id,
    to: { name: pick.text, occurs: pick.at % 2 === 0 ? null : { times: 1, cycles: 4 } },
    was: { name: element.name, occurs: element.occurs ?? null },
  };
}

function headEdit(study: Study, timeStudy: TimeStudy, pick: Pick): SingleEdit {
  const method = nth(study.methods, pick.method)?.id ?? 'gone';
  return pick.at % 3 === 0
    ? {
        type: 'time-study.change',
        timeStudy: timeStudy.id,
        to: { source: { kind: 'record', method }, rating: 100 },
        was: { source: timeStudy.source, rating: timeStudy.rating ?? null },
      }
    : {
        type: 'time-study.change',
        timeStudy: timeStudy.id,
        to: {
          note: pick.at % 2 === 0 ? null : pick.text,
          sittings: [
            { id: 's1', start: 1, operatorCode: 'K1' },
            { id: pick.at % 5 === 0 ? 's1' : 's2', start: 1 + (pick.at % 4) },
          ],
        },
        was: { note: timeStudy.note ?? null, sittings: timeStudy.sittings ?? null },
      };
}

function readingEdit(timeStudy: TimeStudy, element: TimeStudyElement, pick: Pick): SingleEdit {
  const known = nth(element.readings, pick.which);
  const at = { timeStudy: timeStudy.id, element: element.id };
  if (known !== undefined && pick.at % 3 === 0) return { type: 'reading.set', ...at, to: null, was: known };
  const cycle = pick.at % 4 === 0 || known === undefined ? 1 + (pick.at % 50) : known.cycle;
  const was = element.readings.find((reading) => reading.cycle === cycle) ?? null;
  const to = { cycle: pick.at % 17 === 0 ? cycle + 1 : cycle, us: pick.at * 1000, setAside: pick.text };
  return { type: 'reading.set', ...at, to, was };
}

function comparisonEdit(study: Study, pick: Pick, name: string): SingleEdit | undefined {
  const [one, two] = [
    nth(study.methods, pick.method)?.id ?? 'gone',
    nth(study.methods, pick.at)?.id ?? 'gone',
  ];
  if (pick.type === 'comparison.add') {
    const comparison: Comparison = {
      id: name,
      before: { method: one },
      after: { method: two },
      confidence: 0.95,
    };
    return { type: 'comparison.add', comparison };
  }
  const comparison = nth(study.comparisons ?? [], pick.which);
  if (comparison === undefined) return undefined;
  if (pick.type === 'comparison.remove') return { type: 'comparison.remove', comparison };
  return {
    type: 'comparison.change',
    comparison: comparison.id,
    to: { name: pick.text, after: { method: two }, money: null },
    was: { name: comparison.name ?? null, after: comparison.after, money: comparison.money ?? null },
  };
}
