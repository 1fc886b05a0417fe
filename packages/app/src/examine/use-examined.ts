import type { Study } from '@evenhand/core/ground/study';
import { useDeferredValue, useEffect, useMemo, useState } from 'react';
import { type Examined, examined } from './examined.ts';

/** Records with up to this many motions are read while the page is drawn: some ten milliseconds. Ours. */
const quickMotions = 2000;

export interface Reading {
  /** Undefined while a long record is read for the first time. */
  readonly found: Examined | undefined;
  /** What is found is of an earlier state of the record. */
  readonly stale: boolean;
}

interface Done {
  readonly study: Study;
  readonly methodId: string;
  readonly cycles: string;
  readonly proposed: boolean;
  readonly found: Examined;
}

/** What the record says, read anew when it changes; a long one only after the page has been painted and the hand rests. */
export function useExamined(
  study: Study,
  methodId: string | undefined,
  cycles: string,
  proposed: boolean,
): Reading {
  const latest = useDeferredValue(study);
  const quick = motionCount(latest, methodId) <= quickMotions;
  const now = useMemo(
    () => (quick && methodId !== undefined ? examined(latest, methodId, cycles, proposed) : undefined),
    [quick, latest, methodId, cycles, proposed],
  );
  const [done, setDone] = useState<Done>();
  const same =
    done !== undefined && done.methodId === methodId && done.cycles === cycles && done.proposed === proposed;
  const pause = same ? 400 : 30;
  useEffect(() => {
    if (quick || methodId === undefined) return;
    const timer = setTimeout(() => {
      setDone({
        study: latest,
        methodId,
        cycles,
        proposed,
        found: examined(latest, methodId, cycles, proposed),
      });
    }, pause);
    return () => clearTimeout(timer);
  }, [quick, latest, methodId, cycles, proposed, pause]);
  if (quick) return { found: now, stale: false };
  return { found: same ? done.found : undefined, stale: same && done.study !== latest };
}

function motionCount({ methods }: Study, methodId: string | undefined): number {
  const method = methods.find(({ id }) => id === methodId);
  return method === undefined ? 0 : method.left.items.length + method.right.items.length;
}
