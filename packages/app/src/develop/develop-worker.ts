import { type ChangeId, changeOf, changesFor, type Work } from '@evenhand/core/develop';
import {
  type Answered,
  type DevelopAsked,
  developSession,
  type PlainMethod,
  type PlainWorth,
} from './developed-plain.ts';

export interface DevelopRequest {
  readonly number: number;
  readonly asked: DevelopAsked;
  /** Changes that are taken together. */
  readonly taken: readonly ChangeId[];
  /** Changes that a person asked for beside those that are always tried. */
  readonly more: readonly ChangeId[];
}

export type DevelopAnswer = { readonly number: number } /** The best so far, while the search goes on. */ & (
  | { readonly kind: 'better'; readonly method: PlainMethod }
  | { readonly kind: 'base'; readonly base: Answered<PlainMethod> }
  | { readonly kind: 'taken'; readonly worth: PlainWorth | undefined }
  /** What one more change would be worth on top of those that are taken. */
  | { readonly kind: 'change'; readonly id: ChangeId; readonly worth: PlainWorth | undefined }
  | { readonly kind: 'done' }
  | { readonly kind: 'failed'; readonly reason: string }
);

const now = () => performance.now();

/** The best method first, then what is taken, then each change on top of it, as they are found. */
addEventListener('message', ({ data }: MessageEvent<DevelopRequest>) => {
  const { number, asked, taken, more } = data;
  const say = (answer: DevelopAnswer) => postMessage(answer);
  try {
    const { base, worth } = developSession(asked, now, (method) => say({ number, kind: 'better', method }));
    say({ number, kind: 'base', base });
    if (!base.ok) return say({ number, kind: 'done' });
    if (taken.length > 0) say({ number, kind: 'taken', worth: worth(taken) });
    for (const id of inTurn(asked.work, more)) {
      if (taken.includes(id)) continue;
      say({ number, kind: 'change', id, worth: worth([...taken, id]) });
    }
    say({ number, kind: 'done' });
  } catch (error) {
    say({ number, kind: 'failed', reason: error instanceof Error ? error.message : String(error) });
  }
});

/** Those that a person asked for first, and those that make the work larger, and so take longest, last. */
function inTurn(work: Work, more: readonly ChangeId[]): readonly ChangeId[] {
  const steps = (id: ChangeId) => changeOf(id, work)?.apply(work)?.steps.length ?? 0;
  const usual = changesFor(work)
    .filter(({ asked, id }) => !asked && !more.includes(id))
    .map(({ id }) => ({ id, steps: id === 'four-units' ? Number.POSITIVE_INFINITY : steps(id) }))
    .sort((a, b) => a.steps - b.steps);
  return [...more, ...usual.map(({ id }) => id)];
}
