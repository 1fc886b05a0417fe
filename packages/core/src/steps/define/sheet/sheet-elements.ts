import { type Finding, finding } from '../../../ground/findings/index.ts';
import type { Method, Study, TimeStudy, TimeStudyElement } from '../../../ground/study/index.ts';
import { fromUnit } from '../../../ground/units/index.ts';
import { type RecordedReadings, readingsFromRecord } from '../from-record.ts';
import type { StudyElement } from '../study-standard.ts';
import type { SheetFault } from './sheet-types.ts';

export interface SheetElements {
  readonly method: Method | undefined;
  readonly elements: readonly TimeStudyElement[];
  readonly missing: readonly string[];
  readonly faults: readonly SheetFault[];
  readonly notes: readonly Finding[];
}

/**
 * The elements of a time study with their readings. Those of a record are taken from it: by the id of the break point,
 * which stays when one of the two is renamed, else by the name. Each element of the record is taken once.
 */
export function sheetElements(study: Study, timeStudy: TimeStudy): SheetElements {
  const { source, elements } = timeStudy;
  const method = study.methods.find(({ id }) => id === source.method);
  if (source.kind === 'readings') return { method, elements, missing: [], faults: [], notes: [] };
  const read = readingsFromRecord(study, source.method, {
    cycles: source.cycles,
    proposed: source.proposed,
    unit: 'seconds',
  });
  if (!read.ok) {
    return { method, elements, missing: [], faults: [{ finding: read.error, field: 'source' }], notes: [] };
  }
  const { found, left } = matched(elements, read.value);
  const faults: SheetFault[] = [];
  const filled = elements.map((element) => {
    const from = found.get(element.id);
    if (from !== undefined) return withTimes(element, from);
    faults.push({
      finding: strangerFinding(element, read.value.elements, method?.name ?? source.method),
      element: element.id,
    });
    return { ...element, readings: [] };
  });
  return { method, elements: filled, missing: left.map(({ name }) => name), faults, notes: read.value.notes };
}

/** Which element of the record each element of the study is, by its id; and those that are none. */
function matched(elements: readonly TimeStudyElement[], { elements: recorded, marks }: RecordedReadings) {
  const left = new Set(recorded.keys());
  const found = new Map<string, StudyElement>();
  const take = (id: string, is: (at: number) => boolean) => {
    const at = found.has(id) ? undefined : [...left].find(is);
    const from = at === undefined ? undefined : recorded[at];
    if (at === undefined || from === undefined) return;
    left.delete(at);
    found.set(id, from);
  };
  for (const { id } of elements) take(id, (at) => marks[at] === id);
  for (const { id, name } of elements) take(id, (at) => recorded[at]?.name === name);
  return { found, left: [...left].flatMap((at) => recorded[at] ?? []) };
}

function strangerFinding(
  { name }: TimeStudyElement,
  recorded: readonly StudyElement[],
  method: string,
): Finding {
  const names = recorded.map((element) => element.name);
  return names.includes(name)
    ? finding('define/record-taken', {}, { element: name, method })
    : finding('define/not-in-record', {}, { element: name, method, known: names.join(', ') });
}

/** Times and cycles that are set aside come from the record, ratings and readings that are set aside from the study. */
function withTimes(element: TimeStudyElement, from: StudyElement): TimeStudyElement {
  const said = new Map(element.readings.map((reading) => [reading.cycle, reading]));
  const readings = [...from.readings]
    .sort((a, b) => a.cycle - b.cycle)
    .map(({ cycle, time, setAside }) => {
      const own = said.get(cycle);
      const reason = own?.setAside ?? setAside;
      return {
        cycle,
        ...(time === undefined ? {} : { us: fromUnit(time, 'seconds') }),
        ...(own?.rating === undefined ? {} : { rating: own.rating }),
        ...(reason === undefined ? {} : { setAside: reason }),
      };
    });
  return { ...element, readings };
}
