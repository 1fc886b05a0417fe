import type { Study, TimeStudy } from '../../../ground/study/index.ts';
import { type Bootstrap, bootstrapStandard } from '../standard-bootstrap.ts';
import { timeStudySheet } from './sheet.ts';
import { planOf } from './sheet-plan.ts';
import type { TimeStudySheet } from './sheet-types.ts';

export interface StandardWish {
  /** Draws of the bootstrap, 100 to 100,000; 0 for none. */
  readonly draws: number;
  readonly seed: number;
}

export interface WorkedStandard {
  readonly sheet: TimeStudySheet;
  /** Undefined without an interval, and when no draws are wanted. */
  readonly bootstrap: Bootstrap | undefined;
  /** Why there is no bootstrap although draws were wanted and there is an interval. */
  readonly refused: string | undefined;
}

/** The sheet and the bootstrap beside its interval: the work of a thread of its own. */
export function standardAtWork(study: Study, timeStudy: TimeStudy, wish: StandardWish): WorkedStandard {
  const sheet = timeStudySheet(study, timeStudy);
  const { standard, allowances } = sheet;
  if (wish.draws === 0 || standard?.interval === undefined || allowances === undefined) {
    return { sheet, bootstrap: undefined, refused: undefined };
  }
  const { confidence, ratingError } = timeStudy;
  const made = bootstrapStandard(standard.measured, planOf(timeStudy, allowances).allowances, {
    confidence,
    ratingError,
    ...wish,
  });
  return made.ok
    ? { sheet, bootstrap: made.value, refused: undefined }
    : { sheet, bootstrap: undefined, refused: made.error.message };
}
