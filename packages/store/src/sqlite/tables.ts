/** Rows as the database holds them. Documents, edits and findings are JSON kept as text; moments are ISO 8601 in UTC. */
export interface Tables {
  readonly studies: StudyRow;
  readonly revisions: RevisionRow;
  readonly refusals: RefusalRow;
  readonly snapshots: SnapshotRow;
  readonly films: FilmRow;
  readonly uploads: UploadRow;
}

/** One row a study: what a list shows of its head. */
export interface StudyRow {
  readonly id: string;
  readonly title: string;
  readonly rev: number;
  readonly created_at: string;
  readonly changed_at: string;
  readonly demo: number;
  readonly archived: number;
  readonly films: number;
  readonly methods: number;
}

/** One row an edit; only ever inserted. */
export interface RevisionRow {
  readonly study_id: string;
  readonly rev: number;
  readonly edit_id: string;
  readonly edit: string;
  readonly inverse: string;
  readonly client: string;
  readonly edited_by: string | null;
  readonly edited_at: string;
  readonly why: string | null;
  readonly saved_at: string;
}

/** An edit that did not hold when it came, kept with the reason. */
export interface RefusalRow {
  readonly study_id: string;
  readonly edit_id: string;
  readonly edit: string;
  readonly finding: string;
  readonly base_rev: number;
  readonly client: string;
  readonly edited_by: string | null;
  readonly edited_at: string;
  readonly why: string | null;
  readonly saved_at: string;
}

/** The whole document at some revisions, so that loading replays few edits. Revision 0 is the document as created. */
export interface SnapshotRow {
  readonly study_id: string;
  readonly rev: number;
  readonly document: string;
}

export interface FilmRow {
  readonly sha256: string;
  readonly bytes: number;
  readonly name: string;
  readonly media_type: string;
  readonly added_at: string;
}

export interface UploadRow {
  readonly id: string;
  readonly sha256: string;
  readonly at: string;
}
