import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { FilmTrack } from '@evenhand/core/ground/study';
import { decodeTrack, encodeTrack, type Track } from '@evenhand/core/record';

/** The bytes of a track on this machine's server, under their hash. */
export async function storeTrack(
  track: Track,
): Promise<Result<{ readonly sha256: string; readonly bytes: number }, readonly Finding[]>> {
  const bytes = new Uint8Array(encodeTrack(track));
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  const sha256 = [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  try {
    const headers = { 'content-type': 'application/octet-stream' };
    const answer = await fetch(`/api/tracks/${sha256}`, { method: 'PUT', headers, body: bytes });
    return answer.ok ? ok({ sha256, bytes: bytes.length }) : fail(await refused(answer));
  } catch {
    return fail([finding('track/not-kept', {}, { reason: 'the server cannot be reached' })]);
  }
}

async function refused(answer: Response): Promise<readonly Finding[]> {
  const body = (await answer.json().catch(() => undefined)) as
    | { readonly findings?: readonly Finding[] }
    | undefined;
  const reason = `the server answered ${answer.status}`;
  return body?.findings ?? [finding('track/not-kept', {}, { reason })];
}

/** Fetches the data of a track. @param frames of the film it must be of */
export async function loadTrack(
  { sha256, name }: FilmTrack,
  frames: number,
): Promise<Result<Track, Finding>> {
  try {
    const answer = await fetch(`/api/tracks/${sha256}`);
    if (!answer.ok) return fail(finding('track/missing', {}, { name }));
    return decodeTrack(new Uint8Array(await answer.arrayBuffer()), { frames });
  } catch {
    return fail(finding('server/away'));
  }
}
