import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { type Context, Hono } from 'hono';
import type { AppParts } from '../app.ts';

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

/** The built page: its files by name, and the page itself for the addresses of studies. */
export function pageRoutes({ program }: AppParts): Hono {
  const folder = path.join(program, 'dist', 'app');
  const routes = new Hono();
  const page = (context: Context) => sendFile(context, path.join(folder, 'index.html'));
  routes.get('/', page);
  routes.get('/studies/*', page);
  routes.get('/assets/:name', (context) =>
    named(context, path.join(folder, 'assets'), context.req.param('name')),
  );
  routes.get('/:name', (context) => named(context, folder, context.req.param('name')));
  return routes;
}

/** A name is one file in one folder: nothing that could lead out of it. */
function named(context: Context, folder: string, name: string): Promise<Response> | Response {
  if (!/^[A-Za-z0-9_][A-Za-z0-9._-]*$/.test(name)) return context.text('There is no such address.', 404);
  return sendFile(context, path.join(folder, name));
}

async function sendFile(context: Context, file: string): Promise<Response> {
  try {
    const bytes = await readFile(file);
    context.header('Content-Type', types[path.extname(file)] ?? 'application/octet-stream');
    context.header(
      'Cache-Control',
      file.includes(`${path.sep}assets${path.sep}`) ? 'private, max-age=31536000, immutable' : 'no-cache',
    );
    return context.body(new Uint8Array(bytes));
  } catch {
    return context.text('There is no such address.', 404);
  }
}
