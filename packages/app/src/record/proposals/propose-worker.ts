import { fail, type Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import { frameClock, type Study } from '@evenhand/core/ground/study';
import { decodeTrack, type Proposal, proposeFromTrack } from '@evenhand/core/record';

export interface ProposeRequest {
  /** With the method and its film alone. */
  readonly study: Study;
  readonly methodId: string;
  /** A track file. */
  readonly track: ArrayBuffer;
}

/** Said once, as the last thing. */
export type ProposeAnswer = Result<Proposal, readonly Finding[]> | { readonly failed: string };

/** Said while it works: the share that is done, 0 to 1. */
export interface ProposeProgress {
  readonly share: number;
}

addEventListener('message', ({ data }: MessageEvent<ProposeRequest>) => {
  try {
    postMessage(answerTo(data) satisfies ProposeAnswer);
  } catch (error) {
    const failed = error instanceof Error ? error.message : String(error);
    postMessage({ failed } satisfies ProposeAnswer);
  }
});

function answerTo({ study, methodId, track }: ProposeRequest): ProposeAnswer {
  const [film] = study.films;
  const frames = film === undefined ? {} : { frames: frameClock(film.frameTimes).frames };
  const read = decodeTrack(new Uint8Array(track), frames);
  if (!read.ok) return fail([read.error]);
  let told = 0;
  return proposeFromTrack({ study, method: methodId, track: read.value }, (share) => {
    if (share - told < 0.01) return;
    told = share;
    postMessage({ share } satisfies ProposeProgress);
  });
}
