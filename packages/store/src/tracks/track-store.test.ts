import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { emptyHandTrack, encodeTrack } from '@evenhand/core/record';
import { describe, expect, it } from 'vitest';
import { FragileFiles } from '../testing/fragile-files.ts';
import { temporaryFolder } from '../testing/stores-under-test.ts';
import { FolderTrackStore } from './folder-track-store.ts';

const bytesOf = (frames: number) =>
  encodeTrack({
    source: 'bands',
    frames,
    width: 640,
    height: 360,
    unit: 'pixels',
    right: { ...emptyHandTrack(frames), x: new Float32Array(frames), y: new Float32Array(frames) },
  });
const hashOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const bytes = bytesOf(50);
const sha256 = hashOf(bytes);

describe('a store of tracks', () => {
  it('keeps a track under its hash, once however often it is sent', async () => {
    const data = temporaryFolder();
    const tracks = await FolderTrackStore.open(data);
    const kept = await Promise.all([tracks.put(sha256, bytes), tracks.put(sha256, bytes)]);
    expect([...kept, await tracks.put(sha256, bytes)].every((result) => result.ok)).toBe(true);
    expect(readdirSync(path.join(data, 'tracks'))).toEqual([sha256]);
    const again = await (await FolderTrackStore.open(data)).read(sha256);
    expect(again.ok && Buffer.from(again.value).equals(bytes)).toBe(true);
  });

  it('takes no other bytes, and nothing that is no track', async () => {
    const data = temporaryFolder();
    const tracks = await FolderTrackStore.open(data);
    const text = new TextEncoder().encode('frame,hand,x,y\n0,left,1,2\n');
    expect(await tracks.put(sha256, bytesOf(51))).toMatchObject({ error: { code: 'track/hash' } });
    expect(await tracks.put(hashOf(text), text)).toMatchObject({ error: { code: 'track/not-a-track' } });
    expect(readdirSync(path.join(data, 'tracks'))).toEqual([]);
  });

  it('says when it has none, also for names that lead out of its folder', async () => {
    const tracks = await FolderTrackStore.open(temporaryFolder());
    for (const name of [sha256, '..', '../studies.sqlite', '', `${sha256}.part`])
      expect(await tracks.read(name)).toMatchObject({ error: { code: 'store/not-found' } });
  });

  it('a track that was changed on the disk is not given out, and is put right when it comes again', async () => {
    const data = temporaryFolder();
    const tracks = await FolderTrackStore.open(data);
    await tracks.put(sha256, bytes);
    writeFileSync(path.join(data, 'tracks', sha256), bytesOf(49));
    expect(await tracks.read(sha256)).toMatchObject({ error: { code: 'track/hash' } });
    await tracks.put(sha256, bytes);
    expect((await tracks.read(sha256)).ok).toBe(true);
  });

  it.each([false, true])(
    'a power cut at any call leaves the whole track or none (renamings undone: %s)',
    async (undoRenames) => {
      let cutAt = 0;
      for (; cutAt < 40; cutAt += 1) {
        const data = temporaryFolder();
        await FolderTrackStore.open(data);
        const fragile = new FragileFiles(data, cutAt + 1);
        const acknowledged = await FolderTrackStore.open(data, fragile.files)
          .then(async (tracks) => (await tracks.put(sha256, bytes)).ok)
          .catch(() => false);
        fragile.settle(undoRenames);
        const tracks = await FolderTrackStore.open(data);
        await tracks.sweep();
        const names = readdirSync(path.join(data, 'tracks'));
        for (const name of names)
          expect(readFileSync(path.join(data, 'tracks', name)).equals(bytes)).toBe(true);
        if (acknowledged) expect([cutAt, names]).toEqual([cutAt, [sha256]]);
        if (acknowledged && fragile.done.length <= cutAt) break;
      }
      // Enough calls that every stage was cut, and an end at which nothing was cut any more.
      expect(cutAt).toBeGreaterThan(5);
      expect(cutAt).toBeLessThan(40);
    },
  );
});
