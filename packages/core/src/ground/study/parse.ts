import type { z } from 'zod';
import { fail, ok, type Result } from '../base/index.ts';
import { type Finding, finding } from '../findings/index.ts';
import { checkStudy } from './check.ts';
import { migrate } from './migrations.ts';
import { formatVersion, type Study, studySchema } from './schema.ts';

/** Reads a study from text. Every fault comes back as a finding with its JSON pointer; nothing is repaired silently. */
export function parseStudy(text: string): Result<Study, readonly Finding[]> {
  let value: unknown;
  try {
    // Some editors put a byte order mark before the text; it is no part of the JSON.
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return fail([
      finding('study/not-json', {}, { reason: error instanceof Error ? error.message : String(error) }),
    ]);
  }
  return readStudy(value);
}

/** Reads a study from a value that came out of JSON. */
export function readStudy(value: unknown): Result<Study, readonly Finding[]> {
  const migrated = migrate(value);
  if (migrated.kind === 'newer') {
    return fail([
      finding(
        'study/newer-format',
        { pointer: '/formatVersion' },
        { found: migrated.found, known: formatVersion },
      ),
    ]);
  }
  if (migrated.kind === 'none') return fail([finding('study/no-format', { pointer: '/formatVersion' })]);
  const parsed = studySchema.safeParse(migrated.document);
  if (!parsed.success) return fail(shapeFindings(parsed.error, 'study/shape'));
  const study = parsed.data as Study;
  const found = checkStudy(study);
  return found.some((item) => item.severity === 'error') ? fail(found) : ok(study);
}

/** The faults that a schema found, each at its JSON pointer. */
export function shapeFindings(error: z.ZodError, code: 'study/shape' | 'edit/shape'): Finding[] {
  return error.issues.map((issue) =>
    finding(code, { pointer: jsonPointer(issue.path) }, { reason: issue.message.replace(/\.$/, '') }),
  );
}

/** RFC 6901. */
function jsonPointer(path: readonly PropertyKey[]): string {
  return path.map((part) => `/${String(part).replace(/~/g, '~0').replace(/\//g, '~1')}`).join('');
}
