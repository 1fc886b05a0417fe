import { createHash, randomBytes } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { MemoryStore } from '../memory-store.ts';
import { FragileFiles } from '../testing/fragile-files.ts';
import { temporaryFolder } from '../testing/stores-under-test.ts';
import { FolderFilmStore } from './folder-film-store.ts';

const bytes = randomBytes(40_000);
const sha256 = createHash('sha256').update(bytes).digest('hex');
const id = 'a'.repeat(32);

async function* halves(): AsyncGenerator<Uint8Array> {
  yield bytes.subarray(0, 20_000);
  yield bytes.subarray(20_000);
}

/** One film from its first byte to its end; true when the end was acknowledged. */
async function wholeUpload(films: FolderFilmStore): Promise<boolean> {
  await films.begin({ id, size: bytes.length, name: 'a.mp4' });
  await films.append(id, 0, halves());
  return (await films.finish(id)).ok;
}

/** Takes an upload up again as a window does: from the offset it is told, or from the beginning. */
async function resume(films: FolderFilmStore): Promise<void> {
  const upload = await films.upload(id);
  if (upload === undefined) await films.begin({ id, size: bytes.length, name: 'a.mp4' });
  const offset = upload?.offset ?? 0;
  const rest = async function* () {
    yield bytes.subarray(offset);
  };
  if (offset < bytes.length) await films.append(id, offset, rest());
  expect(await films.finish(id)).toMatchObject({ ok: true, value: { sha256 } });
}

describe('a film on its way to the disk', () => {
  it('is flushed before it is renamed, and its folder before the end is acknowledged', async () => {
    const data = temporaryFolder();
    const fragile = new FragileFiles(data);
    const films = await FolderFilmStore.open(data, new MemoryStore(Date.now), Date.now, fragile.files);
    expect(await wholeUpload(films)).toBe(true);
    const order = [
      `write uploads/${id}`,
      `flush uploads/${id}`,
      `rename uploads/${id} films/${sha256}`,
      'flush films',
    ];
    const places = order.map((what) => fragile.done.lastIndexOf(what));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it('a copied film is flushed before it is renamed', async () => {
    const data = temporaryFolder();
    const fragile = new FragileFiles(data);
    const films = await FolderFilmStore.open(data, new MemoryStore(Date.now), Date.now, fragile.files);
    await films.copyIn(import.meta.filename, 'a.mp4');
    const kinds = fragile.done.map((what) => what.split(' ')[0]);
    expect(kinds.slice(kinds.indexOf('copy'))).toEqual(['copy', 'open', 'flush', 'rename', 'flush']);
  });

  it.each([false, true])(
    'a power cut at any call leaves whole films alone, and the upload goes on (renamings undone: %s)',
    async (undoRenames) => {
      let cutAt = 0;
      for (; cutAt < 100; cutAt += 1) {
        const data = temporaryFolder();
        const records = new MemoryStore(Date.now);
        const ready = await FolderFilmStore.open(data, records, Date.now);
        await ready.sweep('start');
        const fragile = new FragileFiles(data, cutAt + 1);
        const acknowledged = await FolderFilmStore.open(data, records, Date.now, fragile.files)
          .then(wholeUpload)
          .catch(() => false);
        fragile.settle(undoRenames);
        const films = await FolderFilmStore.open(data, records, Date.now);
        await films.sweep('start');
        for (const film of await films.list()) {
          expect([cutAt, readFileSync(films.fileOf(film.sha256)).equals(bytes)]).toEqual([cutAt, true]);
        }
        if (acknowledged) expect([cutAt, (await films.list()).length]).toEqual([cutAt, 1]);
        await resume(films);
        expect(readFileSync(films.fileOf(sha256)).equals(bytes)).toBe(true);
        expect([cutAt, (await films.list())[0]?.name]).toEqual([cutAt, 'a.mp4']);
        expect([
          cutAt,
          readdirSync(path.join(data, 'uploads')),
          readdirSync(path.join(data, 'films')),
        ]).toEqual([cutAt, [], [sha256]]);
        if (acknowledged && fragile.done.length <= cutAt) break;
      }
      // Enough calls that every stage was cut, and an end at which nothing was cut any more.
      expect(cutAt).toBeGreaterThan(15);
      expect(cutAt).toBeLessThan(100);
    },
  );
});
