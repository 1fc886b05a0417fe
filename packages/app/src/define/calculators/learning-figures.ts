import { batchTime, type LearningCurve, timeUpTo, unitReaching, unitTime } from '@evenhand/core/define';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { numberText } from '@evenhand/core/ground/units';
import { all, numberOf } from './calculator-input.ts';

/** What is asked of a curve, as it was written into the fields. */
export interface WantedFigures {
  readonly unit: string;
  readonly from: string;
  readonly to: string;
  readonly reach: string;
}

/** What is asked of a curve, each figure with its words or with what is wrong. */
export function figuresOf(
  curve: LearningCurve,
  wanted: WantedFigures,
): readonly (readonly [string, Result<string, string>])[] {
  const whole = { least: 1, most: 1e12, whole: true } as const;
  const unit = numberOf(wanted.unit, 'The unit', whole);
  const batch = all(
    numberOf(wanted.from, 'The first unit', whole),
    numberOf(wanted.to, 'The last unit', whole),
  );
  const lines: (readonly [string, Result<string, string>])[] = [];
  lines.push([`Time of unit ${wanted.unit}`, then(unit, (value) => unitTime(curve, value), 3)]);
  const total = then(
    unit,
    (value) => timeUpTo(curve, value),
    3,
    ({ total: sum }) => sum,
  );
  const average = then(
    unit,
    (value) => timeUpTo(curve, value),
    3,
    ({ average: mean }) => mean,
  );
  lines.push([`All units up to ${wanted.unit}`, total], [`Average up to unit ${wanted.unit}`, average]);
  lines.push([
    `Units ${wanted.from} to ${wanted.to} together`,
    then(batch, ([from, to]) => batchTime(curve, from, to), 3),
  ]);
  if (wanted.reach.trim() !== '') {
    const reach = numberOf(wanted.reach, 'The wanted time', { above: 0 });
    lines.push([
      `First unit within ${wanted.reach}`,
      then(reach, (value) => unitReaching(curve, value), 0, Math.ceil),
    ]);
  }
  return lines;
}

function then<Input, Value = number>(
  input: Result<Input, string>,
  make: (value: Input) => Result<Value, { readonly message: string }>,
  decimals: number,
  pick: (value: Value) => number = (value) => value as unknown as number,
): Result<string, string> {
  if (!input.ok) return input;
  const made = make(input.value);
  return made.ok ? ok(numberText(pick(made.value), decimals)) : fail(made.error.message);
}
