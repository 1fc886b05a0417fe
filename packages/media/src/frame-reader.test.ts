import { micros } from '@evenhand/core/ground/base';
import { describe, expect, it } from 'vitest';
import type { DecoderEvents, Picture } from './decoder.ts';
import type { CodedPicture } from './demux.ts';
import type { FrameHandle } from './film.ts';
import { frameTable, type Run } from './film-index.ts';
import { CachedFrameReader } from './frame-reader.ts';

interface FakePicture extends Picture<FakePicture> {
  readonly content: number;
}

interface FilmShape {
  /** Presentation ticks in the order of decoding; `K` marks key frames. One tick is one microsecond here. */
  readonly order: string;
  readonly capacity?: number;
  /** Decoding one of these ticks breaks the decoder. */
  readonly broken?: readonly number[];
  /** These come out as nothing. */
  readonly swallowed?: readonly number[];
  /** Key frames with which a decoder refuses to begin. */
  readonly dependent?: readonly number[];
}

/** A film whose decoder keeps two pictures back for reordering, as real ones do, and counts what is open. */
function fakeFilm({ order, capacity = 40, broken = [], swallowed = [], dependent = [] }: FilmShape) {
  const packets = order.split(' ').map((word) => ({
    tick: Number(word.replace('K', '')),
    duration: 1,
    key: word.startsWith('K'),
  }));
  const table = frameTable(packets);
  const count = { pictures: 0, decoders: 0, mostPictures: 0, begun: 0, decoded: 0 };
  const picture = (timestamp: number): FakePicture => {
    count.pictures += 1;
    count.mostPictures = Math.max(count.mostPictures, count.pictures);
    let open = true;
    return {
      timestamp,
      content: timestamp,
      clone: () => {
        if (!open) throw new Error('cloned after close');
        return picture(timestamp);
      },
      close: () => {
        if (!open) throw new Error('closed twice');
        open = false;
        count.pictures -= 1;
      },
    };
  };
  const makeDecoder = (events: DecoderEvents<FakePicture>) => {
    count.decoders += 1;
    count.begun += 1;
    let open = true;
    let first = true;
    let inside: number[] = [];
    const emit = (keep: number) => {
      inside.sort((a, b) => a - b);
      while (inside.length > keep) events.output(picture(inside.shift() as number));
    };
    return {
      decode: ({ timestamp }: CodedPicture) => {
        if (first && dependent.includes(timestamp)) throw new Error('not a key frame');
        first = false;
        count.decoded += 1;
        queueMicrotask(() => {
          if (!open) return;
          if (broken.includes(timestamp)) events.error('broken data');
          else if (!swallowed.includes(timestamp)) inside.push(timestamp);
          if (open) emit(2);
          events.room();
        });
      },
      waiting: () => 0,
      flush: async () => {
        await Promise.resolve();
        if (open) emit(0);
      },
      close: () => {
        if (open) count.decoders -= 1;
        open = false;
        inside = [];
      },
    };
  };
  const reader = new CachedFrameReader<FakePicture>({
    frames: table.ticks.length,
    table,
    capacity,
    makeDecoder,
    frameOf: (timestamp) => {
      const at = table.ticks.indexOf(timestamp);
      return at < 0 ? undefined : at;
    },
    feed: {
      async *from(run: Run) {
        for (const { tick, key } of packets.slice(run.order)) {
          yield { key, timestamp: tick, data: new Uint8Array(0) };
        }
      },
    },
    handle: (frame, { content, close }) => ({
      frame,
      time: micros(content),
      width: 1,
      height: 1,
      draw: () => {},
      close,
    }),
  });
  return { reader, table, count };
}

/** `groups` groups of `length` frames, the first a key frame. */
const plain = (groups: number, length: number): string =>
  Array.from({ length: groups * length }, (_, at) => `${at % length === 0 ? 'K' : ''}${at}`).join(' ');

async function take(reader: CachedFrameReader<FakePicture>, k: number): Promise<number | string> {
  const result = await reader.frame(k);
  if (!result.ok) return result.error.code;
  const handle: FrameHandle = result.value;
  expect(handle.frame).toBe(k);
  handle.close();
  return handle.time;
}

