import {
  assuranceOf,
  type CyclesForm,
  type CyclesNeeded,
  cyclesNeeded,
  type Pilot,
  type Precision,
} from '@evenhand/core/define';
import { ok, type Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';

/** What is printed of one form of the number of cycles. */
export interface FormNeeded extends CyclesNeeded {
  readonly form: CyclesForm;
}

export function formsNeeded(
  pilot: Pilot,
  precision: Precision,
  confidence: number,
  forms: readonly CyclesForm[],
): Result<readonly FormNeeded[], Finding> {
  const found: FormNeeded[] = [];
  for (const form of forms) {
    const needed = cyclesNeeded(pilot, { form, precision, assurance: assuranceOf(form, confidence) });
    if (!needed.ok) return needed;
    found.push({ form, ...needed.value });
  }
  return ok(found);
}

export const formWords: Readonly<Record<CyclesForm, string>> = {
  population: '40-formula (population deviation)',
  normal: 'z (sample deviation)',
  student: 't of the pilot (sample deviation)',
  'student-iterated': 't iterated (sample deviation)',
};
