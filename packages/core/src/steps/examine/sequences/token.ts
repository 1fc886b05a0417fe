import type { MotionKind } from '../../../ground/tables/index.ts';
import type { Piece } from '../reading/index.ts';

/** When two motions count as the same. */
export type TokenBy = 'kind' | 'kind-object' | 'kind-object-place';

/** A motion as it is compared: fields that do not count are undefined. */
export interface MotionToken {
  readonly kind: MotionKind;
  readonly object: string | undefined;
  /** Ids of places. */
  readonly from: string | undefined;
  readonly to: string | undefined;
}

export interface TokenTable {
  /** Number of the token of a motion, from 0; equal motions have equal numbers. −1 where nothing is marked. */
  readonly idOf: (piece: Piece) => number;
  readonly tokenOf: (id: number) => MotionToken;
}

/** Numbers the motions in the order in which they are first asked for. */
export function tokenTable(by: TokenBy): TokenTable {
  const tokens: MotionToken[] = [];
  const byKind = new Map<MotionKind, Map<string | undefined, number>>();
  const idOf = (piece: Piece): number => {
    if (piece.kind === 'unmarked') return -1;
    const ofKind = byKind.get(piece.kind) ?? new Map<string | undefined, number>();
    byKind.set(piece.kind, ofKind);
    const key = restOf(piece, by);
    const known = ofKind.get(key);
    if (known !== undefined) return known;
    ofKind.set(key, tokens.length);
    return tokens.push(tokenFrom(piece, by)) - 1;
  };
  const tokenOf = (id: number): MotionToken => {
    const token = tokens[id];
    if (token === undefined) throw new RangeError(`no motion has the number ${id}`);
    return token;
  };
  return { idOf, tokenOf };
}

/** What counts besides the kind. Ids have no “/” and no blank in them; an object may have any sign, so it stands last. */
function restOf({ object, motion }: Piece, by: TokenBy): string | undefined {
  if (by === 'kind') return undefined;
  if (by === 'kind-object') return object;
  return `${motion?.from ?? '/'} ${motion?.to ?? '/'} ${object === undefined ? '' : `=${object}`}`;
}

export function tokenFrom({ kind, object, motion }: Piece, by: TokenBy): MotionToken {
  const places = by === 'kind-object-place';
  return {
    kind,
    object: by === 'kind' ? undefined : object,
    from: places ? motion?.from : undefined,
    to: places ? motion?.to : undefined,
  };
}

/** "G ring", "TL ring (bin → fixture)"; a motion without an object is its code alone. */
export function tokenWords(token: MotionToken, placeName: (id: string) => string): string {
  const what = token.object === undefined ? token.kind : `${token.kind} ${token.object}`;
  if (token.from === undefined && token.to === undefined) return what;
  const name = (id: string | undefined) => (id === undefined ? '…' : placeName(id));
  return `${what} (${name(token.from)} → ${name(token.to)})`;
}
