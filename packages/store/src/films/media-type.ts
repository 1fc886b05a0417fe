/**
 * What the first bytes of a file say it is. Only types that a browser never runs as a page or a script are given.
 * Sources: ISO/IEC 14496-12 (the box type `ftyp` at byte 4, brand `qt  ` for QuickTime); RFC 8794 and the Matroska
 * specification (EBML mark 1A 45 DF A3, then the document type `webm` or `matroska`).
 */
export function sniffMediaType(head: Uint8Array): string {
  const latin = Array.from(head.subarray(0, 64), (byte) => String.fromCharCode(byte)).join('');
  if (latin.startsWith('\x1a\x45\xdf\xa3')) return latin.includes('webm') ? 'video/webm' : 'video/x-matroska';
  const box = latin.slice(4, 8);
  if (box === 'ftyp') return latin.slice(8, 12) === 'qt  ' ? 'video/quicktime' : 'video/mp4';
  if (box === 'moov' || box === 'mdat' || box === 'wide') return 'video/quicktime';
  return 'application/octet-stream';
}
