import { mkdtemp, open, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { frameClock } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import {
  emptyFile,
  find,
  gifPicture,
  mpeg4Part2,
  oneFrame,
  soundOnly,
  textNamedMp4,
  truncatedAfterIndex,
  truncatedMkv,
  truncatedWithoutIndex,
  unknownBytes,
  withoutIndex,
} from '../../../tests/films/faulty-films.ts';
import { makeHandFilm } from '../../../tests/films/hand-films.ts';
import { indexFilm } from './open-film.ts';

type Bytes = Uint8Array<ArrayBuffer>;

async function indexed(bytes: Bytes, name = 'film.mp4') {
  const result = await indexFilm(new File([bytes], name));
  if (!result.ok) throw new Error(result.error.map((finding) => finding.message).join('; '));
  return result.value;
}

/** Microseconds of frame k at 30 frames a second, from the arithmetic. */
const thirtieth = (k: number): number => Math.round((k * 1_000_000) / 30);
const times = ({ clock }: { clock: ReturnType<typeof frameClock> }) =>
  Array.from({ length: clock.frames + 1 }, (_, k) => clock.timeOf(k) as number);

describe('index without decoding, in Node', () => {
  it('b-frames: sorted by their own times', async () => {
    const film = await indexed(await makeHandFilm());
    expect(times(film)).toEqual(Array.from({ length: 31 }, (_, k) => thirtieth(k)));
    expect(film.index).toMatchObject({ container: 'MP4', codec: 'H.264', codecString: 'avc1.4d000b' });
    expect(film.index).toMatchObject({ keyFrames: [0, 10, 20], variableRate: false, width: 64, height: 64 });
    expect(film.notes).toEqual([]);
  });

  it('its times go into the document’s compact form and come back', async () => {
    const film = await indexed(await makeHandFilm());
    expect(film.frameTimes.steps).toHaveLength(1);
    expect(times({ clock: frameClock(film.frameTimes) })).toEqual(times(film));
  });

  it.each(['mp4-index-first', 'mp4-fragmented', 'mov'] as const)('%s: the same times', async (container) => {
    const film = await indexed(await makeHandFilm({ container }));
    expect(times(film)).toEqual(Array.from({ length: 31 }, (_, k) => thirtieth(k)));
    expect(film.index.container).toBe(container === 'mov' ? 'MOV' : 'MP4');
  });

  it('mkv: whole milliseconds, as the container stores them, and no varying rate', async () => {
    const film = await indexed(await makeHandFilm({ container: 'mkv' }), 'film.mkv');
    expect(times(film).slice(0, 4)).toEqual([0, 33_000, 67_000, 100_000]);
    expect(film.index).toMatchObject({ container: 'MKV', ticksPerSecond: 1000, variableRate: false });
  });

  it('negative-start: frames before the shown part are not numbered', async () => {
    const film = await indexed(await makeHandFilm({ before: 4 }));
    expect(times(film)).toEqual(Array.from({ length: 27 }, (_, k) => thirtieth(k)));
    expect(film.index.keyFrames).toEqual([6, 16]);
    expect(film.notes.map(({ code }) => code)).toEqual(['film/left-out']);
  });

  it('late-start: the first frame has its own time', async () => {
    const film = await indexed(await makeHandFilm({ startOf: (frame) => frame + 7.5 }));
    expect(times(film)[0]).toBe(250_000);
  });

  it('variable-rate: every frame has its own time, and it is noted', async () => {
    const startOf = (frame: number) => frame + (frame % 2) / 2;
    const film = await indexed(await makeHandFilm({ startOf }));
    expect(times(film).slice(0, 5)).toEqual([0, 50_000, 66_667, 116_667, 133_333]);
    expect(film.notes.map(({ code, message }) => [code, message])).toEqual([
      ['film/variable-rate', expect.stringContaining('from 16.7 ms to 50.0 ms')],
    ]);
  });

  it('rotated: size as shown', async () => {
    const film = await indexed(await makeHandFilm({ rotation: 270 }));
    expect(film.index.rotation).toBe(270);
  });

  it('two-tracks: the first is taken, and it is noted', async () => {
    const film = await indexed(await makeHandFilm({ tracks: 2 }));
    expect(film.clock.frames).toBe(30);
    expect(film.notes.map(({ code }) => code)).toEqual(['film/more-tracks']);
  });

  it('reads from an open file', async () => {
    const folder = await mkdtemp(path.join(tmpdir(), 'film-'));
    const file = path.join(folder, 'bench.mkv');
    await writeFile(file, await makeHandFilm({ container: 'mkv' }));
    const handle = await open(file, 'r');
    try {
      const result = await indexFilm({ handle, name: 'bench.mkv' });
      expect(result.ok && result.value.clock.frames).toBe(30);
      expect(result.ok && result.value.index.name).toBe('bench.mkv');
    } finally {
      await handle.close();
      await rm(folder, { recursive: true });
    }
  });
});

describe('edit lists (ISO/IEC 14496-12, 8.6.6)', () => {
  /** Writes the edit list of a film anew, in the place of the one it has; lengths in the movie's time scale. */
  async function withEdits(entries: readonly (readonly [length: number, start: number])[]): Promise<Bytes> {
    const film = await makeHandFilm({ before: 4 });
    const elst = find(film, 'elst');
    const view = new DataView(film.buffer);
    const room = view.getUint32(elst - 4) - 16;
    expect(view.getUint8(elst + 4)).toBe(0);
    if (entries.length * 12 > room) return grown(film, elst, entries);
    view.setUint32(elst + 8, entries.length);
    for (const [at, [length, start]] of entries.entries()) {
      view.setUint32(elst + 12 + at * 12, length);
      view.setInt32(elst + 16 + at * 12, start);
    }
    return film;
  }

  /** The same when the list needs more room: the boxes around it grow. They stand behind the pictures. */
  function grown(film: Bytes, elst: number, entries: readonly (readonly [number, number])[]): Bytes {
    const more = (entries.length - 1) * 12;
    const end = elst - 4 + new DataView(film.buffer).getUint32(elst - 4);
    const bytes = new Uint8Array(film.length + more);
    bytes.set(film.subarray(0, end));
    bytes.set(film.subarray(end), end + more);
    const view = new DataView(bytes.buffer);
    for (const box of ['moov', 'trak', 'edts', 'elst']) {
      const at = find(bytes, box) - 4;
      view.setUint32(at, view.getUint32(at) + more);
    }
    view.setUint32(elst + 8, entries.length);
    for (const [at, [length, start]] of entries.entries()) {
      view.setUint32(elst + 12 + at * 12, length);
      view.setInt32(elst + 16 + at * 12, start);
      view.setUint32(elst + 20 + at * 12, 0x10000);
    }
    return bytes;
  }

  /** Movie time scale of the muxer, and ticks of a frame. */
  async function scales(): Promise<{ movie: number; frame: number }> {
    const film = await makeHandFilm({ before: 4 });
    const view = new DataView(film.buffer);
    const mvhd = find(film, 'mvhd');
    const movie = view.getUint32(mvhd + 4 + (view.getUint8(mvhd + 4) === 1 ? 20 : 12));
    return { movie, frame: (await indexed(film)).index.ticksPerSecond / 30 };
  }

  it('cuts the end off as well as the start', async () => {
    const { movie, frame } = await scales();
    const film = await indexed(await withEdits([[Math.round((movie * 10) / 30), 4 * frame]]));
    expect(film.clock.frames).toBe(10);
    expect(film.notes.map(({ message }) => message)).toEqual([
      expect.stringContaining('4 pictures in the file are not counted as frames'),
      expect.stringContaining('16 pictures in the file are not counted as frames'),
    ]);
  });

  it('says when the film is put together of several pieces', async () => {
    const { movie, frame } = await scales();
    const film = await indexed(
      await withEdits([
        [Math.round((movie * 10) / 30), 4 * frame],
        [Math.round((movie * 5) / 30), 20 * frame],
      ]),
    );
    expect(film.clock.frames).toBe(10);
    expect(film.notes.find(({ code }) => code === 'film/edit-list')?.message).toContain('2 pieces');
  });

  it('an empty piece before the film delays it', async () => {
    const { movie } = await scales();
    const film = await indexed(
      await withEdits([
        [movie, -1],
        [movie, 0],
      ]),
    );
    expect(film.clock.timeOf(0)).toBe(1_000_000);
    expect(film.clock.frames).toBe(30);
  });
});

describe('what cannot be read is refused with what was found and what to do', () => {
  const cases: readonly (readonly [string, () => Bytes | Promise<Bytes>, string, RegExp])[] = [
    ['empty.mp4', emptyFile, 'film/empty', /empty.+Copy it again/],
    ['text-named.mp4', textNamedMp4, 'film/not-a-film', /plain text.+Choose an MP4, MOV, WebM or MKV/],
    ['unknown-bytes.mp4', unknownBytes, 'film/not-a-film', /no known film format/],
    ['picture.gif', gifPicture, 'film/not-a-film', /GIF/],
    ['truncated.mp4', truncatedWithoutIndex, 'film/truncated', /“mdat”.+index.+missing.+Copy it again/],
    [
      'truncated-after-index.mp4',
      truncatedAfterIndex,
      'film/truncated',
      /ends at byte \d+, the file at byte \d+/,
    ],
    ['without-index.mp4', withoutIndex, 'film/truncated', /index at its end is missing/],
    ['truncated.mkv', truncatedMkv, 'film/truncated', /should have \d+ bytes and has \d+/],
    ['mpeg-4-part-2.mov', mpeg4Part2, 'film/codec', /MPEG-4 part 2 \(mp4v\).+Convert it to H\.264/],
    ['sound-only.mov', soundOnly, 'film/no-picture', /no picture, only audio \(pcm-s16\)/],
    ['one-frame.mp4', oneFrame, 'film/too-few-frames', /Frames in one-frame\.mp4: 1\./],
  ];
  it.each(cases)('%s', async (name, make, code, message) => {
    const result = await indexFilm(new File([await make()], name));
    if (result.ok) throw new Error('it was opened');
    expect(result.error.map((finding) => finding.code)).toEqual([code]);
    expect(result.error[0]?.message).toMatch(message);
    expect(result.error[0]?.message).toContain(name);
    expect(result.error[0]).toMatchObject({ severity: 'error', where: { file: name } });
  });

  it('a film cut anywhere is refused or read, and never breaks', async () => {
    const codes = new Set<string>();
    for (const container of ['mp4', 'mp4-index-first', 'mp4-fragmented', 'mkv'] as const) {
      const film = await makeHandFilm({ container, groups: 2 });
      for (let part = 1; part < 40; part += 1) {
        const result = await indexFilm(
          new File([film.slice(0, Math.floor((film.length * part) / 40))], 'cut'),
        );
        codes.add(result.ok ? 'read' : (result.error[0]?.code ?? ''));
      }
    }
    expect([...codes].sort()).toEqual(['film/truncated']);
  });
});
