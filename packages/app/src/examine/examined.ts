import {
  findLeads,
  type Lead,
  type LeadList,
  type MethodReading,
  parseCycles,
  readMethod,
} from '@evenhand/core/examine';
import type { Study } from '@evenhand/core/ground/study';

/** What the desk shows of a method: its reading with the leads, or in words why there is none. */
export type Examined =
  | { readonly kind: 'read'; readonly reading: MethodReading; readonly list: LeadList }
  | { readonly kind: 'refused'; readonly reason: string };

interface Known {
  readonly parts: readonly unknown[];
  readonly examined: Examined;
}

let known: Known | undefined;

/**
 * Reads a method and finds its leads. The last answer is kept: what was noted about leads changes nothing in it.
 * @param cycles as typed: "1-4, 6"; empty for all that are not set aside
 * @param proposed what nobody has confirmed counts as well
 */
export function examined(study: Study, methodId: string, cycles: string, proposed = false): Examined {
  const parts = [study.methods, study.places, study.films, study.operation, methodId, cycles, proposed];
  if (known !== undefined && parts.every((part, index) => part === known?.parts[index]))
    return known.examined;
  const made = examine(study, methodId, cycles, proposed);
  known = { parts, examined: made };
  return made;
}

function examine(study: Study, methodId: string, text: string, proposed: boolean): Examined {
  const chosen = text.trim() === '' ? undefined : parseCycles(text);
  if (chosen !== undefined && !chosen.ok) return { kind: 'refused', reason: chosen.error };
  const reading = readMethod(study, methodId, { cycles: chosen?.value, proposed });
  if (!reading.ok) return { kind: 'refused', reason: reading.error.message };
  return { kind: 'read', reading: reading.value, list: findLeads(reading.value) };
}

/** The leads that a motion is part of the evidence of. */
export function leadsWith(
  { leads }: LeadList,
  { hand, from, to }: { readonly hand: 'left' | 'right'; readonly from: number; readonly to: number },
): readonly Lead[] {
  return leads.filter((lead) =>
    lead.traces.some(
      (trace) => (trace.hand === hand || trace.hand === 'both') && trace.from < to && trace.to > from,
    ),
  );
}
