/** Finds, in any stretch of a list, the least value that is not below a limit. */
export interface NextPlace {
  /** The least value of the entries `first` … `end` − 1 that is `limit` or more; −1 when there is none. */
  readonly atOrAfter: (first: number, end: number, limit: number) => number;
}

interface Level {
  /** How many of the entries before each one have the bit 0. */
  readonly zeros: Int32Array;
  readonly bit: number;
}

/**
 * A wavelet matrix (Claude and Navarro 2012, from memory): the values sorted bit by bit from the highest, with a count of
 * zeros at each level. A question takes as many steps as the values have bits.
 * @param values whole numbers from 0 to 2^30 − 1
 */
export function nextPlace(values: Int32Array): NextPlace {
  const bits = Math.max(1, 32 - Math.clz32(values.reduce((most, value) => Math.max(most, value), 0)));
  const levels: Level[] = [];
  let row = values;
  for (let bit = bits - 1; bit >= 0; bit -= 1) {
    const level = { zeros: zerosBefore(row, bit), bit };
    levels.push(level);
    row = sortedBy(row, level);
  }
  const limitOfAll = 2 ** bits;
  return {
    atOrAfter: (first, end, limit) => {
      if (limit >= limitOfAll) return -1;
      const rank = below(levels, first, end, limit);
      return rank >= end - first ? -1 : smallest(levels, first, end, rank);
    },
  };
}

function zerosBefore(row: Int32Array, bit: number): Int32Array {
  const zeros = new Int32Array(row.length + 1);
  for (let at = 0; at < row.length; at += 1) {
    zeros[at + 1] = (zeros[at] as number) + (((row[at] as number) >>> bit) & 1 ? 0 : 1);
  }
  return zeros;
}

function sortedBy(row: Int32Array, { zeros, bit }: Level): Int32Array {
  const sorted = new Int32Array(row.length);
  let [zero, one] = [0, zeros[row.length] as number];
  for (let at = 0; at < row.length; at += 1) {
    const value = row[at] as number;
    if ((value >>> bit) & 1) {
      sorted[one] = value;
      one += 1;
    } else {
      sorted[zero] = value;
      zero += 1;
    }
  }
  return sorted;
}

/** How many of the entries are below the limit. */
function below(levels: readonly Level[], first: number, end: number, limit: number): number {
  let [low, high, count] = [first, end, 0];
  for (const { zeros, bit } of levels) {
    const [zeroLow, zeroHigh] = [zeros[low] as number, zeros[high] as number];
    if ((limit >>> bit) & 1) {
      count += zeroHigh - zeroLow;
      const all = zeros[zeros.length - 1] as number;
      [low, high] = [all + low - zeroLow, all + high - zeroHigh];
    } else [low, high] = [zeroLow, zeroHigh];
  }
  return count;
}

/** The entry that stands at `rank` (from 0) when they are sorted. */
function smallest(levels: readonly Level[], first: number, end: number, rank: number): number {
  let [low, high, left, value] = [first, end, rank, 0];
  for (const { zeros, bit } of levels) {
    const [zeroLow, zeroHigh] = [zeros[low] as number, zeros[high] as number];
    const count = zeroHigh - zeroLow;
    if (left >= count) {
      left -= count;
      value += 2 ** bit;
      const all = zeros[zeros.length - 1] as number;
      [low, high] = [all + low - zeroLow, all + high - zeroHigh];
    } else [low, high] = [zeroLow, zeroHigh];
  }
  return value;
}
