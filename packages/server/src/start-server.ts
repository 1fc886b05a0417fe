import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import os from 'node:os';
import process from 'node:process';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import { finding } from '@evenhand/core/ground/findings';
import { defaultDataFolder, openStore } from '@evenhand/store';
import { getRequestListener } from '@hono/node-server';
import { serverApp } from './app.ts';
import { seedDemo } from './demo.ts';
import { EventHub } from './event-hub.ts';
import { programFolder } from './program-folder.ts';

export interface ServerOptions {
  /** Folder for studies and films; left out, the folder for the user's data. */
  readonly dataFolder?: string | undefined;
  /** Port on 127.0.0.1; left out, the usual one or, when that is taken, any that is free. 0 is any. */
  readonly port?: number | undefined;
  /** Puts the demo study into an empty store. */
  readonly demo?: boolean | undefined;
}

export interface RunningServer {
  readonly address: string;
  readonly dataFolder: string;
  readonly close: () => Promise<void>;
}

const usualPort = 47_318;

/** Starts the local server. Findings of the store, or `server/port` when a named port is taken. */
export async function startServer(options: ServerOptions): Promise<Result<RunningServer, Finding>> {
  const folder =
    options.dataFolder ??
    defaultDataFolder({ platform: process.platform, home: os.homedir(), env: process.env });
  const opened = await openStore({ folder, clock: Date.now });
  if (!opened.ok) return opened;
  const store = opened.value;
  if (options.demo === true) await seedDemo(store, programFolder());
  const hub = new EventHub();
  const app = serverApp({ store, hub, program: programFolder() });
  const server = createServer(getRequestListener(app.fetch));
  // A film may take longer than the usual five minutes.
  server.requestTimeout = 0;
  const port = await listen(server, options.port);
  if (port === undefined) {
    await store.dispose();
    return fail(finding('server/port', {}, { port: options.port ?? usualPort }));
  }
  const sweeping = setInterval(() => void store.films.sweep('later').catch(() => undefined), 3_600_000);
  sweeping.unref();
  const close = async () => {
    clearInterval(sweeping);
    hub.dispose();
    const closed = new Promise<void>((resolve) => server.close(() => resolve()));
    server.closeAllConnections();
    await closed;
    await store.dispose();
  };
  return ok({ address: `http://127.0.0.1:${port}/`, dataFolder: store.folder, close });
}

async function listen(
  server: ReturnType<typeof createServer>,
  wish: number | undefined,
): Promise<number | undefined> {
  const first = await tryPort(server, wish ?? usualPort);
  if (first !== undefined || wish !== undefined) return first;
  return await tryPort(server, 0);
}

function tryPort(server: ReturnType<typeof createServer>, port: number): Promise<number | undefined> {
  return new Promise((resolve) => {
    const onError = () => resolve(undefined);
    server.once('error', onError);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', onError);
      resolve((server.address() as AddressInfo).port);
    });
  });
}
