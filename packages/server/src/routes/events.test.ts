import { describe, expect, it } from 'vitest';
import {
  makeStudy,
  mark,
  type ServerUnderTest,
  sent,
  serverUnderTest,
} from '../testing/server-under-test.ts';

interface Heard {
  readonly event: string;
  readonly id: string | undefined;
  readonly data: Record<string, unknown>;
}

/** Reads an event stream as the HTML standard (server-sent events, section 9.2) says, one event at a time. */
async function listenTo(server: ServerUnderTest, client: string, lastEventId?: string) {
  const stop = new AbortController();
  const headers: HeadersInit = lastEventId === undefined ? {} : { 'last-event-id': lastEventId };
  const response = await server.fetch(`/api/studies/study-1/events?client=${client}`, {
    headers,
    signal: stop.signal,
  });
  expect(response.headers.get('content-type')).toContain('text/event-stream');
  const events = readEvents(response.body as ReadableStream<Uint8Array>);
  const next = async (): Promise<Heard | 'ended'> => {
    const step = await events.next();
    return step.done ? 'ended' : step.value;
  };
  return { next, stop: () => stop.abort() };
}

async function* readEvents(body: ReadableStream<Uint8Array>): AsyncGenerator<Heard> {
  let text = '';
  const decoder = new TextDecoder();
  for await (const part of body as unknown as AsyncIterable<Uint8Array>) {
    text += decoder.decode(part, { stream: true });
    for (let end = text.indexOf('\n\n'); end >= 0; end = text.indexOf('\n\n')) {
      const fields = new Map(
        text
          .slice(0, end)
          .split('\n')
          .map(
            (line) => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 1).trim()] as const,
          ),
      );
      text = text.slice(end + 2);
      const data = fields.get('data');
      if (data !== undefined)
        yield { event: fields.get('event') ?? 'message', id: fields.get('id'), data: JSON.parse(data) };
    }
  }
}

const edit = (server: ServerUnderTest, client: string, id: string, start: number) =>
  server.post('/api/studies/study-1/edits', { client, baseRev: 0, edits: [sent(id, mark(id, start))] });

describe('the event stream of a study', () => {
  it('greets with the head, then tells of edits and of windows that come and go', async () => {
    const server = await serverUnderTest();
    await makeStudy(server);
    const first = await listenTo(server, 'w1');
    expect(await first.next()).toMatchObject({ event: 'hello', data: { rev: 0, windows: 1 } });
    expect(await first.next()).toMatchObject({ event: 'windows', data: { count: 1 } });
    const second = await listenTo(server, 'w2');
    expect(await second.next()).toMatchObject({ event: 'hello', data: { rev: 0, windows: 2 } });
    expect(await first.next()).toMatchObject({ event: 'windows', data: { count: 2 } });
    await edit(server, 'w2', 'e1', 1_000_000);
    const told = { ...sent('e1', mark('e1', 1_000_000)), rev: 1, client: 'w2' };
    expect(await first.next()).toEqual({ event: 'edit', id: '1', data: told });
    second.stop();
    expect(await first.next()).toMatchObject({ event: 'windows', data: { count: 1 } });
    first.stop();
  });

  it('an edit sent twice, and one that is refused, are not told', async () => {
    const server = await serverUnderTest();
    await makeStudy(server);
    const window = await listenTo(server, 'w1');
    await window.next();
    await window.next();
    await edit(server, 'w2', 'e1', 1_000_000);
    await edit(server, 'w2', 'e1', 1_000_000);
    await edit(server, 'w2', 'same-place', 1_000_000);
    await edit(server, 'w2', 'e2', 2_000_000);
    expect(await window.next()).toMatchObject({ event: 'edit', data: { id: 'e1', rev: 1 } });
    expect(await window.next()).toMatchObject({ event: 'edit', data: { id: 'e2', rev: 2 } });
    window.stop();
  });

  it('a window that lost the stream gets what it missed, after the hello', async () => {
    const server = await serverUnderTest();
    await makeStudy(server);
    for (const [id, start] of [
      ['e1', 1],
      ['e2', 2],
      ['e3', 3],
    ] as const)
      await edit(server, 'w2', id, start);
    const window = await listenTo(server, 'w1', '1');
    expect(await window.next()).toMatchObject({ event: 'hello', data: { rev: 3 } });
    expect(await window.next()).toMatchObject({ event: 'edit', id: '2' });
    expect(await window.next()).toMatchObject({ event: 'edit', id: '3' });
    window.stop();
  });

  it('a window that comes back before its old connection was missed counts once', async () => {
    const server = await serverUnderTest();
    await makeStudy(server);
    const old = await listenTo(server, 'w1');
    await old.next();
    const back = await listenTo(server, 'w1');
    expect(await back.next()).toMatchObject({ event: 'hello', data: { windows: 1 } });
    old.stop();
    back.stop();
  });

  it('ends when the server closes, which an open stream does not hold up', async () => {
    const server = await serverUnderTest();
    await makeStudy(server);
    const window = await listenTo(server, 'w1');
    await window.next();
    await window.next();
    await server.running.close();
    expect(await window.next()).toBe('ended');
  });
});
