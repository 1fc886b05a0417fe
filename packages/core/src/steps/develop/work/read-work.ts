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
  if (!parsed.success) return fail(parsed.error.issues.map((issue) => shapeFault(issue, value)));
  const faults = checkWork(parsed.data as Work);
  return faults.length === 0 ? ok(parsed.data as Work) : fail(faults);
}

/** A fault of a step or a place by its name, where it has one. */
function shapeFault(issue: z.core.$ZodIssue, value: unknown): Finding {
  const { path } = issue;
  const where = {
    pointer: path.map((part) => `/${String(part).replace(/~/g, '~0').replace(/\//g, '~1')}`).join(''),
  };
  const reason = reasonOf(issue);
  const [list, index] = path;
  const what = list === 'steps' ? 'step' : list === 'places' ? 'place' : undefined;
  const name = what === undefined || typeof index !== 'number' ? undefined : nameIn(value, list, index);
  return name === undefined || what === undefined
    ? finding('develop/work-shape', where, { reason })
    : finding('develop/item-shape', where, { what, name, field: path.slice(2).join(' '), reason });
}

/** What is wrong, in plain words where the schema has its own. */
function reasonOf(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return / undefined$/.test(issue.message) ? 'it is missing' : `it must be of the kind ${issue.expected}`;
    case 'too_small':
      return issue.origin === 'array' || issue.origin === 'string'
        ? `it is too short, ${issue.minimum} at least`
        : `it must be ${issue.minimum} or more`;
    case 'too_big':
      return `it must be ${issue.maximum} or less`;
    case 'invalid_value':
      return `it can be ${issue.values.map(String).join(', ')}`;
    case 'unrecognized_keys':
      return `${issue.keys.join(', ')} is not known`;
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
