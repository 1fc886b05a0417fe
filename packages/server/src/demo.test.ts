import { createHash, randomBytes } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { type Study, writeStudy } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import {
  plainStudy,
  type ServerUnderTest,
  serverUnderTest,
  temporaryFolder,
} from './testing/server-under-test.ts';

const study: Study = { ...plainStudy('couplings'), demo: true };

function demoFolder(films: Readonly<Record<string, Buffer>>, text = writeStudy(study)) {
  const folder = path.join(temporaryFolder(), 'demo');
  mkdirSync(folder);
  const file = path.join(folder, 'couplings.evenhand.json');
  writeFileSync(file, text);
  for (const [name, bytes] of Object.entries(films)) writeFileSync(path.join(folder, name), bytes);
  return { study: file, films: Object.keys(films).map((name) => path.join(folder, name)) };
}

const list = async (server: ServerUnderTest) =>
  (await (await server.fetch('/api/studies')).json()) as { id: string; archived: boolean; demo: boolean }[];

describe('the demo', () => {
  it('is put into an empty store with its films', async () => {
    const bytes = randomBytes(5000);
    const demo = demoFolder({ 'present.mp4': bytes });
    const server = await serverUnderTest({ demo });
    expect(await list(server)).toMatchObject([{ id: 'couplings', demo: true, archived: false }]);
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    expect(await (await server.fetch('/api/films')).json()).toEqual([
      { sha256, bytes: 5000, name: 'present.mp4' },
    ]);
  });

  it('is put in once, and one that was put away does not come back', async () => {
    const demo = demoFolder({ 'present.mp4': randomBytes(10) });
    const first = await serverUnderTest({ demo });
    await first.post('/api/studies/couplings/archive', { archived: true });
    await first.running.close();
    const second = await serverUnderTest({ demo, dataFolder: first.data });
    expect(await list(second)).toMatchObject([{ id: 'couplings', archived: true }]);
  });

  it('does not mix into the studies of somebody who has begun', async () => {
    const first = await serverUnderTest();
    await first.post('/api/studies', { study: plainStudy('mine') });
    await first.running.close();
    const demo = demoFolder({ 'present.mp4': randomBytes(10) });
    const second = await serverUnderTest({ demo, dataFolder: first.data });
    expect((await list(second)).map((item) => item.id)).toEqual(['mine']);
  });

  it('a demo with a film missing is left out with the reason, and the server starts', async () => {
    const demo = demoFolder({});
    const server = await serverUnderTest({
      demo: { ...demo, films: [path.join(path.dirname(demo.study), 'gone.mp4')] },
    });
    expect(await list(server)).toEqual([]);
    expect(server.log.join('\n')).toContain('gone.mp4');
  });

  it('a demo whose study cannot be read is left out with the place of the fault', async () => {
    const server = await serverUnderTest({ demo: demoFolder({}, '{"formatVersion": 1}') });
    expect(await list(server)).toEqual([]);
    expect(server.log.join('\n')).toContain('/title');
  });
});
