/** Equality of plain data; an absent field equals one that is undefined. */
export function sameData(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const left = a as Record<string, unknown>;
  const right = b as Record<string, unknown>;
  const keys = new Set([...Object.keys(left), ...Object.keys(right)]);
  for (const key of keys) if (!sameData(left[key], right[key])) return false;
  return true;
}

/** The first field whose present value is not what `was` says; `null` stands for a field that is absent. */
export function firstDifference(target: object, was: object): string | undefined {
  const values = target as Readonly<Record<string, unknown>>;
  return Object.entries(was).find(([key, value]) => !sameData(values[key], value ?? undefined))?.[0];
}

/** The target with the fields of `to`; `null` takes a field away. Key order stays that of the target. */
export function withFields<T extends object>(target: T, to: object): T {
  const changed: Record<string, unknown> = Object.fromEntries(Object.entries(target));
  for (const [key, value] of Object.entries(to)) {
    if (value === null || value === undefined) delete changed[key];
    else changed[key] = value;
  }
  return changed as T;
}

/** Both sides of a change must speak of the same fields, or undo would lose something. */
export function sameFields(to: object, was: object): boolean {
  const a = Object.keys(to).sort();
  const b = Object.keys(was).sort();
  return a.length === b.length && a.every((key, index) => key === b[index]);
}
