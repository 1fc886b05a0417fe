import { ok, type Result } from '../../../ground/base/index.ts';
import type { Finding } from '../../../ground/findings/index.ts';
import type { Study, TimeStudy } from '../../../ground/study/index.ts';
import { readingsFromRecord } from '../from-record.ts';

/**
 * A time study before its first reading: typed times in seconds, standard pace, 95 %, ±5 %, and no allowance until
 * somebody agrees on one.
 */
export function emptyTimeStudy(
  facts: Pick<TimeStudy, 'id' | 'name'> & Partial<Pick<TimeStudy, 'source' | 'unit' | 'piecesPerCycle'>>,
): TimeStudy {
  return {
    source: { kind: 'readings', timing: 'typed' },
    unit: 'seconds',
    scale: '0-100',
    rating: 100,
    ratingError: 0,
    confidence: 0.95,
    precision: { kind: 'relative', share: 0.05 },
    allowances: {
      convention: 'share-of-basic-time',
      relaxation: { kind: 'share', share: 0 },
      process: 0,
      contingency: 0,
    },
    piecesPerCycle: 1,
    elements: [],
    ...facts,
  };
}

/**
 * A time study whose times are those of a marked record, with the elements that the record has. They carry the ids of the
 * break points, so that they stay together when an element is renamed.
 * @param newId gives an id that nothing in the study has yet
 */
export function timeStudyFromRecord(
  study: Study,
  methodId: string,
  name: string,
  newId: () => string,
): Result<TimeStudy, Finding> {
  const read = readingsFromRecord(study, methodId, { unit: 'seconds' });
  if (!read.ok) return read;
  const begun = emptyTimeStudy({
    id: newId(),
    name,
    source: { kind: 'record', method: methodId },
    piecesPerCycle: read.value.method.unitsPerCycle,
  });
  const elements = read.value.elements.map((element, index) => ({
    id: read.value.marks[index] ?? newId(),
    name: element.name,
    work: 'worker' as const,
    readings: [],
  }));
  return ok({ ...begun, elements });
}
