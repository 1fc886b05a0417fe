import {
  type PackedTimeStudy,
  type StandardWish,
  slimSheet,
  standardAtWork,
  unpackTimeStudy,
  type WorkedStandard,
} from '@evenhand/core/define';
import type { Study } from '@evenhand/core/ground/study';

/** What the page asks for. `study` is what the time study needs of it. */
export interface StandardRequest {
  readonly number: number;
  readonly study: Study;
  readonly packed: PackedTimeStudy;
  readonly wish: StandardWish;
}

export type StandardAnswer =
  | { readonly number: number; readonly worked: WorkedStandard }
  | { readonly number: number; readonly failed: string };

/** The standard of a time study in a thread of its own, so that a long one does not hold the page up. */
addEventListener('message', (event: MessageEvent<StandardRequest>) => {
  const { number, study, packed, wish } = event.data;
  try {
    const worked = standardAtWork(study, unpackTimeStudy(packed), wish);
    const answer: StandardAnswer = { number, worked: { ...worked, sheet: slimSheet(worked.sheet) } };
    postMessage(answer);
  } catch (error) {
    const answer: StandardAnswer = { number, failed: error instanceof Error ? error.message : String(error) };
    postMessage(answer);
  }
});
