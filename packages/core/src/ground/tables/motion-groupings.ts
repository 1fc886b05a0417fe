import type { MotionKind } from './motion-kinds.ts';
import type { SourceId } from './sources.ts';

/** Whose division into effective and ineffective motions is used. Authors differ, so every figure names it. */
export type GroupingId = 'niebel-freivalds' | 'groover';

export type MotionGroup = 'effective' | 'ineffective' | 'unlisted';

export interface Grouping {
  readonly id: GroupingId;
  readonly name: string;
  readonly source: SourceId;
  readonly effective: readonly MotionKind[];
  readonly ineffective: readonly MotionKind[];
  readonly note: string;
}

export const groupings: Readonly<Record<GroupingId, Grouping>> = {
  'niebel-freivalds': {
    id: 'niebel-freivalds',
    name: 'Niebel & Freivalds',
    source: 'niebel-freivalds',
    effective: ['TE', 'TL', 'G', 'RL', 'PP', 'U', 'A', 'DA'],
    ineffective: ['Sh', 'St', 'P', 'I', 'Pn', 'UD', 'AD', 'R', 'H'],
    note: 'Find is not listed. Pre-position is effective; inspect and rest are ineffective.',
  },
  groover: {
    id: 'groover',
    name: 'Groover',
    source: 'groover',
    effective: ['TE', 'G', 'TL', 'RL', 'U', 'A', 'DA', 'I', 'R'],
    ineffective: ['H', 'PP', 'P', 'Sh', 'St', 'Pn', 'UD', 'AD'],
    note: 'Find is not listed. Pre-position is ineffective; inspect and rest are not in the ineffective list.',
  },
};

/** Where a motion stands in a grouping; `unmarked`, and what the author does not list, is `unlisted`. */
export function groupOf(kind: MotionKind, grouping: GroupingId): MotionGroup {
  const lists = groupings[grouping];
  if (lists.effective.includes(kind)) return 'effective';
  return lists.ineffective.includes(kind) ? 'ineffective' : 'unlisted';
}
