import type { Finding } from '@evenhand/core/ground/findings';
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Envelope } from './server-api.ts';

/** An edit that no longer held, kept with the reason so that nothing is lost. */
export interface ApartEdit extends Envelope {
  readonly finding: Finding;
}

/** Where edits wait until the server has them. */
export interface Outbox {
  /** Edits of a study that the server has not acknowledged, oldest first. */
  readonly waiting: (study: string) => Promise<readonly Envelope[]>;
  readonly put: (study: string, envelope: Envelope) => Promise<void>;
  readonly remove: (ids: readonly string[]) => Promise<void>;
  readonly apart: (study: string) => Promise<readonly ApartEdit[]>;
  readonly setApart: (study: string, edit: ApartEdit) => Promise<void>;
  readonly dropApart: (id: string) => Promise<void>;
}

interface Kept {
  readonly id: string;
  readonly study: string;
  readonly order: number;
}

interface Shape extends DBSchema {
  waiting: { key: string; value: Kept & { readonly envelope: Envelope }; indexes: { study: string } };
  apart: { key: string; value: Kept & { readonly edit: ApartEdit }; indexes: { study: string } };
}

/** An outbox in the browser's own database, so that waiting edits outlive the page. */
export function browserOutbox(name = 'evenhand-outbox'): Outbox {
  let order = Date.now() * 1000;
  const database: Promise<IDBPDatabase<Shape>> = openDB<Shape>(name, 1, {
    upgrade(db) {
      db.createObjectStore('waiting', { keyPath: 'id' }).createIndex('study', 'study');
      db.createObjectStore('apart', { keyPath: 'id' }).createIndex('study', 'study');
    },
  });
  const next = () => {
    order = Math.max(order + 1, Date.now() * 1000);
    return order;
  };
  return {
    waiting: async (study) => {
      const rows = await (await database).getAllFromIndex('waiting', 'study', study);
      return rows.sort((a, b) => a.order - b.order).map((row) => row.envelope);
    },
    put: async (study, envelope) => {
      await (await database).put('waiting', { id: envelope.id, study, order: next(), envelope });
    },
    remove: async (ids) => {
      const transaction = (await database).transaction('waiting', 'readwrite');
      await Promise.all(ids.map((id) => transaction.store.delete(id)));
      await transaction.done;
    },
    apart: async (study) => {
      const rows = await (await database).getAllFromIndex('apart', 'study', study);
      return rows.sort((a, b) => a.order - b.order).map((row) => row.edit);
    },
    setApart: async (study, edit) => {
      const transaction = (await database).transaction(['waiting', 'apart'], 'readwrite');
      await transaction.objectStore('apart').put({ id: edit.id, study, order: next(), edit });
      await transaction.objectStore('waiting').delete(edit.id);
      await transaction.done;
    },
    dropApart: async (id) => {
      await (await database).delete('apart', id);
    },
  };
}

/** An outbox that lives as long as the page, for browsers that allow no database and for tests. */
export function memoryOutbox(): Outbox {
  const waiting = new Map<string, { study: string; envelope: Envelope }>();
  const apart = new Map<string, { study: string; edit: ApartEdit }>();
  return {
    waiting: async (study) =>
      [...waiting.values()].filter((row) => row.study === study).map((row) => row.envelope),
    put: async (study, envelope) => {
      waiting.set(envelope.id, { study, envelope });
    },
    remove: async (ids) => {
      for (const id of ids) waiting.delete(id);
    },
    apart: async (study) => [...apart.values()].filter((row) => row.study === study).map((row) => row.edit),
    setApart: async (study, edit) => {
      apart.set(edit.id, { study, edit });
      waiting.delete(edit.id);
    },
    dropApart: async (id) => {
      apart.delete(id);
    },
  };
}
