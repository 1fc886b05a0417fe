import type { HandTrack, Track } from '@evenhand/core/record';

/** The first frames of one track and all of another one after them, as one film. */
export function joinedTracks(one: Track, frames: number, other: Track): Track {
  const rows = (a: HandTrack, b: HandTrack): HandTrack => {
    const joined = Object.entries(a).map(([name, values]) => {
      const more: unknown = b[name as keyof HandTrack];
      if (!(values instanceof Float32Array) || !(more instanceof Float32Array)) return [name, values];
      const all = new Float32Array(frames + more.length);
      all.set(values.subarray(0, frames));
      all.set(more, frames);
      return [name, all];
    });
    return Object.fromEntries(joined) as HandTrack;
  };
  const { left, right, ...rest } = one;
  return {
    ...rest,
    frames: frames + other.frames,
    ...(left && other.left ? { left: rows(left, other.left) } : {}),
    ...(right && other.right ? { right: rows(right, other.right) } : {}),
  };
}
