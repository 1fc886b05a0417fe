import type { Hand } from '../../../ground/study/index.ts';
import type { MotionKind } from '../../../ground/tables/index.ts';
import type { MethodReading, Piece } from '../../examine/index.ts';

/** One motion as it was recorded. */
export interface Occurrence {
  readonly kind: MotionKind;
  readonly object: string | undefined;
  readonly hand: Hand;
  /** Of a move: where it came from and went to; of any other motion both are the place where it was done. */
  readonly from: string | undefined;
  readonly to: string | undefined;
  /** Microseconds, above 0. */
  readonly time: number;
  readonly method: string;
  /** The title of the study, where it is another one. */
  readonly study?: string | undefined;
}

/** Occurrences of one motion: same kind, object, hand and places. */
export interface Cell extends Omit<Occurrence, 'time'> {
  readonly times: readonly number[];
}

const noTime: ReadonlySet<MotionKind> = new Set(['unmarked', 'H', 'UD', 'AD', 'R', 'Pn']);

/** Every motion of the counted cycles whose time says something about the motion itself; waits and holds last as long as others need. */
export function occurrencesOf(reading: MethodReading): readonly Occurrence[] {
  return reading.cycles.flatMap((cycle) =>
    (['left', 'right'] as const).flatMap((hand) => {
      let place: string | undefined;
      return cycle[hand].flatMap((piece): Occurrence[] => {
        const at = spotOf(piece, place);
        if (piece.kind === 'TE' || piece.kind === 'TL') place = piece.motion?.to;
        if (noTime.has(piece.kind) || piece.cut || piece.duration <= 0) return [];
        const { kind, object, duration } = piece;
        return [{ kind, object, hand, ...at, time: duration, method: reading.method.id }];
      });
    }),
  );
}

function spotOf({ kind, motion }: Piece, place: string | undefined): Pick<Occurrence, 'from' | 'to'> {
  if (kind === 'TE' || kind === 'TL') return { from: motion?.from ?? place, to: motion?.to };
  const at = (kind === 'G' ? (motion?.from ?? motion?.to) : (motion?.to ?? motion?.from)) ?? place;
  return { from: at, to: at };
}

/** In the order in which they first occur. */
export function cellsOf(occurrences: readonly Occurrence[]): readonly Cell[] {
  const cells = new Map<string, Cell & { times: number[] }>();
  for (const { time, ...facts } of occurrences) {
    const { kind, object, hand, from, to, study } = facts;
    const key = JSON.stringify([kind, object, hand, from, to, study]);
    const known = cells.get(key);
    if (known === undefined) cells.set(key, { ...facts, times: [time] });
    else known.times.push(time);
  }
  return [...cells.values()];
}
