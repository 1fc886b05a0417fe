import { randomUUID } from 'node:crypto';
import type { Context } from 'hono';
import { type SSEStreamingApi, streamSSE } from 'hono/streaming';
import { sayFinding } from '../answers.ts';
import type { AppParts } from '../app.ts';
import type { HubEvent } from '../event-hub.ts';

/** Keeps proxies and sleeping laptops from taking a quiet connection for a dead one. */
const HEARTBEAT_MS = 15_000;

type Told = Exclude<HubEvent, { readonly type: 'close' }>;

/**
 * The stream of a window: `hello` with the head, then every edit and every change of the number of windows. A window
 * that lost the stream names the last revision it heard of (Last-Event-ID) and gets what it missed after the hello.
 */
export async function studyEvents(context: Context, { store, hub }: AppParts, id: string): Promise<Response> {
  const known = await store.studies.load(id);
  if (!known.ok) return sayFinding(context, known.error);
  const client = context.req.query('client') ?? randomUUID();
  const heard = context.req.header('last-event-id');
  return streamSSE(context, async (stream) => {
    // What happens while the hello is put together waits behind it.
    let early: Told[] | undefined = [];
    const ended = endOf(stream, (end) =>
      hub.join(id, client, (event) => {
        if (event.type === 'close') end();
        else if (early !== undefined) early.push(event);
        else void say(stream, event);
      }),
    );
    const since = heard !== undefined && /^\d{1,9}$/.test(heard) ? Number(heard) : Number.MAX_SAFE_INTEGER;
    const found = await store.studies.editsSince(id, since);
    const rev = found.ok ? found.value.rev : known.value.rev;
    const missed = found.ok ? found.value.edits : [];
    await stream.writeSSE({ event: 'hello', data: JSON.stringify({ rev, windows: hub.windows(id) }) });
    for (const edit of missed) await say(stream, { type: 'edit', data: edit });
    const waiting = early.filter((event) => event.type !== 'edit' || event.data.rev > rev);
    early = undefined;
    for (const event of waiting) void say(stream, event);
    await ended;
  });
}

/** Resolves when the window or the server closes the stream; beats until then. */
function endOf(stream: SSEStreamingApi, join: (end: () => void) => () => void): Promise<void> {
  return new Promise((resolve) => {
    const beat = setInterval(() => void stream.write(': here\n\n'), HEARTBEAT_MS);
    const end = () => {
      clearInterval(beat);
      leave();
      resolve();
    };
    const leave = join(end);
    stream.onAbort(end);
  });
}

async function say(stream: SSEStreamingApi, event: Told): Promise<void> {
  const id = event.type === 'edit' ? { id: String(event.data.rev) } : {};
  await stream.writeSSE({ event: event.type, data: JSON.stringify(event.data), ...id });
}
