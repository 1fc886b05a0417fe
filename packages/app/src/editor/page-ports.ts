import { browserOutbox, memoryOutbox, type Outbox } from './outbox.ts';
import { type KeptEdit, serverApi } from './server-api.ts';
import type { DocumentPorts, Feed } from './study-document.ts';

/** A short id that no other window will make: 80 random bits, 16 letters and digits. */
export function randomId(): string {
  const signs = 'abcdefghijklmnopqrstuvwxyz012345';
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => signs[byte & 31]).join('');
}

export const api = serverApi((path, init) => fetch(path, init));

let shared: Outbox | undefined;

function outbox(): Outbox {
  if (shared === undefined) shared = 'indexedDB' in globalThis ? browserOutbox() : memoryOutbox();
  return shared;
}

function listen(study: string, client: string, feed: Feed): () => void {
  const source = new EventSource(`/api/studies/${encodeURIComponent(study)}/events?client=${client}`);
  const read = <T>(event: Event) => JSON.parse((event as MessageEvent<string>).data) as T;
  source.addEventListener('hello', (event) => {
    const hello = read<{ rev: number; windows: number }>(event);
    feed.onWindows(hello.windows);
    feed.onOpen(hello.rev);
  });
  source.addEventListener('edit', (event) => feed.onEdit(read<KeptEdit>(event)));
  source.addEventListener('windows', (event) => feed.onWindows(read<{ count: number }>(event).count));
  source.addEventListener('error', () => feed.onAway());
  return () => source.close();
}

/** What a document needs, taken from the page it runs in. */
export function pagePorts(): DocumentPorts {
  return {
    api,
    outbox: outbox(),
    client: randomId(),
    newId: randomId,
    now: () => new Date().toISOString(),
    listen,
    later: (delay, callback) => {
      const timer = setTimeout(callback, delay);
      return () => clearTimeout(timer);
    },
  };
}
