import { randomBytes } from 'node:crypto';
import type { Upload } from '@evenhand/store';
import { type Context, Hono } from 'hono';
import { type AppParts, refusal } from '../app.ts';
import { sayFinding } from './studies.ts';

const largestFilm = 64 * 1024 ** 3;

/** Films come in by the open protocol tus 1.0.0 (core, creation, termination), so that a broken upload goes on where it stopped. */
export function uploadRoutes({ store }: AppParts): Hono {
  const { films } = store;
  const busy = new Set<string>();
  const routes = new Hono();
  routes.use(async (context, next) => {
    await next();
    context.header('Tus-Resumable', '1.0.0');
    context.header('Cache-Control', 'no-store');
  });
  routes.options('/', (context) => {
    context.header('Tus-Version', '1.0.0');
    context.header('Tus-Extension', 'creation,termination');
    context.header('Tus-Max-Size', String(largestFilm));
    return context.body(null, 204);
  });
  routes.post('/', async (context) => {
    const size = wholeNumber(context.req.header('upload-length'));
    if (size === undefined || size === 0)
      return context.json(refusal('the length of the film is missing'), 400);
    if (size > largestFilm) return context.json(refusal('the film is larger than 64 GB'), 413);
    const id = randomBytes(16).toString('hex');
    const words = metadata(context.req.header('upload-metadata') ?? '');
    const expected = words.get('sha256');
    const name = (words.get('filename') ?? 'film').slice(0, 200);
    await films.begin({ id, size, name, ...(expected === undefined ? {} : { expected }) });
    context.header('Location', `/api/uploads/${id}`);
    return context.body(null, 201);
  });
  // Hono answers HEAD through GET.
  routes.get('/:id', async (context) => {
    const upload = await films.upload(context.req.param('id'));
    if (upload === undefined) return context.json(refusal('there is no such upload'), 404);
    sayOffset(context, upload);
    context.header('Upload-Length', String(upload.size));
    return context.body(null, 200);
  });
  routes.patch('/:id', async (context) => {
    const id = context.req.param('id');
    const upload = await films.upload(id);
    if (upload === undefined) return context.json(refusal('there is no such upload'), 404);
    if (context.req.header('content-type') !== 'application/offset+octet-stream')
      return context.body(null, 415);
    if (busy.has(id)) return context.json(refusal('this upload is being written already'), 423);
    if (wholeNumber(context.req.header('upload-offset')) !== upload.offset)
      return context.json(refusal('the upload stands elsewhere'), 409);
    busy.add(id);
    try {
      const { body } = context.req.raw;
      const offset =
        body === null
          ? upload.offset
          : await films.append(id, upload.offset, body as unknown as AsyncIterable<Uint8Array>);
      sayOffset(context, { ...upload, offset });
      if (offset < upload.size) return context.body(null, 204);
      const film = await films.finish(id);
      if (!film.ok) return sayFinding(context, film.error);
      context.header('Film-Sha256', film.value.sha256);
      return context.body(null, 204);
    } finally {
      busy.delete(id);
    }
  });
  routes.delete('/:id', async (context) =>
    context.body(null, (await films.drop(context.req.param('id'))) ? 204 : 404),
  );
  routes.get('/:id/film', async (context) => {
    const film = await films.finish(context.req.param('id'));
    return film.ok
      ? context.json({ sha256: film.value.sha256, bytes: film.value.bytes })
      : sayFinding(context, film.error);
  });
  return routes;
}

function sayOffset(context: Context, upload: Upload): void {
  context.header('Upload-Offset', String(upload.offset));
}

function wholeNumber(text: string | undefined): number | undefined {
  return text !== undefined && /^\d{1,15}$/.test(text) ? Number(text) : undefined;
}

/** `key base64,key base64`. */
function metadata(text: string): ReadonlyMap<string, string> {
  const pairs = text
    .split(',')
    .map((pair) => pair.trim().split(' '))
    .filter((pair) => pair[0] !== '');
  return new Map(pairs.map(([key = '', value = '']) => [key, Buffer.from(value, 'base64').toString('utf8')]));
}
