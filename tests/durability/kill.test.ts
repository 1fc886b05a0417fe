import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { applyAll } from '@evenhand/core/ground/edit';
import { emptyStudy, type Method, type Motion, type Study } from '@evenhand/core/ground/study';
import { type KeptEdit, openConnection, openStore } from '@evenhand/store';
import { expect, it, onTestFinished } from 'vitest';
import { type KillableServer, packServer, startProcess } from './killable-server.ts';
import { type Acknowledged, EditingWindow, SendingWindow } from './load.ts';

const KILLS = 30;
const end = 1_000_000_000;

function firstStudy(): Study {
  const row = (hand: string) => ({
    items: [{ id: `${hand}0`, start: 0, kind: 'unmarked', said: 'marked' } as Motion],
    end,
  });
  const method: Method = {
    id: 'm',
    name: 'Present method',
    kind: 'composed',
    base: { kind: 'micros' },
    unitsPerCycle: 1,
    left: row('l'),
    right: row('r'),
    cycles: { items: [], end },
  };
  return { ...emptyStudy('study-1', 'Couplings'), methods: [method] };
}

async function ask<T>(server: KillableServer, where: string): Promise<T> {
  return (await (await fetch(server.address + where)).json()) as T;
}

/** Every acknowledged edit at its revision, no other than was sent, and a head that is their replay. */
async function expectEdits(
  server: KillableServer,
  told: Acknowledged,
  sent: ReadonlySet<string>,
): Promise<void> {
  const { rev, edits } = await ask<{ rev: number; edits: KeptEdit[] }>(
    server,
    '/api/studies/study-1/edits?since=0',
  );
  const kept = new Map(edits.map((edit) => [edit.id, edit.rev]));
  const lost = [...told.edits].filter(([id, at]) => kept.get(id) !== at);
  expect(lost).toEqual([]);
  expect(edits.filter((edit) => !sent.has(edit.id))).toEqual([]);
  expect(edits.map((edit) => edit.rev)).toEqual(Array.from({ length: rev }, (_, index) => index + 1));
  const replayed = applyAll(
    firstStudy(),
    edits.map((edit) => edit.edit),
  );
  const head = await ask<{ study: Study; rev: number }>(server, '/api/studies/study-1');
  expect([head.rev, head.study]).toEqual([rev, replayed.ok ? replayed.value : undefined]);
}

/** Every acknowledged film is listed, and every listed film has the bytes that its name says. */
async function expectFilms(server: KillableServer, told: Acknowledged, checked: Set<string>): Promise<void> {
  const listed = (await ask<{ sha256: string }[]>(server, '/api/films')).map((film) => film.sha256);
  expect([...told.films].filter((sha256) => !listed.includes(sha256))).toEqual([]);
  for (const sha256 of listed.filter((item) => !checked.has(item))) {
    const bytes = await (await fetch(`${server.address}/api/films/${sha256}`)).arrayBuffer();
    expect(createHash('sha256').update(Buffer.from(bytes)).digest('hex')).toBe(sha256);
    checked.add(sha256);
  }
}

async function expectWholeDatabase(data: string): Promise<void> {
  const connection = await openConnection(path.join(data, 'studies.sqlite'));
  try {
    const found = connection.prepare('pragma integrity_check').all();
    expect(found).toMatchObject([{ integrity_check: 'ok' }]);
  } finally {
    connection.close();
  }
}

/** A day later nothing is left of uploads that nobody went on with, and no file lies among the films that is none. */
async function expectNothingLeftOver(data: string, begun: ReadonlySet<string>): Promise<void> {
  const later = await openStore({ folder: data, clock: () => Date.now() + 25 * 3_600_000 });
  if (!later.ok) throw new Error(later.error.message);
  const films = (await later.value.films.list()).map((film) => film.sha256);
  await later.value.dispose();
  expect(readdirSync(path.join(data, 'uploads'))).toEqual([]);
  expect(readdirSync(path.join(data, 'films')).sort()).toEqual(films.toSorted());
  expect(films.filter((sha256) => !begun.has(sha256))).toEqual([]);
}

it(`killed ${KILLS} times at random under load, it keeps every acknowledged edit and film`, async () => {
  const data = mkdtempSync(path.join(tmpdir(), 'evenhand-kill-'));
  onTestFinished(() => rmSync(data, { recursive: true, force: true, maxRetries: 5 }));
  const packed = await packServer();
  onTestFinished(packed.remove);
  let server = await startProcess(packed.file, data);
  onTestFinished(async () => await server.kill());
  const made = await fetch(`${server.address}/api/studies`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ study: firstStudy() }),
  });
  expect(made.status).toBe(201);

  const told: Acknowledged = { edits: new Map(), films: new Set() };
  let answersLeft = 0;
  let enough = () => {};
  const progress = () => {
    answersLeft -= 1;
    if (answersLeft <= 0) enough();
  };
  const editing = ['w1', 'w2', 'w3'].map((client) => new EditingWindow(client, told, progress));
  const sending = new SendingWindow(told, progress);
  const checked = new Set<string>();
  for (let kill = 0; kill < KILLS; kill += 1) {
    const before = told.edits.size;
    answersLeft = 5 + Math.floor(Math.random() * 300);
    const loaded = new Promise<void>((resolve) => {
      enough = resolve;
    });
    const load = Promise.all([...editing, sending].map((window) => window.run(server.address)));
    await Promise.race([loaded, load]);
    // Anywhere in what is being done at the time, and not always just after an answer.
    await new Promise((resolve) => setTimeout(resolve, Math.random() * 20));
    await server.kill();
    await load;
    server = await startProcess(packed.file, data);
    const sent = new Set(editing.flatMap((window) => [...window.sent]));
    expect(told.edits.size).toBeGreaterThan(before);
    await expectEdits(server, told, sent);
    await expectFilms(server, told, checked);
    await expectWholeDatabase(data);
  }

  checked.clear();
  await expectFilms(server, told, checked);
  // The load was one: films came through, and some of them over a kill.
  expect(told.films.size).toBeGreaterThan(3);
  expect(sending.resumed).toBeGreaterThan(0);
  await server.kill();
  await expectNothingLeftOver(data, sending.begun);
  process.stdout.write(
    `${KILLS} kills: ${told.edits.size} edits and ${told.films.size} films acknowledged, ${sending.resumed} uploads resumed\n`,
  );
}, 240_000);
