import type { RunningServer, ServeOptions } from './io.ts';

/** The server is loaded only when it is wanted: all other commands start without it. */
export async function startServe(options: ServeOptions): Promise<RunningServer> {
  const { startServer } = await import('@evenhand/server');
  return startServer(options);
}
