/**
 * @typedef {{ name: string, bytes: Buffer, mode: number, link: string | null }} TarFile
 */

const BLOCK = 512;

/**
 * The files of a tar archive (POSIX.1-1988 ustar, with GNU long names), in order. Folders are left out, their names are in the files' own.
 * @param {Buffer} tar
 * @returns {TarFile[]}
 * @throws {RangeError} when the archive ends in the middle of a file
 */
export function readTar(tar) {
  /** @type {TarFile[]} */
  const files = [];
  let longName = '';
  for (let at = 0; at + BLOCK <= tar.length; ) {
    const head = tar.subarray(at, at + BLOCK);
    if (head.every((byte) => byte === 0)) break;
    const size = octal(head, 124, 12);
    const type = String.fromCharCode(head[156] ?? 0);
    const bytes = tar.subarray(at + BLOCK, at + BLOCK + size);
    const name = longName || ustarName(head);
    if (bytes.length < size) throw new RangeError(`the archive ends in the middle of ${name}`);
    at += BLOCK + Math.ceil(size / BLOCK) * BLOCK;
    longName = type === 'L' ? text(bytes, 0, size) : '';
    if (type === '0' || type === '\0') files.push({ name, bytes, mode: octal(head, 100, 8), link: null });
    if (type === '2') files.push({ name, bytes, mode: 0o777, link: text(head, 157, 100) });
  }
  return files;
}

/** @param {Buffer} head */
function ustarName(head) {
  const prefix = text(head, 257, 5) === 'ustar' ? text(head, 345, 155) : '';
  const name = text(head, 0, 100);
  return prefix ? `${prefix}/${name}` : name;
}

/**
 * @param {Buffer} buffer
 * @param {number} from
 * @param {number} length
 */
function text(buffer, from, length) {
  const part = buffer.subarray(from, from + length);
  const end = part.indexOf(0);
  return part.toString('utf8', 0, end === -1 ? part.length : end);
}

/**
 * @param {Buffer} buffer
 * @param {number} from
 * @param {number} length
 */
function octal(buffer, from, length) {
  const digits = text(buffer, from, length).trim();
  return digits === '' ? 0 : Number.parseInt(digits, 8);
}
