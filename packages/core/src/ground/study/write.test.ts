import { describe, expect, it } from 'vitest';
import { emptyStudy, type Study, studyJsonSchema, writeStudy } from './index.ts';
import { fieldOrder } from './write.ts';

/** The lists of field names of every object in a JSON Schema. */
function fieldLists(node: unknown): string[][] {
  if (typeof node !== 'object' || node === null) return [];
  const own =
    'properties' in node && typeof node.properties === 'object' ? [Object.keys(node.properties ?? {})] : [];
  return [...own, ...Object.values(node).flatMap(fieldLists)];
}

describe('writing a study', () => {
  it('knows every field of the schema, in the order of the schema', () => {
    const lists = fieldLists(studyJsonSchema());
    expect(lists.length).toBeGreaterThan(10);
    for (const list of lists) {
      expect(list.filter((field) => !fieldOrder.includes(field))).toEqual([]);
      expect([...list].sort((a, b) => fieldOrder.indexOf(a) - fieldOrder.indexOf(b))).toEqual(list);
    }
    expect(new Set(fieldOrder).size).toBe(fieldOrder.length);
  });

  it('gives the same bytes when a field was taken away and put back', () => {
    const study = emptyStudy('s', 'One');
    const { title, ...rest } = study;
    expect(writeStudy({ ...rest, title } as Study)).toBe(writeStudy(study));
  });

  it('puts every motion on a line of its own', () => {
    const note = 'long '.repeat(40);
    const items = ['a', 'b'].map((id, index) => ({
      id,
      start: index,
      kind: 'G' as const,
      note,
      said: 'marked' as const,
    }));
    const hand = { items, end: 9 };
    const method = {
      id: 'm',
      name: 'M',
      kind: 'composed' as const,
      base: { kind: 'micros' as const },
      unitsPerCycle: 1,
    };
    const text = writeStudy({
      ...emptyStudy('s', 'One'),
      methods: [{ ...method, left: hand, right: hand, cycles: { items: [], end: 9 } }],
    });
    expect(text.split('\n').filter((line) => line.includes('"kind": "G"')).length).toBe(4);
    expect(text.endsWith('}\n')).toBe(true);
  });
});
