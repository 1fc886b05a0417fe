import { createHash, randomBytes } from 'node:crypto';
import { readdirSync, readlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { describe, expect, it } from 'vitest';
import { serverUnderTest } from '../testing/server-under-test.ts';
import { upload } from '../testing/upload.ts';

const bytes = randomBytes(10_000);
const sha256 = createHash('sha256').update(bytes).digest('hex');

async function withFilm() {
  const server = await serverUnderTest();
  await upload(server, bytes, 'present.mp4');
  const ask = (headers: Record<string, string>, method = 'GET') =>
    server.fetch(`/api/films/${sha256}`, { method, headers });
  return { server, ask };
}

describe('films over HTTP', () => {
  it('the whole film', async () => {
    const { server, ask } = await withFilm();
    const answer = await ask({});
    expect(answer.status).toBe(200);
    expect(Buffer.from(await answer.arrayBuffer()).equals(bytes)).toBe(true);
    expect(answer.headers.get('etag')).toBe(`"${sha256}"`);
    expect(answer.headers.get('cache-control')).toContain('immutable');
    expect(answer.headers.get('accept-ranges')).toBe('bytes');
    expect(await (await server.fetch('/api/films')).json()).toEqual([
      { sha256, bytes: 10_000, name: 'present.mp4' },
    ]);
  });

  it.each([
    ['bytes=0-99', 0, 100],
    ['bytes=9900-', 9900, 10_000],
    ['bytes=-500', 9500, 10_000],
    ['bytes=0-0', 0, 1],
    ['bytes=5000-99999', 5000, 10_000],
  ])('%s gives just those bytes with 206 (RFC 9110, 15.3.7)', async (range, start, end) => {
    const { ask } = await withFilm();
    const answer = await ask({ range });
    expect(answer.status).toBe(206);
    expect(Buffer.from(await answer.arrayBuffer()).equals(bytes.subarray(start, end))).toBe(true);
    expect(answer.headers.get('content-range')).toBe(`bytes ${start}-${end - 1}/10000`);
    expect(answer.headers.get('content-length')).toBe(String(end - start));
  });

  it('past the end is 416 and says how long the film is (RFC 9110, 15.5.17)', async () => {
    const { ask } = await withFilm();
    const answer = await ask({ range: 'bytes=10000-' });
    expect([answer.status, answer.headers.get('content-range')]).toEqual([416, 'bytes */10000']);
    expect(answer.headers.get('cache-control')).toBeNull();
  });

  it('HEAD tells the same and sends nothing (RFC 9110, 9.3.2)', async () => {
    const { ask } = await withFilm();
    const whole = await ask({}, 'HEAD');
    expect([whole.status, whole.headers.get('content-length')]).toEqual([200, '10000']);
    expect((await whole.arrayBuffer()).byteLength).toBe(0);
  });

  it('a film that the browser has already is not sent again (RFC 9110, 13.1.2)', async () => {
    const { ask } = await withFilm();
    expect((await ask({ 'if-none-match': `"${sha256}"` })).status).toBe(304);
    expect((await ask({ 'if-none-match': '"other"' })).status).toBe(200);
  });

  it('a range of another version gives the whole film (RFC 9110, 13.1.5)', async () => {
    const { ask } = await withFilm();
    expect((await ask({ range: 'bytes=0-9', 'if-range': '"other"' })).status).toBe(200);
    expect((await ask({ range: 'bytes=0-9', 'if-range': `"${sha256}"` })).status).toBe(206);
  });

  it('a film whose file is gone or cut off is not listed and not sent', async () => {
    const { server, ask } = await withFilm();
    writeFileSync(path.join(server.data, 'films', sha256), bytes.subarray(0, 5000));
    expect(await (await server.fetch('/api/films')).json()).toEqual([]);
    expect((await ask({})).status).toBe(404);
  });

  it.runIf(process.platform === 'linux')('readings that are broken off leave no file open', async () => {
    const server = await serverUnderTest();
    const large = randomBytes(8_000_000);
    const name = await upload(server, large, 'large.mp4');
    for (let round = 0; round < 30; round += 1) {
      const stop = new AbortController();
      const answer = await server.fetch(`/api/films/${name}`, { signal: stop.signal });
      await answer.body?.getReader().read();
      stop.abort();
    }
    const open = () => readdirSync('/proc/self/fd').filter((entry) => isOpen(entry, name)).length;
    await expect.poll(open, { timeout: 5000 }).toBe(0);
  });
});

function isOpen(descriptor: string, name: string): boolean {
  try {
    return readlinkSync(`/proc/self/fd/${descriptor}`).endsWith(name);
  } catch {
    return false;
  }
}
