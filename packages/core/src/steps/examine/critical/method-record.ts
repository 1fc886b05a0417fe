import type { Method, Study } from '../../../ground/study/index.ts';
import { findLeads, type Lead } from '../leads/index.ts';
import { type MethodReading, readMethod } from '../reading/index.ts';

/** What the answers are built from: the method as it is read by default, and its leads when they are asked for. */
export interface MethodRecord {
  readonly study: Study;
  readonly method: Method;
  /** Undefined when nothing is marked or every cycle is set aside. */
  readonly reading: MethodReading | undefined;
  readonly leads: () => readonly Lead[];
}

const cache = new WeakMap<Method, MethodRecord>();

/**
 * Reads a method once for as long as it, the films, the places and the heading stay what they are, so that noting an
 * answer reads nothing again. Undefined when the study has no such method.
 */
export function methodRecord(study: Study, id: string): MethodRecord | undefined {
  const method = study.methods.find((item) => item.id === id);
  if (method === undefined) return undefined;
  const known = cache.get(method);
  if (known !== undefined && sameRest(known.study, study)) return known;
  const read = readMethod(study, id);
  const reading = read.ok ? read.value : undefined;
  let leads: readonly Lead[] | undefined;
  const made: MethodRecord = {
    study,
    method,
    reading,
    leads: () => {
      leads ??= reading === undefined ? [] : findLeads(reading).leads;
      return leads;
    },
  };
  cache.set(method, made);
  return made;
}

function sameRest(a: Study, b: Study): boolean {
  return a.films === b.films && a.places === b.places && a.operation === b.operation;
}
