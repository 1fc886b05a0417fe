import { parseCycles } from '@evenhand/core/examine';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type ComparisonFields, type Edit, sameData } from '@evenhand/core/ground/edit';
import type { Comparison, Method, MoneyCase, Study } from '@evenhand/core/ground/study';

/** The edit that gives some fields of a comparison other values; undefined when none of them changes. */
export function changeComparison(comparison: Comparison, to: ComparisonFields): Edit | undefined {
  const keys = Object.keys(to) as (keyof ComparisonFields)[];
  const was = Object.fromEntries(keys.map((key) => [key, comparison[key] ?? null])) as ComparisonFields;
  if (keys.every((key) => sameData(to[key] ?? null, was[key] ?? null))) return undefined;
  return { type: 'comparison.change', comparison: comparison.id, to, was };
}

/** A comparison of two methods, the recorded before the composed and the earlier before the later. */
export function newComparison(
  { methods }: Study,
  id: string,
  chosen: { readonly before?: string | undefined; readonly after?: string | undefined } = {},
): Comparison | undefined {
  const before = chosen.before ?? methods.find(({ id: known }) => known !== chosen.after)?.id;
  const after = chosen.after ?? methods.find(({ id: known }) => known !== before)?.id;
  if (before === undefined || after === undefined || before === after) return undefined;
  return { id, before: { method: before }, after: { method: after }, confidence: 0.95 };
}

/** "Present method → Improved method", or the name it was given. */
export function comparisonName({ methods }: Study, { name, before, after }: Comparison): string {
  if (name !== undefined) return name;
  const nameOf = (id: string) => methods.find((method) => method.id === id)?.name ?? id;
  return `${nameOf(before.method)} → ${nameOf(after.method)}`;
}

/** Reads numbers of cycles; nothing written means all that are not set aside. */
export function readCycles(
  text: string,
  method: Method | undefined,
): Result<readonly number[] | undefined, string> {
  const read = parseCycles(text);
  if (!read.ok || read.value === undefined) return read;
  const count = method?.cycles.items.length ?? 0;
  const beyond = read.value.find((number) => number > count);
  return beyond === undefined
    ? ok(read.value)
    : fail(`“${method?.name ?? ''}” has no cycle ${beyond}; it has ${count}.`);
}

/** The case that a person begins with: the volume of the operation where it is known, and nothing that costs. */
export function firstMoney({ operation }: Study): MoneyCase {
  return {
    currency: '€',
    basis: 'measured',
    unitsAYear: operation.unitsAYear ?? 0,
    hourlyCost: 0,
    cost: 0,
    years: 3,
    discountRate: 0,
  };
}
