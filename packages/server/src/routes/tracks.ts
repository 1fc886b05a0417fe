import { isHash } from '@evenhand/store';
import { Hono } from 'hono';
import { refusal, sayFinding } from '../answers.ts';
import type { AppParts } from '../app.ts';

/** Tracks go in and out whole under the hash of their bytes; the largest are a few megabytes. */
export function trackRoutes({ store }: AppParts): Hono {
  const routes = new Hono();
  routes.get('/:sha256', async (context) => {
    const found = await store.tracks.read(context.req.param('sha256'));
    if (!found.ok) return sayFinding(context, found.error);
    context.header('ETag', `"${context.req.param('sha256')}"`);
    context.header('Cache-Control', 'private, max-age=31536000, immutable');
    context.header('Content-Type', 'application/octet-stream');
    return context.body(new Uint8Array(found.value));
  });
  routes.put('/:sha256', async (context) => {
    const sha256 = context.req.param('sha256');
    if (!isHash(sha256)) return context.json(refusal('a track is named by the SHA-256 of its bytes'), 400);
    // A form of another page cannot send this type without asking first.
    if (!/^application\/octet-stream\b/i.test(context.req.header('content-type') ?? ''))
      return context.json(refusal('its content type must be application/octet-stream'), 400);
    const kept = await store.tracks.put(sha256, new Uint8Array(await context.req.arrayBuffer()));
    return kept.ok ? context.body(null, 204) : sayFinding(context, kept.error);
  });
  return routes;
}
