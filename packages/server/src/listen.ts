import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';

/** Not among the ports that IANA has assigned. */
const usualPort = 47_318;
const NEIGHBOURS = 20;

/**
 * Listens on 127.0.0.1 and nowhere else. Without a wish it takes the usual port or the next free one: edits that wait
 * in a browser belong to one address, so the port should be the same from start to start.
 * Finding `server/port` when the wished port cannot be had.
 */
export async function listen(server: Server, wish: number | undefined): Promise<Result<number, Finding>> {
  if (wish !== undefined) {
    const tried = await tryPort(server, wish);
    if (tried.ok) return tried;
    return fail(finding('server/port', {}, { port: wish, reason: tried.error }));
  }
  for (let port = usualPort; port < usualPort + NEIGHBOURS; port += 1) {
    const tried = await tryPort(server, port);
    if (tried.ok) return tried;
  }
  const tried = await tryPort(server, 0);
  return tried.ok ? tried : fail(finding('server/port', {}, { port: usualPort, reason: tried.error }));
}

function tryPort(server: Server, port: number): Promise<Result<number, string>> {
  return new Promise((resolve) => {
    const onError = (error: NodeJS.ErrnoException) => {
      server.off('listening', onListening);
      resolve(fail(error.code === 'EADDRINUSE' ? 'another program uses it' : error.message));
    };
    const onListening = () => {
      server.off('error', onError);
      resolve(ok((server.address() as AddressInfo).port));
    };
    server.once('error', onError);
    server.once('listening', onListening);
    server.listen(port, '127.0.0.1');
  });
}
