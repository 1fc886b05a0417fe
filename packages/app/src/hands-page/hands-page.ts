import { encodeTrack } from '@evenhand/core/record';
import { trackFilm } from '@evenhand/media';

/*
 * Seeks the hands in the film of the server that handed this page out, and tells that server: for the command line,
 * which drives a browser without a window.
 */

const wishes = new URLSearchParams(location.search);
const state = document.getElementById('state');

async function tell(body: object): Promise<void> {
  await fetch('/told', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
}

function show(text: string): void {
  if (state !== null) state.textContent = text;
}

async function seek(): Promise<void> {
  const found = await trackFilm(
    { url: '/film', name: wishes.get('name') ?? 'the film' },
    {
      workers: wishes.get('workers') === '1' ? 1 : 2,
      mirrored: wishes.has('mirrored'),
      onProgress: (progress) => {
        show(`${progress.done} of ${progress.frames} frames searched`);
        void tell({ kind: 'progress', progress });
      },
    },
  );
  if (!found.ok) {
    show('The film could not be searched; the command line says why.');
    await tell({ kind: 'refused', findings: found.error });
    return;
  }
  const { track, report, findings } = found.value;
  await tell({ kind: 'found', report, findings });
  await fetch('/track', { method: 'POST', body: new Uint8Array(encodeTrack(track)) });
  show('Done. This page may be closed.');
}

seek().catch((error: unknown) =>
  tell({ kind: 'failed', reason: error instanceof Error ? error.message : String(error) }),
);
