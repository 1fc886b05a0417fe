import { finding } from '@evenhand/core/ground/findings';
import { decodeTrack, type Track } from '@evenhand/core/record';
import { describe, expect, it } from 'vitest';
import type { FoundTrack, Io } from '../io.ts';
import { call } from '../testing/fake-io.ts';

const track: Track = {
  source: 'landmarks',
  frames: 2,
  width: 640,
  height: 360,
  unit: 'pixels',
  right: {
    x: Float32Array.of(10, Number.NaN),
    y: Float32Array.of(20, Number.NaN),
    opening: Float32Array.of(0.5, Number.NaN),
    presence: Float32Array.of(0.75, 0),
  },
};
const report = { frames: 2, both: 0, leftOnly: 0, rightOnly: 1, none: 1 };
const files = { 'a.mp4': 'a film' };

const finds =
  (found: Partial<FoundTrack> = {}): Io['trackFilm'] =>
  async (_, { onProgress }) => {
    onProgress({ done: 1, frames: 2, secondsLeft: 1 });
    return { ok: true, value: { track, report, findings: [], ...found } };
  };

describe('evenhand record track', () => {
  it('writes a track file that can be read back', async () => {
    const {
      code,
      err,
      files: after,
    } = await call(['record', 'track', 'a.mp4', '-o', 'a.bin'], {
      files,
      trackFilm: finds(),
    });
    expect(code).toBe(0);
    expect(err).toContain('Both hands in 0 of 2 frames, only the left in 0, only the right in 1, none in 1.');
    const back = decodeTrack(after['a.bin'] as Uint8Array);
    expect(back.ok && back.value.right?.x[0]).toBe(10);
    expect(back.ok && back.value.left).toBeUndefined();
  });

  it('writes a table to standard output', async () => {
    const { code, out } = await call(['record', 'track', 'a.mp4', '-o', '-', '--as', 'csv'], {
      files,
      trackFilm: finds(),
    });
    expect(code).toBe(0);
    expect(out.split(/\r?\n/).slice(0, 2)).toEqual([
      'frame,hand,x,y,opening,presence',
      '0,right,10,20,0.5,0.75',
    ]);
  });

  it('says before the search that its result cannot be written', async () => {
    let searched = false;
    const trackFilm: Io['trackFilm'] = async (film, wishes) => {
      searched = true;
      return await finds()(film, wishes);
    };
    const words = ['record', 'track', 'a.mp4', '-o', 'nowhere/a.bin'];
    const { code, err } = await call(words, { files, trackFilm });
    expect(code).toBe(2);
    expect(err).toContain('nowhere/a.bin cannot be written: there is no such file or folder.');
    expect(searched).toBe(false);
  });

  it('passes on what is asked', async () => {
    const asked: unknown[] = [];
    await call(['record', 'track', 'films/a.mp4', '-o', 'a.bin', '--mirrored', '--workers', '1'], {
      files: { 'films/a.mp4': 'a film' },
      trackFilm: async (file, { name, mirrored, workers }) => {
        asked.push([file, name, mirrored, workers]);
        return { ok: true, value: { track, report, findings: [] } };
      },
    });
    expect(asked).toEqual([['films/a.mp4', 'a.mp4', true, 1]]);
  });

  it('with a warning writes the track, says the warning and ends with 1', async () => {
    const warning = finding('hands/one', {}, { hand: 'right', other: 'left', seen: 1, frames: 2 });
    const {
      code,
      err,
      out,
      files: after,
    } = await call(['record', 'track', 'a.mp4', '-o', 'a.csv', '--json'], {
      files,
      trackFilm: finds({ findings: [warning] }),
    });
    expect(code).toBe(1);
    expect(err).toContain('warning: a.mp4: Only the right hand was seen');
    expect(JSON.parse(out)).toMatchObject({ ok: true, report, findings: [{ code: 'hands/one' }] });
    expect(after['a.csv']).toBeDefined();
  });

  it('without a browser says what to do and writes nothing', async () => {
    const { code, err, files: after } = await call(['record', 'track', 'a.mp4', '-o', 'a.bin'], { files });
    expect([code, after['a.bin']]).toEqual([2, undefined]);
    expect(err).toContain('npm run browser');
  });

  it.each([
    [['none.mp4', '-o', 'a.bin'], 'none.mp4 cannot be read: there is no such file'],
    [['a.mp4', '-o', 'a.txt'], 'a.txt does not end in .bin or .csv'],
    [['a.mp4', '-o', 'a.bin', '--workers', '3'], '--workers 3 is not 1 or 2'],
    [['a.mp4', '-o', '-', '--as', 'csv', '--json'], 'both want standard output'],
  ])('%j is refused in words', async (words, text) => {
    const { code, err } = await call(['record', 'track', ...words], { files, trackFilm: finds() });
    expect(code).toBe(2);
    expect(err).toContain(text);
  });
});
