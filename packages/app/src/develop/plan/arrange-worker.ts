import {
  type ArrangeWish,
  arranged,
  arrangedWith,
  type ChangeId,
  changeOf,
  type Library,
  type MovedPlace,
} from '@evenhand/core/develop';
import { readMethod } from '@evenhand/core/examine';
import type { Study, Work } from '@evenhand/core/ground/study';

export interface ArrangeRequest {
  readonly study: Study;
  readonly methodId: string | undefined;
  readonly work: Work;
  readonly kind: 'open' | 'closed';
  readonly library?: Library | undefined;
  /** Changes that are taken. */
  readonly taken: readonly ChangeId[];
  /** Milliseconds. */
  readonly patience: number;
}

/** Places with the method for them, as plain data. Times in microseconds. */
export interface PlainArranged {
  /** Of the work as it is kept. */
  readonly moved: readonly MovedPlace[];
  /** As it is shown, with the changes that are taken. */
  readonly shown: readonly MovedPlace[];
  readonly unitTime: number;
  readonly words: string;
  readonly spots: number;
}

export type ArrangeAnswer =
  | { readonly kind: 'better'; readonly unitTime: number }
  | { readonly kind: 'done'; readonly arranged: PlainArranged }
  | { readonly kind: 'refused'; readonly reason: string };

const say = (answer: ArrangeAnswer) => postMessage(answer);

addEventListener('message', ({ data }: MessageEvent<ArrangeRequest>) => {
  const { study, methodId, work, kind, library, taken, patience } = data;
  try {
    const reading = methodId === undefined ? undefined : readMethod(study, methodId);
    const end = performance.now() + patience;
    const wish = {
      readings: reading?.ok === true ? [reading.value] : [],
      kind,
      library,
      seed: 1,
      stop: () => performance.now() > end,
    };
    say(taken.length === 0 ? ofWork(work, wish) : ofChanged(work, taken, wish));
  } catch (error) {
    say({ kind: 'refused', reason: error instanceof Error ? error.message : String(error) });
  }
});

function ofWork(work: Work, wish: ArrangeWish): ArrangeAnswer {
  const of = (period: number) => period / work.unitsPerCycle;
  const found = arranged(work, {
    ...wish,
    onBetter: ({ schedule }) => say({ kind: 'better', unitTime: of(schedule.period) }),
  });
  if (!found.ok) return { kind: 'refused', reason: found.error.message };
  const { moved, schedule, words, spots } = found.value;
  return { kind: 'done', arranged: { moved, shown: moved, unitTime: of(schedule.period), words, spots } };
}

function ofChanged(work: Work, taken: readonly ChangeId[], wish: ArrangeWish): ArrangeAnswer {
  const changes = taken.flatMap((id) => changeOf(id, work) ?? []);
  const { onBetter: _, ...rest } = wish;
  const found = arrangedWith(work, changes, {
    ...rest,
    onBetter: ({ unitTime }) => say({ kind: 'better', unitTime }),
  });
  if (found === undefined || changes.length < taken.length)
    return {
      kind: 'refused',
      reason: 'The changes that are taken cannot be made together. Take one of them back, then ask again.',
    };
  if (!found.ok) return { kind: 'refused', reason: found.error.message };
  const { moved, follows, method, words, spots } = found.value;
  return { kind: 'done', arranged: { moved, shown: follows, unitTime: method.unitTime, words, spots } };
}
