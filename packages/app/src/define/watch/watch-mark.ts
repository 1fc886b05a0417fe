/** Where a watch was that still runs; it is gone once the watch has ended. */
export interface WatchMark {
  readonly cycle: number;
  readonly element?: string;
}

const keyOf = (timeStudy: string) => `evenhand.watch.${timeStudy}`;

/** The mark that a page left behind which was closed or loaded anew while its watch ran. */
export function readMark(timeStudy: string): WatchMark | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(timeStudy)) ?? 'null');
    if (typeof kept !== 'object' || kept === null || !('cycle' in kept)) return undefined;
    const element = 'element' in kept && typeof kept.element === 'string' ? { element: kept.element } : {};
    return typeof kept.cycle === 'number' ? { cycle: kept.cycle, ...element } : undefined;
  } catch {
    return undefined;
  }
}

export function keepMark(timeStudy: string, mark: WatchMark | undefined): void {
  try {
    if (mark === undefined) localStorage.removeItem(keyOf(timeStudy));
    else localStorage.setItem(keyOf(timeStudy), JSON.stringify(mark));
  } catch {
    // A browser that keeps nothing loses the sentence about the interruption, and no reading.
  }
}
