import { type Hand, hands } from '../../../ground/study/index.ts';
import { handTrackOf, type Track } from './track.ts';
import { type TrackColumn, trackColumns } from './track-columns.ts';

/**
 * The track as a table that `readTrackCsv` reads back to the same values: every frame of every hand that is in it, empty
 * cells where the hand is not seen. Lines end in CR LF after RFC 4180.
 */
export function writeTrackCsv(track: Track): string {
  const there = hands.filter((hand) => handTrackOf(track, hand) !== undefined);
  const columns = trackColumns.filter((column) => isNeeded(track, there, column));
  const lines = [columns.join(',')];
  for (let frame = 0; frame < track.frames; frame += 1)
    for (const hand of there)
      lines.push(columns.map((column) => cellText(track, hand, frame, column)).join(','));
  return `${lines.join('\r\n')}\r\n`;
}

function isNeeded(track: Track, there: readonly Hand[], column: TrackColumn): boolean {
  if (column === 'z' || column === 'opening')
    return there.some((hand) => handTrackOf(track, hand)?.[column] !== undefined);
  if (column === 'presence')
    return there.some((hand) => handTrackOf(track, hand)?.presence.some((value) => value > 0 && value < 1));
  return true;
}

function cellText(track: Track, hand: Hand, frame: number, column: TrackColumn): string {
  if (column === 'frame') return String(frame);
  if (column === 'hand') return hand;
  const found = handTrackOf(track, hand);
  if (found === undefined || Number.isNaN(found.x[frame])) return '';
  return shortest(found[column]?.[frame] ?? Number.NaN);
}

/** The fewest digits that give the same 32-bit number back. */
function shortest(value: number): string {
  if (Number.isNaN(value)) return '';
  for (let digits = 1; digits < 9; digits += 1) {
    const short = Number(value.toPrecision(digits));
    if (Math.fround(short) === value) return String(short);
  }
  return String(value);
}
