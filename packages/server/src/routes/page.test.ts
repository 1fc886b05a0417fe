import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { rawRequest, serverUnderTest, temporaryFolder } from '../testing/server-under-test.ts';

describe('the built page', () => {
  it.each(['/', '/studies/study-1', '/studies/study-1/record'])('%s is the page', async (where) => {
    const server = await serverUnderTest();
    const answer = await server.fetch(where);
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'text/html; charset=utf-8']);
    expect(await answer.text()).toContain('the page');
    expect(answer.headers.get('cache-control')).toBe('no-cache');
  });

  it('a file with a hash in its name may be kept for ever', async () => {
    const server = await serverUnderTest();
    const answer = await server.fetch('/assets/main-1a2b.js');
    expect([answer.status, answer.headers.get('content-type')]).toEqual([
      200,
      'text/javascript; charset=utf-8',
    ]);
    expect(answer.headers.get('cache-control')).toContain('immutable');
  });

  it.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/assets/../../secret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/assets/..%5c..%5csecret.txt',
    '/assets/%2e%2e%2f%2e%2e%2fsecret.txt',
    '/assets/....//secret.txt',
    '//secret.txt',
    '/secret.txt%00.js',
    '/studies.sqlite',
    '/%',
  ])('%s leads nowhere', async (where) => {
    const server = await serverUnderTest();
    writeFileSync(path.join(server.data, 'secret.txt'), 'a secret');
    const headers = { host: new URL(server.running.address).host };
    const answer = await rawRequest(server.running.address, where, headers);
    expect(answer.status).toBe(404);
    expect(answer.body).not.toContain('a secret');
    expect(answer.body).not.toMatch(/\bat .*:\d+:\d+/);
    expect(server.log).toEqual([]);
  });

  it('says what to do when the page is not built', async () => {
    const server = await serverUnderTest({ page: path.join(temporaryFolder(), 'none') });
    const answer = await server.fetch('/');
    expect([answer.status, await answer.text()]).toEqual([503, expect.stringContaining('npm run build')]);
  });
});
