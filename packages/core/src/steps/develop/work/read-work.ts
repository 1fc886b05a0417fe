import { z } from 'zod';
import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import { checkWork } from './check-work.ts';
import { type Work, workFormatVersion, workSchema } from './work-schema.ts';

/** Reads a work file. Everything that is wrong is told with its place; nothing is mended silently. */
export function parseWork(text: string): Result<Work, readonly Finding[]> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const reason = error instanceof Error ? error.message : 'it is no JSON';
    return fail([finding('develop/not-json', {}, { reason })]);
  }
  const version =
    typeof value === 'object' && value !== null && 'workFormat' in value ? value.workFormat : undefined;
  if (typeof version === 'number' && version > workFormatVersion)
    return fail([finding('develop/newer-work', {}, { found: version, known: workFormatVersion })]);
  const parsed = workSchema.safeParse(value);
  if (!parsed.success) return fail(plainest(parsed.error.issues).map((issue) => shapeFault(issue, value)));
  const faults = checkWork(parsed.data as Work);
  return faults.length === 0 ? ok(parsed.data as Work) : fail(faults);
}

/** One fault for each place in the file, the last: of two bounds that are passed it is the nearer one. */
function plainest(issues: readonly z.core.$ZodIssue[]): readonly z.core.$ZodIssue[] {
  return [...new Map(issues.map((issue) => [`${issue.code} ${issue.path.join('/')}`, issue])).values()];
}

/** A fault of a step or a place by its name, where it has one. */
function shapeFault(issue: z.core.$ZodIssue, value: unknown): Finding {
  const { path } = issue;
  const where = {
    pointer: path.map((part) => `/${String(part).replace(/~/g, '~0').replace(/\//g, '~1')}`).join(''),
  };
  const reason = reasonOf(issue);
  const fieldAt = (parts: readonly PropertyKey[]) => parts.map(String).join(' ') || 'its fields';
  const [list, index] = path;
  const what = list === 'steps' ? 'step' : list === 'places' ? 'place' : undefined;
  const name = what === undefined || typeof index !== 'number' ? undefined : nameIn(value, list, index);
  return name === undefined || what === undefined
    ? finding('develop/work-shape', where, { field: fieldAt(path), reason })
    : finding('develop/item-shape', where, { what, name, field: fieldAt(path.slice(2)), reason });
}

const kinds: Readonly<Record<string, string>> = {
  int: 'a whole number',
  number: 'a number',
  string: 'text in quotation marks',
  boolean: 'true or false',
  array: 'a list in square brackets',
  object: 'an object in braces',
};

/** What is wrong, in plain words where the schema has its own. */
function reasonOf(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return / undefined$/.test(issue.message)
        ? 'it is missing'
        : `it must be ${kinds[issue.expected] ?? issue.expected}`;
    case 'too_small':
      if (issue.origin === 'array') return `it has too few entries; give ${issue.minimum} or more`;
      if (issue.origin === 'string') return 'it is empty';
      return issue.inclusive === false
        ? `it must be more than ${issue.minimum}`
        : `it must be ${issue.minimum} or more`;
    case 'too_big':
      if (issue.origin === 'array') return `it has too many entries; ${issue.maximum} at most`;
      if (issue.origin === 'string') return `it is too long; ${issue.maximum} letters at most`;
      return `it must be ${issue.maximum} or less`;
    case 'invalid_value':
      return `it can be ${issue.values.map(String).join(', ')}`;
    case 'unrecognized_keys':
      return `${issue.keys.join(', ')} is not known`;
    case 'invalid_union':
      return issue.path[0] === 'home'
        ? 'it is “free”, or names a place for left and one for right'
        : 'it has none of the shapes that it can have';
    default:
      return issue.message.replace(/\.$/, '');
  }
}

function nameIn(value: unknown, list: PropertyKey | undefined, index: number): string | undefined {
  const items = typeof value === 'object' && value !== null ? Reflect.get(value, list ?? '') : undefined;
  const item: unknown = Array.isArray(items) ? items[index] : undefined;
  const name: unknown = typeof item === 'object' && item !== null ? Reflect.get(item, 'name') : undefined;
  return typeof name === 'string' && name !== '' ? name.slice(0, 200) : undefined;
}

/** A work as text for a file. */
export function writeWork(work: Work): string {
  return `${JSON.stringify(work, null, 2)}\n`;
}

/** The published JSON Schema (draft 2020-12) of a work file. */
export function workJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(workSchema, { io: 'input' }) as Record<string, unknown>;
}
