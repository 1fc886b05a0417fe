import path from 'node:path';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { type Files, flushFile, flushFolder, realFiles, removeIfThere, sizeOf } from '../files.ts';
import { type Clock, isoTime } from '../study-store.ts';
import type { FilmRecord, FilmRecords } from './film-records.ts';
import type { FilmStore, SweepReport, Upload } from './film-store.ts';
import { type FileFacts, hashFile } from './hash-file.ts';
import { sweepFolders } from './sweep.ts';
import { UploadFolder } from './upload-folder.ts';

/**
 * Films as files: `uploads/<id>` while they come in, `films/<sha256>` when they are whole.
 *
 * A film is recorded together with its upload before its file is renamed, so that a start after a crash between the two
 * finds what is left to do. The list shows only films whose file is there, and no answer goes out before both are done.
 */
export class FolderFilmStore implements FilmStore {
  readonly #folder: string;
  readonly #uploads: UploadFolder;
  readonly #records: FilmRecords;
  readonly #clock: Clock;
  readonly #files: Files;
  readonly #finishing = new Map<string, Promise<Result<FilmRecord, Finding>>>();

  private constructor(dataFolder: string, records: FilmRecords, clock: Clock, files: Files) {
    this.#folder = path.join(dataFolder, 'films');
    this.#uploads = new UploadFolder(path.join(dataFolder, 'uploads'), files);
    this.#records = records;
    this.#clock = clock;
    this.#files = files;
  }

  static async open(
    dataFolder: string,
    records: FilmRecords,
    clock: Clock,
    files: Files = realFiles,
  ): Promise<FolderFilmStore> {
    const store = new FolderFilmStore(dataFolder, records, clock, files);
    await files.mkdir(store.#folder, { recursive: true });
    await files.mkdir(store.#uploads.folder, { recursive: true });
    await flushFolder(files, dataFolder);
    return store;
  }

  async begin({ id, ...note }: Omit<Upload, 'offset'>): Promise<void> {
    await this.#uploads.begin(id, note);
  }

  async upload(id: string): Promise<Upload | undefined> {
    const open = await this.#uploads.find(id);
    if (open !== undefined) return open;
    const film = await this.#filmOf(id);
    return film === undefined ? undefined : { id, size: film.bytes, offset: film.bytes, name: film.name };
  }

  async append(id: string, offset: number, bytes: AsyncIterable<Uint8Array>): Promise<number> {
    return await this.#uploads.append(id, offset, bytes);
  }

  async drop(id: string): Promise<boolean> {
    return await this.#uploads.remove(id);
  }

  async finish(id: string): Promise<Result<FilmRecord, Finding>> {
    const running = this.#finishing.get(id);
    if (running !== undefined) return await running;
    const made = this.#finish(id).finally(() => this.#finishing.delete(id));
    this.#finishing.set(id, made);
    return await made;
  }

  async #finish(id: string): Promise<Result<FilmRecord, Finding>> {
    const upload = await this.#uploads.find(id);
    if (upload === undefined) {
      const film = await this.#filmOf(id);
      return film === undefined
        ? fail(finding('store/not-found', {}, { what: `The upload ${id}` }))
        : ok(film);
    }
    if (upload.offset !== upload.size) {
      const reason = `${upload.offset} of ${upload.size} bytes are here`;
      return fail(finding('film/upload', {}, { reason }));
    }
    const file = this.#uploads.fileOf(id);
    await flushFile(this.#files, file);
    const facts = await hashFile(this.#files, file);
    if (upload.expected !== undefined && upload.expected !== facts.sha256) {
      await this.#uploads.remove(id);
      return fail(finding('film/hash'));
    }
    return ok(await this.#settle(file, facts, upload.name, id));
  }

  /** From a flushed and hashed file to a film. */
  async #settle(file: string, facts: FileFacts, name: string, upload?: string): Promise<FilmRecord> {
    const record: FilmRecord = { ...facts, name, addedAt: isoTime(this.#clock) };
    await this.#records.addFilm(record, upload);
    await this.#place(file, facts);
    if (upload !== undefined) await this.#uploads.remove(upload);
    return (await this.#records.film(facts.sha256)) ?? record;
  }

  /** Puts the bytes under their hash, or throws them away when they are there already. */
  async #place(file: string, facts: Pick<FileFacts, 'sha256' | 'bytes'>): Promise<void> {
    const target = this.fileOf(facts.sha256);
    if ((await sizeOf(this.#files, target)) === facts.bytes) {
      await removeIfThere(this.#files, file);
      return;
    }
    await this.#files.rename(file, target);
    await flushFolder(this.#files, this.#folder);
  }

  async copyIn(file: string, name: string): Promise<Result<FilmRecord, Finding>> {
    const copy = path.join(this.#folder, `${process.pid}-${path.basename(file)}.part`);
    try {
      await this.#files.copyFile(file, copy);
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      await removeIfThere(this.#files, copy);
      return fail(finding('cli/file', {}, { file, reason }));
    }
    await flushFile(this.#files, copy);
    const facts = await hashFile(this.#files, copy);
    if (facts.bytes === 0) {
      await removeIfThere(this.#files, copy);
      return fail(finding('film/empty', {}, { name }));
    }
    return ok(await this.#settle(copy, facts, name));
  }

  async list(): Promise<readonly FilmRecord[]> {
    const known = await this.#records.films();
    const there = await Promise.all(known.map((film) => this.#isWhole(film)));
    return known.filter((_film, index) => there[index]);
  }

  async find(sha256: string): Promise<FilmRecord | undefined> {
    if (!isHash(sha256)) return undefined;
    const film = await this.#records.film(sha256);
    return film !== undefined && (await this.#isWhole(film)) ? film : undefined;
  }

  /** @throws RangeError for a name that is not a hash */
  fileOf(sha256: string): string {
    if (!isHash(sha256)) throw new RangeError(`not a SHA-256: ${sha256}`);
    return path.join(this.#folder, sha256);
  }

  async sweep(when: 'start' | 'later'): Promise<SweepReport> {
    return await sweepFolders(
      {
        folder: this.#folder,
        uploads: this.#uploads,
        records: this.#records,
        files: this.#files,
        clock: this.#clock,
        place: async (file, film) => await this.#place(file, film),
      },
      when,
    );
  }

  async #isWhole(film: FilmRecord): Promise<boolean> {
    return (await sizeOf(this.#files, this.fileOf(film.sha256))) === film.bytes;
  }

  async #filmOf(upload: string): Promise<FilmRecord | undefined> {
    const taken = (await this.#records.uploads()).find((item) => item.id === upload);
    return taken === undefined ? undefined : await this.find(taken.sha256);
  }
}

export function isHash(text: string): boolean {
  return /^[0-9a-f]{64}$/.test(text);
}
