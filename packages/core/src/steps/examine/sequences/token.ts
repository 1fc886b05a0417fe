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
  const ids = new Map<string, number>();
  const idOf = (piece: Piece): number => {
    if (piece.kind === 'unmarked') return -1;
    const token = tokenFrom(piece, by);
    const key = keyOf(token);
    const known = ids.get(key);
    if (known !== undefined) return known;
    ids.set(key, tokens.length);
    tokens.push(token);
    return tokens.length - 1;
  };
  const tokenOf = (id: number): MotionToken => {
    const token = tokens[id];
    if (token === undefined) throw new RangeError(`no motion has the number ${id}`);
    return token;
  };
  return { idOf, tokenOf };
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

/** A text that is the same for equal tokens only: an object may contain any character, a kind and an id may not. */
function keyOf({ kind, object, from, to }: MotionToken): string {
  return `${kind} ${from ?? '-/'} ${to ?? '-/'} ${object === undefined ? '' : `=${object}`}`;
}

/** "G ring", "TL ring (bin → fixture)"; a motion without an object is its code alone. */
export function tokenWords(token: MotionToken, placeName: (id: string) => string): string {
  const what = token.object === undefined ? token.kind : `${token.kind} ${token.object}`;
  if (token.from === undefined && token.to === undefined) return what;
  const name = (id: string | undefined) => (id === undefined ? '…' : placeName(id));
  return `${what} (${name(token.from)} → ${name(token.to)})`;
}
