import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { type Film, unmarkedMethod } from '@evenhand/core/ground/study';
import { indexFilm, openFilm } from '@evenhand/media';
import { Upload } from 'tus-js-client';
import { randomId } from '../editor/page-ports.ts';
import type { RecordDesk } from './desk.ts';

export interface IntakeChoice {
  readonly operatorCode: string;
  readonly agreed: boolean;
}

/** Where the taking in of a film stands: reading its index, or sending its bytes (a share from 0 to 1). */
export type IntakeProgress =
  | { readonly kind: 'reading' }
  | { readonly kind: 'sending'; readonly share: number };

type Taken<T> = Promise<Result<T, readonly Finding[]>>;

/**
 * Takes a film into the study: its index is read and its first frame decoded here, its bytes are stored by the server,
 * and only then one edit adds the film and a method with nothing marked. If anything fails, nothing is kept.
 */
export async function takeFilm(
  desk: RecordDesk,
  file: File,
  choice: IntakeChoice,
  onProgress: (progress: IntakeProgress) => void,
  signal: AbortSignal,
): Taken<readonly Finding[]> {
  onProgress({ kind: 'reading' });
  const opened = await openFilm(file);
  if (!opened.ok) return opened;
  const film = opened.value;
  const first = await film.reader.frame(0);
  if (first.ok) first.value.close();
  film.dispose();
  if (!first.ok) return fail([first.error]);
  const stored = await storeFilm(file, (share) => onProgress({ kind: 'sending', share }), signal);
  if (!stored.ok) return stored;
  const { index, frameTimes } = film;
  const operatorCode = choice.operatorCode.trim();
  const record: Film = {
    id: randomId(),
    sha256: stored.value,
    name: file.name.slice(0, 200),
    bytes: file.size,
    container: index.container,
    codec: index.codec,
    width: index.width,
    height: index.height,
    rotation: index.rotation,
    frameTimes,
    clock: { kind: 'identity' },
    ...(operatorCode === '' ? {} : { operatorCode }),
    ...(choice.agreed ? { agreed: true } : {}),
  };
  addToStudy(desk, record);
  return ok(film.notes);
}

/** Adds the film, unless the study has the same bytes already, and a method on it; shows that method. */
function addToStudy(desk: RecordDesk, film: Film): void {
  const known = desk.study.films.find((item) => item.sha256 === film.sha256);
  const base = film.name.replace(/\.[^.]+$/, '') || 'Method';
  const taken = desk.study.methods.filter(
    (method) => method.name === base || method.name.startsWith(`${base} (`),
  ).length;
  const method = unmarkedMethod(
    randomId(),
    taken === 0 ? base : `${base} (${taken + 1})`,
    known ?? film,
    randomId,
  );
  const added = desk.dispatch({
    type: 'group',
    name: 'add a film',
    edits: [
      ...(known === undefined ? [{ type: 'film.add', film } as const] : []),
      { type: 'method.add', method },
    ],
  });
  if (added) desk.chooseMethod(method.id);
}

/** Brings back the bytes of a film that the store lost; they must be the very same. */
export async function bringBack(
  desk: RecordDesk,
  film: Film,
  file: File,
  onProgress: (progress: IntakeProgress) => void,
  signal: AbortSignal,
): Taken<true> {
  onProgress({ kind: 'reading' });
  const read = await indexFilm(file);
  if (!read.ok) return read;
  const stored = await storeFilm(file, (share) => onProgress({ kind: 'sending', share }), signal);
  if (!stored.ok) return stored;
  if (stored.value !== film.sha256) {
    return fail([finding('film/hash', { file: file.name })]);
  }
  desk.reopenFilm();
  return ok(true);
}

/** Sends the bytes in pieces, resuming after an interruption; gives the hash under which they are stored. */
async function storeFilm(file: File, onShare: (share: number) => void, signal: AbortSignal): Taken<string> {
  const sent = await new Promise<
    Result<{ readonly hash: string | undefined; readonly url: string | null }, readonly Finding[]>
  >((resolve) => {
    let hash: string | undefined;
    const upload = new Upload(file, {
      endpoint: '/api/uploads',
      chunkSize: 16 * 1024 * 1024,
      retryDelays: [0, 500, 1000, 3000, 5000, 10_000],
      removeFingerprintOnSuccess: true,
      metadata: { filename: file.name, filetype: file.type },
      onProgress: (done, all) => onShare(all === 0 ? 1 : done / all),
      onAfterResponse: (_request, response) => {
        hash = response.getHeader('Film-Sha256') ?? hash;
      },
      onSuccess: () => resolve(ok({ hash, url: upload.url })),
      onError: (error) =>
        resolve(fail([finding('film/upload', { file: file.name }, { reason: plainReason(error) })])),
    });
    signal.addEventListener('abort', () => {
      void upload.abort(true);
      resolve(fail([finding('film/upload', { file: file.name }, { reason: 'it was cancelled' })]));
    });
    // An upload that was interrupted is taken up where it stopped.
    void upload.findPreviousUploads().then((found) => {
      const before = found[0];
      if (before !== undefined) upload.resumeFromPreviousUpload(before);
      upload.start();
    });
  });
  if (!sent.ok) return sent;
  const hash = sent.value.hash ?? (await askHash(sent.value.url));
  return hash === undefined
    ? fail([finding('film/upload', { file: file.name }, { reason: 'the server did not confirm it' })])
    : ok(hash);
}

async function askHash(url: string | null): Promise<string | undefined> {
  const id = url?.split('/').at(-1);
  if (id === undefined) return undefined;
  const response = await fetch(`/api/uploads/${encodeURIComponent(id)}/film`).catch(() => undefined);
  if (response?.ok !== true) return undefined;
  const body = (await response.json()) as { readonly sha256?: string };
  return body.sha256;
}

function plainReason(error: Error): string {
  return /failed to (create|upload|resume)/i.test(error.message)
    ? 'the server could not be reached or refused it'
    : error.message;
}
