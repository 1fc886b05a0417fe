import type { KeptEdit } from '@evenhand/store';

export type HubEvent =
  | { readonly type: 'edit'; readonly data: KeptEdit }
  | { readonly type: 'windows'; readonly data: { readonly count: number } }
  | { readonly type: 'close' };

type Listener = (event: HubEvent) => void;

/** The windows that have a study open, and what is told to them. */
export class EventHub {
  readonly #studies = new Map<string, Set<Listener>>();

  join(study: string, listener: Listener): () => void {
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
    return this.#studies.get(study)?.size ?? 0;
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
    for (const listener of [...(this.#studies.get(study) ?? [])]) listener(event);
  }
}
