import { type Finding, finding } from '../../../ground/findings/index.ts';
import { type Hand, hands, otherHand } from '../../../ground/study/index.ts';
import { countText } from '../../../ground/units/index.ts';
import { handTrackOf, type Track } from './track.ts';

/** A run of frames in which a hand is not seen: from `start` until before `end`. */
export interface TrackGap {
  readonly start: number;
  readonly end: number;
}

/** Every run of frames without a place of the hand, in order. */
export function trackGaps(track: Track, hand: Hand): readonly TrackGap[] {
  const found = handTrackOf(track, hand);
  if (found === undefined) return track.frames > 0 ? [{ start: 0, end: track.frames }] : [];
  const gaps: TrackGap[] = [];
  let start = -1;
  for (let frame = 0; frame <= track.frames; frame += 1) {
    const missing = frame < track.frames && Number.isNaN(found.x[frame]);
    if (missing && start < 0) start = frame;
    if (missing || start < 0) continue;
    gaps.push({ start, end: frame });
    start = -1;
  }
  return gaps;
}

/** What a person should know of a track before building on it: a hand that is not there, gaps, places off the picture. */
export function trackFindings(track: Track): readonly Finding[] {
  const there = hands.filter((hand) => handTrackOf(track, hand) !== undefined);
  const [only, second] = there;
  const notes: Finding[] = [];
  if (only !== undefined && second === undefined)
    notes.push(finding('track/one-hand', { hand: only }, { hand: only, other: otherHand(only) }));
  if (seemsShares(track)) notes.push(finding('track/shares'));
  return [...notes, ...there.flatMap((hand) => [...gapNote(track, hand), ...outsideNote(track, hand)])];
}

function gapNote(track: Track, hand: Hand): Finding[] {
  const gaps = trackGaps(track, hand);
  const longest = gaps.reduce((best, gap) => (gap.end - gap.start > best.end - best.start ? gap : best), {
    start: 0,
    end: 0,
  });
  if (gaps.length === 0) return [];
  const words = {
    hand,
    missing: gaps.reduce((sum, gap) => sum + gap.end - gap.start, 0),
    frames: track.frames,
    longest: countText(longest.end - longest.start, 'frame'),
    from: longest.start,
  };
  return [finding('track/gaps', { hand, frame: longest.start }, words)];
}

function outsideNote(track: Track, hand: Hand): Finding[] {
  const found = handTrackOf(track, hand);
  const { width, height, unit } = track;
  if (found === undefined || unit !== 'pixels' || width <= 0 || height <= 0) return [];
  let seen = 0;
  let points = 0;
  for (let frame = 0; frame < track.frames; frame += 1) {
    const x = found.x[frame] as number;
    const y = found.y[frame] as number;
    if (Number.isNaN(x)) continue;
    seen += 1;
    // A hand cut by the edge may have its middle a little outside.
    if (x < -0.1 * width || x > 1.1 * width || y < -0.1 * height || y > 1.1 * height) points += 1;
  }
  if (points === 0) return [];
  return [finding('track/outside-picture', { hand }, { points, seen, hand, width, height })];
}

function seemsShares(track: Track): boolean {
  if (track.unit !== 'pixels') return false;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const hand of hands) {
    const found = handTrackOf(track, hand);
    for (const values of found === undefined ? [] : [found.x, found.y])
      for (const value of values) {
        if (value < least) least = value;
        if (value > most) most = value;
      }
  }
  return least >= -0.2 && most <= 1.2 && most > least;
}
