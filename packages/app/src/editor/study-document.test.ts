import { applyEdit, type Edit } from '@evenhand/core/ground/edit';
import { finding } from '@evenhand/core/ground/findings';
import { emptyStudy, type Study } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { memoryOutbox, type Outbox } from './outbox.ts';
import type { Envelope, KeptEdit, ServerApi } from './server-api.ts';
import { type DocumentPorts, type Feed, StudyDocument } from './study-document.ts';

/** A server in memory that follows the rules of the real one, and can be switched away. */
class FakeServer {
  away = false;
  study: Study;
  readonly kept: KeptEdit[] = [];
  readonly feeds = new Map<string, Feed>();
  readonly #answers = new Map<string, number>();

  constructor(study: Study) {
    this.study = study;
  }

  /** As when the data folder is brought back from an older copy. */
  restore(study: Study): void {
    this.study = study;
    this.kept.length = 0;
  }

  api(): ServerApi {
    const refuse = { ok: false as const, error: { kind: 'away' as const } };
    return {
      studies: async () => ({ ok: true, value: [] }),
      create: async () => refuse,
      archive: async () => refuse,
      pdf: async () => refuse,
      load: async () =>
        this.away ? refuse : { ok: true, value: { study: this.study, rev: this.kept.length } },
      since: async (_id, rev) =>
        this.away ? refuse : { ok: true, value: { rev: this.kept.length, edits: this.kept.slice(rev) } },
      send: async (_id, client, base, edits) => {
        if (this.away) return refuse;
        if (base > this.kept.length) {
          const findings = [finding('store/behind', {}, {})];
          return { ok: false, error: { kind: 'refused', status: 409, findings } };
        }
        const results = edits.map((envelope) => this.#take(client, envelope));
        return { ok: true, value: { rev: this.kept.length, results } };
      },
    };
  }

  #take(client: string, envelope: Envelope) {
    const known = this.#answers.get(envelope.id);
    if (known !== undefined) return { id: envelope.id, status: 'applied' as const, rev: known };
    const applied = applyEdit(this.study, envelope.edit);
    if (!applied.ok) return { id: envelope.id, status: 'refused' as const, finding: applied.error };
    this.study = applied.value.study;
    const kept: KeptEdit = { ...envelope, rev: this.kept.length + 1, client };
    this.kept.push(kept);
    this.#answers.set(envelope.id, kept.rev);
    for (const feed of this.feeds.values()) feed.onEdit(kept);
    return { id: envelope.id, status: 'applied' as const, rev: kept.rev };
  }
}

function ports(server: FakeServer, client: string, outbox: Outbox = memoryOutbox()) {
  let count = 0;
  const timers: (() => void)[] = [];
  const made: DocumentPorts = {
    api: server.api(),
    outbox,
    client,
    newId: () => {
      count += 1;
      return `${client}-${count}`;
    },
    now: () => '2026-01-01T00:00:00.000Z',
    listen: (_study, name, feed) => {
      server.feeds.set(name, feed);
      return () => server.feeds.delete(name);
    },
    later: (_delay, callback) => {
      timers.push(callback);
      return () => timers.splice(timers.indexOf(callback), 1);
    },
  };
  return { made, timers };
}

async function open(made: DocumentPorts): Promise<StudyDocument> {
  const opened = await StudyDocument.open('s', made);
  if (!opened.ok) throw new Error('the study should open');
  return opened.value;
}

const place = (id: string, name = id): Edit => ({ type: 'place.add', place: { id, name } });
const rename = (to: string, was: string): Edit => ({
  type: 'study.change',
  to: { title: to },
  was: { title: was },
});

