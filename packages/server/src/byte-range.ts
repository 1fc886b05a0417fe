export type ByteRange =
  | { readonly kind: 'whole' }
  | { readonly kind: 'outside' }
  | { readonly kind: 'part'; readonly start: number; readonly end: number };

/**
 * Reads a Range header (RFC 9110, sections 14.1.2 and 14.2): `bytes=a-b`, `bytes=a-`, `bytes=-n`, both ends counted in.
 * Several ranges, other units and what cannot be read are left unheeded, as the RFC allows, and the whole is sent.
 * @param size bytes of the whole, 1 or more
 */
export function byteRange(header: string | undefined, size: number): ByteRange {
  const match = /^bytes=(\d*)-(\d*)$/.exec(header?.trim() ?? '');
  const [first, last] = [match?.[1] ?? '', match?.[2] ?? ''];
  if (first === '' && last === '') return { kind: 'whole' };
  if (first === '') {
    const count = Number(last);
    return count === 0
      ? { kind: 'outside' }
      : { kind: 'part', start: Math.max(0, size - count), end: size - 1 };
  }
  const start = Number(first);
  if (last !== '' && Number(last) < start) return { kind: 'whole' };
  if (start >= size) return { kind: 'outside' };
  return { kind: 'part', start, end: last === '' ? size - 1 : Math.min(size - 1, Number(last)) };
}
