import { inflateSync } from 'node:zlib';

/** Left, lower edge, width and height of a path on the page, points. */
export interface PdfBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

type Matrix = readonly [number, number, number, number, number, number];

const unturned: Matrix = [1, 0, 0, 1, 0, 0];

/**
 * The box of every path that a page draws, read from its content streams alone: matrices are followed, curves go by their
 * end points (ISO 32000-1, 8.3 to 8.5).
 */
export function pdfBoxes(pdf: Buffer): readonly PdfBox[] {
  const boxes: PdfBox[] = [];
  const text = pdf.toString('latin1');
  for (const found of text.matchAll(/stream\r?\n/g)) {
    const start = found.index + found[0].length;
    const end = text.indexOf('endstream', start);
    let stream: string;
    try {
      stream = inflateSync(pdf.subarray(start, end)).toString('latin1');
    } catch {
      continue;
    }
    if (/\b(re|l|m)\s/.test(stream)) boxes.push(...boxesOf(stream));
  }
  return boxes;
}

/** Width and height of the first page, points. */
export function pdfPage(pdf: Buffer): readonly [number, number] {
  const box = /\/MediaBox\s*\[([^\]]+)\]/.exec(pdf.toString('latin1'))?.[1]?.trim().split(/\s+/).map(Number);
  return [box?.[2] ?? Number.NaN, box?.[3] ?? Number.NaN];
}

function boxesOf(stream: string): PdfBox[] {
  const boxes: PdfBox[] = [];
  const saved: Matrix[] = [];
  let matrix = unturned;
  let points: [number, number][] = [];
  let numbers: number[] = [];
  const put = (x = Number.NaN, y = Number.NaN) => {
    const [a, b, c, d, e, f] = matrix;
    points.push([a * x + c * y + e, b * x + d * y + f]);
  };
  const close = () => {
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    const [x, y] = [Math.min(...xs), Math.min(...ys)];
    if (points.length > 1) boxes.push({ x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y });
    points = [];
  };
  for (const [token] of stream.matchAll(/[^\s[\]<>()/]+/g)) {
    const value = Number(token);
    if (Number.isFinite(value)) {
      numbers.push(value);
      continue;
    }
    const [a = 0, b = 0, c = 0, d = 0] = numbers;
    if (token === 'q') saved.push(matrix);
    else if (token === 'Q') matrix = saved.pop() ?? unturned;
    else if (token === 'cm') matrix = times(numbers, matrix);
    else if (token === 'm') {
      close();
      put(a, b);
    } else if (token === 'l') put(a, b);
    else if (token === 'c') put(numbers[4], numbers[5]);
    else if (token === 're') {
      close();
      put(a, b);
      put(a + c, b + d);
    } else if (/^(S|s|f|F|f\*|B|B\*|b|b\*|n)$/.test(token)) close();
    numbers = [];
  }
  return boxes;
}

function times(first: readonly number[], [g, h, i, j, k, l]: Matrix): Matrix {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = first;
  return [a * g + b * i, a * h + b * j, c * g + d * i, c * h + d * j, e * g + f * i + k, e * h + f * j + l];
}