/** Lets everything that is under way come to rest. */
const rest = () => new Promise((resolve) => setTimeout(resolve, 5));

describe('frames', () => {
  it.each([
    ['short groups', plain(20, 6)],
    ['one long group', plain(1, 120)],
    ['only key frames', plain(120, 1)],
    [
      'B-frames in open groups',
      `K0 3 1 2 K6 4 5 9 7 8 ${Array.from({ length: 30 }, (_, g) => `K${12 + g * 3} ${10 + g * 3} ${11 + g * 3}`).join(' ')}`,
    ],
    ['a start before the shown part', `K-5 -4 -3 -2 -1 ${plain(10, 10).slice(1)}`],
  ])('%s: each call gives its own frame, in whatever order', async (_, order) => {
    const { reader, table, count } = fakeFilm({ order });
    const frames = reader.frames;
    for (let k = 0; k < frames; k += 1)
      expect(await take(reader, (k * 31 + 7) % frames)).toBe(table.ticks[(k * 31 + 7) % frames]);
    for (let k = 0; k < frames; k += 1) expect(await take(reader, k)).toBe(table.ticks[k]);
    for (let k = frames - 1; k >= 0; k -= 1) expect(await take(reader, k)).toBe(table.ticks[k]);
    reader.dispose();
    expect(count).toMatchObject({ pictures: 0, decoders: 0 });
  });

  it('refuses what is no frame of the film', () => {
    const { reader } = fakeFilm({ order: plain(1, 5) });
    for (const k of [-1, 5, 1.5, Number.NaN]) {
      expect(() => reader.frame(k)).toThrow(RangeError);
      expect(() => reader.follow(k, 1)).toThrow(RangeError);
    }
  });

  it('answers every one of many calls at once', async () => {
    const { reader } = fakeFilm({ order: plain(20, 10) });
    const asked = [150, 3, 77, 199, 0, 78, 77];
    expect(await Promise.all(asked.map((k) => take(reader, k)))).toEqual(asked);
  });

  it('an aborted call is rejected and the others are not', async () => {
    const { reader, count } = fakeFilm({ order: plain(4, 10) });
    const abort = new AbortController();
    const given = reader.frame(20, { signal: abort.signal });
    const kept = take(reader, 21);
    abort.abort();
    await expect(given).rejects.toMatchObject({ name: 'AbortError' });
    expect(await kept).toBe(21);
    await expect(reader.frame(3, { signal: abort.signal })).rejects.toMatchObject({ name: 'AbortError' });
    const left = reader.frame(39);
    reader.dispose();
    await expect(left).rejects.toMatchObject({ name: 'AbortError' });
    await expect(reader.frame(0)).rejects.toMatchObject({ name: 'AbortError' });
    await rest();
    expect(count).toMatchObject({ pictures: 0, decoders: 0 });
  });
});

