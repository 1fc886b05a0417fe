import { readEdit } from '@evenhand/core/ground/edit';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import { readStudy } from '@evenhand/core/ground/study';
import type { EditOutcome, SentEdit } from '@evenhand/store';
import { type Context, Hono } from 'hono';
import { streamSSE } from 'hono/streaming';
import { z } from 'zod';
import { type AppParts, refusal } from '../app.ts';

const batchShape = z.object({
  client: z.string().min(1).max(100),
  baseRev: z.int().min(0),
  edits: z
    .array(
      z.object({
        id: z.string().min(1).max(100),
        edit: z.unknown(),
        at: z.string().max(40),
        by: z.string().max(100).optional(),
        why: z.string().max(2000).optional(),
      }),
    )
    .max(5000),
});

export function studyRoutes({ store, hub }: AppParts): Hono {
  const { studies } = store;
  const routes = new Hono();
  routes.get('/', async (context) => context.json(await studies.list()));
  routes.post('/', async (context) => {
    const body = await readJson(context);
    const study = readStudy((body as { study?: unknown } | undefined)?.study);
    if (!study.ok) return context.json({ findings: study.error }, 400);
    const made = await studies.create(study.value);
    return made.ok ? context.json(made.value, 201) : sayFinding(context, made.error);
  });
  routes.get('/:id', async (context) => {
    const rev = context.req.query('rev');
    if (rev !== undefined && !/^\d{1,9}$/.test(rev))
      return context.json(refusal('rev must be a whole number'), 400);
    const loaded = await studies.load(context.req.param('id'), rev === undefined ? undefined : Number(rev));
    return loaded.ok ? context.json(loaded.value) : sayFinding(context, loaded.error);
  });
  routes.post('/:id/edits', async (context) => {
    const parsed = batchShape.safeParse(await readJson(context));
    if (!parsed.success) return context.json(refusal('the edits are not in the form that is expected'), 400);
    const id = context.req.param('id');
    const { good, bad } = sortEdits(parsed.data.edits);
    const { client, baseRev } = parsed.data;
    const done = await studies.edit(id, { client, baseRev, edits: good });
    if (!done.ok) return sayFinding(context, done.error);
    hub.tell(id, done.value.added);
    return context.json({ rev: done.value.rev, results: [...done.value.results, ...bad] });
  });
  routes.get('/:id/edits', async (context) => {
    const since = context.req.query('since') ?? '0';
    if (!/^\d{1,9}$/.test(since)) return context.json(refusal('since must be a whole number'), 400);
    const found = await studies.editsSince(context.req.param('id'), Number(since));
    return found.ok ? context.json(found.value) : sayFinding(context, found.error);
  });
  routes.post('/:id/archive', async (context) => {
    const archived = ((await readJson(context)) as { archived?: unknown } | undefined)?.archived;
    if (typeof archived !== 'boolean') return context.json(refusal('archived must be true or false'), 400);
    const done = await studies.archive(context.req.param('id'), archived);
    return done.ok ? context.json(done.value) : sayFinding(context, done.error);
  });
  routes.get('/:id/events', async (context) => {
    const id = context.req.param('id');
    const loaded = await studies.load(id);
    if (!loaded.ok) return sayFinding(context, loaded.error);
    return streamSSE(context, async (stream) => {
      const ended = new Promise<void>((resolve) => {
        const beat = setInterval(() => void stream.write(': here\n\n'), 15_000);
        const end = () => {
          clearInterval(beat);
          leave();
          resolve();
        };
        const leave = hub.join(id, (event) => {
          if (event.type === 'close') end();
          else void stream.writeSSE({ event: event.type, data: JSON.stringify(event.data) });
        });
        stream.onAbort(end);
      });
      const head = await studies.load(id);
      const rev = head.ok ? head.value.rev : loaded.value.rev;
      await stream.writeSSE({ event: 'hello', data: JSON.stringify({ rev, windows: hub.windows(id) }) });
      await ended;
    });
  });
  return routes;
}

/** Edits that can be read, and the answers to those that cannot. */
function sortEdits(sent: z.infer<typeof batchShape>['edits']): { good: SentEdit[]; bad: EditOutcome[] } {
  const good: SentEdit[] = [];
  const bad: EditOutcome[] = [];
  for (const { id, edit, at, by, why } of sent) {
    const read = readEdit(edit);
    const reason = read.ok
      ? undefined
      : (read.error[0] ?? finding('edit/shape', {}, { reason: 'it is empty' }));
    if (read.ok)
      good.push({
        id,
        edit: read.value,
        at,
        ...(by === undefined ? {} : { by }),
        ...(why === undefined ? {} : { why }),
      });
    if (reason !== undefined) bad.push({ id, status: 'refused', finding: reason });
  }
  return { good, bad };
}

async function readJson(context: Context): Promise<unknown> {
  try {
    return await context.req.json();
  } catch {
    return undefined;
  }
}

export function sayFinding(context: Context, error: Finding) {
  const status =
    error.code === 'store/not-found'
      ? 404
      : error.code === 'store/taken' || error.code === 'store/behind'
        ? 409
        : 400;
  return context.json({ findings: [error] }, status);
}
