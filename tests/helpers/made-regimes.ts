import type { MadeKind } from './made-tracks.ts';

/**
 * Kinds of generated records, from easy to hard. Each is made anew from a seed, so that anyone can make the same ones.
 * `assembly` is set so that even stretching puts about as many boundaries within 0.2 s as on hand-labelled two-hand
 * records (29 %).
 */
export const madeRegimes: Readonly<Record<string, Partial<MadeKind>>> = {
  bench: {},
  assembly: { motionSeconds: [0.7, 3], motions: [4, 6], timeSpread: 0.3, pause: 0.1 },
  slow: { motionSeconds: [0.5, 4], timeSpread: 0.35, cycles: 6 },
  noisy: { noise: 6, dropped: 0.06, placeSpread: 40, opening: false },
  odd: { extra: 0.35, missing: 0.25, pause: 0.3, cycles: 9 },
  uneven: {
    motionSeconds: [0.5, 4],
    motions: [5, 8],
    timeSpread: 0.4,
    pause: 0.15,
    placeSpread: 35,
    opening: false,
  },
  rested: {
    motionSeconds: [0.4, 2.2],
    motions: [4, 6],
    timeSpread: 0.35,
    between: 4,
    placeSpread: 45,
    opening: false,
    noise: 4,
  },
};
