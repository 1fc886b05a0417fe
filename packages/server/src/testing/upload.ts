import { expect } from 'vitest';
import type { ServerUnderTest } from './server-under-test.ts';

/** The client's side of tus 1.0.0, written from its text (tus.io/protocols/resumable-upload, 1.0.0). */
export const tus = { 'tus-resumable': '1.0.0' };

type Asks = Pick<ServerUnderTest, 'fetch'>;

export async function begin(
  server: Asks,
  size: number,
  words: Readonly<Record<string, string>> = {},
): Promise<string> {
  const answer = await server.fetch('/api/uploads', {
    method: 'POST',
    headers: { ...tus, 'upload-length': String(size), 'upload-metadata': metadata(words) },
  });
  expect(answer.status).toBe(201);
  return answer.headers.get('location') ?? '';
}

export function metadata(words: Readonly<Record<string, string>>): string {
  return Object.entries(words)
    .map(([key, value]) => `${key} ${Buffer.from(value).toString('base64')}`)
    .join(',');
}

export async function patch(
  server: Asks,
  where: string,
  offset: number,
  part: BodyInit,
  init: RequestInit = {},
): Promise<Response> {
  const headers = {
    ...tus,
    'upload-offset': String(offset),
    'content-type': 'application/offset+octet-stream',
  };
  return await server.fetch(where, { method: 'PATCH', headers, body: part, ...init });
}

/** Where an upload stands; undefined when there is none. */
export async function offsetOf(server: Asks, where: string): Promise<number | undefined> {
  const answer = await server.fetch(where, { method: 'HEAD', headers: tus });
  return answer.status === 200 ? Number(answer.headers.get('upload-offset')) : undefined;
}

/** Sends a film in one piece and returns the hash that the server tells. */
export async function upload(
  server: Asks,
  bytes: Uint8Array<ArrayBuffer>,
  filename: string,
): Promise<string> {
  const where = await begin(server, bytes.byteLength, { filename });
  const answer = await patch(server, where, 0, bytes);
  expect(answer.status).toBe(204);
  return answer.headers.get('film-sha256') ?? '';
}
