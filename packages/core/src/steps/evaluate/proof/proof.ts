import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import type { Study } from '../../../ground/study/index.ts';
import type { TimeUnit } from '../../../ground/units/index.ts';
import { cycleWords, type MethodReading, readMethod } from '../../examine/index.ts';
import { type Decomposition, decompositionOf } from '../decomposition/decomposition.ts';
import { type Difference, type DifferenceWish, differenceOf } from '../difference/difference.ts';
import { type EqualPace, paceOf, unitTimes } from '../pace/pace.ts';
import { type Claim, claimOf } from './claim.ts';

/** The two methods, and how their cycles are chosen: all that are not set aside when left out. */
export interface ProofChoice extends DifferenceWish {
  readonly before: string;
  readonly after: string;
  readonly cyclesBefore?: readonly number[] | undefined;
  readonly cyclesAfter?: readonly number[] | undefined;
  /** Motions that were proposed and not confirmed count as well. */
  readonly proposed?: boolean | undefined;
  /** The unit of times in sentences; seconds when left out. */
  readonly unit?: TimeUnit | undefined;
}

export interface Proof {
  readonly before: MethodReading;
  readonly after: MethodReading;
  readonly difference: Difference;
  readonly decomposition: Decomposition;
  readonly pace: EqualPace;
  readonly claim: Claim;
  /** Of both readings, of the difference and of pace. */
  readonly notes: readonly Finding[];
}

/** Two methods of a study side by side: difference, where it comes from, pace, and what may be claimed. */
export function proofOf(study: Study, choice: ProofChoice): Result<Proof, Finding> {
  const { proposed, unit = 'seconds', confidence = 0.95 } = choice;
  const before = readMethod(study, choice.before, { cycles: choice.cyclesBefore, proposed });
  if (!before.ok) return before;
  const after = readMethod(study, choice.after, { cycles: choice.cyclesAfter, proposed });
  if (!after.ok) return after;
  if (choice.before === choice.after) {
    return fail(finding('evaluate/same-method', {}, { method: before.value.method.name }));
  }
  const [first, second] = [before.value, after.value];
  const difference = differenceOf(timed(first), timed(second), { ...choice, confidence });
  if (!difference.ok) return difference;
  const decomposition = decompositionOf(first, second);
  const pace = paceOf(first, second, confidence);
  const claim = claimOf({
    difference: difference.value,
    decomposition,
    pace,
    cycles: { before: cyclesOf(first), after: cyclesOf(second) },
    demo: study.demo === true,
    unit,
  });
  const notes = [...first.notes, ...second.notes, ...difference.value.notes, ...pace.notes];
  return ok({
    before: first,
    after: second,
    difference: difference.value,
    decomposition,
    pace,
    claim,
    notes,
  });
}

function timed(reading: MethodReading): { readonly name: string; readonly times: readonly number[] } {
  return { name: reading.method.name, times: unitTimes(reading) };
}

/** "cycles 1–5, 7 of 7". */
function cyclesOf({ cycles, method }: MethodReading): string {
  const words = cycleWords(cycles.map(({ number }) => number));
  const all = method.cycles.items.length;
  return all === 0 ? words : `${words} of ${all}`;
}
