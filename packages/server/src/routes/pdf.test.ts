import type { Scene } from '@evenhand/core/ground/scene';
import { describe, expect, it } from 'vitest';
import { codes, serverUnderTest } from '../testing/server-under-test.ts';

/** A4 upright in points: 210 mm × 297 mm (ISO 216). */
const page: Scene = {
  width: (210 / 25.4) * 72,
  height: (297 / 25.4) * 72,
  title: 'Two hands',
  description: 'A line and a word.',
  nodes: [
    { kind: 'line', x1: 50, y1: 50, x2: 200, y2: 50, stroke: { ink: 'ink', width: 1 } },
    { kind: 'text', x: 50, y: 80, text: 'grasp', size: 10, weight: 400, align: 'start', ink: 'ink' },
  ],
};

describe('sheets as PDF', () => {
  it('are written with as many pages as there are scenes', async () => {
    const server = await serverUnderTest();
    const answer = await server.post('/api/pdf', { pages: [page, page], paper: 'a4', title: 'Sheets' });
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    const text = Buffer.from(await answer.arrayBuffer()).toString('latin1');
    expect(text.startsWith('%PDF-')).toBe(true);
    expect(text.match(/\/Type\s*\/Page\b/g)).toHaveLength(2);
  });

  it.each([
    [
      'a page that does not fit the paper',
      { pages: [{ ...page, width: 100 }], paper: 'a4', title: 'x' },
      422,
    ],
    [
      'a path that is none',
      { pages: [{ ...page, nodes: [{ kind: 'path', d: 'nonsense' }] }], paper: 'a4', title: 'x' },
      422,
    ],
    [
      'a node without its numbers',
      { pages: [{ ...page, nodes: [{ kind: 'rect' }] }], paper: 'a4', title: 'x' },
      422,
    ],
    ['another paper', { pages: [page], paper: 'a2', title: 'x' }, 400],
    ['no title', { pages: [page], paper: 'a4' }, 400],
  ])('%s is refused with a finding', async (_what, body, status) => {
    const server = await serverUnderTest();
    const answer = await server.post('/api/pdf', body);
    expect([answer.status, (await codes(answer)).length]).toEqual([status, 1]);
  });
});
