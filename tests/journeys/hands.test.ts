import { spawn } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { decodeTrack } from '@evenhand/core/record';
import { FilePathSource } from 'mediabunny';
import { describe, expect, it, onTestFinished } from 'vitest';
import { firstFrames } from '../films/short-film.ts';

const root = path.resolve(import.meta.dirname, '..', '..');
const built = path.join(root, 'dist', 'app');

async function folder(): Promise<string> {
  const made = await mkdtemp(path.join(os.tmpdir(), 'evenhand-hands-'));
  onTestFinished(() => rm(made, { recursive: true, force: true }));
  return made;
}

function evenhand(
  args: readonly string[],
  env: NodeJS.ProcessEnv = {},
): Promise<{ code: number | null; err: string }> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [path.join(root, 'dist', 'cli', 'evenhand.js'), ...args], {
      env: { ...process.env, ...env },
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    let err = '';
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      err += text;
    });
    child.on('exit', (code) => resolve({ code, err }));
  });
}

describe('the built program seeks hands', () => {
  it('by the command line, in a browser without a window, under the strict policy of the page', async () => {
    const here = await folder();
    const film = path.join(here, 'couplings.mp4');
    writeFileSync(
      film,
      await firstFrames(new FilePathSource(path.join(root, 'examples', 'couplings', 'present.mp4')), 10),
    );
    const output = path.join(here, 'couplings.bin');
    const { code, err } = await evenhand(['record', 'track', film, '-o', output]);
    expect([code, err]).toEqual([0, expect.stringContaining('of 10 frames')]);
    const track = decodeTrack(new Uint8Array(readFileSync(output)));
    if (!track.ok) throw new Error(track.error.message);
    const { frames, width, height, left, right } = track.value;
    expect([frames, width, height]).toEqual([10, 960, 540]);
    const [x, y] = [left?.x[5] ?? Number.NaN, right?.x[5] ?? Number.NaN];
    expect(x).toBeLessThan(y);
  });

  it('or says that there is no browser, and writes nothing', async () => {
    const here = await folder();
    const film = path.join(here, 'couplings.mp4');
    writeFileSync(film, 'not looked at');
    const output = path.join(here, 'couplings.bin');
    const { code, err } = await evenhand(['record', 'track', film, '-o', output], {
      EVENHAND_BROWSER: path.join(here, 'none'),
    });
    expect(code).toBe(2);
    expect(err).toContain('not a program that can be run');
    expect(readdirSync(here)).toEqual(['couplings.mp4']);
  });

  it('or says what is wrong with the film', async () => {
    const here = await folder();
    const film = path.join(here, 'letter.mp4');
    writeFileSync(film, 'Dear Sir or Madam');
    const { code, err } = await evenhand(['record', 'track', film, '-o', path.join(here, 'a.bin')]);
    expect(code).toBe(2);
    expect(err).toContain('letter.mp4');
    expect(err).not.toMatch(/\bat .*:\d+:\d+/);
  });
});

describe('the build holds what the search for hands needs', () => {
  const assets = readdirSync(path.join(built, 'assets'));
  const asset = (name: RegExp) => {
    const found = assets.filter((file) => name.test(file));
    expect([name.source, found.length]).toEqual([name.source, 1]);
    return readFileSync(path.join(built, 'assets', found[0] ?? ''));
  };
  const original = (name: string) => readFileSync(path.join(root, 'node_modules', name));

  it('models and WebAssembly files, byte for byte', () => {
    for (const [built, from] of [
      [/^hand_landmark_full-.*\.tflite$/, '@mediapipe/hands/hand_landmark_full.tflite'],
      [/^hands_solution_packed_assets-.*\.data$/, '@mediapipe/hands/hands_solution_packed_assets.data'],
      [/^litert_wasm_internal-.*\.wasm$/, '@litertjs/core/wasm/litert_wasm_internal.wasm'],
      [/^litert_wasm_compat_internal-.*\.wasm$/, '@litertjs/core/wasm/litert_wasm_compat_internal.wasm'],
    ] as const)
      expect([from, asset(built).equals(original(from))]).toEqual([from, true]);
  });

  it('the notice of their makers, with the whole licence and the versions that are in use', () => {
    const text = readFileSync(path.join(built, 'hand-models-licence.txt'), 'utf8');
    for (const name of ['@mediapipe/hands', '@litertjs/core']) {
      const { version, license } = JSON.parse(original(`${name}/package.json`).toString());
      expect(license).toBe('Apache-2.0');
      expect(text).toContain(`${name} ${version}`);
    }
    expect(text).toContain('Version 2.0, January 2004');
    expect(text).toContain('4. Redistribution.');
    expect(text).toContain('END OF TERMS AND CONDITIONS');
  });
});
