import { createHash, randomBytes } from 'node:crypto';
import type { Edit } from '@evenhand/core/ground/edit';

/** What a load was told by the server: all of it must be there after a kill. */
export interface Acknowledged {
  /** Revision by edit id. */
  readonly edits: Map<string, number>;
  /** Hashes of films. */
  readonly films: Set<string>;
}

/** Ends quietly when the server is gone, as it will be. */
async function whileItLives(work: () => Promise<void>): Promise<void> {
  try {
    for (;;) await work();
  } catch (error) {
    if (!isBroken(error)) throw error;
  }
}

/** What fetch says of a connection that cannot be made, or that ends in the middle of an answer. */
function isBroken(error: unknown): boolean {
  return error instanceof TypeError && /^(fetch failed|terminated)$/.test(error.message);
}

/** One window that edits without pause. What was sent and not answered is sent again first, with the same ids. */
export class EditingWindow {
  readonly #client: string;
  readonly #acknowledged: Acknowledged;
  readonly #progress: () => void;
  readonly sent = new Set<string>();
  #waiting: { id: string; edit: Edit; at: string }[] = [];
  #next = 0;

  constructor(client: string, acknowledged: Acknowledged, progress: () => void) {
    this.#client = client;
    this.#acknowledged = acknowledged;
    this.#progress = progress;
  }

  async run(address: string): Promise<void> {
    await whileItLives(async () => {
      if (this.#waiting.length === 0) this.#waiting = [this.#mark(), this.#mark()];
      const response = await fetch(`${address}/api/studies/study-1/edits`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ client: this.#client, baseRev: 0, edits: this.#waiting }),
      });
      const answer = (await response.json()) as { results: { id: string; status: string; rev: number }[] };
      for (const { id, status, rev } of answer.results) {
        if (status !== 'applied') throw new Error(`the edit ${id} was ${status}`);
        this.#acknowledged.edits.set(id, rev);
      }
      this.#waiting = [];
      this.#progress();
    });
  }

  /** Marks that never meet those of another window: each has its own residue. */
  #mark() {
    this.#next += 1;
    const id = `${this.#client}-${this.#next}`;
    const start = this.#next * 10 + Number(this.#client.slice(1));
    this.sent.add(id);
    const motion = { id, start, kind: 'G' as const, said: 'marked' as const };
    const edit: Edit = { type: 'motion.mark', method: 'm', hand: 'right', motion };
    return { id, edit, at: '2026-03-01T10:00:00.000Z' };
  }
}

const tus = { 'tus-resumable': '1.0.0' };

/** A window that sends one film after another, and takes a broken one up again where the server says it stands. */
export class SendingWindow {
  readonly #acknowledged: Acknowledged;
  readonly #progress: () => void;
  readonly begun = new Set<string>();
  #bytes: Buffer<ArrayBuffer> | undefined;
  #where: string | undefined;
  resumed = 0;

  constructor(acknowledged: Acknowledged, progress: () => void) {
    this.#acknowledged = acknowledged;
    this.#progress = progress;
  }

  async run(address: string): Promise<void> {
    await whileItLives(async () => {
      this.#bytes ??= randomBytes(100_000 + Math.floor(Math.random() * 1_500_000));
      const sha256 = createHash('sha256').update(this.#bytes).digest('hex');
      this.begun.add(sha256);
      const offset = await this.#begin(address, this.#bytes.length);
      if (offset < this.#bytes.length) await this.#send(address, this.#bytes, offset);
      const film = await fetch(`${address}${this.#where}/film`);
      const told = (await film.json()) as { sha256?: string };
      if (told.sha256 === undefined) return;
      if (told.sha256 !== sha256) throw new Error(`the film became ${told.sha256} and not ${sha256}`);
      this.#acknowledged.films.add(sha256);
      this.#bytes = undefined;
      this.#where = undefined;
      this.#progress();
    });
  }

  async #begin(address: string, size: number): Promise<number> {
    if (this.#where !== undefined) {
      const stands = await fetch(`${address}${this.#where}`, { method: 'HEAD', headers: tus });
      if (stands.status === 200) {
        const offset = Number(stands.headers.get('upload-offset'));
        if (offset > 0) this.resumed += 1;
        return offset;
      }
    }
    const headers = { ...tus, 'upload-length': String(size) };
    const made = await fetch(`${address}/api/uploads`, { method: 'POST', headers });
    this.#where = made.headers.get('location') ?? undefined;
    return 0;
  }

  /** In pieces, so that a kill falls between them as well as into them. */
  async #send(address: string, bytes: Buffer<ArrayBuffer>, from: number): Promise<void> {
    for (let offset = from; offset < bytes.length; ) {
      const part = bytes.subarray(offset, offset + 400_000);
      const headers = {
        ...tus,
        'upload-offset': String(offset),
        'content-type': 'application/offset+octet-stream',
      };
      const done = await fetch(`${address}${this.#where}`, { method: 'PATCH', headers, body: part });
      if (done.status !== 204) throw new Error(`a part of a film was answered with ${done.status}`);
      offset = Number(done.headers.get('upload-offset'));
      this.#progress();
      const hash = done.headers.get('film-sha256');
      if (hash !== null) this.#acknowledged.films.add(hash);
    }
  }
}
