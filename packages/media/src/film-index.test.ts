import { describe, expect, it } from 'vitest';
import { frameTable, isVariable, type PacketTimes, runOf, tickMicros } from './film-index.ts';

/** Packets from a compact text in the order of decoding: `K0` a key frame at tick 0, `3` a delta at tick 3. */
function packets(text: string, duration = 1): PacketTimes[] {
  return text.split(' ').map((word) => ({
    tick: Number(word.replace('K', '')),
    duration,
    key: word.startsWith('K'),
  }));
}

describe('frame table', () => {
  it('sorts B-frames by presentation and remembers the order of decoding', () => {
    const table = frameTable(packets('K0 3 1 2 6 4 5'));
    expect(table.ticks).toEqual([0, 1, 2, 3, 4, 5, 6]);
    expect(table.orders).toEqual([0, 2, 3, 1, 5, 6, 4]);
    expect(table.runs).toEqual([{ order: 0, tick: 0, first: 0, end: 7 }]);
    expect(table.endTick).toBe(7);
  });

  it('gives leading pictures of an open group to the run before', () => {
    const table = frameTable(packets('K0 1 2 K5 3 4 6'));
    expect(table.runs).toEqual([
      { order: 0, tick: 0, first: 0, end: 5 },
      { order: 3, tick: 5, first: 5, end: 7 },
    ]);
    expect(table.orders[4]).toBe(5);
  });

  it('numbers from the first frame that is shown when an edit list cuts the start off', () => {
    const table = frameTable(packets('K-3 -2 -1 0 1 K2 3'));
    expect(table.ticks).toEqual([0, 1, 2, 3]);
    expect(table.left.before).toBe(3);
    expect(table.runs).toEqual([
      { order: 0, tick: -3, first: 0, end: 2 },
      { order: 5, tick: 2, first: 2, end: 4 },
    ]);
    expect(table.keyFrames).toEqual([2]);
  });

  it('leaves out runs that are wholly before the start, and frames after the end', () => {
    const table = frameTable(packets('K-4 -3 K-2 -1 K0 1 2 3'), 2);
    expect(table.ticks).toEqual([0, 1]);
    expect(table.runs).toEqual([{ order: 4, tick: 0, first: 0, end: 2 }]);
    expect(table.left).toEqual({ before: 4, after: 2, keyless: 0, sameTime: 0, hidden: 0 });
  });

  it('leaves out what has no key frame before it', () => {
    const table = frameTable(packets('0 1 K2 3'));
    expect(table.ticks).toEqual([2, 3]);
    expect(table.left.keyless).toBe(2);
  });

  it('keeps one of two pictures at the same time', () => {
    const table = frameTable(packets('K0 1 1 2'));
    expect(table.ticks).toEqual([0, 1, 2]);
    expect(table.orders).toEqual([0, 1, 3]);
    expect(table.left.sameTime).toBe(1);
  });

  it('does not number pictures that are never shown', () => {
    const hidden = { tick: 2, duration: 1, key: false, hidden: true };
    const table = frameTable([...packets('K0 1'), hidden, ...packets('2 3')]);
    expect(table.ticks).toEqual([0, 1, 2, 3]);
    expect(table.orders).toEqual([0, 1, 3, 4]);
    expect(table.left.hidden).toBe(1);
  });

  it('ends the last frame after the middle frame length when the file gives none', () => {
    expect(frameTable(packets('K0 33 67 100', 0)).endTick).toBe(133);
    expect(frameTable(packets('K5', 0)).endTick).toBe(6);
    expect(frameTable([]).endTick).toBe(0);
  });

  it('finds the run of every frame', () => {
    const { runs } = frameTable(packets('K0 1 2 K5 3 4 6 K7'));
    expect([0, 4, 5, 6, 7].map((frame) => runOf(runs, frame))).toEqual([0, 0, 1, 1, 2]);
    expect(() => runOf(runs, 8)).toThrow(RangeError);
    expect(() => runOf(runs, -1)).toThrow(RangeError);
  });
});

describe('rate', () => {
  it('does not call the rounding of a rough time scale a varying rate', () => {
    expect(isVariable([0, 33, 67, 100, 133], 1000)).toBe(false);
    expect(isVariable([0, 528, 1072, 1600], 16_000)).toBe(false);
    expect(isVariable([0, 3000, 6003, 9000], 90_000)).toBe(false);
    expect(isVariable([0], 30)).toBe(false);
  });
  it('sees a varying rate', () => {
    expect(isVariable([0, 33, 67, 167], 1000)).toBe(true);
    expect(isVariable([0, 3000, 6003, 9100], 90_000)).toBe(true);
    expect(isVariable([0, 1, 4], 30)).toBe(true);
  });
});

describe('ticks in microseconds', () => {
  it('rounds to the nearest, before the start too, and stays exact in a film of ten hours', () => {
    expect(tickMicros(1, 30)).toBe(33_333);
    expect(tickMicros(2, 30)).toBe(66_667);
    expect(tickMicros(-1, 30)).toBe(-33_333);
    expect(tickMicros(36_000 * 90_000 + 1, 90_000)).toBe(36_000_000_011);
  });
});
