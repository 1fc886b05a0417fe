import { randomBytes } from 'node:crypto';
import { finding } from '@evenhand/core/ground/findings';
import { isHash, TooManyBytes, type Upload } from '@evenhand/store';
import { type Context, Hono } from 'hono';
import { refusal, sayFinding } from '../answers.ts';
import type { AppParts } from '../app.ts';

const version = '1.0.0';
const largestFilm = 64 * 1024 ** 3;

/**
 * Films come in by the open protocol tus 1.0.0 (core, creation, termination), so that a broken upload goes on where it
 * stopped. The last PATCH is answered when the film is on the disk under its hash, which it tells as `Film-Sha256`.
 */
export function uploadRoutes({ store }: AppParts): Hono {
  const { films } = store;
  const busy = new Set<string>();
  const routes = new Hono();
  routes.use(async (context, next) => {
    const asks = context.req.header('tus-resumable');
    const speaks = ['POST', 'PATCH', 'HEAD', 'DELETE'].includes(context.req.method);
    if (speaks && asks !== version) {
      context.header('Tus-Version', version);
      context.res = context.json(refusal(`an upload must speak tus ${version}`), 412);
    } else await next();
    context.header('Tus-Resumable', version);
    context.header('Cache-Control', 'no-store');
  });
  routes.options('/', (context) => {
    context.header('Tus-Version', version);
    context.header('Tus-Extension', 'creation,termination');
    context.header('Tus-Max-Size', String(largestFilm));
    return context.body(null, 204);
  });
  routes.post('/', async (context) => await begin(context, films));
  // Hono answers HEAD through GET.
  routes.get('/:id', async (context) => {
    const upload = await films.upload(context.req.param('id'));
    if (upload === undefined) return noUpload(context);
    context.header('Upload-Offset', String(upload.offset));
    context.header('Upload-Length', String(upload.size));
    return context.body(null, 200);
  });
  routes.patch('/:id', async (context) => {
    const id = context.req.param('id');
    // Two writers would write over one another: the second waits until the first one's connection has ended.
    if (busy.has(id)) return context.json(refusal('this upload is being written already'), 423);
    busy.add(id);
    try {
      return await goOn(context, films, id);
    } catch (error) {
      if (error instanceof TooManyBytes) return context.json(refusal(error.message), 413);
      throw error;
    } finally {
      busy.delete(id);
    }
  });
  routes.delete('/:id', async (context) => {
    const id = context.req.param('id');
    if (busy.has(id)) return context.json(refusal('this upload is being written'), 423);
    if ((await films.upload(id)) === undefined || !(await films.drop(id))) return noUpload(context);
    return context.body(null, 204);
  });
  routes.get('/:id/film', async (context) => {
    const film = await films.finish(context.req.param('id'));
    if (!film.ok) return sayFinding(context, film.error);
    return context.json({ sha256: film.value.sha256, bytes: film.value.bytes });
  });
  return routes;
}

type Films = AppParts['store']['films'];

async function begin(context: Context, films: Films): Promise<Response> {
  const words = metadata(context.req.header('upload-metadata') ?? '');
  const name = (words.get('filename') ?? 'film').slice(0, 200);
  const size = wholeNumber(context.req.header('upload-length'));
  if (size === undefined) return context.json(refusal('the length of the film is missing'), 400);
  if (size === 0) return context.json({ findings: [finding('film/empty', {}, { name })] }, 400);
  if (size > largestFilm)
    return context.json(
      { findings: [finding('server/too-large', {}, { limit: largestFilm / 1024 ** 2 })] },
      413,
    );
  const expected = words.get('sha256');
  if (expected !== undefined && !isHash(expected))
    return context.json(refusal('sha256 must be 64 lower-case hexadecimal digits'), 400);
  const id = randomBytes(16).toString('hex');
  await films.begin({ id, size, name, ...(expected === undefined ? {} : { expected }) });
  context.header('Location', `/api/uploads/${id}`);
  return context.body(null, 201);
}

/** Appends what this request carries; with the last byte the upload becomes a film. */
async function goOn(context: Context, films: Films, id: string): Promise<Response> {
  const upload = await films.upload(id);
  if (upload === undefined) return noUpload(context);
  const fault = patchFault(context, upload);
  if (fault !== undefined) return fault;
  const { body } = context.req.raw;
  const bytes = body as unknown as AsyncIterable<Uint8Array> | null;
  const offset = bytes === null ? upload.offset : await films.append(id, upload.offset, bytes);
  if (offset === upload.size) {
    const film = await films.finish(id);
    if (!film.ok) return sayFinding(context, film.error);
    context.header('Film-Sha256', film.value.sha256);
  }
  context.header('Upload-Offset', String(offset));
  return context.body(null, 204);
}

function patchFault(context: Context, upload: Upload): Response | undefined {
  if (context.req.header('content-type') !== 'application/offset+octet-stream')
    return context.json(refusal('the content type must be application/offset+octet-stream'), 415);
  if (wholeNumber(context.req.header('upload-offset')) !== upload.offset)
    return context.json(refusal(`the upload stands at ${upload.offset}`), 409);
  const length = wholeNumber(context.req.header('content-length')) ?? 0;
  if (upload.offset + length > upload.size)
    return context.json(refusal('there are more bytes than were announced'), 413);
  return undefined;
}

function noUpload(context: Context): Response {
  return sayFinding(context, finding('store/not-found', {}, { what: 'The upload' }));
}

function wholeNumber(text: string | undefined): number | undefined {
  return text !== undefined && /^\d{1,15}$/.test(text) ? Number(text) : undefined;
}

/** `key base64,key base64` (tus 1.0.0, Upload-Metadata). */
function metadata(text: string): ReadonlyMap<string, string> {
  const pairs = text
    .split(',')
    .map((pair) => pair.trim().split(' '))
    .filter((pair) => pair[0] !== '');
  return new Map(pairs.map(([key = '', value = '']) => [key, Buffer.from(value, 'base64').toString('utf8')]));
}
