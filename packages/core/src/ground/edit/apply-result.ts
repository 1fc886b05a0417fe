import type { Result } from '../base/index.ts';
import type { Finding } from '../findings/index.ts';
import type { Study } from '../study/index.ts';
import type { Edit } from './edit.ts';

export interface Applied {
  readonly study: Study;
  /** Applied to `study`, it gives back the study from before, equal in every part. */
  readonly inverse: Edit;
}

/** Either the new study with the inverse, or why the edit does not hold; the study that came in is never changed. */
export type ApplyResult = Result<Applied, Finding>;
