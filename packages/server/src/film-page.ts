import { createHash } from 'node:crypto';
import { access, readFile, stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import path from 'node:path';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { getRequestListener } from '@hono/node-server';
import { Hono } from 'hono';
import { guard } from './guard.ts';
import { listen } from './listen.ts';
import { programFolder } from './program-folder.ts';
import { sendFilm } from './routes/films.ts';
import { pageRoutes } from './routes/page.ts';

/** What the page that seeks hands sends. */
export type PageMessage =
  | { readonly kind: 'said'; readonly body: unknown }
  | { readonly kind: 'track'; readonly bytes: Uint8Array };

export interface FilmPage {
  /** Address of the page that seeks hands in the film. */
  readonly address: string;
  readonly close: () => void;
}

/**
 * Hands out one film and the page that seeks the hands in it, on 127.0.0.1 only, without a store: for the command line.
 * Finding `hands/not-built`: the page is not there, or not whole.
 * @param file the film
 * @param hear takes what the page sends
 * @param page folder of the built page
 */
export async function serveFilmPage(
  file: string,
  hear: (message: PageMessage) => void,
  page = path.join(programFolder(), 'dist', 'app'),
): Promise<Result<FilmPage, Finding>> {
  const reason = await partMissing(page);
  if (reason !== undefined) return fail(finding('hands/not-built', {}, { reason }));
  const { size: bytes, mtimeMs } = await stat(file);
  const sha256 = createHash('sha256').update(`${file} ${bytes} ${mtimeMs}`).digest('hex');
  let port = 0;
  const app = new Hono();
  app.use(guard(() => port));
  app.get('/film', (context) =>
    sendFilm(context, { sha256, bytes, mediaType: 'application/octet-stream' }, file),
  );
  app.post('/told', async (context) => {
    hear({ kind: 'said', body: await context.req.json().catch(() => undefined) });
    return context.body(null, 204);
  });
  app.post('/track', async (context) => {
    hear({ kind: 'track', bytes: new Uint8Array(await context.req.arrayBuffer()) });
    return context.body(null, 204);
  });
  app.route('/', pageRoutes(page));
  const server = createServer(getRequestListener(app.fetch));
  const listening = await listen(server, 0);
  if (!listening.ok) return listening;
  port = listening.value;
  const close = () => {
    server.close();
    server.closeAllConnections();
  };
  return ok({ address: `http://127.0.0.1:${port}/hands.html`, close });
}

/** What the built page lacks. A page that cannot load its parts would stay silent, and the command would wait for it. */
async function partMissing(folder: string): Promise<string | undefined> {
  const page = await readFile(path.join(folder, 'hands.html'), 'utf8').catch(() => undefined);
  if (page === undefined) return 'the page that seeks them is not built';
  const parts = [...page.matchAll(/(?:src|href)="\/(assets\/[^"]+)"/g)].map(([, name = '']) => name);
  for (const part of parts) {
    const there = await access(path.join(folder, part)).then(
      () => true,
      () => false,
    );
    if (!there) return `the page that seeks them was built only in part: ${part} is missing`;
  }
  return undefined;
}
