import { createReadStream } from 'node:fs';
import { Readable } from 'node:stream';
import { finding } from '@evenhand/core/ground/findings';
import type { FilmRecord } from '@evenhand/store';
import { type Context, Hono } from 'hono';
import { refusal, sayFinding } from '../answers.ts';
import type { AppParts } from '../app.ts';
import { byteRange } from '../byte-range.ts';

export function filmRoutes({ store }: AppParts): Hono {
  const routes = new Hono();
  routes.get('/', async (context) => {
    const films = await store.films.list();
    return context.json(films.map(({ sha256, bytes, name }) => ({ sha256, bytes, name })));
  });
  // Hono answers HEAD through GET.
  routes.get('/:sha256', async (context) => {
    const film = await store.films.find(context.req.param('sha256'));
    if (film === undefined) return sayFinding(context, finding('store/not-found', {}, { what: 'The film' }));
    return sendFilm(context, film, store.films.fileOf(film.sha256));
  });
  return routes;
}

type SentFilm = Pick<FilmRecord, 'sha256' | 'bytes' | 'mediaType'>;

/** The whole film, or the asked range of it. A film never changes under its hash. */
export function sendFilm(context: Context, film: SentFilm, file: string): Response {
  const tag = `"${film.sha256}"`;
  context.header('Accept-Ranges', 'bytes');
  if (sameTag(context.req.header('if-none-match'), tag)) {
    context.header('ETag', tag);
    return context.body(null, 304);
  }
  const range = asked(context, film, tag);
  if (range.kind === 'outside') {
    context.header('Content-Range', `bytes */${film.bytes}`);
    return context.json(refusal('the range lies outside the film'), 416);
  }
  context.header('ETag', tag);
  context.header('Cache-Control', 'private, max-age=31536000, immutable');
  context.header('Content-Type', film.mediaType);
  const span = range.kind === 'part' ? range : { start: 0, end: film.bytes - 1 };
  if (range.kind === 'part') context.header('Content-Range', `bytes ${span.start}-${span.end}/${film.bytes}`);
  context.header('Content-Length', String(span.end - span.start + 1));
  const status = range.kind === 'part' ? 206 : 200;
  if (context.req.method === 'HEAD') return context.body(null, status);
  const { start, end } = span;
  const stream = Readable.toWeb(createReadStream(file, { start, end })) as ReadableStream<Uint8Array>;
  return context.body(stream, status);
}

/** A range that rests on another version (If-Range) is not served in parts. */
function asked(context: Context, film: SentFilm, tag: string): ReturnType<typeof byteRange> {
  const condition = context.req.header('if-range');
  if (condition !== undefined && condition !== tag) return { kind: 'whole' };
  return byteRange(context.req.header('range'), film.bytes);
}

function sameTag(sent: string | undefined, tag: string): boolean {
  const tags = sent?.split(',').map((item) => item.trim().replace(/^W\//, ''));
  return tags?.some((item) => item === tag || item === '*') ?? false;
}
