import type { Micros } from '../../../ground/base/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import type { CycleReading, Piece } from '../../examine/index.ts';

/**
 * What a hand does at one place between two moves, in one cycle: motions that ask for the eyes and motions that do not are
 * visits of their own, and so is a hold.
 */
export interface Visit {
  readonly hand: Hand;
  readonly kind: 'work' | 'hold';
  /** Place of the study; undefined where the record names none. */
  readonly place: string | undefined;
  readonly pieces: readonly Piece[];
  readonly start: Micros;
  readonly end: Micros;
  /** What the hand carries before and after; undefined is nothing. */
  readonly before: string | undefined;
  readonly after: string | undefined;
  readonly eyes: boolean;
}

/** Motions that are not part of what must be done: delays, rest, planning, and what nobody marked. */
const noWork: ReadonlySet<MotionKind> = new Set(['UD', 'AD', 'R', 'Pn', 'unmarked']);
/**
 * Motions that need the eyes here. Sight serves one exact target at a time (Bingham, Hughes & Mon-Williams 2008; Riek et
 * al. 2003); that a grasp alone does without is our choice, and every step can be changed.
 */
const needEyes: ReadonlySet<MotionKind> = new Set(['Sh', 'F', 'St', 'P', 'PP', 'I']);
/** Belongs to the motion before it, whatever that asks for. */
const follows: ReadonlySet<MotionKind> = new Set(['G', 'RL']);

/** The visits of one hand in a cycle, in their order, and where the hand stands idle or was not marked. */
export function visitsOf(cycle: CycleReading, hand: Hand): readonly Visit[] {
  const found: Visit[] = [];
  let open: Piece[] = [];
  let place = placeBefore(cycle[hand]);
  let load = loadBefore(cycle[hand]);
  const close = () => {
    const [first] = open;
    const last = open.at(-1);
    if (first === undefined || last === undefined) return;
    const before = load;
    for (const piece of open) load = loadAfter(piece, load);
    found.push({
      hand,
      kind: first.kind === 'H' ? 'hold' : 'work',
      place: open.map(placeOf).find((known) => known !== undefined) ?? place,
      pieces: open,
      start: first.start,
      end: last.end,
      before,
      after: load,
      eyes: open.some(({ kind }) => needEyes.has(kind)),
    });
    open = [];
  };
  for (const piece of cycle[hand]) {
    if (piece.kind === 'TE' || piece.kind === 'TL') {
      close();
      place = piece.motion?.to ?? undefined;
      // A loaded move names what is carried; the name may have changed while the hand held it.
      if (piece.kind === 'TL') load = piece.object ?? load;
      if (piece.kind === 'TE') load = undefined;
    } else if (noWork.has(piece.kind)) close();
    else {
      const before = open.at(-1);
      if (before !== undefined && !together(before, piece)) close();
      open.push(piece);
    }
  }
  close();
  return namedAlike(found);
}

/** A part is called by the name under which it is carried away, also where it was taken up under another. */
function namedAlike(visits: readonly Visit[]): readonly Visit[] {
  return visits.map((visit, index) => {
    const next = visits[index + 1]?.before;
    return visit.after === undefined || next === undefined || visit.kind === 'hold'
      ? visit
      : { ...visit, after: next };
  });
}

function together(before: Piece, piece: Piece): boolean {
  if ((before.kind === 'H') !== (piece.kind === 'H')) return false;
  const [one, other] = [placeOf(before), placeOf(piece)];
  if (one !== undefined && other !== undefined && one !== other) return false;
  return follows.has(piece.kind) || needEyes.has(before.kind) === needEyes.has(piece.kind);
}

function placeOf({ kind, motion }: Piece): string | undefined {
  return kind === 'G' ? (motion?.from ?? motion?.to) : (motion?.to ?? motion?.from);
}

/** Where the hand is when the cycle begins: where its last move of the cycle went, or where its first one came from. */
function placeBefore(pieces: readonly Piece[]): string | undefined {
  const moves = pieces.filter(({ kind }) => kind === 'TE' || kind === 'TL');
  return moves[0]?.motion?.from ?? moves.at(-1)?.motion?.to;
}

/** What the hand carries when the cycle begins. */
function loadBefore(pieces: readonly Piece[]): string | undefined {
  for (const { kind, object } of pieces) {
    if (kind === 'TE' || kind === 'G' || kind === 'Sh' || kind === 'St') return undefined;
    if (kind === 'TL' || kind === 'RL' || kind === 'H' || kind === 'P' || kind === 'PP')
      return object ?? 'part';
  }
  return undefined;
}

function loadAfter({ kind, object }: Piece, load: string | undefined): string | undefined {
  if (kind === 'G') return object ?? 'part';
  if (kind === 'RL') return undefined;
  return kind === 'H' ? (object ?? load) : load;
}
