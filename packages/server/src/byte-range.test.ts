import { describe, expect, it } from 'vitest';
import { byteRange } from './byte-range.ts';

const part = (start: number, end: number) => ({ kind: 'part', start, end });

describe('byte ranges', () => {
  // RFC 9110, section 14.1.2, examples for a representation of 10,000 bytes.
  it.each([
    ['bytes=0-499', part(0, 499)],
    ['bytes=500-999', part(500, 999)],
    ['bytes=-500', part(9500, 9999)],
    ['bytes=9500-', part(9500, 9999)],
    ['bytes=0-0', part(0, 0)],
    ['bytes=0-99999', part(0, 9999)],
    ['bytes=-99999', part(0, 9999)],
  ])('%s of 10,000 bytes (RFC 9110, 14.1.2)', (header, expected) => {
    expect(byteRange(header, 10_000)).toEqual(expected);
  });

  it.each(['bytes=10000-', 'bytes=10000-10001', 'bytes=-0'])(
    '%s lies outside (RFC 9110, 14.1.2)',
    (header) => {
      expect(byteRange(header, 10_000)).toEqual({ kind: 'outside' });
    },
  );

  it.each([
    undefined,
    '',
    'bytes=',
    'bytes=-',
    'bytes=5-2',
    'items=0-1',
    'bytes=0-1,5-6',
    'bytes=a-b',
    '0-1',
  ])('%s is not heeded (RFC 9110, 14.2)', (header) => {
    expect(byteRange(header, 10_000)).toEqual({ kind: 'whole' });
  });
});
