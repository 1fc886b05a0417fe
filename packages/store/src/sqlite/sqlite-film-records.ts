import type { Kysely } from 'kysely';
import type { FilmRecord, FilmRecords, UploadRecord } from '../films/film-records.ts';
import type { FilmRow, Tables } from './tables.ts';

export class SqliteFilmRecords implements FilmRecords {
  readonly #db: Kysely<Tables>;

  constructor(db: Kysely<Tables>) {
    this.#db = db;
  }

  async films(): Promise<readonly FilmRecord[]> {
    const rows = await this.#db
      .selectFrom('films')
      .selectAll()
      .orderBy('added_at')
      .orderBy('sha256')
      .execute();
    return rows.map(toFilm);
  }

  async film(sha256: string): Promise<FilmRecord | undefined> {
    const row = await this.#db
      .selectFrom('films')
      .selectAll()
      .where('sha256', '=', sha256)
      .executeTakeFirst();
    return row === undefined ? undefined : toFilm(row);
  }

  async addFilm(film: FilmRecord, upload?: string): Promise<void> {
    const row = {
      sha256: film.sha256,
      bytes: film.bytes,
      name: film.name,
      media_type: film.mediaType,
      added_at: film.addedAt,
    };
    await this.#db.transaction().execute(async (db) => {
      await db
        .insertInto('films')
        .values(row)
        .onConflict((conflict) => conflict.column('sha256').doNothing())
        .execute();
      if (upload === undefined) return;
      const taken = { id: upload, sha256: film.sha256, at: film.addedAt };
      await db
        .insertInto('uploads')
        .values(taken)
        .onConflict((conflict) => conflict.column('id').doNothing())
        .execute();
    });
  }

  async removeFilm(sha256: string): Promise<void> {
    await this.#db.transaction().execute(async (db) => {
      await db.deleteFrom('uploads').where('sha256', '=', sha256).execute();
      await db.deleteFrom('films').where('sha256', '=', sha256).execute();
    });
  }

  async uploads(): Promise<readonly UploadRecord[]> {
    return await this.#db.selectFrom('uploads').selectAll().orderBy('id').execute();
  }

  async forgetUploads(before: string): Promise<void> {
    await this.#db.deleteFrom('uploads').where('at', '<', before).execute();
  }
}

function toFilm(row: FilmRow): FilmRecord {
  return {
    sha256: row.sha256,
    bytes: Number(row.bytes),
    name: row.name,
    mediaType: row.media_type,
    addedAt: row.added_at,
  };
}
