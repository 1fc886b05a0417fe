import type { DecompositionRow, Proof } from '@evenhand/core/evaluate';
import type { Piece } from '@evenhand/core/examine';
import { useEffect, useRef, useState } from 'react';
import type { FilmPair, Side } from './film-pair.ts';
import { nextPlace, piecesOfRow } from './row-frames.ts';

interface Played {
  readonly row: DecompositionRow;
  readonly side: Side;
  readonly index: number;
  readonly pieces: readonly Piece[];
}

/** Plays the places of a motion one after the other; the cycle that a place lies in is put on screen first. */
export function useRowPlay(wish: {
  readonly proof: Proof;
  readonly pair: FilmPair | undefined;
  readonly positions: Readonly<Record<Side, number>>;
  readonly onCycle: (side: Side, number: number) => void;
}): { readonly play: (row: DecompositionRow, side: Side) => void; readonly next: (() => void) | undefined } {
  const { proof, pair, positions, onCycle } = wish;
  const [played, setPlayed] = useState<Played>();
  const asked = useRef<Played>(undefined);
  const play = (row: DecompositionRow, side: Side) => {
    const pieces = piecesOfRow(proof, row, side);
    const again =
      played?.row.name === row.name && played.side === side && pair?.state().stretch !== undefined;
    const index = nextPlace(pieces, positions[side], again ? played.index : undefined);
    const piece = pieces[index];
    const number = piece === undefined ? undefined : proof[side].cycles[piece.cycle]?.number;
    if (number === undefined) return;
    const next = { row, side, index, pieces };
    asked.current = next;
    setPlayed(next);
    onCycle(side, number);
  };
  // Runs after the effect that has told the pair which cycles it shows.
  useEffect(() => {
    const now = asked.current;
    const piece = now?.pieces[now.index];
    if (now === undefined || piece === undefined || pair === undefined) return;
    asked.current = undefined;
    pair.playStretch(now.side, { from: piece.from, to: piece.to, name: stretchName(proof, now) });
  });
  const more = played !== undefined && played.pieces.length > 1;
  return { play, next: more ? () => play(played.row, played.side) : undefined };
}

/** "grasp, collar, right hand, before: place 2 of 6, cycle 1". */
function stretchName(proof: Proof, { row, side, index, pieces }: Played): string {
  const piece = pieces[index];
  const number = piece === undefined ? 0 : (proof[side].cycles[piece.cycle]?.number ?? 0);
  const place = pieces.length < 2 ? '' : `, place ${index + 1} of ${pieces.length}`;
  const cycle = number === 0 ? '' : `, cycle ${number}`;
  return `${row.name}, ${piece?.hand ?? ''} hand, ${side}${cycle}${place}`;
}
