// What a stopwatch should have read, straight from what happened: no watch, no presses, no running sums.

/** One stretch of work on one element, in the order of time; `seen` is whether its end was seen. */
export interface Stretch {
  readonly cycle: number;
  readonly element: string;
  readonly parts: readonly { readonly kind: 'work' | 'foreign' | 'pause'; readonly us: number }[];
  readonly seen: boolean;
}

export interface WatchedWork {
  /** By "element cycle": its time, undefined where it cannot be known. */
  readonly times: ReadonlyMap<string, number | undefined>;
  readonly foreign: readonly { readonly cycle: number; readonly us: number }[];
  /** Work of each run of stretches that only their two outer ends hold. */
  readonly together: readonly { readonly elements: readonly string[]; readonly us: number }[];
}

const workOf = ({ parts }: Stretch) =>
  parts.reduce((sum, { kind, us }) => sum + (kind === 'work' ? us : 0), 0);

/**
 * A stretch has a time when both its ends were seen. On a watch that runs on, an end that was not seen is missing to the
 * stretch before it and to the one after it; on one that was set to zero there, only to the one before. An element that was
 * done twice in a cycle has the sum, unknown as soon as one of the two is.
 */
export function watchedWork(stretches: readonly Stretch[], timing: 'continuous' | 'repetitive'): WatchedWork {
  const known = (index: number) =>
    stretches[index]?.seen === true &&
    (timing === 'repetitive' || index === 0 || stretches[index - 1]?.seen === true);
  const times = new Map<string, number | undefined>();
  for (const { cycle, element } of stretches) {
    const own = [...stretches.keys()].filter(
      (index) => stretches[index]?.cycle === cycle && stretches[index]?.element === element,
    );
    const whole = own.every(known);
    const sum = own.reduce((total, index) => total + workOf(stretches[index] as Stretch), 0);
    times.set(`${element} ${cycle}`, whole ? sum : undefined);
  }
  const foreign = stretches.flatMap(({ cycle, parts }) =>
    parts.filter(({ kind }) => kind === 'foreign').map(({ us }) => ({ cycle, us })),
  );
  return { times, foreign, together: timing === 'continuous' ? runsOf(stretches) : [] };
}

function runsOf(stretches: readonly Stretch[]): WatchedWork['together'] {
  const ends = [...stretches.keys()].filter((index) => stretches[index]?.seen === true);
  return ends
    .map((end, place) => stretches.slice((ends[place - 1] ?? -1) + 1, end + 1))
    .filter((run) => run.length > 1)
    .map((run) => ({
      elements: run.map(({ element }) => element),
      us: run.reduce((sum, stretch) => sum + workOf(stretch), 0),
    }));
}
