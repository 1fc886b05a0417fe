import type { ChangeId, Library, Work } from '@evenhand/core/develop';
import type { Study } from '@evenhand/core/ground/study';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { DevelopAnswer, DevelopRequest } from './develop-worker.ts';
import { longPatience, type PlainMethod, type PlainWorth, usualPatience } from './developed-plain.ts';

export interface Developed {
  readonly base: PlainMethod | undefined;
  readonly refused: string | undefined;
  /** With the changes that are taken; undefined without any, and while it is worked out. */
  readonly taken: PlainWorth | undefined;
  /** Undefined where a change has nothing to change. */
  readonly changes: ReadonlyMap<ChangeId, PlainWorth | undefined>;
  readonly working: boolean;
  /** The method of the work as it is, is still being improved. */
  readonly searching: boolean;
  /** What stands as method is that of the question before, for this one has none yet. */
  readonly stale: boolean;
  /** A person ended the search; what stands is the best so far. */
  readonly stopped: boolean;
}

export interface Search {
  readonly found: Developed;
  /** Ends the calculation with the best so far. */
  readonly stop: () => void;
  /** Searches again with ten times the time. */
  readonly longer: () => void;
}

const nothing: Developed = {
  base: undefined,
  refused: undefined,
  taken: undefined,
  changes: new Map(),
  working: false,
  searching: false,
  stale: false,
  stopped: false,
};

/**
 * Methods worked out in a thread of its own; a new question ends the one before. Without a work, as while it has faults,
 * the last method stays.
 */
export function useDeveloped(
  study: Study,
  methodId: string | undefined,
  work: Work | undefined,
  kind: 'open' | 'closed',
  taken: readonly ChangeId[],
  more: readonly ChangeId[] = [],
  library?: Library,
): Search {
  const [found, setFound] = useState<Developed>(nothing);
  // Whoever asks for a longer search gets one for the work as it stands then, and no longer ones after that.
  const [patient, setPatient] = useState<{ readonly work: Work | undefined }>();
  const number = useRef(0);
  const stopWorker = useRef<() => void>(() => {});
  const key = `${taken.join()} ${more.join()}`;
  const patience = work !== undefined && patient?.work === work ? longPatience : usualPatience;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the study is read for the records of its methods alone
  useEffect(() => {
    if (work === undefined || methodId === undefined) return;
    number.current += 1;
    const own = number.current;
    setFound((before) => ({
      ...before,
      taken: taken.length === 0 ? undefined : before.taken,
      changes: new Map(),
      working: true,
      searching: true,
      stale: before.base !== undefined,
      stopped: false,
    }));
    let worker: Worker | undefined;
    // While a bin is dragged, only where it comes to rest is worked out.
    const timer = setTimeout(() => {
      worker = new Worker(new URL('./develop-worker.ts', import.meta.url), { type: 'module' });
      worker.onmessage = ({ data }: MessageEvent<DevelopAnswer>) => {
        if (data.number === number.current) setFound((before) => after(before, data));
      };
      worker.onerror = (event) =>
        setFound((before) => ({
          ...before,
          refused: event.message || 'The calculation stopped.',
          working: false,
          searching: false,
        }));
      const request: DevelopRequest = {
        number: own,
        asked: { study, methodId, work, kind, library, patience },
        taken,
        more,
      };
      worker.postMessage(request);
    }, 120);
    const end = () => {
      clearTimeout(timer);
      worker?.terminate();
    };
    stopWorker.current = end;
    return end;
  }, [methodId, work, kind, key, library, patience, patient]);
  const stop = useCallback(() => {
    stopWorker.current();
    setFound((before) => ({ ...before, working: false, searching: false, stopped: true }));
  }, []);
  const longer = useCallback(() => setPatient({ work }), [work]);
  return { found, stop, longer };
}

function after(before: Developed, answer: DevelopAnswer): Developed {
  switch (answer.kind) {
    case 'better':
      return { ...before, base: answer.method, refused: undefined, stale: false };
    case 'base':
      return answer.base.ok
        ? { ...before, base: answer.base.value, refused: undefined, searching: false, stale: false }
        : { ...before, base: undefined, refused: answer.base.reason, searching: false, stale: false };
    case 'taken':
      return { ...before, taken: answer.worth };
    case 'change':
      return { ...before, changes: new Map([...before.changes, [answer.id, answer.worth]]) };
    case 'failed':
      return { ...before, refused: answer.reason, working: false, searching: false };
    default:
      return { ...before, working: false };
  }
}
