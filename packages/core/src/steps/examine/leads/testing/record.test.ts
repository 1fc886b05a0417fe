import { describe, expect, it } from 'vitest';
import { readingOf, studyOf } from './record.ts';

describe('a record written in words', () => {
  it('has the motions, their objects, places and notes, and fills up the shorter row', () => {
    const [cycle, next, ...more] = readingOf([
      ['TE 0.4 hose body front>bin, G 0.3 hose body bin>', 'UD 1 [looks on]'],
      ['H 2', 'A 1'],
      ['H 2', 'A? 2'],
    ]).cycles;
    expect(cycle?.left.map(({ kind, object, start, end }) => [kind, object, start, end])).toEqual([
      ['TE', 'hose body', 0, 400_000],
      ['G', 'hose body', 400_000, 700_000],
      ['unmarked', undefined, 700_000, 1_000_000],
    ]);
    expect(cycle?.left[0]?.motion).toMatchObject({ from: 'front', to: 'bin' });
    expect(cycle?.left[1]?.motion).toEqual({
      id: 'l1',
      start: 400_000,
      kind: 'G',
      said: 'marked',
      object: 'hose body',
      from: 'bin',
    });
    expect(cycle?.right[0]?.motion?.note).toBe('looks on');
    expect(next?.right.map(({ kind }) => kind)).toEqual(['A', 'unmarked']);
    expect(more, 'a cycle with a proposal is not read').toEqual([]);
    expect(next?.duration).toBe(2_000_000);
  });

  it('says what it cannot read', () => {
    expect(() => studyOf([['TE', 'G 1']])).toThrow('cannot read "TE"');
  });
});
