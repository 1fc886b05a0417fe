import type { Finding } from '../../../ground/findings/index.ts';

/** By line, then by column; findings of one place keep their order. */
export function inTextOrder(found: readonly Finding[]): Finding[] {
  return found.toSorted(
    (a, b) => (a.where.line ?? 0) - (b.where.line ?? 0) || (a.where.column ?? 0) - (b.where.column ?? 0),
  );
}
