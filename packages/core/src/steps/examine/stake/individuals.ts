import type { MotionKind } from '../../../ground/tables/index.ts';
import type { CycleReading, Piece } from '../reading/index.ts';

/** Motions that lead to a grasp: they belong to the thing that is grasped in the end. */
const towards: ReadonlySet<MotionKind> = new Set(['TE', 'Sh', 'F', 'St']);

/** One particular thing: this ring, not rings. */
interface Individual {
  readonly pieces: Piece[];
  place: string | undefined;
  /** Just grasped and not moved yet: it is in a hand, though still where it lay. */
  justGrasped: boolean;
}

/**
 * The motions of a cycle by the particular things they are made with, each in order of time. A grasp begins a new
 * individual when its place is known and none of the same name was last seen there; without places there is one
 * individual of each name. Motions without an object, holds and waits are left out.
 */
export function individualsOf(cycle: CycleReading): readonly (readonly Piece[])[] {
  const byName = new Map<string, Individual[]>();
  const pending: Record<'left' | 'right', Piece[]> = { left: [], right: [] };
  const all = [...cycle.left, ...cycle.right].sort(inOrder);
  for (const piece of all) {
    if (piece.object === undefined || piece.kind === 'unmarked') continue;
    const waiting = pending[piece.hand];
    if (waiting.length > 0 && waiting[0]?.object !== piece.object) settle(byName, pending, piece.hand);
    if (towards.has(piece.kind)) pending[piece.hand].push(piece);
    else {
      const individual = individualFor(byName, piece);
      individual.pieces.push(...pending[piece.hand], piece);
      pending[piece.hand] = [];
      individual.place = placeAfter(piece) ?? individual.place;
      individual.justGrasped = piece.kind === 'G';
    }
  }
  settle(byName, pending, 'left');
  settle(byName, pending, 'right');
  return [...byName.values()].flat().map(({ pieces }) => pieces.sort((a, b) => a.from - b.from));
}

/** By time; what is laid down at a moment lies there for a grasp of the same moment. */
function inOrder(a: Piece, b: Piece): number {
  const grasps = (piece: Piece) => (piece.kind === 'G' ? 1 : 0);
  return a.from - b.from || grasps(a) - grasps(b) || a.to - b.to || (a.hand < b.hand ? -1 : 1);
}

/** Reaches that end in no grasp go to the thing of that name that was handled last. */
function settle(
  byName: Map<string, Individual[]>,
  pending: Record<'left' | 'right', Piece[]>,
  hand: 'left' | 'right',
): void {
  const [first] = pending[hand];
  if (first === undefined) return;
  lastOf(byName, first.object ?? '').pieces.push(...pending[hand]);
  pending[hand] = [];
}

function lastOf(byName: Map<string, Individual[]>, name: string): Individual {
  const known = byName.get(name)?.at(-1);
  if (known !== undefined) return known;
  return added(byName, name);
}

function added(byName: Map<string, Individual[]>, name: string): Individual {
  const made: Individual = { pieces: [], place: undefined, justGrasped: false };
  byName.set(name, [...(byName.get(name) ?? []), made]);
  return made;
}

function individualFor(byName: Map<string, Individual[]>, piece: Piece): Individual {
  const name = piece.object ?? '';
  const known = byName.get(name) ?? [];
  const from = piece.motion?.from;
  if (piece.kind === 'G' && from !== undefined && known.length > 0) {
    const there = known.findLast(
      (item) => (item.place === undefined || item.place === from) && !isInOtherHand(item, piece),
    );
    return there ?? added(byName, name);
  }
  const own = known.findLast(({ pieces }) => pieces.at(-1)?.hand === piece.hand);
  return own ?? lastOf(byName, name);
}

function isInOtherHand({ pieces, justGrasped }: Individual, grasp: Piece): boolean {
  return justGrasped && pieces.at(-1)?.hand !== grasp.hand;
}

function placeAfter({ kind, motion }: Piece): string | undefined {
  return kind === 'G' ? (motion?.to ?? motion?.from) : motion?.to;
}
