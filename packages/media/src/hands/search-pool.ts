import type { Finding } from '@evenhand/core/ground/findings';
import type { FilmSource } from '../source.ts';
import type { TrackerSettings } from './hand-tracker.ts';
import type { HandsAnswer, HandsRequest } from './hands-messages.ts';
import type { Stretch } from './stretches.ts';

/** A film that cannot be searched. */
export class SearchRefused extends Error {
  readonly findings: readonly Finding[];

  constructor(findings: readonly Finding[]) {
    super(findings[0]?.message ?? 'the film cannot be read');
    this.findings = findings;
  }
}

export interface PoolTask {
  readonly film: FilmSource;
  readonly stretches: readonly Stretch[];
  readonly workers: number;
  readonly settings: TrackerSettings;
  readonly signal: AbortSignal | undefined;
  readonly onFrame: () => void;
  readonly onSearched: (found: Extract<HandsAnswer, { kind: 'searched' }>) => void;
}

/**
 * Has all stretches searched by workers, each taking the next when it is done with one; ends them in the end.
 * @throws SearchRefused when the film cannot be read; Error when a worker fails; DOMException `AbortError`
 */
export async function searchAll(task: PoolTask): Promise<void> {
  const waiting = [...task.stretches];
  const workers = Array.from({ length: Math.min(task.workers, waiting.length) }, makeWorker);
  try {
    await Promise.race([
      Promise.all(workers.map((worker) => serve(worker, waiting, task))),
      untilAborted(task.signal),
    ]);
  } finally {
    for (const worker of workers) worker.terminate();
  }
}

function makeWorker(): Worker {
  return new Worker(new URL('./hands-worker.ts', import.meta.url), { type: 'module', name: 'hands' });
}

function untilAborted(signal: AbortSignal | undefined): Promise<never> {
  return new Promise((_, reject) => {
    const stop = () => reject(new DOMException('the search for hands was ended', 'AbortError'));
    if (signal?.aborted) stop();
    else signal?.addEventListener('abort', stop, { once: true });
  });
}

/** Gives one worker stretch after stretch until none waits. */
function serve(worker: Worker, waiting: Stretch[], task: PoolTask): Promise<void> {
  return new Promise((resolve, reject) => {
    const ask = (request: HandsRequest) => worker.postMessage(request);
    const next = () => {
      const stretch = waiting.shift();
      if (stretch === undefined) resolve();
      else ask({ kind: 'search', stretch });
    };
    worker.addEventListener('error', (event) => reject(new Error(event.message || 'the search stopped')));
    worker.addEventListener('message', ({ data }: MessageEvent<HandsAnswer>) => {
      if (data.kind === 'frame') task.onFrame();
      else if (data.kind === 'refused') reject(new SearchRefused(data.findings));
      else if (data.kind === 'failed') reject(new Error(data.reason));
      else if (data.kind === 'searched') {
        task.onSearched(data);
        next();
      }
    });
    ask({ kind: 'open', film: task.film, settings: task.settings });
    next();
  });
}
