import { type ChangeCode, leadAnswers } from '@evenhand/core/develop';
import { findLeads, readMethod } from '@evenhand/core/examine';
import type { Study } from '@evenhand/core/ground/study';

/** A lead of the examination that a change answers. */
export interface LeadPointer {
  readonly rank: number;
  readonly name: string;
}

/** Which leads of the recorded method each kind of change answers; the first three of them. */
export function leadPointers(
  study: Study,
  methodId: string | undefined,
): ReadonlyMap<ChangeCode, readonly LeadPointer[]> {
  const found = new Map<ChangeCode, LeadPointer[]>();
  const reading = methodId === undefined ? undefined : readMethod(study, methodId);
  if (reading?.ok !== true) return found;
  findLeads(reading.value).leads.forEach(({ code, name }, index) => {
    for (const change of leadAnswers[code].changes) {
      const known = found.get(change) ?? [];
      if (known.length < 3 && !known.some((pointer) => pointer.name === name))
        found.set(change, [...known, { rank: index + 1, name }]);
    }
  });
  return found;
}
