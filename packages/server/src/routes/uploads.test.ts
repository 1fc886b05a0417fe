import { createHash, randomBytes } from 'node:crypto';
import { readdirSync, readFileSync, utimesSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { codes, serverUnderTest } from '../testing/server-under-test.ts';
import { begin, metadata, offsetOf, patch, tus, upload } from '../testing/upload.ts';

const hashOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const names = (data: string, folder: string) => readdirSync(path.join(data, folder)).sort();

/** Sends half and breaks the connection, as a closed tab does. */
async function brokenPatch(
  server: Parameters<typeof patch>[0],
  where: string,
  bytes: Uint8Array<ArrayBuffer>,
): Promise<void> {
  const stop = new AbortController();
  const body = new ReadableStream<Uint8Array>({
    start: (controller) => controller.enqueue(bytes.subarray(0, bytes.length / 2)),
    // The first part has left when the second is asked for; from then on nothing comes.
    pull: () => new Promise<void>(() => undefined),
  });
  const init = { signal: stop.signal, duplex: 'half' } as RequestInit;
  const sending = patch(server, where, 0, body, init);
  await expect.poll(() => offsetOf(server, where)).toBe(bytes.length / 2);
  stop.abort();
  await expect(sending).rejects.toThrow();
}

describe('uploads (tus 1.0.0)', () => {
  it('a film sent in pieces is stored under its hash, and the last answer tells it', async () => {
    const server = await serverUnderTest();
    const bytes = randomBytes(300_000);
    const where = await begin(server, bytes.length, { filename: 'Kupplung größer.mp4' });
    expect(await offsetOf(server, where)).toBe(0);
    const first = await patch(server, where, 0, bytes.subarray(0, 100_000));
    expect([first.status, first.headers.get('upload-offset'), first.headers.get('film-sha256')]).toEqual([
      204,
      '100000',
      null,
    ]);
    const last = await patch(server, where, 100_000, bytes.subarray(100_000));
    expect(last.headers.get('film-sha256')).toBe(hashOf(bytes));
    expect(await (await server.fetch(`${where}/film`)).json()).toEqual({
      sha256: hashOf(bytes),
      bytes: 300_000,
    });
    expect(await (await server.fetch('/api/films')).json()).toEqual([
      { sha256: hashOf(bytes), bytes: 300_000, name: 'Kupplung größer.mp4' },
    ]);
    expect(readFileSync(path.join(server.data, 'films', hashOf(bytes))).equals(bytes)).toBe(true);
    expect(names(server.data, 'uploads')).toEqual([]);
  });

  it('the same film sent twice is stored once', async () => {
    const server = await serverUnderTest();
    const bytes = randomBytes(50_000);
    const [first, second] = [await upload(server, bytes, 'a.mp4'), await upload(server, bytes, 'b.mp4')];
    expect(second).toBe(first);
    expect(names(server.data, 'films')).toEqual([hashOf(bytes)]);
    expect(names(server.data, 'uploads')).toEqual([]);
  });

  it('a broken connection leaves what came, and the upload goes on from there', async () => {
    const server = await serverUnderTest();
    const bytes = randomBytes(2_000_000);
    const where = await begin(server, bytes.length);
    await brokenPatch(server, where, bytes);
    await expect.poll(async () => (await patch(server, where, 0, '')).status).toBe(409);
    const at = (await offsetOf(server, where)) ?? 0;
    expect(at).toBe(bytes.length / 2);
    const last = await patch(server, where, at, bytes.subarray(at));
    expect(last.headers.get('film-sha256')).toBe(hashOf(bytes));
    expect(server.log).toEqual([]);
  });

  it('goes on after the server was stopped in the middle', async () => {
    const first = await serverUnderTest();
    const bytes = randomBytes(900_000);
    const where = await begin(first, bytes.length);
    await patch(first, where, 0, bytes.subarray(0, 400_000));
    await first.running.close();
    const second = await serverUnderTest({ dataFolder: first.data });
    expect(await offsetOf(second, where)).toBe(400_000);
    const last = await patch(second, where, 400_000, bytes.subarray(400_000));
    expect(last.headers.get('film-sha256')).toBe(hashOf(bytes));
  });

  it('a window that lost the last answer finds its upload finished, after a restart as well', async () => {
    const first = await serverUnderTest();
    const bytes = randomBytes(20_000);
    const where = await begin(first, bytes.length);
    await patch(first, where, 0, bytes);
    await first.running.close();
    const second = await serverUnderTest({ dataFolder: first.data });
    expect(await offsetOf(second, where)).toBe(20_000);
    const film = await second.fetch(`${where}/film`);
    expect(await film.json()).toEqual({ sha256: hashOf(bytes), bytes: 20_000 });
  });

  it('bytes other than those that were announced are thrown away', async () => {
    const server = await serverUnderTest();
    const bytes = randomBytes(1000);
    const where = await begin(server, 1000, { sha256: hashOf(randomBytes(1000)) });
    const answer = await patch(server, where, 0, bytes);
    expect([answer.status, await codes(answer)]).toEqual([422, ['film/hash']]);
    expect([names(server.data, 'films'), names(server.data, 'uploads')]).toEqual([[], []]);
    expect(await (await server.fetch('/api/films')).json()).toEqual([]);
  });

  it('an upload that nobody went on with is gone after a day, a fresh one is not', async () => {
    const first = await serverUnderTest();
    const [old, fresh] = [await begin(first, 1000), await begin(first, 1000)];
    await patch(first, old, 0, randomBytes(500));
    await patch(first, fresh, 0, randomBytes(500));
    await first.running.close();
    const before = new Date(Date.now() - 25 * 3_600_000);
    for (const name of names(first.data, 'uploads').filter((item) => old.includes(item.slice(0, 32))))
      utimesSync(path.join(first.data, 'uploads', name), before, before);
    const second = await serverUnderTest({ dataFolder: first.data });
    expect([await offsetOf(second, old), await offsetOf(second, fresh)]).toEqual([undefined, 500]);
    const left = fresh.split('/').at(-1) ?? '';
    expect(names(second.data, 'uploads')).toEqual([left, `${left}.json`]);
  });

  it('an upload can be ended, and leaves nothing', async () => {
    const server = await serverUnderTest();
    const where = await begin(server, 1000);
    await patch(server, where, 0, randomBytes(500));
    expect((await server.fetch(where, { method: 'DELETE', headers: tus })).status).toBe(204);
    expect(await offsetOf(server, where)).toBeUndefined();
    expect(names(server.data, 'uploads')).toEqual([]);
  });

  it('two writers at once: the second waits its turn', async () => {
    const server = await serverUnderTest();
    const bytes = randomBytes(100_000);
    const where = await begin(server, bytes.length);
    const answers = await Promise.all([patch(server, where, 0, bytes), patch(server, where, 0, bytes)]);
    const statuses = answers.map((item) => item.status).sort();
    expect([
      [204, 409],
      [204, 423],
    ]).toContainEqual(statuses);
    expect(names(server.data, 'films')).toEqual([hashOf(bytes)]);
  });

  it.each([
    ['an offset that is not where it stands', { 'upload-offset': '7' }, 409],
    ['no offset', { 'upload-offset': '' }, 409],
    ['another content type', { 'content-type': 'video/mp4' }, 415],
    ['another version', { 'tus-resumable': '0.2.0' }, 412],
    ['more bytes than were announced', { 'upload-offset': '0' }, 413],
  ])('%s is refused and changes nothing', async (_what, headers, status) => {
    const server = await serverUnderTest();
    const where = await begin(server, 10);
    const all = {
      ...tus,
      'upload-offset': '0',
      'content-type': 'application/offset+octet-stream',
      ...headers,
    };
    const body = randomBytes(status === 413 ? 11 : 5);
    const answer = await server.fetch(where, { method: 'PATCH', headers: all, body });
    expect([answer.status, (await codes(answer)).length]).toEqual([status, 1]);
    expect(await offsetOf(server, where)).toBe(0);
  });

  it('more bytes than were announced are refused without a length as well', async () => {
    const server = await serverUnderTest();
    const where = await begin(server, 10);
    const body = new ReadableStream<Uint8Array>({
      start: (controller) => {
        controller.enqueue(randomBytes(11));
        controller.close();
      },
    });
    const answer = await patch(server, where, 0, body, { duplex: 'half' } as RequestInit);
    expect([answer.status, await codes(answer)]).toEqual([413, ['server/refused']]);
    expect(await offsetOf(server, where)).toBe(0);
  });

  it.each([
    ['an empty film', { 'upload-length': '0' }, 400, 'film/empty'],
    ['no length', {}, 400, 'server/refused'],
    ['a length that is no number', { 'upload-length': '1e3' }, 400, 'server/refused'],
    ['a film of 65 GB', { 'upload-length': String(65 * 1024 ** 3) }, 413, 'server/too-large'],
    [
      'a hash that is none',
      { 'upload-length': '5', 'upload-metadata': metadata({ sha256: 'x' }) },
      400,
      'server/refused',
    ],
  ])('%s is not begun', async (_what, headers, status, code) => {
    const server = await serverUnderTest();
    const init = { method: 'POST', headers: { ...tus, ...headers } as Record<string, string> };
    const answer = await server.fetch('/api/uploads', init);
    expect([answer.status, await codes(answer)]).toEqual([status, [code]]);
    expect(names(server.data, 'uploads')).toEqual([]);
  });

  it.each([
    '/api/uploads/..%2f..%2fstudies.sqlite',
    '/api/uploads/nothing',
    `/api/uploads/${'a'.repeat(32)}`,
  ])('%s is no upload, whatever is done with it', async (where) => {
    const server = await serverUnderTest();
    expect(await offsetOf(server, where)).toBeUndefined();
    expect((await patch(server, where, 0, 'x')).status).toBe(404);
    expect((await server.fetch(where, { method: 'DELETE', headers: tus })).status).toBe(404);
    expect(names(server.data, '.')).toContain('studies.sqlite');
    expect(server.log).toEqual([]);
  });

  it('a film that is asked for before it is whole is refused', async () => {
    const server = await serverUnderTest();
    const where = await begin(server, 10);
    await patch(server, where, 0, randomBytes(5));
    const answer = await server.fetch(`${where}/film`);
    expect([answer.status, await codes(answer)]).toEqual([400, ['film/upload']]);
  });

  it('OPTIONS tells what is spoken', async () => {
    const server = await serverUnderTest();
    const { headers } = await server.fetch('/api/uploads', { method: 'OPTIONS' });
    expect([headers.get('tus-version'), headers.get('tus-extension')]).toEqual([
      '1.0.0',
      'creation,termination',
    ]);
  });
});
