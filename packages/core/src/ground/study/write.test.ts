import { describe, expect, it } from 'vitest';
import { emptyStudy, type Study, studyJsonSchema, type TimeStudyElement, writeStudy } from './index.ts';
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

  describe('of a time study', () => {
    const element = (readings: TimeStudyElement['readings']): TimeStudyElement => ({
      id: 'a',
      name: 'fit hose',
      work: 'worker',
      readings,
    });
    const timed = (...elements: readonly TimeStudyElement[]): Study => ({
      ...emptyStudy('s', 'One'),
      timeStudies: [
        {
          id: 't',
          name: 'By the watch',
          source: { kind: 'readings', timing: 'typed' },
          unit: 'seconds',
          scale: '0-100',
          ratingError: 0,
          confidence: 0.95,
          precision: { kind: 'relative', share: 0.05 },
          allowances: {
            convention: 'share-of-basic-time',
            relaxation: { kind: 'share', share: 0 },
            process: 0,
            contingency: 0,
          },
          piecesPerCycle: 1,
          elements,
        },
      ],
    });

    it('puts every reading on a line of its own, however long it is', () => {
      const setAside = 'part fell '.repeat(20).trim();
      const text = writeStudy(
        timed(
          element([
            { setAside, cycle: 1, us: 4_200_000, rating: 95 },
            { cycle: 2, us: 1 },
          ]),
        ),
      );
      const lines = text.split('\n').filter((line) => line.includes('"cycle"'));
      expect(lines.map((line) => line.trim())).toEqual([
        `{ "cycle": 1, "us": 4200000, "rating": 95, "setAside": "${setAside}" },`,
        '{ "cycle": 2, "us": 1 }',
      ]);
    });

    it('reads every reading once or twice, not once for every level above it', () => {
      const readings = Array.from({ length: 3000 }, (_, index) => ({ cycle: index + 1, us: 1_000_000 }));
      let read = 0;
      const counted = readings.map(
        (reading) =>
          new Proxy(reading, {
            ownKeys: (target) => {
              read += 1;
              return Reflect.ownKeys(target);
            },
          }),
      );
      const text = writeStudy(timed(element(counted)));
      expect(text.split('\n').filter((line) => line.includes('"cycle"')).length).toBe(3000);
      expect(read).toBeLessThanOrEqual(2 * readings.length);
    });
  });
});
