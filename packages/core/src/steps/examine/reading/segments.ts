import { type Micros, micros } from '../../../ground/base/index.ts';
import type { Piece } from './pieces.ts';
import type { CycleReading } from './reading.ts';

/** A stretch of a cycle in which neither hand changes its motion. */
export interface Segment {
  readonly left: Piece;
  readonly right: Piece;
  readonly from: number;
  readonly to: number;
  readonly start: Micros;
  readonly duration: Micros;
}

/** Cuts a cycle at every boundary of either hand. The segments fill it without a gap, in order of time. */
export function segmentsOf(cycle: CycleReading): Segment[] {
  const found: Segment[] = [];
  let [left, right] = [0, 0];
  let [from, start] = [cycle.from, 0];
  for (;;) {
    const [a, b] = [cycle.left[left], cycle.right[right]];
    if (a === undefined || b === undefined) return found;
    const to = Math.min(a.to, b.to);
    const end = a.to <= b.to ? a.end : b.end;
    found.push({ left: a, right: b, from, to, start: micros(start), duration: micros(end - start) });
    if (a.to === to) left += 1;
    if (b.to === to) right += 1;
    [from, start] = [to, end];
  }
}
