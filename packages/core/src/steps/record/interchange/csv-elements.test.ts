import { describe, expect, it } from 'vitest';
import { type CsvOptions, csvToStudy, readLabelMapping } from './index.ts';

type Choice = Omit<CsvOptions, 'title' | 'newId'>;
const head = 'cycle,clip,start_s,fill hose,press coupling,lay aside';
const table = (...lines: string[]) => [head, ...lines].join('\n');
const made = readLabelMapping(
  'label,motion,object\nfill hose,TL,hose\nPress coupling,A,coupling\nlay aside,RL,',
);
if (!made.ok) throw new Error(JSON.stringify(made.error));
const base: Choice = { shape: 'elements', hand: 'right', mapping: made.value };
const result = (text: string, choice: Choice = base) =>
  csvToStudy(text, { title: 'Elements', newId: () => 'new', ...choice });

function read(text: string, choice?: Choice) {
  const study = result(text, choice);
  if (!study.ok) throw new Error(JSON.stringify(study.error));
  const [method] = study.value.study.methods;
  if (method === undefined) throw new Error('no method');
  const row = method.right.items.map(({ kind, start, note }) => [kind, start / 1e6, note]);
  return { method, row, notes: study.value.notes.filter(({ code }) => code !== 'csv/gap') };
}

const faults = (text: string, choice?: Choice) => {
  const study = result(text, choice);
  return study.ok ? [] : study.error.map(({ code, where }) => [code, where.line, where.column]);
};

describe('a table of elements by cycle', () => {
  it('is laid end to end from each start in the order of the columns; the rest is not marked', () => {
    const { row, method, notes } = read(table('1,a,0,2.5,1,', '2,a,5,2,,0.5'));
    expect(row).toEqual([
      ['TL', 0, 'fill hose'],
      ['A', 2.5, 'press coupling'],
      ['unmarked', 3.5, undefined],
      ['TL', 5, 'fill hose'],
      ['RL', 7, 'lay aside'],
    ]);
    expect(method.right.end).toBe(7_500_000);
    expect(method.left.items.map(({ kind }) => kind)).toEqual(['unmarked']);
    expect(method.cycles.items.map(({ start }) => start / 1e6)).toEqual([0, 5]);
    expect(method.right.items[0]?.object).toBe('hose');
    expect(notes).toEqual([]);
  });

  it('that lasts beyond the next start is refused, or cut there and told', () => {
    const text = table('1,a,0,3,3,1', '2,a,4,1,1,1');
    expect(faults(text)).toEqual([
      ['csv/element-beyond', 2, 5],
      ['csv/element-beyond', 2, 6],
    ]);
    const { row, notes } = read(text, { ...base, overlaps: 'cut' });
    expect(row.map(([kind, start]) => [kind, start])).toEqual([
      ['TL', 0],
      ['A', 3],
      ['TL', 4],
      ['A', 5],
      ['RL', 6],
    ]);
    expect(notes.map(({ code, where }) => [code, where.line, where.column])).toEqual([
      ['csv/element-cut', 2, 5],
      ['csv/element-dropped', 2, 6],
    ]);
    expect(notes[0]?.message).toContain(
      '“press coupling” was cut by 2 s: it would last until 6 s, and the cycle on line 3 begins at 4 s',
    );
    expect(notes[1]?.message).toContain('“lay aside” was cut by 1 s. Nothing is left of it');
  });

  it('is read for one clip; its cycles are numbered anew, and that is told', () => {
    const text = table('1,a,0,1,1,1', '2,b,0,1,1,1', '3,b,4,1,,');
    expect(faults(text)).toEqual([['csv/subjects', 1, 2]]);
    const { method, notes } = read(text, { ...base, subject: 'b' });
    expect(method.cycles.items.map(({ start }) => start / 1e6)).toEqual([0, 4]);
    expect(notes.map(({ code, where }) => [code, where.line])).toEqual([['csv/cycle-renumbered', 3]]);
    expect(notes[0]?.message).toContain('cycle 2 of the table became cycle 1');
  });

  it('an element of no time is left out with a note; a cycle without any element is no cycle', () => {
    const { row, method, notes } = read(table('1,a,0,1,0,1', '2,a,4,,,', '3,a,6,1,,'));
    expect(row.map(([kind]) => kind)).toEqual(['TL', 'RL', 'unmarked', 'TL']);
    expect(method.cycles.items.length).toBe(2);
    expect(notes.map(({ code, where }) => [code, where.line, where.column])).toEqual([
      ['csv/element-zero', 2, 5],
      ['csv/cycle-left-out', 3, undefined],
      ['csv/cycle-renumbered', 4, undefined],
    ]);
    expect(notes[2]?.message).toContain('cycle 3 of the table became cycle 2');
  });

  it.each<[string, string, (string | number | undefined)[][]]>([
    ['a time that is no number', table('1,a,0,long,1,1'), [['csv/number', 2, 4]]],
    ['a start that is missing', table('1,a,,1,1,1'), [['csv/number', 2, 3]]],
    ['a cycle that is no number', table('one,a,0,1,1,1'), [['csv/cycle', 2, 1]]],
    ['two decimal marks', table('1,a,0.5,"1,5",1,1'), [['csv/decimal-mark', 2, 4]]],
    ['cycles out of order', table('2,a,0,1,,', '1,a,4,1,,'), [['csv/element-order', 3, 1]]],
    ['one cycle on two lines', table('1,a,0,1,,', '1,a,4,1,,'), [['csv/element-order', 3, 1]]],
    ['no elements', table('1,a,0,,,'), [['csv/no-elements', 1, undefined]]],
    ['no column of starts', 'cycle,fill hose\n1,2', [['csv/missing-column', 1, undefined]]],
    [
      'labels without a motion, the most frequent first',
      'cycle,start_s,nod,wait\n1,0,1,1\n2,5,,1',
      [
        ['csv/unmapped', 2, 4],
        ['csv/unmapped', 2, 3],
      ],
    ],
    ['a column of numbers without a name', 'cycle,start_s,\n1,0,1', [['csv/unmapped', 2, 3]]],
  ])('%s: told by line and column', (_, text, wanted) => {
    expect(faults(text)).toEqual(wanted);
  });

  it('needs a hand, and is not taken for a table of motions', () => {
    expect(faults(table('1,a,0,1,1,1'), { shape: 'elements' })).toEqual([
      ['csv/elements-hand', 1, undefined],
    ]);
    const asMotions = result(table('1,a,0,1,1,1'), {});
    expect(!asMotions.ok && asMotions.error.map(({ code }) => code)).toEqual(['csv/wide']);
    expect(!asMotions.ok && asMotions.error[0]?.message).toContain(
      '--shape elements --hand right --mapping FILE',
    );
  });

  it.each(['motion', 'label'])('a table of motions with a column %s is not taken for one', (name) => {
    const text = `hand,${name},start_s,end_s,cycle\nleft,G,0,1,1\nright,H,0,1,1`;
    expect(faults(text)).toEqual([['csv/not-wide', 1, undefined]]);
  });

  it('labels that are names of motions need no mapping', () => {
    expect(read('cycle,start_s,grasp,hold\n1,0,1,2', { shape: 'elements', hand: 'right' }).row).toEqual([
      ['G', 0, undefined],
      ['H', 1, undefined],
    ]);
  });
});
