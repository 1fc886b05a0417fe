import { channel, channels, type HandSignals } from './signals.ts';

/** How much each kind of signal counts when two moments of a hand are compared. */
export interface UnlikeWeights {
  readonly place: number;
  readonly velocity: number;
  readonly speed: number;
  readonly open: number;
  readonly opens: number;
  /** No two moments are more unlike than this. */
  readonly most: number;
}

/** The moments of one hand, made ready for comparison: weighted, and what is not known set to nothing. */
export interface Moments {
  readonly values: Float32Array;
  readonly seen: Uint8Array;
  readonly most: number;
  /** The speed channel of a hand at rest. */
  readonly still: number;
  readonly speedRoot: number;
}

const ready = new WeakMap<HandSignals, WeakMap<UnlikeWeights, Moments>>();

/** Moments of the whole film; every cycle asks for them, so the same signals and weights give the same ones. */
export function momentsOf(hand: HandSignals, weights: UnlikeWeights): Moments {
  const ofHand = ready.get(hand) ?? new WeakMap<UnlikeWeights, Moments>();
  ready.set(hand, ofHand);
  const moments = ofHand.get(weights) ?? weighted(hand, weights);
  ofHand.set(weights, moments);
  return moments;
}

function weighted({ data }: HandSignals, weights: UnlikeWeights): Moments {
  const roots = new Float32Array(channels);
  for (const index of [channel.x, channel.y, channel.z]) roots[index] = Math.sqrt(weights.place);
  for (const index of [channel.vx, channel.vy, channel.vz]) roots[index] = Math.sqrt(weights.velocity);
  roots[channel.speed] = Math.sqrt(weights.speed);
  roots[channel.open] = Math.sqrt(weights.open);
  roots[channel.opens] = Math.sqrt(weights.opens);
  const values = new Float32Array(data.length);
  const seen = new Uint8Array(data.length / channels);
  for (let at = 0; at < data.length; at += 1) {
    const value = (data[at] as number) * (roots[at % channels] as number);
    values[at] = Number.isNaN(value) ? 0 : value;
  }
  for (let point = 0; point < seen.length; point += 1)
    seen[point] = Number.isNaN(data[point * channels + channel.x]) ? 0 : 1;
  const speedRoot = roots[channel.speed] as number;
  return { values, seen, most: weights.most, still: Math.log(0.06) * speedRoot, speedRoot };
}

/** How unlike two moments are: a sum of squares, at most `most`. Where the hand is not seen nothing can be said. */
export function unlike({ values, seen, most }: Moments, a: number, b: number): number {
  const known = seen[a];
  if (known === undefined || seen[b] === undefined) return most * 0.6;
  if (known === 0 || seen[b] === 0) return known === seen[b] ? most * 0.2 : most * 0.5;
  let sum = 0;
  const [one, two] = [a * channels, b * channels];
  for (let index = 0; index < channels; index += 1) {
    const away = (values[one + index] as number) - (values[two + index] as number);
    sum += away * away;
  }
  return sum < most ? sum : most;
}

/**
 * The same where the second moment belongs to a movement that takes `scale` times as long: its velocities are smaller by
 * that much for the same way.
 */
export function unlikeScaled(moments: Moments, a: number, b: number, scale: number): number {
  const { values, seen, most } = moments;
  const known = seen[a];
  if (known === undefined || seen[b] === undefined) return most * 0.6;
  if (known === 0 || seen[b] === 0) return known === seen[b] ? most * 0.2 : most * 0.5;
  const [one, two] = [a * channels, b * channels];
  let sum = 0;
  for (let index = 0; index < channels; index += 1) {
    let there = values[two + index] as number;
    if (index >= channel.vx && index <= channel.vz) there *= scale;
    else if (index === channel.speed)
      there = Math.max(there, moments.still) + moments.speedRoot * Math.log(scale);
    const away = (values[one + index] as number) - there;
    sum += away * away;
  }
  return Math.min(sum, most);
}

/** How far a moment is from rest. */
export function resting({ values, seen, most, still }: Moments, point: number): number {
  if (seen[point] !== 1) return most * 0.3;
  const away = (values[point * channels + channel.speed] as number) - still;
  return Math.min(most, away * away);
}

/** How much faster the second moment is than the first, as a weighted logarithm; 0 where a hand is not seen. */
export function faster({ values, seen, still }: Moments, a: number, b: number): number {
  if (seen[a] !== 1 || seen[b] !== 1) return 0;
  const [one, two] = [
    values[a * channels + channel.speed] as number,
    values[b * channels + channel.speed] as number,
  ];
  return Math.max(two, still) - Math.max(one, still);
}
