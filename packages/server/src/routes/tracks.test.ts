import { createHash } from 'node:crypto';
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { emptyHandTrack, encodeTrack } from '@evenhand/core/record';
import { describe, expect, it } from 'vitest';
import { codes, rawRequest, serverUnderTest } from '../testing/server-under-test.ts';

const bytes = new Uint8Array(
  encodeTrack({
    source: 'energy',
    frames: 30,
    width: 0,
    height: 0,
    unit: 'pixels',
    left: emptyHandTrack(30),
  }),
);
const sha256 = createHash('sha256').update(bytes).digest('hex');
const where = `/api/tracks/${sha256}`;
const put = (body: Uint8Array<ArrayBuffer>, type = 'application/octet-stream') =>
  ({ method: 'PUT', headers: { 'content-type': type }, body }) satisfies RequestInit;

describe('tracks over HTTP', () => {
  it('what was put comes back, and may be kept by the browser for ever', async () => {
    const server = await serverUnderTest();
    expect((await server.fetch(where, put(bytes))).status).toBe(204);
    expect((await server.fetch(where, put(bytes))).status).toBe(204);
    const answer = await server.fetch(where);
    expect([answer.status, answer.headers.get('etag')]).toEqual([200, `"${sha256}"`]);
    expect(answer.headers.get('cache-control')).toContain('immutable');
    expect(Buffer.from(await answer.arrayBuffer()).equals(bytes)).toBe(true);
  });

  it('refuses other bytes than named, other types, names that are none, and too many bytes', async () => {
    const server = await serverUnderTest();
    const other = await server.fetch(where, put(new Uint8Array([1, 2, 3])));
    expect([other.status, await codes(other)]).toEqual([422, ['track/hash']]);
    const text = new TextEncoder().encode('not a track');
    const hash = createHash('sha256').update(text).digest('hex');
    const noTrack = await server.fetch(`/api/tracks/${hash}`, put(text));
    expect([noTrack.status, await codes(noTrack)]).toEqual([400, ['track/not-a-track']]);
    expect((await server.fetch(where, put(bytes, 'text/plain'))).status).toBe(400);
    expect((await server.fetch('/api/tracks/abc', put(bytes))).status).toBe(400);
    const large = await server.fetch(where, put(new Uint8Array(65 * 1024 * 1024)));
    expect([large.status, await codes(large)]).toEqual([413, ['server/too-large']]);
    expect(readdirSync(path.join(server.data, 'tracks'))).toEqual([]);
  });

  it('a track that is not there is 404 with a sentence, and another page may neither read nor write', async () => {
    const server = await serverUnderTest();
    const answer = await server.fetch(where);
    expect([answer.status, await codes(answer)]).toEqual([404, ['store/not-found']]);
    const stranger = { host: new URL(server.running.address).host, origin: 'http://elsewhere.example' };
    for (const method of ['GET', 'PUT'])
      expect((await rawRequest(server.running.address, where, stranger, method)).status).toBe(403);
  });
});
