import process from 'node:process';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { DataStore } from '@evenhand/store';
import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import type { EventHub } from './event-hub.ts';
import { filmRoutes } from './routes/films.ts';
import { pageRoutes } from './routes/page.ts';
import { pdfRoute } from './routes/pdf.ts';
import { studyRoutes } from './routes/studies.ts';
import { uploadRoutes } from './routes/uploads.ts';

export interface AppParts {
  readonly store: DataStore;
  readonly hub: EventHub;
  /** Folder of the program, where the built page lies. */
  readonly program: string;
}

const policy = [
  "default-src 'self'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "media-src 'self' blob:",
  "worker-src 'self' blob:",
  "connect-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const largestJson = 256 * 1024 * 1024;

/** All routes behind the guards: this machine only, no other page, no other origin. */
export function serverApp(parts: AppParts): Hono {
  const app = new Hono();
  app.use(async (context, next) => {
    const refused = stranger(context.req.raw.headers, context.req.method);
    if (refused !== undefined) {
      return context.json({ findings: [finding('server/refused', {}, { reason: refused })] }, 403);
    }
    await next();
    context.header('Content-Security-Policy', policy);
    context.header('X-Content-Type-Options', 'nosniff');
    context.header('Referrer-Policy', 'no-referrer');
    context.header('Cross-Origin-Resource-Policy', 'same-origin');
    context.header('Cross-Origin-Opener-Policy', 'same-origin');
    return undefined;
  });
  const limit = bodyLimit({
    maxSize: largestJson,
    onError: (context) => context.json(refusal('the message is too large'), 413),
  });
  app.use('/api/studies/*', limit);
  app.use('/api/pdf', limit);
  app.get('/api/health', (context) =>
    context.json({ name: 'evenhand', version: '0.1.0', pid: process.pid, dataFolder: parts.store.folder }),
  );
  app.route('/api/studies', studyRoutes(parts));
  app.route('/api/films', filmRoutes(parts));
  app.route('/api/uploads', uploadRoutes(parts));
  app.route('/api/pdf', pdfRoute());
  app.all('/api/*', (context) => context.json(refusal('there is no such address'), 404));
  app.route('/', pageRoutes(parts));
  app.onError((error, context) => {
    process.stderr.write(`${context.req.method} ${context.req.path}: ${error.message}\n`);
    return context.json(refusal('the program met a fault of its own; nothing was changed'), 500);
  });
  return app;
}

export function refusal(reason: string): { readonly findings: readonly Finding[] } {
  return { findings: [finding('server/refused', {}, { reason })] };
}

/**
 * Why a request is not from our own page on this machine. Checking Host stops a foreign name that was pointed at this
 * machine; checking Origin and Sec-Fetch-Site stops another page that sends requests here.
 */
function stranger(headers: Headers, method: string): string | undefined {
  const host = headers.get('host') ?? '';
  if (!/^(127\.0\.0\.1|localhost)(:\d+)?$/.test(host))
    return 'it did not come to this machine by its own name';
  const origin = headers.get('origin');
  if (origin !== null && origin !== `http://${host}`) return 'it came from another page';
  const site = headers.get('sec-fetch-site');
  if (site !== null && site !== 'same-origin' && site !== 'none' && method !== 'GET')
    return 'it came from another page';
  if (site === 'cross-site' && headers.get('sec-fetch-mode') !== 'navigate')
    return 'it came from another page';
  return undefined;
}