describe('cache', () => {
  it('never has more pictures open than it may, and one decoder at a time', async () => {
    const { reader, count } = fakeFilm({ order: plain(4, 200), capacity: 24 });
    for (const k of [0, 500, 250, 799, 3]) {
      await take(reader, k);
      await rest();
      expect(count.decoders).toBeLessThanOrEqual(1);
    }
    for (let k = 300; k > 200; k -= 1) await take(reader, k);
    // One picture more while it is handed over, and a clone for the caller.
    expect(count.mostPictures).toBeLessThanOrEqual(26);
  });

  it('a step to a neighbour, either way, decodes nothing that a rest has not decoded before', async () => {
    const { reader } = fakeFilm({ order: plain(2, 100) });
    await take(reader, 150);
    await rest();
    expect(reader.buffered(150, 1)).toBeGreaterThanOrEqual(10);
    expect(reader.buffered(150, -1)).toBeGreaterThanOrEqual(10);
  });

  it('reads ahead in the direction of play, over the bounds of groups', async () => {
    const { reader } = fakeFilm({ order: plain(20, 8), capacity: 60 });
    await take(reader, 100);
    reader.follow(100, -1);
    await rest();
    expect(reader.buffered(100, -1)).toBeGreaterThanOrEqual(20);
    reader.follow(100, 1);
    await rest();
    expect(reader.buffered(100, 1)).toBeGreaterThanOrEqual(18);
  });

  it('plays a long film forward with one decoder', async () => {
    const { reader, count } = fakeFilm({ order: plain(40, 10) });
    for (let k = 0; k < reader.frames; k += 1) await take(reader, k);
    expect(count).toMatchObject({ begun: 1, decoded: 400 });
  });

  it('steps backward through a long group with few decodings', async () => {
    const { reader, count } = fakeFilm({ order: plain(1, 240), capacity: 120 });
    for (let k = 239; k >= 0; k -= 1) await take(reader, k);
    // Chunks of 48: 240 + 192 + 144 + 96 + 48 pictures, and the first jump once more.
    expect(count.decoded).toBeLessThanOrEqual(240 + 192 + 144 + 96 + 48 + 240);
  });

  it('holds the head of a loop while the film is shown elsewhere', async () => {
    const { reader } = fakeFilm({ order: plain(20, 20), capacity: 40 });
    await take(reader, 10);
    await rest();
    reader.keep({ from: 10, to: 30 });
    await take(reader, 300);
    await rest();
    expect(reader.buffered(10, 1)).toBeGreaterThanOrEqual(8);
    reader.keep({ from: 280, to: 301 }, -1);
    reader.follow(300, -1);
    await rest();
    for (const k of [100, 200, 30]) {
      await take(reader, k);
      await rest();
    }
    expect(reader.buffered(300, -1)).toBeGreaterThanOrEqual(8);
    expect(reader.buffered(10, 1)).toBe(0);
  });

  it('tells when a frame is decoded', async () => {
    const { reader } = fakeFilm({ order: plain(1, 10) });
    let calls = 0;
    const stop = reader.onDecoded(() => {
      calls += 1;
    });
    await take(reader, 5);
    stop();
    expect(calls).toBeGreaterThan(0);
  });
});

describe('what cannot be decoded', () => {
  it('is a finding for that frame, and frames of other groups are not touched', async () => {
    const { reader, count } = fakeFilm({ order: plain(5, 10), broken: [23] });
    const got: (number | string)[] = [];
    for (let k = 0; k < 50; k += 1) got.push(await take(reader, k));
    for (let k = 0; k < 20; k += 1) expect(got[k]).toBe(k);
    for (let k = 23; k < 30; k += 1) expect(got[k]).toBe('film/decode');
    for (let k = 30; k < 50; k += 1) expect(got[k]).toBe(k);
    expect(reader.fault(25)).toMatchObject({ severity: 'error', where: { frame: 25 } });
    expect(reader.fault(25)?.message).toContain('broken data');
    expect(reader.fault(30)).toBeUndefined();
    expect(count.begun).toBeLessThan(20);
    for (let k = 49; k >= 30; k -= 1) expect(await take(reader, k)).toBe(k);
  });

  it('a frame that the decoder leaves out is a finding, its neighbours are right', async () => {
    const { reader } = fakeFilm({ order: plain(2, 10), swallowed: [4, 19] });
    const got: (number | string)[] = [];
    for (let k = 19; k >= 0; k -= 1) got.unshift(await take(reader, k));
    expect(got).toEqual(Array.from({ length: 20 }, (_, k) => (k === 4 || k === 19 ? 'film/decode' : k)));
  });

  it('a key frame that does not stand alone is reached from the one before', async () => {
    const { reader } = fakeFilm({ order: plain(5, 10), dependent: [20, 30] });
    for (const k of [35, 22, 49, 30, 20]) expect(await take(reader, k)).toBe(k);
    for (let k = 49; k >= 0; k -= 1) expect(await take(reader, k)).toBe(k);
  });

  it('a whole film that cannot be decoded answers every call', async () => {
    const { reader, count } = fakeFilm({
      order: plain(3, 10),
      broken: Array.from({ length: 30 }, (_, k) => k),
    });
    for (let k = 0; k < 30; k += 1) expect(await take(reader, k)).toBe('film/decode');
    await rest();
    expect(count).toMatchObject({ pictures: 0, decoders: 0 });
  });
});
