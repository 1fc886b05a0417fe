import { createHash, randomBytes } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { adapters, temporaryFolder, tickingClock } from '../testing/stores-under-test.ts';
import { FolderFilmStore } from './folder-film-store.ts';

const hashOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const newId = () => randomBytes(16).toString('hex');
const names = (...folder: string[]) => readdirSync(path.join(...folder)).sort();

async function* pieces(...parts: Uint8Array[]): AsyncGenerator<Uint8Array> {
  yield* parts;
}

describe.each(adapters)('a film store with its records in $name', ({ open }) => {
  async function filmStore() {
    const { records } = await open(tickingClock());
    const data = temporaryFolder();
    const reopen = async (clock = Date.now) => await FolderFilmStore.open(data, records, clock);
    return { films: await reopen(), reopen, data, records };
  }

  async function sendAll(films: FolderFilmStore, bytes: Uint8Array, name = 'present.mp4'): Promise<string> {
    const id = newId();
    await films.begin({ id, size: bytes.length, name });
    await films.append(id, 0, pieces(bytes));
    return id;
  }

  it('keeps a film under the hash of its bytes', async () => {
    const { films, data } = await filmStore();
    const bytes = randomBytes(100_000);
    const done = await films.finish(await sendAll(films, bytes));
    expect(done).toMatchObject({
      ok: true,
      value: { sha256: hashOf(bytes), bytes: 100_000, name: 'present.mp4' },
    });
    expect(readFileSync(films.fileOf(hashOf(bytes))).equals(bytes)).toBe(true);
    expect(await films.list()).toEqual([await films.find(hashOf(bytes))]);
    expect(names(data, 'uploads')).toEqual([]);
  });

  it('the hash is that of the standard (FIPS 180-4, example “abc”)', async () => {
    const { films } = await filmStore();
    const done = await films.finish(await sendAll(films, Buffer.from('abc')));
    expect(done.ok && done.value.sha256).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
  });

  it('an upload tells where it stands and goes on from there', async () => {
    const { films } = await filmStore();
    const [id, bytes] = [newId(), randomBytes(900)];
    await films.begin({ id, size: 900, name: 'a.mp4' });
    expect(await films.upload(id)).toEqual({ id, size: 900, offset: 0, name: 'a.mp4' });
    expect(await films.append(id, 0, pieces(bytes.subarray(0, 100), bytes.subarray(100, 250)))).toBe(250);
    expect(await films.upload(id)).toMatchObject({ offset: 250 });
    expect(await films.finish(id)).toMatchObject({ ok: false, error: { code: 'film/upload' } });
    await films.append(id, 250, pieces(bytes.subarray(250)));
    expect(await films.finish(id)).toMatchObject({ ok: true, value: { sha256: hashOf(bytes) } });
  });

  it('what came before a break of the stream is kept', async () => {
    const { films } = await filmStore();
    const id = newId();
    await films.begin({ id, size: 900, name: 'a.mp4' });
    const broken = async function* () {
      yield randomBytes(300);
      throw new Error('the connection is gone');
    };
    await expect(films.append(id, 0, broken())).rejects.toThrow('the connection is gone');
    expect(await films.upload(id)).toMatchObject({ offset: 300 });
  });

  it('more bytes than were announced are not taken', async () => {
    const { films } = await filmStore();
    const id = newId();
    await films.begin({ id, size: 10, name: 'a.mp4' });
    await expect(films.append(id, 0, pieces(randomBytes(11)))).rejects.toThrow(RangeError);
    expect(await films.upload(id)).toMatchObject({ offset: 0 });
  });

  it('asked twice at once, and again later, the end gives the same film', async () => {
    const { films, reopen } = await filmStore();
    const id = await sendAll(films, randomBytes(50_000));
    const [one, two] = await Promise.all([films.finish(id), films.finish(id)]);
    expect(one.ok).toBe(true);
    expect(two).toEqual(one);
    expect(await films.finish(id)).toEqual(one);
    expect(await (await reopen()).finish(id)).toEqual(one);
    expect(await films.upload(id)).toMatchObject({ offset: 50_000, size: 50_000 });
  });

  it('other bytes than expected are thrown away', async () => {
    const { films, data } = await filmStore();
    const id = newId();
    await films.begin({ id, size: 3, name: 'a.mp4', expected: hashOf(Buffer.from('abd')) });
    await films.append(id, 0, pieces(Buffer.from('abc')));
    expect(await films.finish(id)).toMatchObject({ ok: false, error: { code: 'film/hash' } });
    expect([names(data, 'films'), names(data, 'uploads'), await films.list()]).toEqual([[], [], []]);
  });

  it('two uploads of one film make one film, which keeps its first name', async () => {
    const { films, data } = await filmStore();
    const bytes = randomBytes(5000);
    const [one, two] = [await sendAll(films, bytes, 'one.mp4'), await sendAll(films, bytes, 'two.mp4')];
    const done = await Promise.all([films.finish(one), films.finish(two)]);
    expect(done.map((item) => item.ok)).toEqual([true, true]);
    expect((await films.list()).map((film) => film.sha256)).toEqual([hashOf(bytes)]);
    expect([names(data, 'films'), names(data, 'uploads')]).toEqual([[hashOf(bytes)], []]);
  });

  it('takes in a file of this machine and leaves it where it is', async () => {
    const { films, data } = await filmStore();
    const file = path.join(temporaryFolder(), 'bench.webm');
    // EBML mark and the document type (RFC 8794, section 11.2.4).
    const bytes = Buffer.concat([
      Buffer.from('1a45dfa39f4286810142f7810142f2810442f381084282847765626d', 'hex'),
      randomBytes(500),
    ]);
    writeFileSync(file, bytes);
    const done = await films.copyIn(file, 'bench.webm');
    expect(done).toMatchObject({ ok: true, value: { sha256: hashOf(bytes), mediaType: 'video/webm' } });
    expect(readFileSync(file).equals(bytes)).toBe(true);
    expect(names(data, 'films')).toEqual([hashOf(bytes)]);
    expect(await films.copyIn(path.join(data, 'none.mp4'), 'none.mp4')).toMatchObject({
      error: { code: 'cli/file' },
    });
    writeFileSync(file, '');
    expect(await films.copyIn(file, 'bench.webm')).toMatchObject({ error: { code: 'film/empty' } });
    expect(names(data, 'films')).toEqual([hashOf(bytes)]);
  });

  it('ids and hashes that could lead out of the folders are none', async () => {
    const { films } = await filmStore();
    for (const id of ['..', '../../etc', 'a/b', '', 'A'.repeat(32), `${'a'.repeat(32)}.json`]) {
      expect(await films.upload(id)).toBeUndefined();
      expect(await films.find(id)).toBeUndefined();
      await expect(films.begin({ id, size: 1, name: 'x' })).rejects.toThrow(RangeError);
      expect(() => films.fileOf(id)).toThrow(RangeError);
    }
  });

  it('a sweep at the start removes what belongs to nothing and keeps what can go on', async () => {
    const { films, data, reopen } = await filmStore();
    const id = newId();
    await films.begin({ id, size: 900, name: 'a.mp4' });
    await films.append(id, 0, pieces(randomBytes(300)));
    const [bytesOnly, noteOnly] = [newId(), newId()];
    writeFileSync(path.join(data, 'uploads', bytesOnly), 'x');
    writeFileSync(path.join(data, 'uploads', `${noteOnly}.json`), '{}');
    writeFileSync(path.join(data, 'uploads', `${id}.json.part`), '{');
    writeFileSync(path.join(data, 'films', '12-a.mp4.part'), 'x');
    const { removed } = await (await reopen()).sweep('start');
    expect([...removed].sort()).toEqual(
      [bytesOnly, `${noteOnly}.json`, `${id}.json.part`, '12-a.mp4.part'].sort(),
    );
    expect(names(data, 'uploads')).toEqual([id, `${id}.json`]);
    expect(await films.upload(id)).toMatchObject({ offset: 300 });
  });

  it('a sweep while it runs leaves an upload that has just begun, and removes one untouched for a day', async () => {
    const { films, data } = await filmStore();
    const [fresh, old] = [newId(), newId()];
    for (const id of [fresh, old]) await films.begin({ id, size: 900, name: 'a.mp4' });
    writeFileSync(path.join(data, 'uploads', newId()), 'begun this moment, its note comes next');
    const before = new Date(Date.now() - 25 * 3_600_000);
    for (const name of [old, `${old}.json`]) utimesSync(path.join(data, 'uploads', name), before, before);
    expect([...(await films.sweep('later')).removed].sort()).toEqual([old, `${old}.json`]);
    expect(await films.upload(fresh)).toMatchObject({ offset: 0 });
  });

  it('a film whose file is gone is no longer known after a start; one that was put back is', async () => {
    const { films, data, reopen } = await filmStore();
    const bytes = randomBytes(500);
    await films.finish(await sendAll(films, bytes));
    const file = films.fileOf(hashOf(bytes));
    writeFileSync(file, bytes.subarray(0, 100));
    expect(await films.list()).toEqual([]);
    const cut = await (await reopen()).sweep('start');
    expect([cut.lost, cut.removed]).toEqual([[hashOf(bytes)], [hashOf(bytes)]]);
    writeFileSync(file, bytes);
    expect((await (await reopen()).sweep('start')).finished).toEqual([hashOf(bytes)]);
    expect((await films.list()).map((film) => film.sha256)).toEqual([hashOf(bytes)]);
    mkdirSync(path.join(data, 'films', 'a-folder-of-somebody'));
    expect((await (await reopen()).sweep('start')).removed).toEqual([]);
  });

  it('which film an upload became is forgotten after a week, the film is not', async () => {
    const { films, reopen } = await filmStore();
    const bytes = randomBytes(500);
    const id = await sendAll(films, bytes);
    await films.finish(id);
    const later = await reopen(() => Date.now() + 8 * 24 * 3_600_000);
    await later.sweep('later');
    expect(await later.upload(id)).toBeUndefined();
    expect(await later.find(hashOf(bytes))).toMatchObject({ bytes: 500 });
  });
});
