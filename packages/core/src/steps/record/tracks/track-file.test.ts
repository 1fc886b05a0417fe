import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crc32 } from './checksum.ts';
import { decodeTrack, encodeTrack, type HandTrack, type Track } from './index.ts';

const hand = (frames: number, extra: Partial<HandTrack> = {}): HandTrack => ({
  x: Float32Array.from({ length: frames }, (_, frame) => 100 + frame / 3),
  y: Float32Array.from({ length: frames }, (_, frame) => 50 - frame / 7),
  presence: new Float32Array(frames).fill(0.75),
  ...extra,
});
const sample: Track = {
  source: 'landmarks',
  frames: 4,
  width: 1280,
  height: 720,
  unit: 'pixels',
  left: hand(4, {
    x: Float32Array.of(1.5, Number.NaN, 3, -4),
    y: Float32Array.of(0, Number.NaN, 2, 1e-20),
    opening: Float32Array.of(0.1, Number.NaN, Number.NaN, 1),
    presence: Float32Array.of(1, 0, 0.5, 1),
  }),
  right: hand(4, { z: new Float32Array(4).fill(7) }),
};
const codeOf = (bytes: Uint8Array, frames?: number) => {
  const result = decodeTrack(bytes, frames === undefined ? {} : { frames });
  return result.ok ? 'taken' : result.error.code;
};
const changed = (at: number, ...values: number[]) => {
  const bytes = encodeTrack(sample);
  bytes.set(values, at);
  return bytes;
};

describe('the file of a track', () => {
  it('gives the same track back, gaps and all', () => {
    expect(decodeTrack(encodeTrack(sample), { frames: 4 })).toEqual({ ok: true, value: sample });
    const one: Track = {
      source: 'energy',
      frames: 1,
      width: 0,
      height: 0,
      unit: 'millimetres',
      right: hand(1),
    };
    expect(decodeTrack(encodeTrack(one))).toEqual({ ok: true, value: one });
  });

  it('holds 32 bytes and four for each number, at any place of a larger buffer', () => {
    const bytes = encodeTrack(sample);
    expect(bytes.length).toBe(32 + 4 * 4 * (4 + 4));
    const larger = new Uint8Array(bytes.length + 3);
    larger.set(bytes, 3);
    expect(codeOf(larger.subarray(3))).toBe('taken');
  });

  it('the check sum is that of RFC 1952 (the check value of CRC-32 over “123456789” is CBF43926)', () => {
    expect(crc32(new TextEncoder().encode('123456789')).toString(16)).toBe('cbf43926');
  });

  it.each([
    ['nothing', new Uint8Array(0), 'track/not-a-track'],
    ['a text', new TextEncoder().encode('frame,hand,x,y\n0,left,1,2\n'), 'track/not-a-track'],
    ['a newer version', changed(8, 2, 0), 'track/newer-version'],
    ['no version', changed(8, 0, 0), 'track/damaged'],
    ['a head cut off', encodeTrack(sample).subarray(0, 20), 'track/cut-off'],
    ['numbers cut off', encodeTrack(sample).subarray(0, 100), 'track/cut-off'],
    ['bytes added', Uint8Array.of(...encodeTrack(sample), 0), 'track/cut-off'],
    ['another number of frames in the head', changed(12, 5), 'track/cut-off'],
    ['no frames', changed(12, 0, 0, 0, 0), 'track/damaged'],
    ['a changed number', changed(40, 9), 'track/damaged'],
    ['an unknown source', changed(10, 9), 'track/damaged'],
    ['an unknown unit', changed(11, 2), 'track/damaged'],
    ['a hand without y', changed(24, 0b11101), 'track/damaged'],
    ['unknown bits', changed(24, 0xff), 'track/damaged'],
  ])('%s is refused in words', (_, bytes, code) => {
    expect(codeOf(bytes)).toBe(code);
  });

  it('a track of another film is told by its number of frames', () => {
    const result = decodeTrack(encodeTrack(sample), { frames: 300 });
    expect(result.ok ? '' : result.error.message).toContain('of 4 frames, but the film has 300');
  });

  it.each([
    ['half a place', { x: Float32Array.of(1, Number.NaN) }],
    ['no end of x', { x: Float32Array.of(1, Number.POSITIVE_INFINITY) }],
    ['a presence above 1', { presence: Float32Array.of(1, 1.5) }],
    ['no presence', { presence: Float32Array.of(1, Number.NaN) }],
  ])('%s is refused even when the sum is right', (_, extra) => {
    expect(codeOf(encodeTrack({ ...sample, frames: 2, left: hand(2, extra), right: hand(2) }))).toBe(
      'track/damaged',
    );
  });

  it('any change of any byte is noticed or changes no number', () => {
    const bytes = encodeTrack(sample);
    fc.assert(
      fc.property(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }), (at, flip) => {
        const other = bytes.slice();
        other[at] = (other[at] as number) ^ flip;
        const result = decodeTrack(other, { frames: 4 });
        // Source, unit and size of the picture stand in the head outside the sum.
        if (result.ok) expect([at >= 10 && at < 24, result.value.left]).toEqual([true, sample.left]);
      }),
      { seed: 63, numRuns: 500 },
    );
  });
});
