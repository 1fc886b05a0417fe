import type { HandProgress } from './tracking.ts';

/** The rate is taken over the last so many milliseconds. */
const windowMs = 6000;
const tellEveryMs = 250;

export interface WorkPace {
  readonly step: () => void;
  readonly end: () => void;
}

/**
 * Counts frames and tells, a few times a second, how fast it goes and how long it will take.
 * @param now milliseconds that never go back
 */
export function workPace(
  frames: number,
  before: number,
  now: () => number,
  tell: ((progress: HandProgress) => void) | undefined,
): WorkPace {
  let done = before;
  let told = Number.NEGATIVE_INFINITY;
  const marks: { readonly at: number; readonly done: number }[] = [];
  const say = (at: number) => {
    told = at;
    while ((marks[0]?.at ?? at) < at - windowMs) marks.shift();
    const first = marks[0];
    marks.push({ at, done });
    const rate =
      first === undefined || at <= first.at ? undefined : ((done - first.done) * 1000) / (at - first.at);
    const secondsLeft = rate === undefined || rate === 0 ? undefined : (frames - done) / rate;
    tell?.({ done, frames, rate, secondsLeft });
  };
  say(now());
  return {
    step: () => {
      done += 1;
      const at = now();
      if (at - told >= tellEveryMs) say(at);
    },
    end: () => say(now()),
  };
}
