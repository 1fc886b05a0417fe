import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import process from 'node:process';
import manifest from '../package.json' with { type: 'json' };
import type { Io } from './io.ts';
import { nodeFiles } from './node-files.ts';

/** The outside world as Node gives it. */
export function nodeIo(): Io {
  return {
    ...nodeFiles,
    readStdin,
    out,
    say: (message) => {
      process.stderr.write(`${message}\n`);
    },
    now: () => performance.now(),
    newId: () => randomBytes(12).toString('base64url'),
    version: manifest.version,
    svgFonts: async () => {
      const { svgFonts } = await import('@evenhand/draw/pdf');
      return svgFonts();
    },
    pdf: async (pages, look) => {
      const { scenesToPdf } = await import('@evenhand/draw/pdf');
      return scenesToPdf(pages, look);
    },
    // The server is loaded only when it is wanted: all other commands start without it.
    serve: async (options) => {
      const { startServer } = await import('@evenhand/server');
      return startServer(options);
    },
    trackFilm: async (file, wishes) => {
      const { trackInBrowser } = await import('./browser/track-in-browser.ts');
      return trackInBrowser(file, wishes);
    },
    openBrowser,
    stopped,
  };
}

async function readStdin(): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  for await (const part of process.stdin) parts.push(part as Uint8Array);
  return Buffer.concat(parts);
}

function out(content: string | Uint8Array): Promise<void> {
  return new Promise((resolve, reject) => {
    process.stdout.write(content, (error) => {
      // A reader that went away is met where the stream reports it.
      if (error && (error as NodeJS.ErrnoException).code !== 'EPIPE') reject(error);
      else resolve();
    });
  });
}

function openBrowser(address: string): boolean {
  const { platform, env } = process;
  const opener =
    platform === 'darwin'
      ? ['open', address]
      : platform === 'win32'
        ? ['cmd', '/c', 'start', '""', address]
        : env.DISPLAY || env.WAYLAND_DISPLAY
          ? ['xdg-open', address]
          : undefined;
  if (opener === undefined) return false;
  const [program = '', ...args] = opener;
  const child = spawn(program, args, {
    detached: true,
    stdio: 'ignore',
    windowsVerbatimArguments: platform === 'win32',
  });
  // Without an opener the address has still been printed.
  child.on('error', () => {});
  child.unref();
  return true;
}

function stopped(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => resolve());
  });
}
