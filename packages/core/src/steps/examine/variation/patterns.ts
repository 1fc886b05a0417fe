import type { MotionKind } from '../../../ground/tables/index.ts';
import type { Piece } from '../reading/index.ts';
import type { DeviationPattern } from './variation-types.ts';

/** What each pattern is called. They name motions, not causes. The choice and the wording are ours. */
export const patternNames: Readonly<Record<DeviationPattern, string>> = {
  regrasp: 'grasped again without letting go',
  fumble: 'grasped and let go at once',
  drop: 'let go and taken up again',
  'second-reach': 'reached for again',
  search: 'looked for or chosen',
  wait: 'stood idle',
  hold: 'held',
  inspect: 'looked over',
  more: 'more motions',
  instead: 'other motions instead',
  missing: 'motions missing',
};

/** The motions of a deviation among their neighbours in the same hand. */
export interface Setting {
  readonly extra: readonly Piece[];
  readonly missing: readonly Piece[];
  /** Up to two motions before and after the extra ones. */
  readonly before: readonly Piece[];
  readonly after: readonly Piece[];
}

const allOf: readonly (readonly [DeviationPattern, ReadonlySet<MotionKind>])[] = [
  ['search', new Set(['Sh', 'F', 'St'])],
  ['wait', new Set(['UD', 'AD', 'R', 'Pn'])],
  ['hold', new Set(['H'])],
  ['inspect', new Set(['I'])],
];

/** The first pattern that fits, from the most particular to the most general. */
export function patternOf(setting: Setting): DeviationPattern {
  const { extra, missing } = setting;
  if (extra.length === 0) return 'missing';
  const particular = particularPattern(setting);
  if (particular !== undefined) return particular;
  const kinds = allOf.find(([, set]) => extra.every(({ kind }) => set.has(kind)));
  if (kinds !== undefined) return kinds[0];
  return missing.length > 0 ? 'instead' : 'more';
}

function particularPattern({ extra, before, after }: Setting): DeviationPattern | undefined {
  const row = [...before, ...extra, ...after];
  const strange = new Set(extra);
  const follows = (first: MotionKind, second: MotionKind, apart: boolean) =>
    row.some((a, index) => {
      const rest = row.slice(index + 1, apart ? undefined : index + 2);
      return (
        a.kind === first &&
        rest.some((b) => b.kind === second && b.object === a.object && (strange.has(a) || strange.has(b)))
      );
    });
  if (follows('G', 'G', false)) return 'regrasp';
  if (follows('G', 'RL', false)) return 'fumble';
  if (follows('RL', 'G', true)) return 'drop';
  return reachesAgain(row, strange) ? 'second-reach' : undefined;
}

/** Two reaches for the same thing or to the same place, and nothing was moved between them. */
function reachesAgain(row: readonly Piece[], strange: ReadonlySet<Piece>): boolean {
  return row.some((a, index) => {
    if (a.kind !== 'TE') return false;
    const next = row.slice(index + 1).find(({ kind }) => kind === 'TE' || kind === 'TL');
    if (next?.kind !== 'TE' || !(strange.has(a) || strange.has(next))) return false;
    const place = a.motion?.to;
    return a.object === next.object || (place !== undefined && place === next.motion?.to);
  });
}
