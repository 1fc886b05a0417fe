import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';

const root = new URL('../../../../', import.meta.url);
const demo = readFileSync(new URL('examples/couplings/couplings.evenhand.json', root), 'utf8');
const [, work = ''] =
  /```json\n([\s\S]*?)```/.exec(readFileSync(new URL('docs/work-format.md', root), 'utf8')) ?? [];
const develop = (...more: string[]) =>
  call(['develop', 'w.json', ...more], { files: { 'w.json': work, 'demo.json': demo } });

describe('evenhand develop --library: records of other studies', () => {
  it('gives times that would else be guessed, and says so', async () => {
    const sources = async (...more: string[]) => {
      const { code, out } = await develop('--json', ...more);
      expect(code).toBe(0);
      const { method } = JSON.parse(out);
      return method.steps.flatMap(({ motions }: { motions: { source: string }[] }) =>
        motions.map(({ source }) => source),
      );
    };
    expect((await sources()).join()).not.toContain('library');
    const found = await sources('--library', 'demo.json');
    expect(found.join()).toMatch(/in the library \(1 study\)|pace of the library/);
  });

  it('a study that is not there is named', async () => {
    const { code, err } = await develop('--library', 'demo.json,none.json');
    expect(code).not.toBe(0);
    expect(err).toContain('none.json');
  });
});
