import { readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import process from 'node:process';
import { describe, expect, it, onTestFinished } from 'vitest';
import { startServer } from './start-server.ts';
import { serverUnderTest, temporaryFolder } from './testing/server-under-test.ts';

async function takenPort(): Promise<number> {
  const other = createServer();
  await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
  onTestFinished(() => void other.close());
  return (other.address() as AddressInfo).port;
}

describe('starting the server', () => {
  it('tells its name, its process and its folder', async () => {
    const server = await serverUnderTest();
    const health = await (await server.fetch('/api/health')).json();
    expect(health).toMatchObject({ name: 'evenhand', pid: process.pid, dataFolder: server.data });
  });

  it('a named port that is taken is said, and the folder is free again', async () => {
    const dataFolder = temporaryFolder();
    const port = await takenPort();
    const refused = await startServer({ dataFolder, port });
    expect(refused.ok ? '' : refused.error.code).toBe('server/port');
    expect(refused.ok ? '' : refused.error.message).toContain(String(port));
    await serverUnderTest({ dataFolder });
  });

  it('without a wish two servers find two ports', async () => {
    const [one, two] = [
      await serverUnderTest({ port: undefined }),
      await serverUnderTest({ port: undefined }),
    ];
    expect(one.running.address).not.toBe(two.running.address);
    expect((await two.fetch('/api/health')).status).toBe(200);
  });

  it('a data folder has one server', async () => {
    const first = await serverUnderTest();
    const second = await startServer({ dataFolder: first.data, port: 0 });
    expect(second.ok ? '' : second.error.code).toBe('store/in-use');
    expect(second.ok ? '' : second.error.message).toContain(String(process.pid));
    await first.running.close();
    await serverUnderTest({ dataFolder: first.data });
  });

  it('a data folder that is a file is said with what to do', async () => {
    const file = path.join(temporaryFolder(), 'file');
    writeFileSync(file, '');
    const refused = await startServer({ dataFolder: file, port: 0 });
    expect(refused.ok ? '' : refused.error.code).toBe('store/folder');
    expect(refused.ok ? '' : refused.error.message).toContain('--data');
  });

  it('a database that is none is said, and stays as it was', async () => {
    const dataFolder = temporaryFolder();
    const file = path.join(dataFolder, 'studies.sqlite');
    writeFileSync(file, 'this is a letter to somebody, and not a database of anything at all\n'.repeat(50));
    const before = readFileSync(file);
    const refused = await startServer({ dataFolder, port: 0 });
    expect(refused.ok ? '' : refused.error.code).toBe('store/damaged');
    expect(readFileSync(file).equals(before)).toBe(true);
  });
});
