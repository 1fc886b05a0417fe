/**
 * A second, slow way to the shorter cycle, from the definition alone and tick by tick. Two hands walk along their recorded
 * rows, one unit of recorded time after another. A motion that is gone costs nothing. Any other unit costs one tick. A
 * motion may begin only when the other hand has walked past the end of every motion that had ended, in the record, before
 * this one began. A hand that holds or waits walks only behind the other one, and costs nothing of its own. Where both
 * hold or wait at once, both must stand at the same recorded moment, and then the unit costs one tick for both.
 * Times are small whole numbers of one unit.
 */
export interface Step {
  readonly length: number;
  readonly does: 'work' | 'follow' | 'gone';
}

export function walkedCycle(left: readonly Step[], right: readonly Step[]): number {
  const rows = [unitsOf(left), unitsOf(right)] as const;
  const end = rows[0].length;
  const at: [number, number] = [0, 0];
  let ticks = 0;
  for (;;) {
    slide(rows, at, end);
    if (at[0] === end && at[1] === end) return ticks;
    const together = bothFollow(rows, at);
    const moving = [0, 1].filter((hand) => together || works(rows, at, hand));
    if (moving.length === 0) throw new Error(`both hands stand still at ${at}`);
    for (const hand of moving) at[hand as 0 | 1] += 1;
    ticks += 1;
  }
}

type Unit = Step & { readonly first: number; readonly last: number };
type Rows = readonly [readonly Unit[], readonly Unit[]];

function unitsOf(steps: readonly Step[]): Unit[] {
  let first = 0;
  return steps.flatMap((step) => {
    const unit = { ...step, first, last: first + step.length };
    first = unit.last;
    return Array.from({ length: step.length }, () => unit);
  });
}

/** Everything that costs nothing, as far as it goes. */
function slide(rows: Rows, at: [number, number], end: number): void {
  for (let moved = true; moved; ) {
    moved = false;
    for (const hand of [0, 1] as const) {
      const unit = rows[hand][at[hand]];
      if (unit === undefined || at[hand] === end || !mayBegin(rows, at, hand)) continue;
      const other = rows[1 - hand]?.[at[hand]];
      const process = unit.does === 'follow' && other?.does === 'follow';
      const behind = at[hand] < (at[1 - hand] ?? 0);
      if (unit.does === 'gone' || (unit.does === 'follow' && !process && behind)) {
        at[hand] += 1;
        moved = true;
      }
    }
    const [l, r] = [rows[0][at[0]], rows[1][at[1]]];
    // One hand follows into a stretch that is gone on the other side: both are through.
    if (at[0] === at[1] && l && r && l.does === 'follow' && r.does === 'gone' && mayBegin(rows, at, 0)) {
      at[1] += 1;
      at[0] += 1;
      moved = true;
    }
  }
}

function mayBegin(rows: Rows, at: readonly [number, number], hand: number): boolean {
  const here = at[hand as 0 | 1];
  const unit = rows[hand as 0 | 1][here];
  if (unit === undefined || unit.first !== here || unit.does === 'gone') return true;
  const other = rows[(1 - hand) as 0 | 1];
  const ended = other.reduce((last, known) => (known.last <= here ? Math.max(last, known.last) : last), 0);
  return (at[(1 - hand) as 0 | 1] ?? 0) >= ended;
}

function works(rows: Rows, at: readonly [number, number], hand: number): boolean {
  return rows[hand as 0 | 1][at[hand as 0 | 1]]?.does === 'work' && mayBegin(rows, at, hand);
}

function bothFollow(rows: Rows, at: readonly [number, number]): boolean {
  return at[0] === at[1] && rows[0][at[0]]?.does === 'follow' && rows[1][at[1]]?.does === 'follow';
}
