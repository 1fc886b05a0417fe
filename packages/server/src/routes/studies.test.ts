import type { Study } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { codes, makeStudy, mark, plainStudy, sent, serverUnderTest } from '../testing/server-under-test.ts';

type Answer = {
  rev: number;
  results: { id: string; status: string; rev?: number; finding?: { code: string } }[];
};

describe('studies over HTTP', () => {
  it('makes, lists, loads and archives a study', async () => {
    const server = await serverUnderTest({ clock: () => Date.UTC(2026, 2, 1) });
    const made = await server.post('/api/studies', { study: plainStudy() });
    expect([made.status, await made.json()]).toEqual([201, { id: 'study-1', rev: 0 }]);
    expect(await (await server.fetch('/api/studies/study-1')).json()).toEqual({
      study: plainStudy(),
      rev: 0,
    });
    const at = '2026-03-01T00:00:00.000Z';
    const entry = { id: 'study-1', title: 'Couplings', rev: 0, changedAt: at, createdAt: at, demo: false };
    const list = async () => await (await server.fetch('/api/studies')).json();
    expect(await list()).toEqual([{ ...entry, archived: false, films: 0, methods: 1 }]);
    expect((await server.post('/api/studies/study-1/archive', { archived: true })).status).toBe(200);
    expect(await list()).toEqual([{ ...entry, archived: true, films: 0, methods: 1 }]);
  });

  it('an id that is taken is refused with 409, and the first study stays', async () => {
    const server = await serverUnderTest();
    await makeStudy(server);
    const again = await server.post('/api/studies', { study: { ...plainStudy(), title: 'Other' } });
    expect([again.status, await codes(again)]).toEqual([409, ['store/taken']]);
    const { study } = (await (await server.fetch('/api/studies/study-1')).json()) as { study: Study };
    expect(study.title).toBe('Couplings');
  });

  it('a study with faults comes back with each fault at its place', async () => {
    const server = await serverUnderTest();
    const refused = await server.post('/api/studies', { study: { ...plainStudy(), title: 7 } });
    const body = (await refused.json()) as { findings: { code: string; where: { pointer: string } }[] };
    expect([refused.status, body.findings[0]?.code, body.findings[0]?.where.pointer]).toEqual([
      400,
      'study/shape',
      '/title',
    ]);
  });

  it('edits are applied in order, and every revision can be loaded', async () => {
    const server = await serverUnderTest();
    await makeStudy(server);
    const edits = [sent('e1', mark('a', 1_000_000)), sent('e2', mark('b', 2_000_000))];
    const answer = await server.post('/api/studies/study-1/edits', { client: 'w1', baseRev: 0, edits });
    expect(await answer.json()).toEqual({
      rev: 2,
      results: [
        { id: 'e1', status: 'applied', rev: 1 },
        { id: 'e2', status: 'applied', rev: 2 },
      ],
    });
    const starts = async (rev: string) => {
      const loaded = await (await server.fetch(`/api/studies/study-1${rev}`)).json();
      return (loaded as { study: Study }).study.methods[0]?.right.items.map((item) => item.start);
    };
    expect(await starts('')).toEqual([0, 1_000_000, 2_000_000]);
    expect(await starts('?rev=1')).toEqual([0, 1_000_000]);
    expect(await starts('?rev=0')).toEqual([0]);
    const since = await (await server.fetch('/api/studies/study-1/edits?since=1')).json();
    expect(since).toEqual({ rev: 2, edits: [{ ...edits[1], rev: 2, client: 'w1' }] });
  });

  it('the same edit sent again is answered as the first time and applied once', async () => {
    const server = await serverUnderTest();
    await makeStudy(server);
    const batch = { client: 'w1', baseRev: 0, edits: [sent('e1', mark('a', 1_000_000))] };
    const first = await (await server.post('/api/studies/study-1/edits', batch)).json();
    await server.post('/api/studies/study-1/edits', {
      ...batch,
      edits: [sent('e2', mark('b', 2_000_000))],
    });
    const second = (await (await server.post('/api/studies/study-1/edits', batch)).json()) as Answer;
    expect(second.results).toEqual((first as Answer).results);
    expect(second.rev).toBe(2);
  });

  it('edits of two windows at once are merged; one that no longer holds comes back with its finding', async () => {
    const server = await serverUnderTest();
    await makeStudy(server);
    const from = (client: string, id: string, start: number) =>
      server.post('/api/studies/study-1/edits', {
        client,
        baseRev: 0,
        edits: [sent(`${id}-x`, mark(`${id}x`, start)), sent(`${id}-same`, mark(`${id}s`, 5_000_000))],
      });
    const answers = await Promise.all([from('w1', 'one', 1_000_000), from('w2', 'two', 2_000_000)]);
    const results = (await Promise.all(answers.map((item) => item.json() as Promise<Answer>))).flatMap(
      (item) => item.results,
    );
    expect(results.filter((item) => item.status === 'applied')).toHaveLength(3);
    const refused = results.filter((item) => item.status === 'refused');
    expect(refused.map((item) => item.finding?.code)).toEqual(['edit/boundary-taken']);
    const loaded = (await (await server.fetch('/api/studies/study-1')).json()) as {
      study: Study;
      rev: number;
    };
    expect(loaded.study.methods[0]?.right.items.map((item) => item.start)).toEqual([
      0, 1_000_000, 2_000_000, 5_000_000,
    ]);
    expect(loaded.rev).toBe(3);
  });

  it('an edit that cannot be read is refused in its place; those around it hold', async () => {
    const server = await serverUnderTest();
    await makeStudy(server);
    const edits = [
      sent('e1', mark('a', 1_000_000)),
      sent('bad', { type: 'motion.explode' }),
      sent('e3', mark('c', 3_000_000)),
    ];
    const answer = await server.post('/api/studies/study-1/edits', { client: 'w', baseRev: 0, edits });
    const { results, rev } = (await answer.json()) as Answer;
    expect(results.map((item) => [item.id, item.status, item.finding?.code])).toEqual([
      ['e1', 'applied', undefined],
      ['bad', 'refused', 'edit/shape'],
      ['e3', 'applied', undefined],
    ]);
    expect(rev).toBe(2);
  });

  it('a window that has seen more than the store holds is told so', async () => {
    const server = await serverUnderTest();
    await makeStudy(server);
    const batch = { client: 'w1', baseRev: 9, edits: [sent('e1', mark('a', 1_000_000))] };
    const answer = await server.post('/api/studies/study-1/edits', batch);
    expect([answer.status, await codes(answer)]).toEqual([409, ['store/behind']]);
  });

  it.each([
    ['/api/studies', '{"study": '],
    ['/api/studies', ''],
    ['/api/studies', 'null'],
    ['/api/studies', '[]'],
    ['/api/studies/study-1/edits', '{"client":"w"'],
    ['/api/studies/study-1/edits', '{"client":"w","baseRev":-1,"edits":[]}'],
    [
      '/api/studies/study-1/edits',
      '{"client":"w","baseRev":0,"edits":[{"id":"e","edit":{},"at":"yesterday"}]}',
    ],
    ['/api/studies/study-1/archive', '{"archived":"yes"}'],
    ['/api/studies/study-1/archive', 'null'],
    ['/api/pdf', '{"pages":[]}'],
  ])('%s with the body %j answers 400 and a finding', async (where, body) => {
    const server = await serverUnderTest();
    await makeStudy(server);
    const answer = await server.post(where, body);
    expect(answer.status).toBe(400);
    expect((await codes(answer)).length).toBeGreaterThan(0);
    expect(server.log).toEqual([]);
  });

  it('a body that is not said to be JSON is refused, as a form of another page would send it', async () => {
    const server = await serverUnderTest();
    const answer = await server.fetch('/api/studies', {
      method: 'POST',
      headers: { 'content-type': 'text/plain' },
      body: JSON.stringify({ study: plainStudy() }),
    });
    expect([answer.status, await codes(answer)]).toEqual([400, ['server/body']]);
  });

  it.each([
    '/api/studies/nobody',
    '/api/studies/nobody/edits',
    '/api/studies/nobody/events?client=w',
    '/api/studies/study-1?rev=7',
    '/api/nothing',
    `/api/films/${'0'.repeat(64)}`,
    '/api/films/..%2fstudies.sqlite',
    `/api/uploads/${'0'.repeat(32)}/film`,
    '/api/uploads/..%2f..%2fetc/film',
  ])('GET %s answers 404 with a finding', async (where) => {
    const server = await serverUnderTest();
    await makeStudy(server);
    const answer = await server.fetch(where);
    expect(answer.status).toBe(404);
    expect((await codes(answer)).length).toBe(1);
    expect(server.log).toEqual([]);
  });

  it('takes a study of 60,000 motions and an edit on it', async () => {
    const server = await serverUnderTest();
    const study = plainStudy();
    const method = study.methods[0];
    if (method === undefined) throw new Error('no method');
    const row = (hand: string) => ({
      items: Array.from({ length: 30_000 }, (_, index) => ({
        id: `${hand}${index}`,
        start: index * 300,
        kind: 'G' as const,
        said: 'marked' as const,
      })),
      end: 10_000_000,
    });
    await makeStudy(server, { ...study, methods: [{ ...method, left: row('l'), right: row('r') }] });
    const batch = { client: 'w', baseRev: 0, edits: [sent('e1', mark('new', 1))] };
    const answer = (await (await server.post('/api/studies/study-1/edits', batch)).json()) as Answer;
    expect(answer.results).toEqual([{ id: 'e1', status: 'applied', rev: 1 }]);
  });

  it('a body above the limit is refused with 413', async () => {
    const server = await serverUnderTest();
    const answer = await server.post('/api/studies', `"${'x'.repeat(65 * 1024 * 1024)}"`);
    expect([answer.status, await codes(answer)]).toEqual([413, ['server/too-large']]);
  });

  it('after a restart all is as it was', async () => {
    const first = await serverUnderTest();
    await makeStudy(first);
    const batch = { client: 'w', baseRev: 0, edits: [sent('e1', mark('a', 1_000_000))] };
    await first.post('/api/studies/study-1/edits', batch);
    const before = await (await first.fetch('/api/studies/study-1')).json();
    await first.running.close();
    const second = await serverUnderTest({ dataFolder: first.data });
    expect(await (await second.fetch('/api/studies/study-1')).json()).toEqual(before);
    const again = (await (await second.post('/api/studies/study-1/edits', batch)).json()) as Answer;
    expect([again.rev, again.results]).toEqual([1, [{ id: 'e1', status: 'applied', rev: 1 }]]);
  });
});
