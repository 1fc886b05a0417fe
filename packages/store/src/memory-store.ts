import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { applyAll } from '@evenhand/core/ground/edit';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { Study } from '@evenhand/core/ground/study';
import { type AppliedEdit, applyBatch, keptEdit, type RefusedEdit } from './apply-batch.ts';
import type { FilmRecord, FilmRecords, UploadRecord } from './films/film-records.ts';
import {
  type BatchOutcome,
  type Clock,
  type EditBatch,
  type EditOutcome,
  isoTime,
  type LoadedStudy,
  type StudyStore,
  type StudySummary,
} from './study-store.ts';

interface Shelf {
  readonly first: Study;
  readonly createdAt: string;
  changedAt: string;
  archived: boolean;
  readonly edits: AppliedEdit[];
  readonly refused: RefusedEdit[];
}

/**
 * A store in plain maps that rebuilds every revision from the first document. It remembers nothing that it could work
 * out, so it is what the other adapters are compared with; it is not for users' work.
 */
export class MemoryStore implements StudyStore, FilmRecords {
  readonly #clock: Clock;
  readonly #shelves = new Map<string, Shelf>();
  readonly #films = new Map<string, FilmRecord>();
  readonly #uploads = new Map<string, UploadRecord>();

  constructor(clock: Clock) {
    this.#clock = clock;
  }

  async list(): Promise<readonly StudySummary[]> {
    const all = [...this.#shelves.values()].map(summary);
    return all.sort((a, b) => order(b.changedAt, a.changedAt) || order(a.id, b.id));
  }

  async create(study: Study) {
    if (this.#shelves.has(study.id)) return fail(finding('store/taken', {}, { id: study.id }));
    const at = isoTime(this.#clock);
    const shelf = { createdAt: at, changedAt: at, archived: false, edits: [], refused: [] };
    this.#shelves.set(study.id, { first: structuredClone(study) as Study, ...shelf });
    return ok({ id: study.id, rev: 0 });
  }

  async load(id: string, rev?: number): Promise<Result<LoadedStudy, Finding>> {
    const shelf = this.#shelves.get(id);
    if (shelf === undefined) return missing(id);
    const wanted = rev ?? shelf.edits.length;
    if (wanted < 0 || wanted > shelf.edits.length) return missing(id, wanted);
    return ok({ study: rebuild(shelf, wanted), rev: wanted });
  }

  async edit(id: string, batch: EditBatch): Promise<Result<BatchOutcome, Finding>> {
    const shelf = this.#shelves.get(id);
    if (shelf === undefined) return missing(id);
    const rev = shelf.edits.length;
    if (batch.baseRev > rev) return fail(finding('store/behind', {}, { rev, seen: batch.baseRev }));
    const done = applyBatch({ study: rebuild(shelf, rev), rev }, batch, answers(shelf));
    const at = isoTime(this.#clock);
    shelf.edits.push(...(structuredClone(done.applied) as AppliedEdit[]));
    shelf.refused.push(...(structuredClone(done.refused) as RefusedEdit[]));
    if (done.applied.length > 0) shelf.changedAt = at;
    return ok({ rev: done.head.rev, results: done.results, added: done.applied.map(keptEdit) });
  }

  async editsSince(id: string, since: number) {
    const shelf = this.#shelves.get(id);
    if (shelf === undefined) return missing(id);
    return ok({ rev: shelf.edits.length, edits: shelf.edits.slice(Math.max(0, since)).map(keptEdit) });
  }

  async archive(id: string, archived: boolean) {
    const shelf = this.#shelves.get(id);
    if (shelf === undefined) return missing(id);
    shelf.archived = archived;
    return ok(summary(shelf));
  }

  async films(): Promise<readonly FilmRecord[]> {
    return [...this.#films.values()].sort((a, b) => order(a.addedAt, b.addedAt) || order(a.sha256, b.sha256));
  }

  async film(sha256: string): Promise<FilmRecord | undefined> {
    return this.#films.get(sha256);
  }

  async addFilm(film: FilmRecord, upload?: string): Promise<void> {
    if (!this.#films.has(film.sha256)) this.#films.set(film.sha256, film);
    if (upload !== undefined)
      this.#uploads.set(upload, { id: upload, sha256: film.sha256, at: film.addedAt });
  }

  async removeFilm(sha256: string): Promise<void> {
    this.#films.delete(sha256);
    for (const [id, upload] of this.#uploads) if (upload.sha256 === sha256) this.#uploads.delete(id);
  }

  async uploads(): Promise<readonly UploadRecord[]> {
    return [...this.#uploads.values()].sort((a, b) => order(a.id, b.id));
  }

  async forgetUploads(before: string): Promise<void> {
    for (const [id, upload] of this.#uploads) if (upload.at < before) this.#uploads.delete(id);
  }
}

function missing(id: string, rev?: number) {
  const what = rev === undefined ? `The study ${id}` : `Revision ${rev} of the study ${id}`;
  return fail(finding('store/not-found', {}, { what }));
}

function answers(shelf: Shelf): Map<string, EditOutcome> {
  return new Map<string, EditOutcome>([
    ...shelf.edits.map(({ id, rev }) => [id, { id, status: 'applied', rev }] as const),
    ...shelf.refused.map(({ id, finding: why }) => [id, { id, status: 'refused', finding: why }] as const),
  ]);
}

function rebuild(shelf: Shelf, rev: number): Study {
  const edits = shelf.edits.slice(0, rev).map((kept) => kept.edit);
  const replayed = applyAll(shelf.first, edits);
  if (!replayed.ok) throw new Error(`the history does not replay: ${replayed.error.message}`);
  return replayed.value;
}

function summary(shelf: Shelf): StudySummary {
  const study = rebuild(shelf, shelf.edits.length);
  return {
    id: study.id,
    title: study.title,
    rev: shelf.edits.length,
    createdAt: shelf.createdAt,
    changedAt: shelf.changedAt,
    demo: study.demo === true,
    archived: shelf.archived,
    films: study.films.length,
    methods: study.methods.length,
  };
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
