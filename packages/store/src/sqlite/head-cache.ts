import type { Study } from '@evenhand/core/ground/study';

/** The newest state of a study, and how far it is from its last snapshot. */
export interface Head {
  readonly study: Study;
  readonly rev: number;
  readonly snapshotRev: number;
  /** Characters of the edits since the snapshot. */
  readonly editChars: number;
  readonly snapshotChars: number;
}

/** Keeps the heads of the studies used last, so that an edit need not read the document again. */
export class HeadCache {
  readonly #heads = new Map<string, Head>();
  readonly #size: number;

  constructor(size: number) {
    this.#size = size;
  }

  get(id: string): Head | undefined {
    const head = this.#heads.get(id);
    if (head !== undefined) this.set(id, head);
    return head;
  }

  set(id: string, head: Head): void {
    this.#heads.delete(id);
    this.#heads.set(id, head);
    const oldest = this.#heads.keys().next();
    if (this.#heads.size > this.#size && !oldest.done) this.#heads.delete(oldest.value);
  }

  drop(id: string): void {
    this.#heads.delete(id);
  }
}

const MOST_EDITS = 200;
const FEWEST_CHARS = 64_000;

/**
 * Is it time to write the whole document down? After 200 edits, so that loading replays no more than that; or when the
 * edits have grown to the size of the document, so that reading them costs no more than reading it.
 */
export function snapshotDue(head: Head): boolean {
  return (
    head.rev - head.snapshotRev >= MOST_EDITS || head.editChars > Math.max(FEWEST_CHARS, head.snapshotChars)
  );
}
