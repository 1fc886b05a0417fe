import { IoFault, type RunningServer, type ServeOptions } from './io.ts';

/** The server is loaded only when it is wanted: all other commands start without it. */
export async function startServe(options: ServeOptions): Promise<RunningServer> {
  const { startServer } = await import('@evenhand/server');
  const started = await startServer(options);
  if (!started.ok) throw new IoFault(started.error.message);
  return started.value;
}
