/**
 * Text that a file format can carry: white space of every kind as it is, other control characters left out, and half a
 * character (a lone surrogate) shown as a question mark.
 */
export function cleanText(text: string): string {
  return Array.from(text)
    .filter((character) => isPrintable(character.codePointAt(0) ?? 0))
    .map((character) => (/^[\ud800-\udfff]$/.test(character) ? '?' : character))
    .join('');
}

/** The characters of XML 1.0, section 2.2, without the second set of control characters; a lone surrogate is met later. */
function isPrintable(code: number): boolean {
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return (code < 0x7f || code > 0x9f) && code !== 0xfffe && code !== 0xffff;
}
