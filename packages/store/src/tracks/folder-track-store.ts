import { createHash } from 'node:crypto';
import path from 'node:path';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { decodeTrack } from '@evenhand/core/record';
import {
  type Files,
  flushFolder,
  isMissing,
  realFiles,
  removeIfThere,
  sizeOf,
  writeWhole,
} from '../files.ts';
import { isHash } from '../films/folder-film-store.ts';
import type { TrackStore } from './track-store.ts';

/** Tracks as files: `tracks/<sha256>`. */
export class FolderTrackStore implements TrackStore {
  readonly #folder: string;
  readonly #files: Files;
  /** Two windows may send the same track at once; they share one writing. */
  readonly #writing = new Map<string, Promise<void>>();

  private constructor(dataFolder: string, files: Files) {
    this.#folder = path.join(dataFolder, 'tracks');
    this.#files = files;
  }

  static async open(dataFolder: string, files: Files = realFiles): Promise<FolderTrackStore> {
    const store = new FolderTrackStore(dataFolder, files);
    await files.mkdir(store.#folder, { recursive: true });
    await flushFolder(files, dataFolder);
    return store;
  }

  async put(sha256: string, bytes: Uint8Array): Promise<Result<true, Finding>> {
    if (hashOf(bytes) !== sha256) return fail(finding('track/hash'));
    const track = decodeTrack(bytes);
    if (!track.ok) return track;
    const running = this.#writing.get(sha256) ?? this.#write(sha256, bytes);
    this.#writing.set(sha256, running);
    await running.finally(() => this.#writing.delete(sha256));
    return ok(true);
  }

  async #write(sha256: string, bytes: Uint8Array): Promise<void> {
    const file = path.join(this.#folder, sha256);
    if ((await sizeOf(this.#files, file)) === bytes.length && (await this.read(sha256)).ok) return;
    await writeWhole(this.#files, file, bytes);
    await flushFolder(this.#files, this.#folder);
  }

  async read(sha256: string): Promise<Result<Uint8Array, Finding>> {
    const missing = fail(finding('store/not-found', {}, { what: 'The track' }));
    if (!isHash(sha256)) return missing;
    try {
      const bytes = await this.#files.readFile(path.join(this.#folder, sha256));
      return hashOf(bytes) === sha256 ? ok(bytes) : fail(finding('track/hash'));
    } catch (error) {
      if (isMissing(error)) return missing;
      throw error;
    }
  }

  async sweep(): Promise<readonly string[]> {
    const removed: string[] = [];
    for (const name of (await this.#files.readdir(this.#folder)).sort())
      if (name.endsWith('.part') && (await removeIfThere(this.#files, path.join(this.#folder, name))))
        removed.push(name);
    return removed;
  }
}

function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
