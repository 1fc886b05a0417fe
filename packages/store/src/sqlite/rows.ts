import type { Edit } from '@evenhand/core/ground/edit';
import { formatVersion, parseStudy, type Study } from '@evenhand/core/ground/study';
import type { KeptEdit, StudySummary } from '../study-store.ts';
import type { RevisionRow, StudyRow } from './tables.ts';

export function toSummary(row: StudyRow): StudySummary {
  return {
    id: row.id,
    title: row.title,
    rev: Number(row.rev),
    createdAt: row.created_at,
    changedAt: row.changed_at,
    demo: Number(row.demo) === 1,
    archived: Number(row.archived) === 1,
    films: Number(row.films),
    methods: Number(row.methods),
  };
}

/** The columns of a study's row that follow from its document. */
export function documentColumns(study: Study) {
  return {
    title: study.title,
    demo: study.demo === true ? 1 : 0,
    films: study.films.length,
    methods: study.methods.length,
  };
}

type KeptColumns = Omit<RevisionRow, 'study_id' | 'inverse' | 'saved_at'>;

export function toKeptEdit(row: KeptColumns): KeptEdit {
  return {
    rev: Number(row.rev),
    id: row.edit_id,
    edit: JSON.parse(row.edit) as Edit,
    client: row.client,
    at: row.edited_at,
    ...(row.edited_by === null ? {} : { by: row.edited_by }),
    ...(row.why === null ? {} : { why: row.why }),
  };
}

/**
 * Reads a document that this store wrote. It was checked when it came in, so one of the present format is taken as it
 * is; an older one goes through the migrations and is checked again.
 * @throws when the document cannot be brought to the present format
 */
export function readDocument(text: string): Study {
  const value = JSON.parse(text) as Study;
  if (value.formatVersion === formatVersion) return value;
  const read = parseStudy(text);
  if (!read.ok)
    throw new Error(`a stored study cannot be read: ${read.error.map((item) => item.message).join(' ')}`);
  return read.value;
}
