import { describe, expect, it } from 'vitest';
import { type CsvOptions, csvToStudy, readLabelMapping } from './index.ts';

type Choice = Omit<CsvOptions, 'title' | 'newId'>;
const head = 'subject,hand,label,start_s,end_s';
const table = (...lines: string[]) => [head, ...lines].join('\n');

function mappingOf(...lines: string[]) {
  const mapping = readLabelMapping(['label,motion,object,from,to', ...lines].join('\n'));
  if (!mapping.ok) throw new Error(JSON.stringify(mapping.error));
  return mapping.value;
}

const mapping = mappingOf('Put,RL,hose,,bench', 'take,G,,,', 'talk,unmarked,,,');
const result = (text: string, choice: Choice) =>
  csvToStudy(text, { title: 'Couplings', newId: () => 'new', ...choice });

function read(text: string, choice: Choice) {
  const made = result(text, choice);
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  const [method] = made.value.study.methods;
  if (method === undefined) throw new Error('no method');
  return { ...made.value, method };
}

function faults(text: string, choice: Choice) {
  const made = result(text, choice);
  return made.ok ? [] : made.error.map(({ code, where }) => [code, where.line, where.column]);
}

const codes = (notes: readonly { code: string }[]) => notes.map(({ code }) => code);

describe('labels of others', () => {
  it('are read by the mapping in any case, trimmed; the label stays as a note, the object comes from the mapping', () => {
    const { method, study, notes } = read(
      table('a,left, PUT ,0,1', 'a,left,take,1,2', 'a,left,talk,2,3', 'a,right,talk,0,3'),
      { mapping },
    );
    expect(notes).toEqual([]);
    expect(study.places.map(({ name }) => name)).toEqual(['bench']);
    expect(method.left.items).toMatchObject([
      { kind: 'RL', object: 'hose', to: 'place-1', note: 'PUT', start: 0 },
      { kind: 'G', note: 'take', start: 1e6 },
      { kind: 'unmarked', note: 'talk', start: 2e6 },
    ]);
  });

  it('an object or place of the line stands before that of the mapping', () => {
    const text =
      'hand,motion,start_s,end_s,object,to\nleft,put,0,1,clip,\nleft,put,1,2,,bin\nright,talk,0,2,,';
    const { method, study } = read(text, { mapping: mappingOf('put,RL,hose,,bench', 'talk,unmarked,,,') });
    expect(method.left.items.map(({ object, to }) => [object, to])).toEqual([
      ['clip', 'place-1'],
      ['hose', 'place-2'],
    ]);
    expect(study.places.map(({ name }) => name)).toEqual(['bench', 'bin']);
  });

  it('without a motion refuse the import and are all listed, the most frequent first, then in the order of the text', () => {
    const lines = [
      'a,left,turn,0,1',
      'a,left,Press,1,2',
      'a,right,take,0,1',
      'a,right,PRESS,1,2',
      'a,left,nod,2,3',
    ];
    const made = result(table(...lines), { mapping });
    expect(made.ok ? [] : made.error.map(({ code, where }) => [code, where.line, where.column])).toEqual([
      ['csv/unmapped', 3, 3],
      ['csv/unmapped', 2, 3],
      ['csv/unmapped', 6, 3],
    ]);
    expect(!made.ok && made.error[0]?.message).toContain(
      '“Press” stands for no motion (2 times, here first)',
    );
    expect(!made.ok && made.error[2]?.message).toContain('“nod” stands for no motion (1 time, here first)');
  });

  it('without a motion are time that is not marked, on wish, and that is told', () => {
    const { method, notes } = read(table('a,left,turn,0,1', 'a,left,put,1,2', 'a,right,turn,0,2'), {
      mapping,
      unmapped: 'unmarked',
    });
    expect(method.left.items).toMatchObject([
      { kind: 'unmarked', note: 'turn' },
      { kind: 'RL', note: 'put' },
    ]);
    expect(notes.map(({ code, severity, where }) => [code, severity, where.line])).toEqual([
      ['csv/unmapped-read', 'warning', 2],
      ['csv/mapping-unused', 'note', undefined],
    ]);
    expect(notes[1]?.message).toContain('2 labels of the mapping: “take”, “talk”.');
  });

  it('with a mapping the name of a motion is a label like any other; without one it is read as that motion', () => {
    const text = table('a,left,use,0,1', 'a,right,use,0,1');
    expect(faults(text, { mapping })).toEqual([['csv/unmapped', 2, 3]]);
    expect(read(text, {}).method.left.items).toMatchObject([{ kind: 'U' }]);
    expect(read(text, {}).method.left.items[0]?.note).toBeUndefined();
  });

  it('faults of lines come before the list of labels', () => {
    expect(faults(table('a,left,turn,0,1', 'a,both,turn,1,2', 'a,left,turn,3,2'), { mapping })).toEqual([
      ['csv/hand-both', 3, 2],
      ['csv/order', 4, 5],
      ['csv/unmapped', 2, 3],
    ]);
  });

  it('too long for a note are refused', () => {
    expect(faults(table(`a,left,${'x'.repeat(201)},0,1`), { mapping })).toEqual([['csv/too-long', 2, 3]]);
  });

  it('beside a column of motions are a column that is not known, as ever', () => {
    const { notes, method } = read('hand,motion,label,start_s,end_s\nleft,G,put,0,1\nright,H,put,0,1', {});
    expect(codes(notes)).toEqual(['csv/unknown-column']);
    expect(method.left.items[0]).toMatchObject({ kind: 'G' });
  });

  it('in two columns are refused', () => {
    expect(faults('hand,label,label,start_s,end_s\nleft,put,put,0,1', {})).toEqual([
      ['csv/duplicate-column', 1, 3],
    ]);
  });
});

