import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { type Film, type FilmTrack, filmOf, type Method, type Study } from '@evenhand/core/ground/study';
import type { Proposal } from '@evenhand/core/record';
import type { ProposeAnswer, ProposeProgress, ProposeRequest } from './propose-worker.ts';

/** A proposal, or in sentences why there is none. */
export type ProposalFound = Result<Proposal, readonly Remark[]>;

/** Something to be told, and the frame where it can be looked at. */
export interface Remark {
  readonly message: string;
  readonly where?: { readonly frame?: number };
}

export type OnProposing = (share: number, secondsLeft: number) => void;

/**
 * Asks for a proposal in a thread of its own, so that the page stays fluent. Undefined once it was stopped.
 * @param stop ends the thread
 * @param onProgress told the share that is done, 0 to 1, and about how many seconds are left
 */
export async function askProposal(
  study: Study,
  method: Method,
  track: FilmTrack,
  stop: AbortSignal,
  onProgress: OnProposing,
): Promise<ProposalFound | undefined> {
  const bytes = await trackBytes(track, stop);
  if (stop.aborted || bytes === undefined) return undefined;
  if (!bytes.ok) return bytes;
  const film = filmOf(study, method);
  const slim: Study = slimStudy(study, method, film);
  return await inWorker({ study: slim, methodId: method.id, track: bytes.value }, stop, onProgress);
}

/** What a proposal needs of the study; the rest need not travel. */
function slimStudy(
  { formatVersion, id, title, operation, places }: Study,
  method: Method,
  film: Film | undefined,
): Study {
  const films = film === undefined ? [] : [film];
  return { formatVersion, id, title, operation, places, films, methods: [method] };
}

async function trackBytes(
  { sha256, name }: FilmTrack,
  signal: AbortSignal,
): Promise<Result<ArrayBuffer, readonly Finding[]> | undefined> {
  try {
    const response = await fetch(`/api/tracks/${sha256}`, { signal });
    return response.ok ? ok(await response.arrayBuffer()) : fail([finding('track/missing', {}, { name })]);
  } catch {
    return signal.aborted ? undefined : fail([finding('server/away')]);
  }
}

function inWorker(
  request: ProposeRequest,
  stop: AbortSignal,
  onProgress: OnProposing,
): Promise<ProposalFound | undefined> {
  const worker = new Worker(new URL('./propose-worker.ts', import.meta.url), { type: 'module' });
  const began = performance.now();
  return new Promise<ProposalFound | undefined>((resolve) => {
    const stopped = (reason: string) => resolve(fail([{ message: `The proposal stopped: ${reason}` }]));
    stop.addEventListener('abort', () => resolve(undefined), { once: true });
    worker.onmessage = ({ data }: MessageEvent<ProposeAnswer | ProposeProgress>) => {
      if ('share' in data) onProgress(data.share, secondsLeft(data.share, performance.now() - began));
      else if ('failed' in data) stopped(data.failed);
      else resolve(data);
    };
    worker.onerror = ({ message }) => stopped(message || 'its thread could not be started.');
    worker.postMessage(request, [request.track]);
  }).finally(() => worker.terminate());
}

function secondsLeft(share: number, milliseconds: number): number {
  return ((1 - share) * milliseconds) / share / 1000;
}
