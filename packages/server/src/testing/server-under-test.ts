import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request as plainRequest } from 'node:http';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Edit } from '@evenhand/core/ground/edit';
import type { Study } from '@evenhand/core/ground/study';
import { expect, onTestFinished } from 'vitest';
import { plainStudy } from '../../../../tests/helpers/plain-study.ts';
import { type RunningServer, type ServerOptions, startServer } from '../start-server.ts';

export { plainStudy };

export interface ServerUnderTest {
  readonly running: RunningServer;
  readonly data: string;
  readonly log: readonly string[];
  readonly fetch: (where: string, init?: RequestInit) => Promise<Response>;
  readonly post: (where: string, body: unknown) => Promise<Response>;
}

/** A folder that is gone when the test ends. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'evenhand-server-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));
  return folder;
}

/** The real server on a free port, closed when the test ends. */
export async function serverUnderTest(options: Partial<ServerOptions> = {}): Promise<ServerUnderTest> {
  const data = options.dataFolder ?? temporaryFolder();
  const log: string[] = [];
  const page = path.join(data, 'page');
  mkdirSync(path.join(page, 'assets'), { recursive: true });
  writeFileSync(path.join(page, 'index.html'), '<!doctype html><title>the page</title>');
  writeFileSync(path.join(page, 'assets', 'main-1a2b.js'), 'export {};\n');
  const settings = {
    dataFolder: data,
    port: 0,
    page,
    log: (line: string) => void log.push(line),
    ...options,
  };
  const started = await startServer(settings);
  if (!started.ok) throw new Error(started.error.message);
  const running = started.value;
  onTestFinished(async () => await running.close());
  const address = running.address.replace(/\/$/, '');
  const ask = (where: string, init?: RequestInit) => fetch(address + where, init);
  const post = (where: string, body: unknown) =>
    ask(where, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: typeof body === 'string' ? body : JSON.stringify(body),
    });
  return { running, data, log, fetch: ask, post };
}

/** A request with headers that fetch does not let one set. */
export async function rawRequest(
  address: string,
  where: string,
  headers: Readonly<Record<string, string>>,
  method = 'GET',
): Promise<{
  readonly status: number;
  readonly body: string;
  readonly headers: NodeJS.Dict<string | string[]>;
}> {
  const { hostname, port } = new URL(address);
  return await new Promise((resolve, reject) => {
    const asked = plainRequest({ hostname, port, path: where, method, headers }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          body: Buffer.concat(parts).toString('utf8'),
          headers: response.headers,
        }),
      );
    });
    asked.on('error', reject);
    asked.end();
  });
}

export async function codes(response: Response): Promise<string[]> {
  const body = (await response.json()) as { findings: { code: string }[] };
  return body.findings.map((item) => item.code);
}

export function mark(id: string, start: number, hand: 'left' | 'right' = 'right'): Edit {
  return { type: 'motion.mark', method: 'm', hand, motion: { id, start, kind: 'G', said: 'marked' } };
}

export function sent(id: string, edit: unknown) {
  return { id, edit, at: '2026-03-01T10:00:00.000Z' };
}

export async function makeStudy(server: ServerUnderTest, study: Study = plainStudy()): Promise<void> {
  const made = await server.post('/api/studies', { study });
  expect(made.status).toBe(201);
}
