import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import type { Track } from '../tracks/track.ts';
import { assembled } from './assemble.ts';
import { methodInput, type ProposeInput } from './method-input.ts';
import type { Proposal } from './proposal.ts';
import { type OnProgress, proposeRows, proposeWeights } from './propose-rows.ts';
import { roughRows } from './rough-rows.ts';

/**
 * Proposes the cycles that nobody has marked yet, from the confirmed ones and the track of both hands; without a
 * confirmed cycle a rough row of each hand. Pure: the same input gives the same proposal.
 * @param onProgress told while cycles are proposed, which takes long in a long film
 */
export function proposeFromTrack(
  input: ProposeInput,
  onProgress?: OnProgress,
): Result<Proposal, readonly Finding[]> {
  const seen = handsSeen(input);
  const read = methodInput(input);
  // What is wrong with the whole track explains what is wrong with a cycle in it.
  const unseen = !read.ok && read.error.some(({ code }) => code === 'propose/cycles-unseen');
  if (!read.ok && !unseen) return read;
  if (seen.some(({ severity }) => severity === 'error')) return fail(seen);
  if (!read.ok) return read;
  const method = read.value;
  const findings = [...method.findings, ...seen];
  if (method.free.length === 0 && method.given.length === 0) {
    return ok({
      ...nothing,
      kept: method.kept,
      findings: [...findings, finding('propose/nothing-free', {}, { method: method.method.name })],
    });
  }
  if (method.confirmed.length === 0) return ok(roughRows(input, method, findings));
  const { seconds, confirmed, free, given } = method;
  const rows = proposeRows(input.track, seconds, confirmed, free, given, proposeWeights, onProgress);
  return ok(assembled(method, rows, findings));
}

const nothing: Omit<Proposal, 'findings'> = { cycles: [], left: [], right: [], spans: [] };

function handsSeen({ track }: ProposeInput): Finding[] {
  const share = (hand: Hand) => {
    const row = track[hand];
    if (row === undefined) return 0;
    let seen = 0;
    for (let frame = 0; frame < track.frames; frame += 1)
      if (Number.isFinite(row.x[frame]) && Number.isFinite(row.y[frame])) seen += 1;
    return seen / Math.max(1, track.frames);
  };
  const shares = { left: share('left'), right: share('right') };
  if (shares.left < 0.02 && shares.right < 0.02) return [finding('propose/no-hands')];
  if (isStill(track)) return [finding('propose/still')];
  const [hand] = hands.filter((side) => shares[side] < 0.02);
  if (hand !== undefined) {
    const seen = hand === 'left' ? 'right' : 'left';
    return [finding('propose/one-hand', { hand }, { seen, other: hand }), ...gapsOf(shares, [seen])];
  }
  return gapsOf(shares, hands);
}

/** Whether no hand goes anywhere or opens: every stretch of such a track is like every other. */
function isStill(track: Track): boolean {
  const rows = hands.flatMap((hand) => track[hand] ?? []);
  const places = rows.flatMap(({ x, y, z }) => [x, y, ...(z === undefined ? [] : [z])]).map(reach);
  const least = Math.max(0.002 * track.width, 1e-4 * Math.max(...places.map(({ high }) => Math.abs(high))));
  const opens = rows.some(({ opening }) => opening !== undefined && width(reach(opening)) > 0);
  return !opens && places.every((place) => width(place) <= least);
}

const width = ({ low, high }: { readonly low: number; readonly high: number }) => high - low;

function reach(values: Float32Array): { readonly low: number; readonly high: number } {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return low > high ? { low: 0, high: 0 } : { low, high };
}

function gapsOf(shares: Readonly<Record<Hand, number>>, of: readonly Hand[]): Finding[] {
  return of.flatMap((hand) =>
    shares[hand] < 0.75
      ? [finding('propose/gaps', { hand }, { hand, share: Math.round(100 * (1 - shares[hand])) })]
      : [],
  );
}
