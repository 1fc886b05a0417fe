import { createServer, type Server } from 'node:http';
import os from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, findingLine } from '@evenhand/core/ground/findings';
import { type Clock, type DataStore, defaultDataFolder, openStore } from '@evenhand/store';
import { getRequestListener } from '@hono/node-server';
import { serverApp } from './app.ts';
import { type Demo, demoIn, seedDemo } from './demo.ts';
import { EventHub } from './event-hub.ts';
import { listen } from './listen.ts';
import { programFolder } from './program-folder.ts';

export interface ServerOptions {
  /** Folder for studies and films; left out, the folder for the user's data. */
  readonly dataFolder?: string | undefined;
  /** Port on 127.0.0.1; left out, the usual one or the next that is free. 0 is any. */
  readonly port?: number | undefined;
  /** Puts a demo study into an empty store: true for the one that comes with the program. */
  readonly demo?: boolean | Demo | undefined;
  /** Folder of the built page; left out, the one in the folder of the program. */
  readonly page?: string | undefined;
  /** Milliseconds since 1970. */
  readonly clock?: Clock | undefined;
  /** Takes lines for the person who runs the server; left out, they go to stderr. */
  readonly log?: ((line: string) => void) | undefined;
}

export interface RunningServer {
  readonly address: string;
  readonly dataFolder: string;
  /** Ends; asked again, it waits for the same end. */
  readonly close: () => Promise<void>;
}

const HOUR_MS = 3_600_000;
/** How long a request that is being answered may go on after the end was asked for. */
const LAST_ANSWERS_MS = 1000;

/** Starts the local server. Findings of the store, or `server/port` when a named port is taken. */
export async function startServer(options: ServerOptions): Promise<Result<RunningServer, Finding>> {
  const log = options.log ?? ((line: string) => void process.stderr.write(`${line}\n`));
  const folder =
    options.dataFolder ??
    defaultDataFolder({ platform: process.platform, home: os.homedir(), env: process.env });
  const opened = await openStore({ folder, clock: options.clock ?? Date.now });
  if (!opened.ok) return opened;
  const store = opened.value;
  await putInDemo(store, options.demo ?? false, log);
  const hub = new EventHub();
  const page = options.page ?? path.join(programFolder(), 'dist', 'app');
  let port = 0;
  const app = serverApp({ store, hub, page, port: () => port, log });
  const server = createServer(getRequestListener(app.fetch));
  // A film may take longer than the usual five minutes.
  server.requestTimeout = 0;
  const listening = await listen(server, options.port);
  if (!listening.ok) {
    await store.dispose();
    return listening;
  }
  port = listening.value;
  const sweeping = setInterval(
    () => void store.films.sweep('later').catch((error: unknown) => log(`sweeping: ${String(error)}`)),
    HOUR_MS,
  );
  sweeping.unref();
  const end = async () => {
    clearInterval(sweeping);
    hub.dispose();
    await closeServer(server);
    await store.dispose();
  };
  let ending: Promise<void> | undefined;
  const close = async () => {
    ending ??= end();
    await ending;
  };
  return ok({ address: `http://127.0.0.1:${port}/`, dataFolder: store.folder, close });
}

/** A demo that cannot be put in is no reason not to start. */
async function putInDemo(store: DataStore, wish: boolean | Demo, log: (line: string) => void): Promise<void> {
  if (wish === false) return;
  try {
    const seeded = await seedDemo(store, wish === true ? demoIn(programFolder()) : wish);
    if (!seeded.ok) for (const item of seeded.error) log(`The demo was left out: ${findingLine(item)}`);
  } catch (error) {
    log(`The demo was left out: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** Takes no more requests, lets those under way end, and cuts off what still goes on after a second. */
async function closeServer(server: Server): Promise<void> {
  const closed = new Promise<void>((resolve) => server.close(() => resolve()));
  const asked = Date.now();
  const tidy = setInterval(() => {
    if (Date.now() - asked < LAST_ANSWERS_MS) server.closeIdleConnections();
    else server.closeAllConnections();
  }, 20);
  await closed;
  clearInterval(tidy);
}
