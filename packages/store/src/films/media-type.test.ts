import { describe, expect, it } from 'vitest';
import { sniffMediaType } from './media-type.ts';

const bytes = (text: string) => Uint8Array.from(text, (sign) => sign.charCodeAt(0));

describe('what the first bytes say', () => {
  it.each([
    ['\0\0\0\x18ftypisom\0\0\x02\0isomiso2', 'video/mp4', 'ISO/IEC 14496-12, 4.3'],
    ['\0\0\0\x14ftypqt  \0\0\x02\0qt  ', 'video/quicktime', 'QuickTime File Format, file type compatibility'],
    ['\0\0\0\x08wide\0\0\0\0mdat', 'video/quicktime', 'QuickTime File Format, from memory'],
    ['\x1a\x45\xdf\xa3\x9f\x42\x82\x84webm', 'video/webm', 'WebM container guidelines'],
    ['\x1a\x45\xdf\xa3\xa3\x42\x82\x88matroska', 'video/x-matroska', 'RFC 9559, 4.1'],
    ['<!doctype html><script>', 'application/octet-stream', 'never a page'],
    ['GIF89a', 'application/octet-stream', 'not a film we read'],
    ['', 'application/octet-stream', 'nothing'],
  ])('%j is %s (%s)', (head, type) => {
    expect(sniffMediaType(bytes(head))).toBe(type);
  });
});
