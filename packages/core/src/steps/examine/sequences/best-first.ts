/**
 * The places of a list from the largest value to the least, of equal ones the first first, as far as they are asked for: a
 * heap is made in one pass, and each place asked for costs as many steps as the list's length has bits.
 */
export function* bestFirst(values: Float64Array): Generator<number> {
  const heap = Int32Array.from(values.keys());
  for (let at = (heap.length >> 1) - 1; at >= 0; at -= 1) sink(heap, values, at, heap.length);
  for (let left = heap.length; left > 0; left -= 1) {
    yield heap[0] as number;
    heap[0] = heap[left - 1] as number;
    sink(heap, values, 0, left - 1);
  }
}

function sink(heap: Int32Array, values: Float64Array, from: number, length: number): void {
  const place = heap[from] as number;
  let at = from;
  for (;;) {
    let child = 2 * at + 1;
    if (child >= length) break;
    if (child + 1 < length && comesFirst(values, heap[child + 1], heap[child])) child += 1;
    if (!comesFirst(values, heap[child], place)) break;
    heap[at] = heap[child] as number;
    at = child;
  }
  heap[at] = place;
}

function comesFirst(values: Float64Array, a: number | undefined, b: number | undefined): boolean {
  const [left, right] = [values[a as number] as number, values[b as number] as number];
  return left > right || (left === right && (a as number) < (b as number));
}
