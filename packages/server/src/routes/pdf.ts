import type { Scene } from '@evenhand/core/ground/scene';
import { Hono } from 'hono';
import { z } from 'zod';
import { refusal } from '../app.ts';

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
  paper: z.enum(['a4', 'letter']),
  title: z.string().max(500),
  language: z.string().max(20).optional(),
});

/** Sheets as the page shows them, written as a PDF. */
export function pdfRoute(): Hono {
  const routes = new Hono();
  routes.post('/', async (context) => {
    const parsed = shape.safeParse(await context.req.json().catch(() => undefined));
    if (!parsed.success) return context.json(refusal('these are not sheets that can be printed'), 400);
    const { pages, paper, title, language } = parsed.data;
    const { scenesToPdf } = await import('@evenhand/draw/pdf');
    const pdf = await scenesToPdf(pages as unknown as readonly Scene[], { paper, title, language });
    context.header('Content-Type', 'application/pdf');
    return context.body(pdf as Uint8Array<ArrayBuffer>);
  });
  return routes;
}
