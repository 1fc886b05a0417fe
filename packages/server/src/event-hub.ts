import type { KeptEdit } from '@evenhand/store';

export type HubEvent =
  | { readonly type: 'edit'; readonly data: KeptEdit }
  | { readonly type: 'windows'; readonly data: { readonly count: number } }
  | { readonly type: 'close' };

interface Listener {
  readonly client: string;
  readonly hear: (event: HubEvent) => void;
}

/** The windows that have a study open, and what is told to them. */
export class EventHub {
  readonly #studies = new Map<string, Set<Listener>>();

  /**
   * @param client the window; one that joins again before its old connection was missed is counted once
   * @returns leaves; may be called again
   */
  join(study: string, client: string, hear: Listener['hear']): () => void {
    const listener = { client, hear };
    const set = this.#studies.get(study) ?? new Set();
    this.#studies.set(study, set.add(listener));
    this.#count(study);
    return () => {
      if (!set.delete(listener)) return;
      if (set.size === 0) this.#studies.delete(study);
      else this.#count(study);
    };
  }

  windows(study: string): number {
    return new Set([...(this.#studies.get(study) ?? [])].map((listener) => listener.client)).size;
  }

  tell(study: string, edits: readonly KeptEdit[]): void {
    for (const data of edits) this.#send(study, { type: 'edit', data });
  }

  dispose(): void {
    for (const study of [...this.#studies.keys()]) this.#send(study, { type: 'close' });
    this.#studies.clear();
  }

  #count(study: string): void {
    this.#send(study, { type: 'windows', data: { count: this.windows(study) } });
  }

  #send(study: string, event: HubEvent): void {
    for (const listener of [...(this.#studies.get(study) ?? [])]) listener.hear(event);
  }
}