describe('StudyDocument', () => {
  it('shows an edit at once and sends it', async () => {
    const server = new FakeServer(emptyStudy('s', 'hose'));
    const document = await open(ports(server, 'a').made);
    expect(document.dispatch(place('bin'))).toBe(true);
    expect(document.state().study.places).toEqual([{ id: 'bin', name: 'bin' }]);
    expect(await document.flushed()).toBe(true);
    expect(server.study.places).toEqual([{ id: 'bin', name: 'bin' }]);
    expect(document.state().waiting).toBe(0);
  });

  it('keeps edits while the server is away and sends them when it is back', async () => {
    const server = new FakeServer(emptyStudy('s', 'hose'));
    const { made, timers } = ports(server, 'a');
    const document = await open(made);
    server.away = true;
    document.dispatch(place('one'));
    document.dispatch(place('two'));
    expect(await document.flushed()).toBe(false);
    expect(document.state()).toMatchObject({ waiting: 2, connection: 'away' });
    server.away = false;
    for (const timer of [...timers]) timer();
    expect(await document.flushed()).toBe(true);
    expect(server.study.places.map((item) => item.id)).toEqual(['one', 'two']);
    expect(document.state().connection).toBe('here');
  });

  it('finds edits again that a closed window left in the browser', async () => {
    const server = new FakeServer(emptyStudy('s', 'hose'));
    const outbox = memoryOutbox();
    const first = await open(ports(server, 'a', outbox).made);
    server.away = true;
    first.dispatch(place('bin'));
    await first.settled();
    first.dispose();
    server.away = false;
    const second = await open(ports(server, 'b', outbox).made);
    expect(second.state().study.places.map((item) => item.id)).toEqual(['bin']);
    expect(await second.flushed()).toBe(true);
    expect(server.study.places.map((item) => item.id)).toEqual(['bin']);
    await second.settled();
    expect(await outbox.waiting('s')).toEqual([]);
  });

  it('takes in what another window did, under its own edits', async () => {
    const server = new FakeServer(emptyStudy('s', 'hose'));
    const a = await open(ports(server, 'a').made);
    const b = await open(ports(server, 'b').made);
    a.dispatch(place('left'));
    b.dispatch(place('right'));
    await a.flushed();
    await b.flushed();
    const ids = (document: StudyDocument) => document.state().study.places.map((item) => item.id);
    expect(ids(a)).toEqual(ids(b));
    expect(ids(a).sort()).toEqual(['left', 'right']);
    expect(a.state().study).toEqual(server.study);
  });

  it('sets an edit apart that no longer holds, with the reason, and loses nothing', async () => {
    const server = new FakeServer(emptyStudy('s', 'hose'));
    const a = await open(ports(server, 'a').made);
    const b = await open(ports(server, 'b').made);
    server.feeds.clear();
    a.dispatch(rename('coupling', 'hose'));
    await a.flushed();
    b.dispatch(rename('pipe', 'hose'));
    await b.flushed();
    await b.settled();
    expect(b.state().study.title).toBe('coupling');
    expect(b.state().apart.map((item) => item.finding.code)).toEqual(['edit/changed-meanwhile']);
    expect(b.state().apart[0]?.edit).toEqual(rename('pipe', 'hose'));
    expect(a.state().study).toEqual(b.state().study);
  });

  it('begins from what the store has when that went back behind this window, and keeps its edits', async () => {
    const server = new FakeServer(emptyStudy('s', 'hose'));
    const document = await open(ports(server, 'a').made);
    document.dispatch(place('one'));
    await document.flushed();
    server.restore(emptyStudy('s', 'hose'));
    document.dispatch(place('two'));
    expect(await document.flushed()).toBe(true);
    expect(server.study.places.map((item) => item.id)).toEqual(['two']);
    expect(document.state().study).toEqual(server.study);
    expect(document.state().apart).toEqual([]);
  });

  it('undoes and redoes as ordinary edits that the server keeps', async () => {
    const server = new FakeServer(emptyStudy('s', 'hose'));
    const document = await open(ports(server, 'a').made);
    document.dispatch(place('bin'));
    document.undo();
    expect(document.state().study.places).toEqual([]);
    document.redo();
    await document.flushed();
    expect(server.kept.length).toBe(3);
    expect(server.study).toEqual(document.state().study);
  });

  it('refuses at once an edit that does not hold, and says why', async () => {
    const server = new FakeServer(emptyStudy('s', 'hose'));
    const document = await open(ports(server, 'a').made);
    expect(document.dispatch(rename('pipe', 'tube'))).toBe(false);
    expect(document.state().refused).toEqual(finding('edit/changed-meanwhile', {}, { field: 'title' }));
    expect(document.state().waiting).toBe(0);
  });
});
