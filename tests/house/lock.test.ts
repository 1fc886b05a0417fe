import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { isAlive, readHolder, withLock } from '../../scripts/setup/lock.mjs';
import { temporaryTree } from './temporary-tree.ts';

const lockModule = pathToFileURL(path.resolve(import.meta.dirname, '../../scripts/setup/lock.mjs')).href;

/** A process that takes the lock, says so, works on a shared journal, and gives the lock back. */
function holder(lock: string, journal: string, workMs: number): ChildProcess {
  const program = `
    import { appendFileSync } from 'node:fs';
    import { setTimeout as pause } from 'node:timers/promises';
    import { withLock } from ${JSON.stringify(lockModule)};
    await withLock(${JSON.stringify(lock)}, async () => {
      appendFileSync(${JSON.stringify(journal)}, 'in\\n');
      console.log('holding');
      await pause(${workMs});
      appendFileSync(${JSON.stringify(journal)}, 'out\\n');
    }, { pollMs: 10 });`;
  const child = spawn(process.execPath, ['--input-type=module', '-e', program], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  onTestFinished(() => void child.kill('SIGKILL'));
  return child;
}

async function untilHolding(child: ChildProcess): Promise<void> {
  if (child.stdout) await once(child.stdout, 'data');
}

test('five processes at once work one after another, and the lock is gone at the end', async () => {
  const root = temporaryTree({ journal: '' });
  const [lock, journal] = [path.join(root, 'lock'), path.join(root, 'journal')];
  const all = Array.from({ length: 5 }, () => holder(lock, journal, 30));
  await Promise.all(all.map((child) => once(child, 'exit')));
  expect(readFileSync(journal, 'utf8')).toBe('in\nout\n'.repeat(5));
  expect(existsSync(lock)).toBe(false);
});

test('a lock whose holder was killed is taken over, and that is said', async () => {
  const root = temporaryTree({ journal: '' });
  const lock = path.join(root, 'lock');
  const child = holder(lock, path.join(root, 'journal'), 60_000);
  await untilHolding(child);
  const gone = once(child, 'exit');
  child.kill('SIGKILL');
  await gone;
  expect(existsSync(lock)).toBe(true);
  const said: string[] = [];
  await withLock(lock, async () => expect(readHolder(lock)?.pid).toBe(process.pid), {
    log: (line) => said.push(line),
    pollMs: 10,
  });
  expect(said).toEqual(['Taking over from a run that was interrupted.']);
  expect(existsSync(lock)).toBe(false);
});

test('a lock is not taken from a dead parent whose child still works', async () => {
  const root = temporaryTree();
  const lock = path.join(root, 'lock');
  const child = spawn(process.execPath, ['-e', 'setTimeout(() => {}, 60000)'], { stdio: 'ignore' });
  onTestFinished(() => void child.kill('SIGKILL'));
  await once(child, 'spawn');
  const dead = spawn(process.execPath, ['-e', ''], { stdio: 'ignore' });
  await once(dead, 'exit');
  const state = { pid: dead.pid ?? 0, child: child.pid ?? null, token: 't' };
  expect(isAlive(state)).toBe(true);
  writeFileSync(lock, JSON.stringify(state));
  const order: string[] = [];
  const taken = withLock(lock, async () => order.push('taken'), {
    pollMs: 10,
    log: (line) => {
      order.push(line.startsWith('Another') ? 'waiting' : 'taking over');
      child.kill('SIGKILL');
    },
  });
  await taken;
  expect(order).toEqual(['waiting', 'taking over', 'taken']);
});

test('a lock without a sign of life is taken over although its process number is in use', async () => {
  const lock = path.join(temporaryTree(), 'lock');
  writeFileSync(lock, JSON.stringify({ pid: process.pid, child: null, token: 'other' }));
  await withLock(lock, async () => {}, { pollMs: 10, silentMs: 100 });
  expect(existsSync(lock)).toBe(false);
});

test('a lock that cannot be read is taken over after its silence', async () => {
  const lock = path.join(temporaryTree({ lock: '{"pid"' }), 'lock');
  await withLock(lock, async () => {}, { pollMs: 10, silentMs: 100 });
  expect(existsSync(lock)).toBe(false);
});

test('work that fails gives the lock back and passes its error on', async () => {
  const lock = path.join(temporaryTree(), 'lock');
  const failing = withLock(lock, () => Promise.reject(new Error('no room')));
  await expect(failing).rejects.toThrow('no room');
  expect(existsSync(lock)).toBe(false);
});
