/**
 * A number drawn as sixteen large cells, black or white, in four rows of four: twelve bits of the number, then four
 * bits of check. Big cells survive coding, scaling and turning; a picture turned the wrong way fails the check.
 */

export const largestNumber = 4095;

/** The sixteen bits, row by row, most significant first. */
export function numberBits(number: number): readonly boolean[] {
  if (!Number.isInteger(number) || number < 0 || number > largestNumber) {
    throw new RangeError(`0 to ${largestNumber} can be drawn, not ${number}`);
  }
  const code = number * 16 + checkOf(number);
  return Array.from({ length: 16 }, (_, at) => ((code >> (15 - at)) & 1) === 1);
}

/** The number of sixteen bits, or undefined when the check fails. */
export function numberOfBits(bits: readonly boolean[]): number | undefined {
  const code = bits.reduce((sum, bit) => sum * 2 + (bit ? 1 : 0), 0);
  const number = code >> 4;
  return (code & 15) === checkOf(number) ? number : undefined;
}

function checkOf(number: number): number {
  return (5 + 3 * (number & 15) + 7 * ((number >> 4) & 15) + 11 * (number >> 8)) & 15;
}

export function paintNumber(
  context: CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D,
  width: number,
  height: number,
  number: number,
): void {
  for (const [at, bit] of numberBits(number).entries()) {
    context.fillStyle = bit ? '#fff' : '#000';
    const [column, row] = [at % 4, Math.floor(at / 4)];
    context.fillRect((column * width) / 4, (row * height) / 4, Math.ceil(width / 4), Math.ceil(height / 4));
  }
}

/** Reads the number back; undefined when a cell is neither black nor white, or the check fails. */
export function readNumber(picture: ImageData): number | undefined {
  const bits: boolean[] = [];
  for (let at = 0; at < 16; at += 1) {
    const light = cellLight(picture, at % 4, Math.floor(at / 4));
    if (light > 90 && light < 165) return undefined;
    bits.push(light > 128);
  }
  return numberOfBits(bits);
}

/** Mean light of the middle of a cell, 0 to 255. */
function cellLight({ data, width, height }: ImageData, column: number, row: number): number {
  let sum = 0;
  let count = 0;
  for (let y = Math.floor(((row + 0.3) * height) / 4); y < ((row + 0.7) * height) / 4; y += 1) {
    for (let x = Math.floor(((column + 0.3) * width) / 4); x < ((column + 0.7) * width) / 4; x += 1) {
      sum += data[(y * width + x) * 4 + 1] ?? 0;
      count += 1;
    }
  }
  return sum / count;
}
