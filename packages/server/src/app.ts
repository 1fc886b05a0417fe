import process from 'node:process';
import { finding } from '@evenhand/core/ground/findings';
import type { DataStore } from '@evenhand/store';
import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { refusal, sayFault } from './answers.ts';
import type { EventHub } from './event-hub.ts';
import { guard } from './guard.ts';
import { filmRoutes } from './routes/films.ts';
import { pageRoutes } from './routes/page.ts';
import { pdfRoute } from './routes/pdf.ts';
import { studyRoutes } from './routes/studies.ts';
import { trackRoutes } from './routes/tracks.ts';
import { uploadRoutes } from './routes/uploads.ts';

export interface AppParts {
  readonly store: DataStore;
  readonly hub: EventHub;
  /** Folder of the built page. */
  readonly page: string;
  /** The port that is listened on. */
  readonly port: () => number;
  /** Takes a line for the person who runs the server. */
  readonly log: (line: string) => void;
}

/** A study with 60,000 motions is 6 MB of JSON; a group that changes all of them is less than four times that. */
const largestMb = 64;

/** All routes behind the guard. */
export function serverApp(parts: AppParts): Hono {
  const app = new Hono();
  app.use(guard(parts.port));
  const limit = bodyLimit({
    maxSize: largestMb * 1024 * 1024,
    onError: (context) =>
      context.json({ findings: [finding('server/too-large', {}, { limit: largestMb })] }, 413),
  });
  app.use('/api/studies/*', limit);
  app.use('/api/pdf', limit);
  app.use('/api/tracks/*', limit);
  app.get('/api/health', (context) =>
    context.json({ name: 'evenhand', version: '0.1.0', pid: process.pid, dataFolder: parts.store.folder }),
  );
  app.route('/api/studies', studyRoutes(parts));
  app.route('/api/films', filmRoutes(parts));
  app.route('/api/tracks', trackRoutes(parts));
  app.route('/api/uploads', uploadRoutes(parts));
  app.route('/api/pdf', pdfRoute(parts));
  app.all('/api/*', (context) => context.json(refusal('there is no such address'), 404));
  app.route('/', pageRoutes(parts.page));
  app.notFound((context) => context.text('There is no such address.', 404));
  app.onError((error, context) => {
    // A window that went away in the middle is no fault.
    if (!context.req.raw.signal.aborted)
      parts.log(`${context.req.method} ${context.req.path}: ${error.stack ?? error.message}`);
    return sayFault(context, error);
  });
  return app;
}
