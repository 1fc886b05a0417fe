/** Numbers from 0 up to 1 (never 1), the same ones for the same seed on every machine. */
export type Random = () => number;

/**
 * A small seeded generator with a period of 2³² (mulberry32 by Tommy Ettinger, from memory): enough for resampling, not for secrets.
 * @param seed a whole number
 */
export function seededRandom(seed: number): Random {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`a seed is a whole number, got ${seed}`);
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
