import { describe, expect, it } from 'vitest';
import { readLabelMapping } from './index.ts';

function faults(text: string): [code: string, line: number | undefined, column: number | undefined][] {
  const result = readLabelMapping(text);
  return result.ok ? [] : result.error.map(({ code, where }) => [code, where.line, where.column]);
}

describe('a mapping of labels to motions', () => {
  it('has a letter code, a name or unmarked for each label, and perhaps an object and places', () => {
    const mapping = readLabelMapping(
      'Label;Motion;object;from;to\r\n Spin Coupling ;A;coupling;;vice\r\npick up;transport loaded;;bin;\r\ntalk;Unmarked;;;\r\n',
    );
    expect(mapping.ok && [...mapping.value.labels]).toEqual([
      ['spin coupling', { label: 'Spin Coupling', line: 2, kind: 'A', object: 'coupling', to: 'vice' }],
      ['pick up', { label: 'pick up', line: 3, kind: 'TL', from: 'bin' }],
      ['talk', { label: 'talk', line: 4, kind: 'unmarked' }],
    ]);
  });

  it.each<[string, string, [string, number, number | undefined][]]>([
    ['nothing', '', [['csv/empty', 1, undefined]]],
    ['only the head', 'label,motion\n', [['csv/empty', 1, undefined]]],
    ['no column of motions', 'label,object\nput,box', [['csv/missing-column', 1, undefined]]],
    ['no column of labels', 'motion\nG', [['csv/missing-column', 1, undefined]]],
    ['a column twice', 'label,motion,label\nput,RL,put', [['csv/duplicate-column', 1, 3]]],
    ['an unknown motion', 'label,motion\nput,RL\ntake,fetch', [['csv/mapping-motion', 3, 2]]],
    ['no motion', 'motion,label\n,take', [['csv/mapping-motion', 2, 1]]],
    ['no label', 'label,motion\n,G', [['csv/mapping-label', 2, 1]]],
    ['a label twice', 'label,motion\nput,RL\n\n PUT ,P', [['csv/mapping-twice', 4, 1]]],
    [
      'a label twice with another object',
      'label,motion,object\nput,RL,hose\nput,RL,',
      [['csv/mapping-twice', 3, 1]],
    ],
    ['a label too long', `label,motion\n${'x'.repeat(201)},G`, [['csv/too-long', 2, 1]]],
    ['an object too long', `label,motion,object\nput,RL,${'x'.repeat(201)}`, [['csv/too-long', 2, 3]]],
    ['a lost cell', 'label,motion\nput', [['csv/cells', 2, undefined]]],
    ['a quotation mark that stays open', 'label,motion\n"put,RL', [['csv/quote', 2, 1]]],
    [
      'several faults at once',
      'label,motion\nput,lay\n,G\nput,fetch',
      [
        ['csv/mapping-motion', 2, 2],
        ['csv/mapping-label', 3, 1],
        ['csv/mapping-motion', 4, 2],
      ],
    ],
  ])('%s is told with line and column', (_, text, wanted) => {
    expect(faults(text)).toEqual(wanted);
  });

  it('the message of a label that stands twice names the first line, that of a wrong motion what can be written', () => {
    const twice = readLabelMapping('label,motion\nput,RL\nPut,P');
    expect(!twice.ok && twice.error[0]?.message).toContain('“Put” stands on line 2 already');
    const wrong = readLabelMapping('label,motion\nput,lay');
    expect(!wrong.ok && wrong.error[0]?.message).toContain(
      '“lay” is not a motion. Write a letter code (TE TL G H',
    );
    expect(!wrong.ok && wrong.error[0]?.message).toContain('or unmarked');
  });

  it('a label that stands twice and says the same is taken once, with a note', () => {
    const mapping = readLabelMapping('label,motion,object\nput,RL,hose\nPUT,release load,hose');
    expect(mapping.ok && [mapping.value.labels.size, mapping.value.notes]).toMatchObject([
      1,
      [{ code: 'csv/mapping-again', severity: 'note', where: { line: 3, column: 1 } }],
    ]);
  });

  it('a column that nobody knows is told and not read', () => {
    const mapping = readLabelMapping('label,motion,colour\nput,RL,red');
    expect(mapping.ok && mapping.value.notes.map(({ code, where }) => [code, where.column])).toEqual([
      ['csv/unknown-column', 3],
    ]);
  });
});
