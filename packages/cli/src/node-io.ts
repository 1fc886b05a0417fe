import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { lstat, open, readFile, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import process from 'node:process';
import manifest from '../package.json' with { type: 'json' };
import { type Io, IoFault } from './io.ts';
import { startServe } from './start-serve.ts';

/** The outside world as Node gives it. */
export function nodeIo(): Io {
  return {
    readFile: (file) => told(() => readFile(file)),
    exists: async (file) =>
      stat(file).then(
        () => true,
        () => false,
      ),
    writeFile: (file, content) => told(() => writeWhole(file, content)),
    readStdin,
    out,
    say: (message) => {
      process.stderr.write(`${message}\n`);
    },
    newId: () => randomBytes(12).toString('base64url'),
    today,
    version: manifest.version,
    pdf: async (pages, look) => {
      const { scenesToPdf } = await import('@evenhand/draw/pdf');
      return scenesToPdf(pages, look);
    },
    serve: startServe,
    openBrowser,
    stopped,
  };
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is a file, not a folder',
  EACCES: 'access is not allowed',
  EPERM: 'access is not allowed',
  EROFS: 'the disk can only be read',
  ENOSPC: 'the disk is full',
  ENAMETOOLONG: 'its name is too long',
  EMFILE: 'too many files are open',
  ERR_INVALID_ARG_VALUE: 'its name holds a character that no file name can have',
  ERR_FS_FILE_TOO_LARGE: 'it is larger than 2 GB, which no study or table is',
};

/** Turns what Node says into words; anything unforeseen keeps its code. */
async function told<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === undefined) throw error;
    throw new IoFault(reasons[code] ?? `the system answers ${code}`);
  }
}

/** Writes beside the target and then takes its place, so that a full disk or a stop leaves the old file whole. */
async function writeWhole(file: string, content: string | Uint8Array): Promise<void> {
  const there = await lstat(file).catch(() => undefined);
  if (there?.isDirectory()) throw new IoFault('it is a folder');
  // A pipe, a device or a link is written to, not replaced.
  const direct = there !== undefined && !there.isFile();
  const target = direct
    ? file
    : path.join(path.dirname(file), `.${path.basename(file)}.${randomBytes(4).toString('hex')}`);
  try {
    const handle = await open(target, 'w');
    try {
      await handle.writeFile(content);
      if (!direct) await handle.sync();
    } finally {
      await handle.close();
    }
    if (!direct) await rename(target, file);
  } catch (error) {
    if (!direct) await rm(target, { force: true });
    throw error;
  }
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

function today(): string {
  const date = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
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
