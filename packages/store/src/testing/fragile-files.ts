import { closeSync, existsSync, openSync, renameSync, statSync, writeSync } from 'node:fs';
import path from 'node:path';
import { type Files, realFiles } from '../files.ts';

type Handle = Awaited<ReturnType<Files['open']>>;
interface Dirty {
  start: number;
  end: number;
}

export class PowerCut extends Error {}

/**
 * The file system of this machine with a power cut in it. Every call that changes something counts; from call number
 * `cutAt` on all of them fail. `settle` then leaves what a disk may hold after the cut at worst: bytes that were written
 * but not flushed are zeros, and, if asked, a renaming whose folder was not flushed has not happened.
 */
export class FragileFiles {
  /** What was done, in order, with paths relative to the root. */
  readonly done: string[] = [];
  readonly files: Files;
  readonly #root: string;
  readonly #cutAt: number;
  readonly #dirty = new Map<string, Dirty[]>();
  #renames: { readonly from: string; readonly to: string }[] = [];

  constructor(root: string, cutAt = Number.POSITIVE_INFINITY) {
    this.#root = root;
    this.#cutAt = cutAt;
    const change = <T>(what: string, run: () => Promise<T>) => this.#change(what, run);
    this.files = {
      ...realFiles,
      open: (async (file: string, flags: string) => {
        const open = async () => this.#watch(file, await realFiles.open(file, flags));
        return flags === 'r' ? await open() : await change(`open ${this.#name(file)}`, open);
      }) as Files['open'],
      rename: async (from, to) => {
        await change(`rename ${this.#name(String(from))} ${this.#name(String(to))}`, async () => {
          const fresh = !existsSync(to);
          await realFiles.rename(from, to);
          this.#dirty.set(String(to), this.#dirty.get(String(from)) ?? []);
          this.#dirty.delete(String(from));
          if (fresh) this.#renames.push({ from: String(from), to: String(to) });
        });
      },
      unlink: async (file) =>
        await change(`unlink ${this.#name(String(file))}`, () => realFiles.unlink(file)),
      copyFile: async (from, to) => {
        await change(`copy ${this.#name(String(to))}`, async () => {
          await realFiles.copyFile(from, to);
          this.#dirty.set(String(to), [{ start: 0, end: statSync(to).size }]);
        });
      },
    };
  }

  settle(undoRenames: boolean): void {
    if (undoRenames)
      for (const { from, to } of this.#renames.toReversed()) if (existsSync(to)) renameSync(to, from);
    for (const [file, ranges] of this.#dirty) {
      const there = [file, ...this.#renames.filter((item) => item.to === file).map((item) => item.from)];
      const found = there.find((name) => existsSync(name));
      if (found !== undefined) for (const range of ranges) zero(found, range);
    }
  }

  async #change<T>(what: string, run: () => Promise<T>): Promise<T> {
    if (this.done.length >= this.#cutAt) throw new PowerCut(what);
    this.done.push(what);
    return await run();
  }

  #watch(file: string, handle: Handle): Handle {
    const dirty = (start: number, end: number) =>
      this.#dirty.set(file, [...(this.#dirty.get(file) ?? []), { start, end }]);
    const own: Partial<Record<keyof Handle, unknown>> = {
      sync: async () => {
        await this.#change(`flush ${this.#name(file)}`, () => handle.sync());
        this.#dirty.delete(file);
        this.#renames = this.#renames.filter((item) => path.dirname(item.to) !== file);
      },
      write: async (bytes: Uint8Array, offset: number, length: number, at: number) =>
        await this.#change(`write ${this.#name(file)}`, async () => {
          dirty(at, at + length);
          return await handle.write(bytes, offset, length, at);
        }),
      writeFile: async (text: string) =>
        await this.#change(`write ${this.#name(file)}`, async () => {
          dirty(0, Buffer.byteLength(text));
          await handle.writeFile(text);
        }),
      truncate: async (size: number) =>
        await this.#change(`truncate ${this.#name(file)}`, () => handle.truncate(size)),
    };
    return new Proxy(handle, {
      get: (target, key) => {
        const replaced = own[key as keyof Handle];
        if (replaced !== undefined) return replaced;
        const value: unknown = Reflect.get(target, key, target);
        return typeof value === 'function' ? value.bind(target) : value;
      },
    });
  }

  #name(file: string): string {
    return path.relative(this.#root, file).split(path.sep).join('/') || '.';
  }
}

function zero(file: string, { start, end }: Dirty): void {
  const { size } = statSync(file);
  const stop = Math.min(end, size);
  if (stop <= start) return;
  const handle = openSync(file, 'r+');
  writeSync(handle, Buffer.alloc(stop - start), 0, stop - start, start);
  closeSync(handle);
}
