/**
 * Who has a moment of one hand when motions overlap, from the definition alone: of those that run in that moment one
 * that is marked before one that is not; then the one that began last; of those that began together the one that ends
 * first; of those that are the same, the one that stands last in the table. Moments are whole units; every motion is
 * asked at every moment.
 */
export interface OwnedStretch {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly isMarked: boolean;
}

/** For every moment from 0 to the end: the line that has it, or 0 for none. */
export function overlapOwners(motions: readonly OwnedStretch[], end: number): number[] {
  return Array.from({ length: end }, (_, moment) => {
    const running = motions.filter((motion) => motion.start <= moment && moment < motion.end);
    const [first] = running.toSorted(
      (a, b) =>
        Number(b.isMarked) - Number(a.isMarked) || b.start - a.start || a.end - b.end || b.line - a.line,
    );
    return first?.line ?? 0;
  });
}
