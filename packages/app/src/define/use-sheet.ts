import { type Bootstrap, type TimeStudySheet, timeStudySheet } from '@evenhand/core/define';
import type { Study, TimeStudy } from '@evenhand/core/ground/study';
import { useEffect, useMemo, useRef, useState } from 'react';
import { StandardClient } from './standard-client.ts';

/** Sheets with up to this many readings are worked out while the page is drawn. Ours. */
const quickReadings = 3000;
/** The check waits until nobody has written for so many milliseconds. Ours. */
const pause = 120;
const wish = { draws: 2000, seed: 1 };

export type BootstrapState =
  | { readonly kind: 'none' }
  | { readonly kind: 'working' }
  | { readonly kind: 'done'; readonly bootstrap: Bootstrap }
  | { readonly kind: 'refused'; readonly reason: string };

export interface ShownSheet {
  readonly sheet: TimeStudySheet | undefined;
  /** An edit is not worked out in it yet. */
  readonly stale: boolean;
  readonly bootstrap: BootstrapState;
}

interface Worked {
  readonly of: TimeStudy;
  readonly sheet: TimeStudySheet | undefined;
  readonly bootstrap: BootstrapState;
}

/**
 * The sheet of a time study, and the check of its interval by drawing cycles anew. A short sheet is worked out at once; a
 * long one in a thread beside the page, the last one standing meanwhile. The check always comes from there.
 */
export function useSheet(study: Study, timeStudy: TimeStudy | undefined): ShownSheet {
  const { methods, films } = study;
  const quick = timeStudy !== undefined && countOf(study, timeStudy) <= quickReadings;
  const client = useRef<StandardClient>(undefined);
  const standing = useRef<TimeStudySheet>(undefined);
  useEffect(
    () => () => {
      client.current?.cancel();
      client.current?.dispose();
      client.current = undefined;
    },
    [],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: the parts of the study that are read
  const now = useMemo(
    () => (quick && timeStudy !== undefined ? timeStudySheet(study, timeStudy) : undefined),
    [methods, films, timeStudy, quick],
  );
  const [worked, setWorked] = useState<Worked>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: as above
  useEffect(() => {
    if (timeStudy === undefined) return setWorked(undefined);
    let gone = false;
    const work = async () => {
      client.current ??= new StandardClient();
      const answer = await client.current.workOut(study, timeStudy, wish);
      if (answer === undefined || gone) return;
      if ('failed' in answer) {
        const bootstrap: BootstrapState = { kind: 'refused', reason: answer.failed };
        return setWorked((known) => ({ of: timeStudy, sheet: known?.sheet, bootstrap }));
      }
      const { bootstrap, refused, sheet } = answer;
      setWorked({
        of: timeStudy,
        sheet,
        bootstrap:
          bootstrap !== undefined
            ? { kind: 'done', bootstrap }
            : refused !== undefined
              ? { kind: 'refused', reason: refused }
              : { kind: 'none' },
      });
    };
    const timer = setTimeout(() => void work(), pause);
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, [methods, films, timeStudy]);
  if (timeStudy === undefined) return { sheet: undefined, stale: false, bootstrap: { kind: 'none' } };
  const fresh = worked?.of === timeStudy;
  const bootstrap: BootstrapState = fresh ? worked.bootstrap : { kind: 'working' };
  if (quick) {
    standing.current = now;
    return { sheet: now, stale: false, bootstrap };
  }
  if (worked?.of.id === timeStudy.id && worked.sheet !== undefined) standing.current = worked.sheet;
  // A sheet that has just grown long keeps what was worked out of it while it was short.
  const kept = standing.current?.timeStudy.id === timeStudy.id ? standing.current : undefined;
  return { sheet: kept, stale: !fresh, bootstrap };
}

/** How much there is to work out: readings, or the motions of the record that they come from. */
function countOf({ methods }: Study, { elements, source }: TimeStudy): number {
  if (source.kind === 'readings') return elements.reduce((sum, { readings }) => sum + readings.length, 0);
  const method = methods.find(({ id }) => id === source.method);
  return method === undefined ? 0 : method.left.items.length + method.right.items.length;
}
