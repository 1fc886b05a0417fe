import { describe, expect, it } from 'vitest';
import { emptyStudy, parseStudy, readStudy, type Study, writeStudy } from './index.ts';

const motion = (id: string, start: number) => ({ id, start, kind: 'G' as const, said: 'marked' as const });
const row = (...starts: number[]) => ({
  items: starts.map((start, index) => motion(`m${index}`, start)),
  end: 1000,
});

const good: Study = {
  ...emptyStudy('s', 'Couplings'),
  places: [{ id: 'bin', name: 'Bin' }],
  methods: [
    {
      id: 'm',
      name: 'Present',
      kind: 'composed',
      base: { kind: 'micros' },
      unitsPerCycle: 1,
      left: row(0, 10),
      right: row(5),
      cycles: { items: [{ id: 'c', start: 0 }], end: 1000 },
    },
  ],
};

/** The good study with one value replaced, as it would stand in a file. */
function broken(pointer: string, value: unknown): unknown {
  const document = structuredClone(good) as unknown as Record<string, unknown>;
  const path = pointer.split('/').slice(1);
  const last = path.pop() ?? '';
  const target = path.reduce((at, part) => at[part] as Record<string, unknown>, document);
  target[last] = value;
  return document;
}

function findingsOf(value: unknown): [code: string, pointer: string | undefined][] {
  const read = readStudy(value);
  return read.ok ? [] : read.error.map((item) => [item.code, item.where.pointer]);
}

describe('reading a study', () => {
  it('takes what is right', () => expect(findingsOf(good)).toEqual([]));

  it('takes a file that begins with a byte order mark', () => {
    expect(parseStudy(`\uFEFF${writeStudy(good)}`)).toEqual({ ok: true, value: good });
  });

  it.each<[string, unknown, string, string?]>([
    ['/formatVersion', 5, 'study/newer-format'],
    ['/formatVersion', 0, 'study/no-format'],
    ['/formatVersion', 'one', 'study/no-format'],
    ['/title', '', 'study/shape'],
    ['/title', 7, 'study/shape'],
    ['/colour', 'red', 'study/shape', ''],
    ['/places/0/id', 'a b', 'study/shape'],
    ['/places/0/at', { x: 1, y: null }, 'study/shape', '/places/0/at/y'],
    ['/places/0/mirror', 'nowhere', 'study/unknown-place'],
    ['/methods/0/base', { kind: 'frames', film: 'gone' }, 'study/unknown-film', '/methods/0/base/film'],
    ['/methods/0/left/items/1/kind', 'reach', 'study/shape'],
    ['/methods/0/left/items/1/start', 1.5, 'study/shape'],
    ['/methods/0/left/items/1/start', -1, 'study/shape'],
    ['/methods/0/left/items/1/start', 0, 'study/row-order'],
    ['/methods/0/left/items/1/id', 'm0', 'study/duplicate-id'],
    ['/methods/0/left/items/1/from', 'nowhere', 'study/unknown-place'],
    ['/methods/0/left/end', 10, 'study/row-end'],
    ['/methods/0/cycles/end', 0, 'study/row-end'],
  ])('%s = %j is found', (pointer, value, code, at = pointer) => {
    expect(findingsOf(broken(pointer, value))).toEqual([[code, at]]);
  });

  it('writes a JSON pointer by RFC 6901 when a name holds a slash or a tilde', () => {
    const read = readStudy({ ...good, operation: { name: 'x', 'a/b~c': 1 } });
    expect(read.ok ? [] : read.error.map((item) => item.where.pointer)).toEqual(['/operation']);
  });

  it.each(['', '{', '[1,2', 'PK\u0003\u0004', 'hand,motion'])('says that %j is not JSON', (text) => {
    const read = parseStudy(text);
    expect(read.ok ? [] : read.error.map((item) => item.code)).toEqual(['study/not-json']);
  });

  it.each(['null', '[]', '3', '"x"', '{}'])('says that %s is not a study', (text) => {
    const read = parseStudy(text);
    expect(read.ok ? [] : read.error.map((item) => item.code)).toEqual(['study/no-format']);
  });
});
