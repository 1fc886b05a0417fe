import { randomBytes } from 'node:crypto';
import { access, constants, lstat, open, readFile, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { type Io, IoFault } from './io.ts';

/** Files and the calendar as Node gives them; what the system refuses comes back in words. */
export const nodeFiles: Pick<Io, 'readFile' | 'exists' | 'readFault' | 'writeFault' | 'writeFile' | 'today'> =
  {
    readFile: (file) => told(() => readFile(file)),
    exists: async (file) =>
      stat(file).then(
        () => true,
        () => false,
      ),
    readFault: (file) => fault(() => readable(file)),
    writeFault: (file) => fault(() => writable(file)),
    writeFile: (file, content) => told(() => writeWhole(file, content)),
    today,
  };

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

async function fault(work: () => Promise<void>): Promise<string | undefined> {
  try {
    await told(work);
    return undefined;
  } catch (error) {
    if (!(error instanceof IoFault)) throw error;
    return error.message;
  }
}

async function readable(file: string): Promise<void> {
  const handle = await open(file, 'r');
  try {
    if ((await handle.stat()).isDirectory()) throw new IoFault('it is a folder');
  } finally {
    await handle.close();
  }
}

async function writable(file: string): Promise<void> {
  const there = await stat(file).catch(() => undefined);
  if (there?.isDirectory()) throw new IoFault('it is a folder');
  if (there !== undefined && !there.isFile()) return;
  await access(path.join(path.dirname(file), '.'), constants.W_OK);
  if (!(await stat(path.dirname(file))).isDirectory()) throw new IoFault(reasons.ENOTDIR ?? '');
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
    const handle = await open(target, 'w', direct ? undefined : there?.mode);
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

function today(): string {
  const date = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
