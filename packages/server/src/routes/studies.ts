import { readEdit } from '@evenhand/core/ground/edit';
import { finding } from '@evenhand/core/ground/findings';
import { readStudy } from '@evenhand/core/ground/study';
import type { EditOutcome, SentEdit } from '@evenhand/store';
import { Hono } from 'hono';
import { z } from 'zod';
import { badBody, readBody, sayFinding } from '../answers.ts';
import type { AppParts } from '../app.ts';
import { studyEvents } from './events.ts';

const sentShape = z.object({
  id: z.string().min(1).max(100),
  edit: z.unknown(),
  at: z.iso.datetime(),
  by: z.string().max(100).optional(),
  why: z.string().max(2000).optional(),
});
const batchShape = z.object({
  client: z.string().min(1).max(100),
  baseRev: z.int().min(0),
  edits: z.array(sentShape).max(5000),
});

export function studyRoutes(parts: AppParts): Hono {
  const { store, hub } = parts;
  const { studies } = store;
  const routes = new Hono();
  routes.get('/', async (context) => context.json(await studies.list()));
  routes.post('/', async (context) => {
    const body = await readBody(context);
    if (!body.ok) return badBody(context, body.reason);
    const study = readStudy((body.value as { study?: unknown } | null)?.study);
    if (!study.ok) return context.json({ findings: study.error }, 400);
    const made = await studies.create(study.value);
    return made.ok ? context.json(made.value, 201) : sayFinding(context, made.error);
  });
  routes.get('/:id', async (context) => {
    const rev = wholeNumber(context.req.query('rev'));
    if (rev === null) return badBody(context, '“rev” must be a whole number');
    const loaded = await studies.load(context.req.param('id'), rev);
    return loaded.ok ? context.json(loaded.value) : sayFinding(context, loaded.error);
  });
  routes.post('/:id/edits', async (context) => {
    const body = await readBody(context);
    if (!body.ok) return badBody(context, body.reason);
    const parsed = batchShape.safeParse(body.value);
    if (!parsed.success) return badBody(context, shapeFault(parsed.error));
    const { client, baseRev, edits: sent } = parsed.data;
    const { good, bad } = sortEdits(sent);
    const id = context.req.param('id');
    const done = await studies.edit(id, { client, baseRev, edits: good });
    if (!done.ok) return sayFinding(context, done.error);
    hub.tell(id, done.value.added);
    return context.json({ rev: done.value.rev, results: inOrder(sent, done.value.results, bad) });
  });
  routes.get('/:id/edits', async (context) => {
    const since = wholeNumber(context.req.query('since'));
    if (since === null) return badBody(context, '“since” must be a whole number');
    const found = await studies.editsSince(context.req.param('id'), since ?? 0);
    return found.ok ? context.json(found.value) : sayFinding(context, found.error);
  });
  routes.post('/:id/archive', async (context) => {
    const body = await readBody(context);
    const archived = body.ok ? (body.value as { archived?: unknown } | null)?.archived : undefined;
    if (typeof archived !== 'boolean') return badBody(context, '“archived” must be true or false');
    const done = await studies.archive(context.req.param('id'), archived);
    return done.ok ? context.json(done.value) : sayFinding(context, done.error);
  });
  routes.get('/:id/events', async (context) => await studyEvents(context, parts, context.req.param('id')));
  return routes;
}

type Sent = z.infer<typeof sentShape>;

/** Edits that can be read, and the answers to those that cannot. */
function sortEdits(sent: readonly Sent[]): { good: SentEdit[]; bad: Map<string, EditOutcome> } {
  const good: SentEdit[] = [];
  const bad = new Map<string, EditOutcome>();
  for (const { id, edit, at, by, why } of sent) {
    const read = readEdit(edit);
    if (read.ok) {
      const said = { ...(by === undefined ? {} : { by }), ...(why === undefined ? {} : { why }) };
      good.push({ id, edit: read.value, at, ...said });
    } else {
      const reason = read.error[0] ?? finding('edit/shape', {}, { reason: 'it is empty' });
      bad.set(id, { id, status: 'refused', finding: reason });
    }
  }
  return { good, bad };
}

/** One answer for each edit that came, in the order they came. */
function inOrder(
  sent: readonly Sent[],
  results: readonly EditOutcome[],
  bad: ReadonlyMap<string, EditOutcome>,
): readonly EditOutcome[] {
  const answers = new Map([...bad, ...results.map((item) => [item.id, item] as const)]);
  return sent.flatMap(({ id }) => answers.get(id) ?? []);
}

/** Undefined when it was left out, null when it is none. */
function wholeNumber(text: string | undefined): number | null | undefined {
  if (text === undefined) return undefined;
  return /^\d{1,9}$/.test(text) ? Number(text) : null;
}

function shapeFault(error: z.ZodError): string {
  const issue = error.issues[0];
  return issue === undefined ? 'it is empty' : `/${issue.path.join('/')}: ${issue.message}`;
}
