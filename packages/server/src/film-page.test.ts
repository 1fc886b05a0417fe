import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { type PageMessage, serveFilmPage } from './film-page.ts';
import { rawRequest, temporaryFolder } from './testing/server-under-test.ts';

async function served() {
  const folder = temporaryFolder();
  mkdirSync(path.join(folder, 'assets'));
  writeFileSync(path.join(folder, 'hands.html'), '<!doctype html><title>hands</title>');
  writeFileSync(path.join(folder, 'assets', 'hands-worker-x_1-Y.js'), '');
  writeFileSync(path.join(folder, 'assets', 'hands-1a2b.js'), '');
  const film = path.join(folder, 'film.mp4');
  writeFileSync(film, '0123456789');
  const heard: PageMessage[] = [];
  const page = await serveFilmPage(film, (message) => heard.push(message), folder);
  if (!page.ok) throw new Error(page.error.message);
  onTestFinished(page.value.close);
  const ask = (where: string, init?: RequestInit) => fetch(new URL(where, page.value.address), init);
  return { address: page.value.address, ask, heard };
}

it('hands out the page and the film, by ranges', async () => {
  const { address, ask } = await served();
  expect(await (await fetch(address)).text()).toContain('hands');
  const part = await ask('/film', { headers: { Range: 'bytes=2-4' } });
  expect([part.status, await part.text()]).toEqual([206, '234']);
});

it('hears what the page tells, and takes the track as it is', async () => {
  const { ask, heard } = await served();
  const headers = { 'content-type': 'application/json' };
  await ask('/told', { method: 'POST', headers, body: '{"kind":"progress"}' });
  await ask('/track', { method: 'POST', body: Uint8Array.of(1, 2, 255) });
  expect(heard).toEqual([
    { kind: 'said', body: { kind: 'progress' } },
    { kind: 'track', bytes: Uint8Array.of(1, 2, 255) },
  ]);
});

it('is for this machine’s own page alone', async () => {
  const { address, heard } = await served();
  const host = new URL(address).host;
  const answer = await rawRequest(address, '/film', { host, origin: 'http://evil.example' });
  expect(answer.status).toBe(403);
  expect(heard).toEqual([]);
});

it('lets WebAssembly run in the worker that seeks hands and nowhere else', async () => {
  const { ask } = await served();
  const policy = async (where: string) =>
    (await ask(where)).headers
      .get('content-security-policy')
      ?.split('; ')
      .find((rule) => rule.startsWith('script-src'));
  expect(await policy('/assets/hands-worker-x_1-Y.js')).toBe("script-src 'self' 'wasm-unsafe-eval'");
  expect(await policy('/assets/hands-1a2b.js')).toBe("script-src 'self'");
  expect(await policy('/hands.html')).toBe("script-src 'self'");
});

it('says at once what to do where the page is not built, or lacks a part', async () => {
  const folder = temporaryFolder();
  const film = path.join(folder, 'film.mp4');
  writeFileSync(film, '0123456789');
  const refused = async () => {
    const page = await serveFilmPage(film, () => {}, folder);
    if (page.ok) page.value.close();
    return page.ok ? 'served' : `${page.error.code}: ${page.error.message}`;
  };
  expect(await refused()).toBe(
    'hands/not-built: The hands cannot be sought yet: the page that seeks them is not built. Run “npm run build” in the folder of the program, then give the command again.',
  );
  writeFileSync(
    path.join(folder, 'hands.html'),
    '<!doctype html><script type="module" src="/assets/hands-1a2b.js"></script>',
  );
  expect(await refused()).toContain('built only in part: assets/hands-1a2b.js is missing');
  mkdirSync(path.join(folder, 'assets'));
  writeFileSync(path.join(folder, 'assets', 'hands-1a2b.js'), '');
  expect(await refused()).toBe('served');
});
