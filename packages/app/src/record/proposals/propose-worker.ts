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

export type ProposeAnswer = Result<Proposal, readonly Finding[]> | { readonly failed: string };

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
  return read.ok ? proposeFromTrack({ study, method: methodId, track: read.value }) : fail([read.error]);
}
