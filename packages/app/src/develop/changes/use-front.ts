import { useCallback, useEffect, useRef, useState } from 'react';
import type { Answered } from '../developed-plain.ts';
import type { FrontAsked, PlainFront } from './front-plain.ts';
import type { FrontAnswer } from './front-worker.ts';

export interface FrontSearch {
  readonly front: Answered<PlainFront> | undefined;
  /** Combinations that were looked at so far; undefined when nothing is being worked out. */
  readonly tried: number | undefined;
  /** What stands was found for another work, other costs or other changes. */
  readonly stale: boolean;
  readonly find: () => void;
  readonly stop: () => void;
}

/** The front of combinations, worked out in a thread of its own when a person asks for it. */
export function useFront(asked: FrontAsked | undefined): FrontSearch {
  const [front, setFront] = useState<{ readonly of: string; readonly found: Answered<PlainFront> }>();
  const [tried, setTried] = useState<number>();
  const worker = useRef<Worker | undefined>(undefined);
  const key = asked === undefined ? '' : keyOf(asked);
  const stop = useCallback(() => {
    worker.current?.terminate();
    worker.current = undefined;
    setTried(undefined);
  }, []);
  useEffect(() => stop, [stop]);
  const find = () => {
    if (asked === undefined) return;
    stop();
    const made = new Worker(new URL('./front-worker.ts', import.meta.url), { type: 'module' });
    worker.current = made;
    setTried(0);
    made.onmessage = ({ data }: MessageEvent<FrontAnswer>) => {
      if (worker.current !== made) return;
      if (data.kind === 'tried') return setTried(data.tried);
      setFront({ of: key, found: data.front });
      stop();
    };
    made.onerror = (event) => {
      if (worker.current !== made) return;
      setFront({ of: key, found: { ok: false, reason: event.message || 'The calculation stopped.' } });
      stop();
    };
    made.postMessage(asked);
  };
  return { front: front?.found, tried, stale: front !== undefined && front.of !== key, find, stop };
}

function keyOf({ work, methodId, kind, taken, more, costs, library }: FrontAsked): string {
  return JSON.stringify([work, methodId, kind, taken, more, costs, library]);
}
