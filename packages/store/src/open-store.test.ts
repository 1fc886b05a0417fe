import { spawn } from 'node:child_process';
import { statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { describe, expect, it, onTestFinished } from 'vitest';
import { type Files, realFiles } from './files.ts';
import { type DataStore, openStore } from './open-store.ts';
import { openConnection } from './sqlite/connection.ts';
import { mark, plainStudy, sent, temporaryFolder } from './testing/stores-under-test.ts';

async function opened(folder: string): Promise<DataStore> {
  const store = await openStore({ folder, clock: Date.now });
  if (!store.ok) throw new Error(store.error.message);
  let ended = false;
  const dispose = async () => {
    if (!ended) await store.value.dispose();
    ended = true;
  };
  onTestFinished(dispose);
  return { ...store.value, dispose };
}

/** Another process that holds the folder as this program does, until it is killed. */
async function otherProcess(
  folder: string,
): Promise<{ readonly pid: number; readonly kill: () => Promise<void> }> {
  const code = `
    const { DatabaseSync } = require('@photostructure/sqlite');
    const lock = new DatabaseSync(process.argv[1] + '/lock');
    lock.exec('begin exclusive');
    require('node:fs').writeFileSync(process.argv[1] + '/lock.json', JSON.stringify({ pid: process.pid }));
    process.stdout.write('held');
    setInterval(() => lock, 1000);`;
  const child = spawn(process.execPath, ['-e', code, folder], { stdio: ['ignore', 'pipe', 'inherit'] });
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  await new Promise((resolve) => child.stdout.once('data', resolve));
  const kill = async () => {
    child.kill('SIGKILL');
    await gone;
  };
  onTestFinished(kill);
  return { pid: child.pid ?? 0, kill };
}

describe('a data folder', () => {
  it('is made, readable by its owner alone', async () => {
    const folder = path.join(temporaryFolder(), 'deep', 'down');
    await opened(folder);
    if (process.platform !== 'win32') expect(statSync(folder).mode & 0o077).toBe(0);
  });

  it('is held by one; the second is told who has it; after the end it is free', async () => {
    const folder = temporaryFolder();
    const first = await opened(folder);
    const second = await openStore({ folder, clock: Date.now });
    expect(second).toMatchObject({ ok: false, error: { code: 'store/in-use' } });
    expect(second.ok ? '' : second.error.message).toContain(`process ${process.pid}`);
    await first.dispose();
    await opened(folder);
  });

  it('another process that holds it is named, and one that was killed holds nothing', async () => {
    const folder = temporaryFolder();
    const other = await otherProcess(folder);
    const refused = await openStore({ folder, clock: Date.now });
    expect(refused.ok ? '' : refused.error.message).toContain(`process ${other.pid}`);
    await other.kill();
    await opened(folder);
  });

  it('that a newer version has written is left alone', async () => {
    const folder = temporaryFolder();
    await (await opened(folder)).dispose();
    const connection = await openConnection(path.join(folder, 'studies.sqlite'));
    connection.exec(`insert into kysely_migration (name, timestamp) values ('9999-of-the-future', '')`);
    connection.close();
    const refused = await openStore({ folder, clock: Date.now });
    expect(refused).toMatchObject({ ok: false, error: { code: 'store/newer' } });
  });

  it('whose database is none is refused with the file and what to do', async () => {
    const folder = temporaryFolder();
    writeFileSync(path.join(folder, 'studies.sqlite'), 'no database at all, only words\n'.repeat(100));
    const refused = await openStore({ folder, clock: Date.now });
    expect(refused.ok ? '' : refused.error.code).toBe('store/damaged');
    expect(refused.ok ? '' : refused.error.message).toContain('studies.sqlite');
  });

  it('that cannot be written is refused with the reason and what to do', async () => {
    const denied = Object.assign(new Error('EACCES: permission denied'), { code: 'EACCES' });
    const files = { ...realFiles, mkdir: () => Promise.reject(denied) } as Files;
    const refused = await openStore({ folder: '/somewhere', clock: Date.now, files });
    expect(refused.ok ? '' : refused.error.code).toBe('store/folder');
    expect(refused.ok ? '' : refused.error.message).toMatch(/permission denied.*--data/);
  });
});

describe('the database', () => {
  it('is flushed at every commit: write-ahead log, synchronous = FULL (sqlite.org/pragma.html: 2)', async () => {
    const connection = await openConnection(path.join(temporaryFolder(), 'a.sqlite'));
    onTestFinished(() => connection.close());
    expect(connection.prepare('pragma journal_mode').all()).toMatchObject([{ journal_mode: 'wal' }]);
    expect(connection.prepare('pragma synchronous').all()).toMatchObject([{ synchronous: 2 }]);
    expect(connection.prepare('pragma fullfsync').all()).toMatchObject([{ fullfsync: 1 }]);
  });

  it('keeps a whole document now and then, and every edit with its inverse', async () => {
    const folder = temporaryFolder();
    const store = await opened(folder);
    await store.studies.create(plainStudy());
    for (let index = 0; index < 401; index += 1) {
      const edits = [sent(`e${index}`, mark(`a${index}`, index + 1))];
      await store.studies.edit('study-1', { client: 'w', baseRev: 0, edits });
    }
    await store.dispose();
    const connection = await openConnection(path.join(folder, 'studies.sqlite'));
    onTestFinished(() => connection.close());
    const revs = connection.prepare('select rev from snapshots order by rev').all();
    expect(revs).toMatchObject([{ rev: 0 }, { rev: 200 }, { rev: 400 }]);
    const rows = connection
      .prepare('select count(*) as rows, count(distinct edit_id) as ids from revisions')
      .all();
    expect(rows).toMatchObject([{ rows: 401, ids: 401 }]);
    const first = connection.prepare('select edit, inverse from revisions where rev = 1').all() as [
      { edit: string; inverse: string },
    ];
    expect(JSON.parse(first[0].edit)).toEqual(mark('a0', 1));
    expect(JSON.parse(first[0].inverse)).toEqual({ ...mark('a0', 1), type: 'motion.remove' });
  });

  it('a write that fails changes nothing, and the next one goes through', async () => {
    const folder = temporaryFolder();
    const store = await opened(folder);
    await store.studies.create(plainStudy());
    const other = await openConnection(path.join(folder, 'studies.sqlite'));
    onTestFinished(() => other.close());
    other.exec(
      `create trigger stop before insert on revisions begin select raise(abort, 'the disk is full'); end`,
    );
    const batch = { client: 'w', baseRev: 0, edits: [sent('e1', mark('a', 1000))] };
    await expect(store.studies.edit('study-1', batch)).rejects.toThrow('the disk is full');
    expect(await store.studies.load('study-1')).toEqual({ ok: true, value: { study: plainStudy(), rev: 0 } });
    other.exec('drop trigger stop');
    expect(await store.studies.edit('study-1', batch)).toMatchObject({ ok: true, value: { rev: 1 } });
  });
});
