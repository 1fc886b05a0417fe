import { fail, ok, type Result } from '@evenhand/core/ground/base';
import {
  applyEdit,
  dropRedo,
  dropUndo,
  type Edit,
  emptyHistory,
  type History,
  perform,
  redo,
  type Step,
  undo,
} from '@evenhand/core/ground/edit';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { Study } from '@evenhand/core/ground/study';
import type { ApartEdit, Outbox } from './outbox.ts';
import type { Envelope, KeptEdit, ServerApi } from './server-api.ts';

export interface DocumentState {
  /** The study as this window shows it: what the server has, and the edits under way on top of it. */
  readonly study: Study;
  readonly history: History;
  /** Edits that the server has not acknowledged yet. */
  readonly waiting: number;
  readonly connection: 'here' | 'away';
  /** Edits that no longer held, each with its reason. */
  readonly apart: readonly ApartEdit[];
  /** Windows that have this study open, this one included. */
  readonly windows: number;
  /** The last edit that was refused at once, until the next one holds. */
  readonly refused: Finding | undefined;
}

/** What comes from the server unasked. */
export interface Feed {
  readonly onEdit: (edit: KeptEdit) => void;
  readonly onWindows: (count: number) => void;
  readonly onOpen: (rev: number) => void;
  readonly onAway: () => void;
}

export interface DocumentPorts {
  readonly api: ServerApi;
  readonly outbox: Outbox;
  readonly client: string;
  readonly newId: () => string;
  /** The present time as ISO 8601. */
  readonly now: () => string;
  /** Listens to the server's events; returns the way to stop. */
  readonly listen: (study: string, client: string, feed: Feed) => () => void;
  /** Calls back after a delay in milliseconds; returns the way to call it off. */
  readonly later: (delay: number, callback: () => void) => () => void;
}

const retryDelays = [500, 1000, 2000, 4000, 8000];
const mostAtOnce = 500;

/**
 * The study that a window edits. Edits are applied at once, wait in the outbox until the server has them, and are
 * rebased over what other windows did; those that no longer hold are set apart with a reason and never lost.
 */
export class StudyDocument {
  readonly id: string;
  readonly #ports: DocumentPorts;
  readonly #listeners = new Set<() => void>();
  #state: DocumentState;
  #base: Study;
  #rev: number;
  #pending: Envelope[];
  #writes: Promise<unknown> = Promise.resolve();
  #sending: Promise<void> | undefined;
  #attempt = 0;
  #cancelRetry: (() => void) | undefined;
  #stopListening: () => void = () => {};
  #disposed = false;

