/**
 * The cost of the best alignment of two rows of motions by trying every way: each motion of either row either has no
 * partner (2), or is paired with one of the same kind and object (0) or of the same kind with another object (1); pairs do
 * not cross. Among alignments of equal cost the least sum of differences of the starts counts. Written from the definition
 * as a plain recursion with a memory, no band.
 */
export interface AlignedMotion {
  readonly kind: string;
  readonly object: string | undefined;
  readonly start: number;
}

export type Best = readonly [cost: number, apart: number];

export function leastAlignment(a: readonly AlignedMotion[], b: readonly AlignedMotion[]): Best {
  const memory = new Map<string, Best>();
  const plus = ([cost, apart]: Best, more: Best): Best => [cost + more[0], apart + more[1]];
  const less = (x: Best, y: Best) => x[0] - y[0] || x[1] - y[1];
  const best = (i: number, j: number): Best => {
    const key = `${i} ${j}`;
    const known = memory.get(key);
    if (known !== undefined) return known;
    const [left, right] = [a[i], b[j]];
    const ways: Best[] = [];
    if (left === undefined && right === undefined) ways.push([0, 0]);
    if (left !== undefined) ways.push(plus(best(i + 1, j), [2, 0]));
    if (right !== undefined) ways.push(plus(best(i, j + 1), [2, 0]));
    if (left !== undefined && right !== undefined && left.kind === right.kind) {
      const cost = left.object === right.object ? 0 : 1;
      ways.push(plus(best(i + 1, j + 1), [cost, Math.abs(left.start - right.start)]));
    }
    const least = ways.sort(less)[0] as Best;
    memory.set(key, least);
    return least;
  };
  return best(0, 0);
}

/** What a given pairing costs by the same definition. */
export function costOf(
  a: readonly AlignedMotion[],
  b: readonly AlignedMotion[],
  partner: readonly number[],
): Best {
  let [cost, apart, paired] = [0, 0, 0];
  a.forEach((left, index) => {
    const right = b[partner[index] ?? -1];
    if (right === undefined) {
      cost += 2;
      return;
    }
    if (left.kind !== right.kind) throw new Error('motions of another kind were paired');
    paired += 1;
    cost += left.object === right.object ? 0 : 1;
    apart += Math.abs(left.start - right.start);
  });
  return [cost + 2 * (b.length - paired), apart];
}
