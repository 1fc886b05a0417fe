import { createReadStream } from 'node:fs';
import { Readable } from 'node:stream';
import { finding } from '@evenhand/core/ground/findings';
import type { FilmRecord } from '@evenhand/store';
import { type Context, Hono } from 'hono';
import { type AppParts, refusal } from '../app.ts';

export function filmRoutes({ store }: AppParts): Hono {
  const routes = new Hono();
  routes.get('/', async (context) => context.json(await store.films.list()));
  routes.get('/:sha256', async (context) => {
    const film = await store.films.find(context.req.param('sha256'));
    if (film === undefined)
      return context.json({ findings: [finding('store/not-found', {}, { what: 'The film' })] }, 404);
    return sendFilm(context, film, store.films.fileOf(film.sha256));
  });
  return routes;
}

/** The whole film, or the asked range of it (RFC 9110, section 14; one range). A film never changes under its hash. */
function sendFilm(context: Context, film: FilmRecord, file: string): Response {
  context.header('Accept-Ranges', 'bytes');
  context.header('ETag', `"${film.sha256}"`);
  context.header('Cache-Control', 'private, max-age=31536000, immutable');
  context.header('Content-Type', film.mediaType);
  const asked = context.req.header('range');
  const span = asked === undefined ? { start: 0, end: film.bytes - 1 } : byteRange(asked, film.bytes);
  if (span === undefined) {
    context.header('Content-Range', `bytes */${film.bytes}`);
    return context.json(refusal('the range lies outside the film'), 416);
  }
  if (asked !== undefined) context.header('Content-Range', `bytes ${span.start}-${span.end}/${film.bytes}`);
  context.header('Content-Length', String(span.end - span.start + 1));
  const status = asked === undefined ? 200 : 206;
  if (context.req.method === 'HEAD') return context.body(null, status);
  const stream = Readable.toWeb(createReadStream(file, span)) as ReadableStream<Uint8Array>;
  return context.body(stream, status);
}

/** `bytes=a-b`, `bytes=a-`, `bytes=-n`; undefined when it cannot be satisfied. */
export function byteRange(
  text: string,
  size: number,
): { readonly start: number; readonly end: number } | undefined {
  const match = /^bytes=(\d*)-(\d*)$/.exec(text.trim());
  if (match === null || (match[1] === '' && match[2] === '')) return undefined;
  const last = size - 1;
  if (match[1] === '') {
    const count = Number(match[2]);
    return count === 0 ? undefined : { start: Math.max(0, size - count), end: last };
  }
  const start = Number(match[1]);
  const end = match[2] === '' ? last : Math.min(last, Number(match[2]));
  return start > last || end < start ? undefined : { start, end };
}