  private constructor(
    id: string,
    ports: DocumentPorts,
    loaded: { study: Study; rev: number },
    waiting: readonly Envelope[],
    apart: readonly ApartEdit[],
  ) {
    this.id = id;
    this.#ports = ports;
    this.#base = loaded.study;
    this.#rev = loaded.rev;
    this.#pending = [...waiting];
    this.#state = {
      study: loaded.study,
      history: emptyHistory,
      waiting: waiting.length,
      connection: 'here',
      apart,
      windows: 1,
      refused: undefined,
    };
  }

  static async open(id: string, ports: DocumentPorts): Promise<Result<StudyDocument, readonly Finding[]>> {
    const loaded = await ports.api.load(id);
    if (!loaded.ok)
      return fail(loaded.error.kind === 'away' ? [finding('server/away')] : loaded.error.findings);
    const [waiting, apart] = await Promise.all([ports.outbox.waiting(id), ports.outbox.apart(id)]);
    const document = new StudyDocument(id, ports, loaded.value, waiting, apart);
    document.#rebase();
    document.#stopListening = ports.listen(id, ports.client, {
      onEdit: (edit) => document.#ingest([edit]),
      onWindows: (windows) => document.#set({ windows }),
      onOpen: (rev) => document.#opened(rev),
      onAway: () => document.#set({ connection: 'away' }),
    });
    document.#sendSoon();
    return ok(document);
  }

  readonly state = (): DocumentState => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Applies an edit at once and sends it. False, with the reason in `refused`, when it does not hold. */
  dispatch(edit: Edit): boolean {
    return this.#take(perform(this.#state.study, this.#state.history, edit));
  }

  undo(): boolean {
    const result = undo(this.#state.study, this.#state.history);
    if (result === undefined) return false;
    if (!result.ok) this.#set({ history: dropUndo(this.#state.history) });
    return this.#take(result);
  }

  redo(): boolean {
    const result = redo(this.#state.study, this.#state.history);
    if (result === undefined) return false;
    if (!result.ok) this.#set({ history: dropRedo(this.#state.history) });
    return this.#take(result);
  }

  #take(result: Result<Step, Finding>): boolean {
    if (!result.ok) {
      this.#set({ refused: result.error });
      return false;
    }
    const envelope: Envelope = { id: this.#ports.newId(), edit: result.value.edit, at: this.#ports.now() };
    this.#pending.push(envelope);
    this.#write(() => this.#ports.outbox.put(this.id, envelope));
    this.#set({
      study: result.value.study,
      history: result.value.history,
      waiting: this.#pending.length,
      refused: undefined,
    });
    this.#sendSoon();
    return true;
  }

  /** Tries once more to apply an edit that was set apart. */
  retryApart(id: string): boolean {
    const edit = this.#state.apart.find((item) => item.id === id);
    if (edit === undefined || !this.dispatch(edit.edit)) return false;
    this.dropApart(id);
    return true;
  }

  dropApart(id: string): void {
    this.#set({ apart: this.#state.apart.filter((item) => item.id !== id) });
    this.#write(() => this.#ports.outbox.dropApart(id));
  }

  dismissRefused(): void {
    this.#set({ refused: undefined });
  }

  /** Resolves when every edit so far is with the server or safely in the outbox. */
  async settled(): Promise<void> {
    await this.#writes;
  }

  /** Resolves when the server has every edit; false when it is away. */
  async flushed(): Promise<boolean> {
    await this.#writes;
    await this.#send();
    return this.#pending.length === 0;
  }

  dispose(): void {
    this.#disposed = true;
    this.#cancelRetry?.();
    this.#stopListening();
    this.#listeners.clear();
  }

  #set(change: Partial<DocumentState>): void {
    if (this.#disposed) return;
    const next = { ...this.#state, ...change };
    const same = (Object.keys(change) as (keyof DocumentState)[]).every((key) =>
      Object.is(this.#state[key], next[key]),
    );
    if (same) return;
    this.#state = next;
    for (const listener of [...this.#listeners]) listener();
  }

  #write(job: () => Promise<unknown>): void {
    this.#writes = this.#writes.then(job, job).catch(() => undefined);
  }

  #sendSoon(): void {
    if (this.#pending.length > 0) void this.#send();
  }

  /** Sends what waits; a call during a sending waits for that one. */
  #send(): Promise<void> {
    if (this.#sending === undefined && !this.#disposed) {
      this.#cancelRetry?.();
      this.#sending = this.#sendAll().finally(() => {
        this.#sending = undefined;
      });
    }
    return this.#sending ?? Promise.resolve();
  }

  async #sendAll(): Promise<void> {
    let reloads = 0;
    while (this.#pending.length > 0 && !this.#disposed) {
      const batch = this.#pending.slice(0, mostAtOnce);
      const answer = await this.#ports.api.send(this.id, this.#ports.client, this.#rev, batch);
      if (!answer.ok) {
        if (answer.error.kind === 'away') return this.#waitForServer();
        // The store went back behind what this window has seen (a folder restored from a copy): begin from what it has.
        if (answer.error.status === 409 && reloads < 1) {
          reloads += 1;
          await this.#reload();
          continue;
        }
        // The server cannot read what was sent: set it apart instead of sending it for ever.
        const reason =
          answer.error.findings[0] ?? finding('server/refused', {}, { reason: 'no reason was given' });
        for (const envelope of batch) this.#setApart(envelope, reason);
        this.#rebase();
        continue;
      }
      this.#attempt = 0;
      const refused = answer.value.results.filter((result) => result.status === 'refused');
      for (const result of refused) {
        const envelope = batch.find((item) => item.id === result.id);
        if (envelope !== undefined) this.#setApart(envelope, result.finding);
      }
      this.#set({ connection: 'here' });
      if (!(await this.#catchUp(answer.value.rev))) return this.#waitForServer();
      if (refused.length > 0) this.#rebase();
    }
  }

  #waitForServer(): void {
    this.#set({ connection: 'away' });
    const delay = retryDelays[Math.min(this.#attempt, retryDelays.length - 1)] ?? 8000;
    this.#attempt += 1;
    this.#cancelRetry = this.#ports.later(delay, () => void this.#send());
  }

  #opened(rev: number): void {
    this.#set({ connection: 'here' });
    this.#attempt = 0;
    void this.#catchUp(rev).then(() => this.#sendSoon());
  }

  /** Fetches what the server has kept since our base. */
  async #catchUp(rev: number): Promise<boolean> {
    while (this.#rev < rev && !this.#disposed) {
      const answer = await this.#ports.api.since(this.id, this.#rev);
      if (!answer.ok) return false;
      if (answer.value.edits.length === 0) return true;
      this.#ingest(answer.value.edits);
    }
    return true;
  }

  /** Takes kept edits into the base, in the order of their revisions, and rebases what waits over them. */
  #ingest(edits: readonly KeptEdit[]): void {
    let onlyOurs = true;
    const done: string[] = [];
    for (const kept of edits) {
      if (kept.rev <= this.#rev) continue;
      if (kept.rev > this.#rev + 1) {
        void this.#catchUp(kept.rev);
        break;
      }
      const applied = applyEdit(this.#base, kept.edit);
      if (!applied.ok) {
        void this.#reload();
        break;
      }
      this.#base = applied.value.study;
      this.#rev = kept.rev;
      if (this.#pending[0]?.id === kept.id) this.#pending.shift();
      else {
        onlyOurs = false;
        this.#pending = this.#pending.filter((envelope) => envelope.id !== kept.id);
      }
      done.push(kept.id);
    }
    if (done.length === 0) return;
    this.#write(() => this.#ports.outbox.remove(done));
    if (onlyOurs) this.#set({ waiting: this.#pending.length });
    else this.#rebase();
  }

  async #reload(): Promise<void> {
    const loaded = await this.#ports.api.load(this.id);
    if (!loaded.ok) return;
    this.#base = loaded.value.study;
    this.#rev = loaded.value.rev;
    this.#rebase();
  }

  #rebase(): void {
    let study = this.#base;
    for (const envelope of [...this.#pending]) {
      const applied = applyEdit(study, envelope.edit);
      if (applied.ok) study = applied.value.study;
      else this.#setApart(envelope, applied.error);
    }
    this.#set({ study, waiting: this.#pending.length });
  }

  #setApart(envelope: Envelope, reason: Finding): void {
    this.#pending = this.#pending.filter((item) => item.id !== envelope.id);
    const edit: ApartEdit = { ...envelope, finding: reason };
    this.#set({
      apart: [...this.#state.apart.filter((item) => item.id !== edit.id), edit],
      waiting: this.#pending.length,
    });
    this.#write(() => this.#ports.outbox.setApart(this.id, edit));
  }
}
