import { writeStudy } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';
import { smallStudy } from '../testing/small-study.ts';

const good = writeStudy(smallStudy);
const check = (text: string | Uint8Array, ...more: string[]) =>
  call(['check', 'a.json', ...more], { files: { 'a.json': text } });

describe('evenhand check', () => {
  it('finds nothing in a complete study', async () => {
    expect(await check(good)).toMatchObject({ code: 0, out: '', err: 'a.json: nothing found.\n' });
  });

  it('reads standard input', async () => {
    expect(await call(['check', '-'], { stdin: good })).toMatchObject({
      code: 0,
      err: 'standard input: nothing found.\n',
    });
  });

  it('says where a fault stands by a JSON pointer and exits with 1', async () => {
    const { code, out, err } = await check(
      good.replace('"start": 1000000, "kind": "G", "object": "ring"', '"start": 1000000, "kind": "grip"'),
    );
    expect(code).toBe(1);
    expect(out).toMatch(/^error: a\.json: \/methods\/0\/right\/items\/1\/kind: .+ \[study\/shape\]$/m);
    expect(err).toContain('1 error');
  });

  it('gives advice on a record: warnings make 1, notes alone make 0', async () => {
    const gap = await check(
      good.replace(
        '"start": 1500000, "kind": "TL", "object": "ring"',
        '"start": 1500000, "kind": "unmarked"',
      ),
    );
    expect(gap.code).toBe(1);
    expect(gap.out).toContain(
      'warning: a.json: /methods/0/cycles/items/0: In cycle 1 the right hand has 1.00 s that is not marked yet.',
    );
    const note = await check(
      writeStudy({
        ...smallStudy,
        methods: smallStudy.methods.map((m) => ({ ...m, cycles: { items: [], end: m.cycles.end } })),
      }),
    );
    expect(note.code).toBe(0);
    expect(note.out).toContain('note: a.json: /methods/0: No cycle is marked');
    expect(note.err).toContain('2 notes');
  });

  it('prints JSON with --json', async () => {
    const { code, out, err } = await check(good.replaceAll('"end": 2000000', '"end": 500000'), '--json');
    expect([code, err]).toEqual([1, '']);
    const found = JSON.parse(out);
    expect(found).toMatchObject({ ok: false, file: 'a.json' });
    expect(found.findings.map((item: { where: { pointer: string } }) => item.where.pointer)).toEqual([
      '/methods/1/left/end',
      '/methods/1/right/end',
    ]);
  });

  it.each<[string, string | Uint8Array, string]>([
    ['broken JSON', '{"formatVersion": 1,', 'study/not-json'],
    ['an empty file', '', 'study/not-json'],
    ['other JSON', '{"a": 1}', 'study/no-format'],
    ['a study of a later program', '{"formatVersion": 99}', 'study/newer-format'],
    ['bytes that are no text', new Uint8Array([0xff, 0xfe, 0x7b, 0x00]), 'cli/not-text'],
    ['a film', new Uint8Array([0, 0, 0, 0x18, 0x66, 0x74, 0x79, 0x70, 0xff]), 'cli/not-text'],
  ])('%s is bad input', async (_, text, wanted) => {
    const { code, out, err } = await check(text);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(`[${wanted}]`);
    expect(err).toContain('a.json');
    const json = await check(text, '--json');
    expect(json.code).toBe(2);
    expect(JSON.parse(json.out)).toMatchObject({ ok: false, findings: [{ code: wanted }] });
  });

  it('a file that is not there is bad input', async () => {
    const { code, err } = await call(['check', 'b.json']);
    expect(code).toBe(2);
    expect(err).toContain('b.json cannot be read: there is no such file or folder.');
  });
});