describe('subjects of a table', () => {
  const two = table('a,left,put,0,1', 'b,left,take,0,1', 'b,right,take,0,1');

  it('several are refused with their names, the first twenty and how many more', () => {
    const made = result(two, { mapping });
    expect(!made.ok && made.error.map(({ code, where }) => [code, where.line, where.column])).toEqual([
      ['csv/subjects', 1, 1],
    ]);
    expect(!made.ok && made.error[0]?.message).toContain(
      'tells of 2 subjects, and a study is about one. Choose one of them, such as evenhand record import --subject "a". There are “a”, “b”.',
    );
    const many = table(...Array.from({ length: 23 }, (_, index) => `s${index + 1},left,put,0,1`));
    const refused = result(many, { mapping });
    expect(!refused.ok && refused.error[0]?.message).toMatch(/“s19”, “s20” and 3 more\.$/);
  });

  it('one is chosen by its name; what others do wrong does not matter', () => {
    const text = `${two}\nc,feet,fly,x,y`;
    const { method } = read(text, { mapping, subject: ' b ' });
    expect([method.left.items.length, method.right.items[0]?.note]).toEqual([1, 'take']);
  });

  it('one that is not there is told, and so is a table without subjects', () => {
    expect(faults(two, { mapping, subject: 'z' })).toEqual([['csv/unknown-subject', 1, 1]]);
    expect(faults('hand,label,start_s,end_s\nleft,put,0,1', { mapping, subject: 'a' })).toEqual([
      ['csv/no-subjects', 1, undefined],
    ]);
  });

  it('a single one needs no choice', () => {
    expect(read(table('a,left,put,0,1', 'a,right,put,0,1'), { mapping }).method.left.items.length).toBe(1);
  });
});

describe('hands of a table', () => {
  it('lines for both are refused, or copied on wish with a note', () => {
    const text = table('a,both,put,0,1', 'a,left,take,1,2', 'a,both,take,2,3', 'a,right,take,1,2');
    expect(faults(text, { mapping })).toEqual([
      ['csv/hand-both', 2, 2],
      ['csv/hand-both', 4, 2],
    ]);
    const { method, notes } = read(text, { mapping, both: 'copy' });
    expect(method.left.items.map(({ kind, start }) => [kind, start])).toEqual(
      method.right.items.map(({ kind, start }) => [kind, start]),
    );
    expect(notes.find(({ code }) => code === 'csv/both-copied')?.message).toContain('(2 lines, here first)');
  });

  it('lines without a hand are refused, or read as the one that is named with a note', () => {
    const text = table('a,unspecified,put,0,1', 'a,left,take,0,1');
    expect(faults(text, { mapping })).toEqual([['csv/hand-unsaid', 2, 2]]);
    const { method, notes } = read(text, { mapping, hand: 'right' });
    expect([method.left.items[0]?.note, method.right.items[0]?.note]).toEqual(['take', 'put']);
    expect(notes.find(({ code }) => code === 'csv/hand-given')).toMatchObject({ where: { line: 2 } });
  });

  it('a table without a column of hands needs the hand; a word that is no hand is refused all the same', () => {
    const text = 'label,start_s,end_s\nput,0,1';
    expect(faults(text, { mapping })).toEqual([['csv/missing-column', 1, undefined]]);
    expect(read(text, { mapping, hand: 'left' }).method.left.items[0]?.kind).toBe('RL');
    expect(faults(table('a,feet,put,0,1'), { mapping, hand: 'left' })).toEqual([['csv/hand', 2, 2]]);
  });
});
