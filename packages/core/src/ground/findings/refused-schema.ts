import { z } from 'zod';

const findingSchema = z
  .strictObject({
    code: z.string().describe('Stays the same from one version to the next.'),
    severity: z.enum(['error', 'warning', 'note']),
    where: z.strictObject({
      file: z.string().optional(),
      pointer: z.string().optional().describe('JSON pointer into the document.'),
      line: z.int().optional().describe('From 1.'),
      column: z.int().optional().describe('From 1.'),
      hand: z.enum(['left', 'right']).optional(),
      frame: z.int().optional(),
    }),
    message: z.string().describe('A sentence that says what was found and what to do.'),
    source: z.string().optional(),
  })
  .meta({ id: 'Finding', title: 'Something a person should know about their data' });

const refusedSchema = z
  .strictObject({ ok: z.literal(false), findings: z.array(findingSchema).min(1) })
  .meta({ id: 'Refused', title: 'The call could not be done, and why' });

/** Shapes that reports share: a finding, and what is printed in place of a report when there is none. */
export const reportParts = { finding: findingSchema, refused: refusedSchema };
