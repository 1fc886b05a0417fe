/** Frames from `from` up to, and without, `to`. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

const usual = 240;
/** A short film is cut smaller, so that two workers have about equal parts; each stretch begins with some frames of lead. */
const least = 60;
const partsOfShort = 4;
/** A run without a key frame is decoded from its beginning for every stretch in it, so it is cut into few. */
const mostInRun = 4;

/**
 * Cuts a film into stretches that are searched on their own, in any order. They begin at key frames, where decoding can
 * begin, as far as these are not too rare.
 */
export function stretchesOf(frames: number, keyFrames: readonly number[]): readonly Stretch[] {
  const stretches: Stretch[] = [];
  const length = Math.min(usual, Math.max(least, Math.ceil(frames / partsOfShort)));
  let from = 0;
  const close = (to: number) => {
    const run = to - from;
    const pieces = Math.max(1, Math.min(mostInRun, Math.floor(run / length)));
    for (let piece = 0; piece < pieces; piece += 1) {
      stretches.push({
        from: from + Math.round((run * piece) / pieces),
        to: from + Math.round((run * (piece + 1)) / pieces),
      });
    }
    from = to;
  };
  for (const key of keyFrames) if (key - from >= length) close(key);
  if (from < frames) close(frames);
  return stretches;
}

/** The stretches of the film that no finished one covers. */
export function stillToDo(all: readonly Stretch[], done: readonly Stretch[]): readonly Stretch[] {
  return all.filter(({ from, to }) => !done.some((one) => one.from <= from && to <= one.to));
}
