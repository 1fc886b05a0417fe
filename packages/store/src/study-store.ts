import type { Result } from '@evenhand/core/ground/base';
import type { Edit } from '@evenhand/core/ground/edit';
import type { Finding } from '@evenhand/core/ground/findings';
import type { Study } from '@evenhand/core/ground/study';

/** A study as a list shows it, without its contents. Moments are ISO 8601 in UTC. */
export interface StudySummary {
  readonly id: string;
  readonly title: string;
  /** Number of edits applied since it was created; 0 for a new study. */
  readonly rev: number;
  readonly createdAt: string;
  readonly changedAt: string;
  readonly demo: boolean;
  readonly archived: boolean;
  readonly films: number;
  readonly methods: number;
}

export interface LoadedStudy {
  readonly study: Study;
  readonly rev: number;
}

/** An edit as a window sends it. Its id is made by the window and answers for it for ever. */
export interface SentEdit {
  readonly id: string;
  readonly edit: Edit;
  /** When the person did it: ISO 8601 in UTC. */
  readonly at: string;
  readonly by?: string;
  readonly why?: string;
}

export interface EditBatch {
  /** The window that sends. */
  readonly client: string;
  /** The revision that the window had seen when it sent. */
  readonly baseRev: number;
  readonly edits: readonly SentEdit[];
}

export type EditOutcome =
  | { readonly id: string; readonly status: 'applied'; readonly rev: number }
  | { readonly id: string; readonly status: 'refused'; readonly finding: Finding };

/** An edit as it stands in the history. */
export interface KeptEdit extends SentEdit {
  readonly rev: number;
  readonly client: string;
}

export interface BatchOutcome {
  /** The head after the batch. */
  readonly rev: number;
  /** One answer for each edit, in the order they came. */
  readonly results: readonly EditOutcome[];
  /** What this batch added to the history; an edit sent a second time is not in it. */
  readonly added: readonly KeptEdit[];
}

/**
 * Keeps studies as a first document and the edits that followed. Nothing is overwritten: every revision can be loaded.
 * A promise that resolves means that what it did is on the disk. Faults of the disk reject; what a person can get wrong
 * comes back as a finding.
 */
export interface StudyStore {
  /** Newest change first; archived ones among them. */
  list(): Promise<readonly StudySummary[]>;
  /** Finding `store/taken` when there is a study of that id already. */
  create(study: Study): Promise<Result<{ readonly id: string; readonly rev: number }, Finding>>;
  /** The head, or the study as it was at a revision. Finding `store/not-found`. */
  load(id: string, rev?: number): Promise<Result<LoadedStudy, Finding>>;
  /**
   * Applies each edit to the head, one after another, with core's `applyEdit`. One that does not hold is refused and
   * kept apart with its finding; the others go on. An id that came before is answered as it was the first time.
   * Findings `store/not-found`, and `store/behind` when the window has seen more than the store holds.
   */
  edit(id: string, batch: EditBatch): Promise<Result<BatchOutcome, Finding>>;
  /** The edits after a revision, oldest first. */
  editsSince(
    id: string,
    since: number,
  ): Promise<Result<{ readonly rev: number; readonly edits: readonly KeptEdit[] }, Finding>>;
  archive(id: string, archived: boolean): Promise<Result<StudySummary, Finding>>;
}

/** The clock of a store or a server: milliseconds since 1970 in UTC. */
export type Clock = () => number;

export function isoTime(clock: Clock): string {
  return new Date(clock()).toISOString();
}
