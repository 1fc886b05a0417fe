import { spawn } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import os from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseStudy, writeStudy } from '@evenhand/core/ground/study';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import manifest from '../package.json' with { type: 'json' };
import { smallStudy } from './testing/small-study.ts';

/** Runs the program from its source, wherever the process stands. */
const loader = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;
const main = fileURLToPath(new URL('./main.ts', import.meta.url));
let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(path.join(os.tmpdir(), 'evenhand-cli-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the program as a process of its own. `readOnly` closes stdout after so many bytes, as `head` does. */
function evenhand(argv: readonly string[], stdin = '', readOnly = Number.POSITIVE_INFINITY): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', loader, main, ...argv], { cwd: folder });
    let [out, err] = ['', ''];
    child.stdout.on('data', (part) => {
      out += part;
      if (out.length >= readOnly) child.stdout.destroy();
    });
    child.stderr.on('data', (part) => {
      err += part;
    });
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, err }));
    child.stdin.end(stdin);
  });
}

describe('the program as a process', () => {
  it('takes a table from standard input to a file, and from there to standard output, to the same bytes', async () => {
    const csv =
      '\uFEFFhand,motion,start_s,end_s,object,from,to,cycle\r\nleft,H,0,2.5,Gehäuse,,,1\r\nright,TE,0,2.5,,,Kästchen,1\r\n';
    const made = await evenhand(
      ['record', 'import', '-', '-o', 'a.evenhand.json', '--title', 'Kupplung'],
      csv,
    );
    expect([made.code, made.out]).toEqual([0, '']);
    const study = parseStudy(await readFile(path.join(folder, 'a.evenhand.json'), 'utf8'));
    expect(study.ok && study.value.title).toBe('Kupplung');
    expect(study.ok && study.value.id).toMatch(/^[A-Za-z0-9_-]{16}$/);
    const again = await evenhand(['record', 'export', 'a.evenhand.json', '-o', '-', '--as', 'csv']);
    expect(again).toMatchObject({ code: 0, out: csv });
    expect((await readdir(folder)).filter((name) => name.startsWith('.'))).toEqual([]);
  });

  it('tells faults of a study with exit code 1, and its version', async () => {
    const broken = writeStudy(smallStudy).replace('"kind": "H"', '"kind": "hold"');
    const { code, out, err } = await evenhand(['check', '-'], broken);
    expect(code).toBe(1);
    expect(out).toContain('error: standard input: /methods/0/left/items/0/kind');
    expect(err).toBe('standard input: 1 error.\n');
    expect(await evenhand(['--version'])).toEqual({ code: 0, out: `${manifest.version}\n`, err: '' });
  });

  it('a reader that goes away is no fault', async () => {
    const items = Array.from({ length: 20_000 }, (_, index) => ({
      id: `i${index}`,
      start: index,
      kind: 'G' as const,
      said: 'marked' as const,
    }));
    const methods = smallStudy.methods.map((method) => ({ ...method, left: { items, end: 30_000 } }));
    await writeFile(path.join(folder, 'long.json'), writeStudy({ ...smallStudy, methods }));
    const { code, err } = await evenhand(
      ['record', 'export', 'long.json', '-o', '-', '--as', 'csv', '--method', 'present'],
      '',
      100,
    );
    expect([code, err]).toEqual([0, '']);
  });

  it('a call that is wrong gives 2 and no stack', async () => {
    const { code, out, err } = await evenhand(['record', 'chart']);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/^error: STUDY is missing\. Try: evenhand record chart .+\[cli\/use\]\n$/);
  });

  it('draws a chart as PDF, and as SVG with its typeface inside', async () => {
    await writeFile(path.join(folder, 'small.json'), writeStudy(smallStudy));
    const pdf = await evenhand([
      'record',
      'chart',
      'small.json',
      '-o',
      'c.pdf',
      '--method',
      'better',
      '--form',
      'process',
    ]);
    expect([pdf.code, pdf.out, pdf.err]).toEqual([0, '', 'Wrote c.pdf.\n']);
    expect((await readFile(path.join(folder, 'c.pdf'), 'latin1')).slice(0, 5)).toBe('%PDF-');
    const svg = await evenhand([
      'record',
      'chart',
      'small.json',
      '-o',
      '-',
      '--as',
      'svg',
      '--method',
      'better',
    ]);
    expect(svg.code).toBe(0);
    expect(svg.out).toContain('@font-face');
  });

  it('serves on this machine until it is told to stop, and prints where', async () => {
    const child = spawn(process.execPath, [
      '--import',
      loader,
      main,
      'serve',
      '--data',
      path.join(folder, 'data'),
    ]);
    const address = await new Promise<string>((resolve, reject) => {
      let out = '';
      child.stdout.on('data', (part) => {
        out += part;
        if (out.includes('\n')) resolve(out.trim());
      });
      child.on('close', (code) => reject(new Error(`the server ended with ${code}`)));
    });
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/?$/);
    const health = await fetch(new URL('/api/health', address));
    expect(await health.json()).toMatchObject({ name: 'evenhand' });
    const ended = new Promise((resolve) => child.on('close', resolve));
    child.kill('SIGTERM');
    expect(await ended).toBe(0);
  });
});
