import { chmod, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { nodeFiles } from './node-files.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(path.join(os.tmpdir(), 'evenhand-files-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

describe('the real files', () => {
  const io = nodeFiles;
  const at = (name: string) => path.join(folder, name);

  it.each<[string, string, RegExp]>([
    ['a file that is not there', 'none.json', /there is no such file or folder/],
    ['a folder', '.', /it is a folder/],
    ['a path through a file', 'plain.txt/a.json', /a part of its path is a file/],
    ['a name that no file can have', 'a\0b', /a character that no file name can have/],
    ['a name too long', 'x'.repeat(300), /its name is too long/],
  ])('reading %s is told in words', async (_, name, reason) => {
    await writeFile(at('plain.txt'), 'x');
    await expect(io.readFile(`${folder}/${name}`)).rejects.toThrow(reason);
    expect(await io.readFault(`${folder}/${name}`)).toMatch(reason);
    expect(await io.readFault(at('plain.txt'))).toBeUndefined();
  });

  it.each<[string, string, RegExp]>([
    ['into a folder that is not there', 'none/a.json', /there is no such file or folder/],
    ['over a folder', '.', /it is a folder/],
    ['into a file', 'plain.txt/a.json', /a part of its path is a file/],
  ])('writing %s is told in words and leaves nothing behind', async (_, name, reason) => {
    await writeFile(at('plain.txt'), 'x');
    const before = await readdir(folder);
    expect(await io.writeFault(`${folder}/${name}`)).toMatch(reason);
    expect(await io.writeFault(at('new.json'))).toBeUndefined();
    await expect(io.writeFile(`${folder}/${name}`, 'x')).rejects.toThrow(reason);
    expect(await readdir(folder)).toEqual(before);
  });

  it('a file is replaced whole', async () => {
    await io.writeFile(at('b.txt'), 'a long first text');
    await io.writeFile(at('b.txt'), 'short');
    expect(await readFile(at('b.txt'), 'utf8')).toBe('short');
    expect(await io.exists(at('b.txt'))).toBe(true);
    expect(await io.exists(at('c.txt'))).toBe(false);
  });

  it('a file that is replaced keeps who may read it', async () => {
    await io.writeFile(at('d.txt'), 'one');
    await chmod(at('d.txt'), 0o600);
    await io.writeFile(at('d.txt'), 'two');
    if (process.platform !== 'win32') expect((await stat(at('d.txt'))).mode & 0o777).toBe(0o600);
  });

  it('today is a date of this calendar', () => expect(io.today()).toMatch(/^20\d\d-[01]\d-[0-3]\d$/));
});
