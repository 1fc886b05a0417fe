import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { HandProgress } from '../hands/tracking.ts';
import { type WorkPace, workPace } from '../hands/work-pace.ts';
import type { FilmSource } from '../source.ts';
import type { ScanAnswer, ScanRequest, ScanWish } from './scan-messages.ts';
import type { ScannedTrack } from './scan-tracks.ts';

export interface ScanOptions {
  /** Called a few times a second. */
  readonly onProgress?: (progress: HandProgress) => void;
  readonly signal?: AbortSignal;
}

/**
 * Goes through a film for coloured bands, or for movement in regions, in a worker. Nothing leaves the machine.
 * @returns the track; findings when the film cannot be read
 * @throws DOMException `AbortError` when `signal` aborts
 */
export async function scanFilm(
  film: FilmSource,
  wish: ScanWish,
  { onProgress, signal }: ScanOptions = {},
): Promise<Result<ScannedTrack, readonly Finding[]>> {
  const worker = new Worker(new URL('./scan-worker.ts', import.meta.url), { type: 'module', name: 'scan' });
  try {
    return await new Promise((resolve, reject) => {
      let pace: WorkPace | undefined;
      const stop = () => reject(new DOMException('the search was ended', 'AbortError'));
      if (signal?.aborted === true) return stop();
      signal?.addEventListener('abort', stop, { once: true });
      const failed = (reason: string) => resolve(fail([finding('track/scan', {}, { reason })]));
      worker.addEventListener('error', (event) => failed(event.message || 'the worker stopped'));
      worker.addEventListener('message', ({ data }: MessageEvent<ScanAnswer>) => {
        if (data.kind === 'opened') pace = workPace(data.frames, 0, () => performance.now(), onProgress);
        else if (data.kind === 'frame') pace?.step();
        else if (data.kind === 'refused') resolve(fail(data.findings));
        else if (data.kind === 'failed') failed(data.reason);
        else {
          pace?.end();
          resolve(ok(data.scanned));
        }
      });
      worker.postMessage({ film: reachable(film), wish } satisfies ScanRequest);
    });
  } finally {
    worker.terminate();
  }
}

/** A worker reads addresses from its own place, so they must be whole. */
function reachable(film: FilmSource): FilmSource {
  return 'url' in film ? { ...film, url: new URL(film.url, location.href).href } : film;
}
