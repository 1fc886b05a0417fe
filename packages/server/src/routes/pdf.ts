import { finding } from '@evenhand/core/ground/findings';
import type { Scene } from '@evenhand/core/ground/scene';
import { Hono } from 'hono';
import { z } from 'zod';
import { badBody, readBody } from '../answers.ts';
import type { AppParts } from '../app.ts';

const shape = z.object({
  pages: z
    .array(
      z.object({
        width: z.number().positive().max(5000),
        height: z.number().positive().max(5000),
        title: z.string(),
        description: z.string(),
        nodes: z.array(z.looseObject({ kind: z.enum(['rect', 'line', 'path', 'text', 'group']) })),
      }),
    )
    .min(1)
    .max(500),
  paper: z.enum(['a4', 'letter', 'a3']),
  title: z.string().max(500),
  language: z.string().max(20).optional(),
});

/** Sheets as the page shows them, written as a PDF. */
export function pdfRoute({ log }: AppParts): Hono {
  const routes = new Hono();
  routes.post('/', async (context) => {
    const body = await readBody(context);
    if (!body.ok) return badBody(context, body.reason);
    const parsed = shape.safeParse(body.value);
    if (!parsed.success) return badBody(context, 'these are not sheets that can be printed');
    const { pages, paper, title, language } = parsed.data;
    try {
      const { scenesToPdf } = await import('@evenhand/draw/pdf');
      const pdf = await scenesToPdf(pages as unknown as readonly Scene[], { paper, title, language });
      context.header('Content-Type', 'application/pdf');
      return context.body(pdf as Uint8Array<ArrayBuffer>);
    } catch (error) {
      log(`a PDF could not be made: ${error instanceof Error ? error.stack : String(error)}`);
      // A RangeError is meant for people; any other error is about the inside of the typesetter.
      const reason = error instanceof RangeError ? error.message : 'the typesetter cannot set these sheets';
      return context.json({ findings: [finding('server/pdf', {}, { reason })] }, 422);
    }
  });
  return routes;
}
