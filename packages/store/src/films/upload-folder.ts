import path from 'node:path';
import { type Files, isMissing, removeIfThere, sizeOf, writeWhole } from '../files.ts';
import type { Upload } from './film-store.ts';

/** Bytes written between two flushes: at most so many are sent again after a power cut. */
const FLUSH_EVERY = 32 * 1024 * 1024;
const ID = /^[0-9a-f]{32}$/;

/** The sender sends more than it announced. */
export class TooManyBytes extends RangeError {
  constructor(size: number) {
    super(`there are more than the ${size} bytes that were announced`);
  }
}

/** What is written beside the bytes of an upload. */
export interface UploadNote {
  readonly size: number;
  readonly name: string;
  readonly expected?: string;
  /** Bytes known to be on the disk. */
  readonly flushed: number;
}

/** The folder of films that are on their way in: `<id>` holds the bytes, `<id>.json` the note. */
export class UploadFolder {
  readonly folder: string;
  readonly #files: Files;

  constructor(folder: string, files: Files) {
    this.folder = folder;
    this.#files = files;
  }

  /** @throws RangeError for an id that could lead out of the folder */
  fileOf(id: string): string {
    if (!ID.test(id)) throw new RangeError(`not the id of an upload: ${id}`);
    return path.join(this.folder, id);
  }

  async begin(id: string, note: Omit<UploadNote, 'flushed'>): Promise<void> {
    const handle = await this.#files.open(this.fileOf(id), 'wx');
    await handle.close();
    await this.#writeNote(id, { ...note, flushed: 0 });
  }

  async note(id: string): Promise<UploadNote | undefined> {
    if (!ID.test(id)) return undefined;
    try {
      return JSON.parse(await this.#files.readFile(`${this.fileOf(id)}.json`, 'utf8')) as UploadNote;
    } catch (error) {
      if (isMissing(error)) return undefined;
      throw error;
    }
  }

  async find(id: string): Promise<Upload | undefined> {
    const note = await this.note(id);
    if (note === undefined) return undefined;
    const offset = await sizeOf(this.#files, this.fileOf(id));
    if (offset === undefined) return undefined;
    const { flushed: _flushed, ...rest } = note;
    return { id, offset, ...rest };
  }

  /** Appends and flushes; what came before a break of the stream stays, and the break is thrown on. */
  async append(id: string, offset: number, bytes: AsyncIterable<Uint8Array>): Promise<number> {
    const note = await this.note(id);
    if (note === undefined) throw new RangeError(`no upload ${id}`);
    const handle = await this.#files.open(this.fileOf(id), 'r+');
    let at = offset;
    let flushed = offset;
    const flush = async () => {
      await handle.sync();
      flushed = at;
      await this.#writeNote(id, { ...note, flushed });
    };
    try {
      for await (const part of bytes) {
        if (at + part.byteLength > note.size) throw new TooManyBytes(note.size);
        await writeAll(handle, part, at);
        at += part.byteLength;
        if (at - flushed >= FLUSH_EVERY) await flush();
      }
    } finally {
      try {
        if (at > flushed) await flush();
      } finally {
        await handle.close();
      }
    }
    return at;
  }

  async remove(id: string): Promise<boolean> {
    const bytes = await removeIfThere(this.#files, this.fileOf(id));
    const note = await removeIfThere(this.#files, `${this.fileOf(id)}.json`);
    return bytes || note;
  }

  /** Cuts off bytes of which it is not known that they reached the disk. Only while nothing is being written. */
  async cutToFlushed(id: string, note: UploadNote): Promise<void> {
    const size = await sizeOf(this.#files, this.fileOf(id));
    if (size === undefined || size <= note.flushed) return;
    const handle = await this.#files.open(this.fileOf(id), 'r+');
    try {
      await handle.truncate(note.flushed);
      await handle.sync();
    } finally {
      await handle.close();
    }
  }

  /** Names of all files in the folder. */
  async names(): Promise<readonly string[]> {
    return (await this.#files.readdir(this.folder)).sort();
  }

  async #writeNote(id: string, note: UploadNote): Promise<void> {
    await writeWhole(this.#files, `${this.fileOf(id)}.json`, JSON.stringify(note));
  }
}

type Handle = Awaited<ReturnType<Files['open']>>;

/** A write may take fewer bytes than it was given. */
async function writeAll(handle: Handle, part: Uint8Array, at: number): Promise<void> {
  let done = 0;
  while (done < part.byteLength) {
    const { bytesWritten } = await handle.write(part, done, part.byteLength - done, at + done);
    done += bytesWritten;
  }
}
