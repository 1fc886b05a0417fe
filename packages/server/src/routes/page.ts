import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { type Context, Hono } from 'hono';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.wasm': 'application/wasm',
  '.map': 'application/json',
};

/**
 * The built page: its files by name, and the page itself for the addresses of studies.
 * @param folder where the built page lies
 */
export function pageRoutes(folder: string): Hono {
  const assets = path.join(folder, 'assets');
  const routes = new Hono();
  const page = async (context: Context) =>
    (await sendFile(context, path.join(folder, 'index.html'), 'no-cache')) ??
    context.text('The page is not built yet: run “npm run build”, then load this address again.', 503);
  routes.get('/', page);
  routes.get('/studies/*', page);
  // The name of a file in assets holds a hash of its bytes, so it never changes.
  routes.get('/assets/:name', (context) =>
    named(context, assets, context.req.param('name'), 'private, max-age=31536000, immutable'),
  );
  routes.get('/:name', (context) => named(context, folder, context.req.param('name'), 'no-cache'));
  return routes;
}

/** A name is one file in one folder: nothing that could lead out of it. */
async function named(context: Context, folder: string, name: string, keep: string): Promise<Response> {
  const plain = /^[A-Za-z0-9_][A-Za-z0-9._-]*$/.test(name);
  const sent = plain ? await sendFile(context, path.join(folder, name), keep) : undefined;
  return sent ?? context.text('There is no such address.', 404);
}

async function sendFile(context: Context, file: string, keep: string): Promise<Response | undefined> {
  const bytes = await readFile(file).catch(() => undefined);
  if (bytes === undefined) return undefined;
  context.header('Content-Type', types[path.extname(file)] ?? 'application/octet-stream');
  context.header('Cache-Control', keep);
  return context.body(new Uint8Array(bytes));
}
