import type { Answered } from '../developed-plain.ts';
import { type FrontAsked, frontOfWork, type PlainFront } from './front-plain.ts';

export type FrontAnswer =
  | { readonly kind: 'tried'; readonly tried: number }
  | { readonly kind: 'front'; readonly front: Answered<PlainFront> };

addEventListener('message', ({ data }: MessageEvent<FrontAsked>) => {
  const say = (answer: FrontAnswer) => postMessage(answer);
  try {
    say({
      kind: 'front',
      front: frontOfWork(
        data,
        () => performance.now(),
        (tried) => say({ kind: 'tried', tried }),
      ),
    });
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    say({ kind: 'front', front: { ok: false, reason } });
  }
});
