import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { Study } from '@evenhand/core/ground/study';
import { Kysely, type Transaction } from 'kysely';
import { applyBatch, keptEdit } from '../apply-batch.ts';
import {
  type BatchOutcome,
  type Clock,
  type EditBatch,
  isoTime,
  type LoadedStudy,
  type StudyStore,
  type StudySummary,
} from '../study-store.ts';
import type { SqliteConnection } from './connection.ts';
import { sqliteDialect } from './dialect.ts';
import { type Head, HeadCache, snapshotDue } from './head-cache.ts';
import { readAnswers, readEdits, readHead, writeApplied, writeRefused } from './history.ts';
import { migrateTables } from './migrations.ts';
import { documentColumns, toSummary } from './rows.ts';
import { SqliteFilmRecords } from './sqlite-film-records.ts';
import type { StudyRow, Tables } from './tables.ts';

const HEADS_KEPT = 8;

/** Studies and film records in one SQLite database. */
export class SqliteStore implements StudyStore {
  readonly films: SqliteFilmRecords;
  readonly #db: Kysely<Tables>;
  readonly #clock: Clock;
  readonly #heads = new HeadCache(HEADS_KEPT);

  private constructor(db: Kysely<Tables>, clock: Clock) {
    this.#db = db;
    this.#clock = clock;
    this.films = new SqliteFilmRecords(db);
  }

  /** Finding `store/newer` when a later version of the program wrote the database. The connection is then closed. */
  static async open(connection: SqliteConnection, clock: Clock): Promise<Result<SqliteStore, Finding>> {
    const db = new Kysely<Tables>({ dialect: sqliteDialect(connection) });
    const state = await migrateTables(db).catch(async (error: unknown) => {
      await db.destroy();
      throw error;
    });
    if (state === 'ready') return ok(new SqliteStore(db, clock));
    await db.destroy();
    return fail(finding('store/newer'));
  }

  async dispose(): Promise<void> {
    await this.#db.destroy();
  }

  async list(): Promise<readonly StudySummary[]> {
    const rows = await this.#db
      .selectFrom('studies')
      .selectAll()
      .orderBy('changed_at', 'desc')
      .orderBy('id')
      .execute();
    return rows.map(toSummary);
  }

  async create(study: Study): Promise<Result<{ readonly id: string; readonly rev: number }, Finding>> {
    const at = isoTime(this.#clock);
    const document = JSON.stringify(study);
    return await this.#db.transaction().execute(async (db) => {
      if ((await studyRow(db, study.id)) !== undefined)
        return fail(finding('store/taken', {}, { id: study.id }));
      const row = { id: study.id, rev: 0, created_at: at, changed_at: at, archived: 0 };
      await db
        .insertInto('studies')
        .values({ ...row, ...documentColumns(study) })
        .execute();
      await db.insertInto('snapshots').values({ study_id: study.id, rev: 0, document }).execute();
      return ok({ id: study.id, rev: 0 });
    });
  }

  async load(id: string, rev?: number): Promise<Result<LoadedStudy, Finding>> {
    return await this.#db.transaction().execute(async (db) => {
      const row = await studyRow(db, id);
      if (row === undefined) return missing(id);
      const wanted = rev ?? Number(row.rev);
      if (wanted < 0 || wanted > Number(row.rev)) return missing(id, wanted);
      const head = wanted === Number(row.rev) ? await this.#head(db, row) : await readHead(db, id, wanted);
      return ok({ study: head.study, rev: head.rev });
    });
  }

  async edit(id: string, batch: EditBatch): Promise<Result<BatchOutcome, Finding>> {
    let next: Head | undefined;
    const outcome = await this.#db.transaction().execute(async (db) => {
      const row = await studyRow(db, id);
      if (row === undefined) return missing(id);
      const rev = Number(row.rev);
      if (batch.baseRev > rev) return fail(finding('store/behind', {}, { rev, seen: batch.baseRev }));
      const answered = await readAnswers(
        db,
        id,
        batch.edits.map((item) => item.id),
      );
      const before = await this.#head(db, row);
      const done = applyBatch(before, batch, answered);
      const savedAt = isoTime(this.#clock);
      await writeRefused(db, id, batch, done.refused, savedAt);
      if (done.applied.length > 0) {
        const chars = await writeApplied(db, id, done.applied, savedAt);
        next = await this.#advance(db, id, before, done.head, chars, savedAt);
      }
      return ok({ rev: done.head.rev, results: done.results, added: done.applied.map(keptEdit) });
    });
    // Only now is it on the disk; a transaction that failed must leave the head as it was.
    if (next !== undefined) this.#heads.set(id, next);
    return outcome;
  }

  async #advance(
    db: Transaction<Tables>,
    id: string,
    before: Head,
    to: LoadedStudy,
    chars: number,
    savedAt: string,
  ): Promise<Head> {
    await db
      .updateTable('studies')
      .set({ rev: to.rev, changed_at: savedAt, ...documentColumns(to.study) })
      .where('id', '=', id)
      .execute();
    const next: Head = { ...before, ...to, editChars: before.editChars + chars };
    if (!snapshotDue(next)) return next;
    const document = JSON.stringify(next.study);
    await db.insertInto('snapshots').values({ study_id: id, rev: next.rev, document }).execute();
    return { ...next, snapshotRev: next.rev, editChars: 0, snapshotChars: document.length };
  }

  async editsSince(id: string, since: number) {
    return await this.#db.transaction().execute(async (db) => {
      const row = await studyRow(db, id);
      if (row === undefined) return missing(id);
      return ok({ rev: Number(row.rev), edits: await readEdits(db, id, since) });
    });
  }

  async archive(id: string, archived: boolean): Promise<Result<StudySummary, Finding>> {
    return await this.#db.transaction().execute(async (db) => {
      await db
        .updateTable('studies')
        .set({ archived: archived ? 1 : 0 })
        .where('id', '=', id)
        .execute();
      const row = await studyRow(db, id);
      return row === undefined ? missing(id) : ok(toSummary(row));
    });
  }

  async #head(db: Kysely<Tables>, row: StudyRow): Promise<Head> {
    const known = this.#heads.get(row.id);
    if (known !== undefined && known.rev === Number(row.rev)) return known;
    const head = await readHead(db, row.id, Number(row.rev));
    this.#heads.set(row.id, head);
    return head;
  }
}

function missing(id: string, rev?: number) {
  const what = rev === undefined ? `The study ${id}` : `Revision ${rev} of the study ${id}`;
  return fail(finding('store/not-found', {}, { what }));
}

async function studyRow(db: Kysely<Tables>, id: string): Promise<StudyRow | undefined> {
  return await db.selectFrom('studies').selectAll().where('id', '=', id).executeTakeFirst();
}
