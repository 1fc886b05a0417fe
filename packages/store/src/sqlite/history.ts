import { applyAll } from '@evenhand/core/ground/edit';
import type { Kysely } from 'kysely';
import type { AppliedEdit, RefusedEdit } from '../apply-batch.ts';
import type { EditBatch, EditOutcome, KeptEdit } from '../study-store.ts';
import type { Head } from './head-cache.ts';
import { readDocument, toKeptEdit } from './rows.ts';
import type { Tables } from './tables.ts';

/** Rows sent in one statement: below the limit on parameters of every database. */
const ROWS_AT_ONCE = 100;

export function chunks<T>(items: readonly T[], size = ROWS_AT_ONCE): T[][] {
  const made: T[][] = [];
  for (let at = 0; at < items.length; at += size) made.push(items.slice(at, at + size));
  return made;
}

/** The study at a revision: the last snapshot before it and the edits from there. */
export async function readHead(db: Kysely<Tables>, id: string, rev: number): Promise<Head> {
  const snapshot = await db
    .selectFrom('snapshots')
    .select(['rev', 'document'])
    .where('study_id', '=', id)
    .where('rev', '<=', rev)
    .orderBy('rev', 'desc')
    .limit(1)
    .executeTakeFirstOrThrow();
  const from = Number(snapshot.rev);
  const rows = await db
    .selectFrom('revisions')
    .select(['edit'])
    .where('study_id', '=', id)
    .where('rev', '>', from)
    .where('rev', '<=', rev)
    .orderBy('rev')
    .execute();
  const replayed = applyAll(
    readDocument(snapshot.document),
    rows.map((row) => JSON.parse(row.edit)),
  );
  if (!replayed.ok) throw new Error(`the history of ${id} does not replay: ${replayed.error.message}`);
  return {
    study: replayed.value,
    rev,
    snapshotRev: from,
    editChars: rows.reduce((sum, row) => sum + row.edit.length, 0),
    snapshotChars: snapshot.document.length,
  };
}

export async function readEdits(db: Kysely<Tables>, id: string, since: number): Promise<KeptEdit[]> {
  const rows = await db
    .selectFrom('revisions')
    .select(['rev', 'edit_id', 'edit', 'client', 'edited_by', 'edited_at', 'why'])
    .where('study_id', '=', id)
    .where('rev', '>', since)
    .orderBy('rev')
    .execute();
  return rows.map(toKeptEdit);
}

/** What was answered before to any of these edit ids. */
export async function readAnswers(
  db: Kysely<Tables>,
  id: string,
  editIds: readonly string[],
): Promise<Map<string, EditOutcome>> {
  const known = new Map<string, EditOutcome>();
  for (const part of chunks([...new Set(editIds)])) {
    const applied = await db
      .selectFrom('revisions')
      .select(['edit_id', 'rev'])
      .where('study_id', '=', id)
      .where('edit_id', 'in', part)
      .execute();
    for (const row of applied)
      known.set(row.edit_id, { id: row.edit_id, status: 'applied', rev: Number(row.rev) });
    const refused = await db
      .selectFrom('refusals')
      .select(['edit_id', 'finding'])
      .where('study_id', '=', id)
      .where('edit_id', 'in', part)
      .execute();
    for (const row of refused)
      known.set(row.edit_id, { id: row.edit_id, status: 'refused', finding: JSON.parse(row.finding) });
  }
  return known;
}

export async function writeApplied(
  db: Kysely<Tables>,
  id: string,
  applied: readonly AppliedEdit[],
  savedAt: string,
): Promise<number> {
  let chars = 0;
  for (const part of chunks(applied)) {
    const rows = part.map((item) => ({
      study_id: id,
      rev: item.rev,
      edit_id: item.id,
      edit: JSON.stringify(item.edit),
      inverse: JSON.stringify(item.inverse),
      client: item.client,
      edited_by: item.by ?? null,
      edited_at: item.at,
      why: item.why ?? null,
      saved_at: savedAt,
    }));
    chars += rows.reduce((sum, row) => sum + row.edit.length, 0);
    await db.insertInto('revisions').values(rows).execute();
  }
  return chars;
}

export async function writeRefused(
  db: Kysely<Tables>,
  id: string,
  batch: EditBatch,
  refused: readonly RefusedEdit[],
  savedAt: string,
): Promise<void> {
  for (const part of chunks(refused)) {
    const rows = part.map((item) => ({
      study_id: id,
      edit_id: item.id,
      edit: JSON.stringify(item.edit),
      finding: JSON.stringify(item.finding),
      base_rev: batch.baseRev,
      client: batch.client,
      edited_by: item.by ?? null,
      edited_at: item.at,
      why: item.why ?? null,
      saved_at: savedAt,
    }));
    await db.insertInto('refusals').values(rows).execute();
  }
}
