import type { ChangeId, Library } from '@evenhand/core/develop';
import type { Study, Work } from '@evenhand/core/ground/study';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { ArrangeAnswer, ArrangeRequest, PlainArranged } from './arrange-worker.ts';

/** Milliseconds for places and method together before the best so far has to do. Ours. */
const patience = 30_000;

export type ArrangeState =
  | { readonly kind: 'none' }
  | { readonly kind: 'working'; readonly best: number | undefined }
  | { readonly kind: 'found'; readonly arranged: PlainArranged }
  | { readonly kind: 'refused'; readonly reason: string };

export interface ArrangeSearch {
  readonly state: ArrangeState;
  readonly start: () => void;
  /** Ends the search, or puts the proposal away. */
  readonly end: () => void;
}

/** The best places of a bench, sought in a thread of its own when asked for; a change of the work ends it. */
export function useArranged(
  study: Study,
  methodId: string | undefined,
  work: Work,
  kind: 'open' | 'closed',
  taken: readonly ChangeId[],
  library?: Library,
): ArrangeSearch {
  const key = taken.join(' ');
  const [state, setState] = useState<ArrangeState>({ kind: 'none' });
  const worker = useRef<Worker>(undefined);
  const end = useCallback(() => {
    worker.current?.terminate();
    worker.current = undefined;
    setState({ kind: 'none' });
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a proposal is for one work, its changes and one kind of cycle
  useEffect(() => end, [work, kind, key, library, end]);
  const start = () => {
    worker.current?.terminate();
    const own = new Worker(new URL('./arrange-worker.ts', import.meta.url), { type: 'module' });
    worker.current = own;
    setState({ kind: 'working', best: undefined });
    own.onmessage = ({ data }: MessageEvent<ArrangeAnswer>) => {
      if (worker.current === own) setState(stateOf(data));
    };
    own.onerror = (event) => {
      if (worker.current === own)
        setState({ kind: 'refused', reason: event.message || 'The calculation stopped.' });
    };
    const request: ArrangeRequest = { study, methodId, work, kind, library, taken, patience };
    own.postMessage(request);
  };
  return { state, start, end };
}

function stateOf(answer: ArrangeAnswer): ArrangeState {
  if (answer.kind === 'better') return { kind: 'working', best: answer.unitTime };
  if (answer.kind === 'done') return { kind: 'found', arranged: answer.arranged };
  return { kind: 'refused', reason: answer.reason };
}
