/** What the first bytes of a file say it is. */
export interface Sniffed {
  readonly kind: 'iso' | 'matroska' | 'sound' | 'other';
  /** In plain words, with an article: `a GIF picture`. */
  readonly found: string;
}

/** Signatures by offset; `.` stands for any byte. Sources: the formats' own specifications and RFC 9559 (EBML). */
const signatures: readonly (readonly [offset: number, text: string, kind: Sniffed['kind'], found: string])[] =
  [
    [0, 'GIF8', 'other', 'a GIF picture, which keeps no exact times'],
    [0, '\x89PNG', 'other', 'a PNG picture'],
    [0, '\xff\xd8\xff', 'other', 'a JPEG picture'],
    [0, 'RIFF....WEBP', 'other', 'a WebP picture'],
    [0, 'RIFF....AVI ', 'other', 'an AVI film'],
    [0, 'RIFF....WAVE', 'sound', 'sound (WAV)'],
    [0, '\x30\x26\xb2\x75\x8e\x66\xcf\x11', 'other', 'a Windows Media film (ASF)'],
    [0, 'FLV\x01', 'other', 'a Flash film (FLV)'],
    [0, '\x00\x00\x01\xba', 'other', 'an MPEG programme stream'],
    [0, '\x00\x00\x01\xb3', 'other', 'an MPEG-1 or MPEG-2 film'],
    [0, 'OggS', 'other', 'an Ogg file'],
    [0, 'ID3', 'sound', 'sound (MP3)'],
    [0, '\xff\xfb', 'sound', 'sound (MP3)'],
    [0, 'fLaC', 'sound', 'sound (FLAC)'],
    [0, '%PDF', 'other', 'a PDF document'],
    [0, 'PK\x03\x04', 'other', 'a ZIP archive or an office document'],
    [4, 'ftypheic', 'other', 'a HEIC picture'],
    [4, 'ftypheix', 'other', 'a HEIC picture'],
    [4, 'ftypmif1', 'other', 'a HEIF picture'],
    [4, 'ftypavif', 'other', 'an AVIF picture'],
    [4, 'ftyp', 'iso', 'an MP4 or MOV file'],
    [4, 'moov', 'iso', 'a MOV file'],
    [4, 'mdat', 'iso', 'a MOV file'],
    [4, 'wide', 'iso', 'a MOV file'],
    [4, 'free', 'iso', 'a MOV file'],
    [4, 'skip', 'iso', 'a MOV file'],
    [4, 'moof', 'iso', 'a piece of an MP4 stream'],
    [0, '\x1a\x45\xdf\xa3', 'matroska', 'a WebM or MKV file'],
  ];

/** @param head the first bytes of the file, 4096 are enough */
export function sniff(head: Uint8Array): Sniffed {
  for (const [offset, text, kind, found] of signatures) {
    if (startsWith(head, offset, text)) return { kind, found };
  }
  if (head[0] === 0x47 && head[188] === 0x47) return { kind: 'other', found: 'an MPEG transport stream' };
  if (isText(head)) return { kind: 'other', found: 'the file is plain text' };
  return { kind: 'other', found: 'the first bytes belong to no known film format' };
}

function startsWith(head: Uint8Array, offset: number, text: string): boolean {
  if (head.length < offset + text.length) return false;
  return [...text].every((letter, at) => letter === '.' || head[offset + at] === letter.charCodeAt(0));
}

function isText(head: Uint8Array): boolean {
  try {
    // `stream` forgives a character that is cut in two at the end of the head.
    const text = new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return [...text].every((letter) => letter >= ' ' || '\t\n\r\f\x1b'.includes(letter));
  } catch {
    return false;
  }
}
