import { describe, expect, it } from 'vitest';
import { csvToStudy } from './index.ts';

const head = 'hand,motion,start_s,end_s,object,from,to,cycle';
const options = { title: 'Couplings', newId: () => 'new' };
const table = (...lines: string[]) => [head, ...lines].join('\n');

function read(text: string) {
  const result = csvToStudy(text, options);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

/** Code, line and column of everything that is wrong. */
function faults(text: string): [code: string, line: number | undefined, column: number | undefined][] {
  const result = csvToStudy(text, options);
  return result.ok ? [] : result.error.map(({ code, where }) => [code, where.line, where.column]);
}

function messages(text: string): string {
  const result = csvToStudy(text, options);
  return result.ok ? '' : result.error.map((item) => item.message).join('\n');
}

describe('reading a table of motions', () => {
  it('makes a recorded method in microseconds, places by name, cycles by number', () => {
    const { study, notes } = read(
      table(
        'left,H,0,3.000001,body,,fixture,1',
        'right,TE,0,1,,fixture,"bin, left",1',
        'right,G,1,2.5,ring,"bin, left",,1',
        'right,TL,2.5,3.000001,ring,,fixture,2',
      ),
    );
    const [method] = study.methods;
    expect(notes).toEqual([]);
    expect(study).toMatchObject({
      id: 'new',
      title: 'Couplings',
      operation: { name: 'Couplings' },
      films: [],
    });
    expect(study.places.map((place) => place.name)).toEqual(['fixture', 'bin, left']);
    expect(method).toMatchObject({ kind: 'recorded', base: { kind: 'micros' } });
    expect(method?.left.items).toEqual([
      { id: 'l1', start: 0, kind: 'H', object: 'body', to: 'place-1', said: 'marked' },
    ]);
    expect(method?.right.items.map((motion) => [motion.kind, motion.start])).toEqual([
      ['TE', 0],
      ['G', 1_000_000],
      ['TL', 2_500_000],
    ]);
    expect([method?.left.end, method?.right.end]).toEqual([3_000_001, 3_000_001]);
    expect(method?.cycles.items.map((cycle) => cycle.start)).toEqual([0, 2_500_000]);
  });

  it('takes columns in any order, names in any case, motions by name and other columns with a warning', () => {
    const { study, notes } = read(
      'End_S,colour,HAND,Start_s,Motion\n1,red,Left,0,Transport empty\n2,red,RIGHT,0,pre-position\n',
    );
    expect(study.methods[0]?.left.items[0]?.kind).toBe('TE');
    expect(study.methods[0]?.right.items[0]?.kind).toBe('PP');
    expect(notes.map(({ code, where }) => [code, where.line, where.column])).toEqual([
      ['csv/unknown-column', 1, 2],
      ['csv/gap', 2, undefined],
    ]);
  });

  it.each([
    ['commas and points', 'hand,motion,start_s,end_s\r\nleft,G,0.5,1.25\r\n'],
    ['a byte order mark', '\uFEFFhand,motion,start_s,end_s\nleft,G,0.5,1.25'],
    ['semicolons and decimal commas', 'hand;motion;start_s;end_s\nleft;G;0,5;1,25\n'],
    ['semicolons and points', 'hand;motion;start_s;end_s\nleft;G;0.5;1.25\n'],
    ['tabs', 'hand\tmotion\tstart_s\tend_s\nleft\tG\t0,5\t1,25'],
    ['quoted decimal commas between commas', 'hand,motion,start_s,end_s\nleft,G,"0,5","1,25"\n'],
    ['line ends of old machines', 'hand,motion,start_s,end_s\rleft,G,0.5,1.25\r'],
    ['empty lines and padding', '\n\nhand,motion,start_s,end_s,,\n , ,,,,\nleft , G , 0.5 , 1.25,,\n\n'],
    ['a semicolon in a quoted cell', 'hand,motion,start_s,end_s,object\nleft,G,.5,1.25,"a;b;c;d;e;f"'],
  ])('reads %s', (_, text) => {
    const method = read(text).study.methods[0];
    expect(method?.left).toMatchObject({ items: [{ kind: 'G', start: 500_000 }], end: 1_250_000 });
  });

  it('keeps every microsecond and rounds beyond', () => {
    const items = read(table('left,G,0.000001,33.3333333,,,,', 'left,H,33.3333335,8999999999.999999,,,,'))
      .study.methods[0]?.left;
    expect(items?.items.map((motion) => motion.start)).toEqual([1, 33_333_333, 33_333_334]);
    expect(items?.end).toBe(8_999_999_999_999_999);
  });

  it('quoted cells keep line ends, quotation marks and blanks; lines are counted as an editor counts them', () => {
    const text = table('left,G,0,1,"a ""big""\r\nring ",,,', 'left,X,1,2,,,,');
    expect(faults(text)).toEqual([['csv/motion', 4, 2]]);
    const object = read(table('left,G,0,1,"a ""big""\r\nring ",,,')).study.methods[0]?.left.items[0]?.object;
    expect(object).toBe('a "big"\r\nring ');
  });

  it.each([
    ["'=1+1", '=1+1'],
    ["''=1+1", "'=1+1"],
    ["'-", '-'],
    ["'@home", '@home'],
    ["'tis", "'tis"],
    ['=1+1', '=1+1'],
  ])(
    'the object %s is read as %s: an apostrophe against formulas is taken away, no other',
    (cell, object) => {
      expect(read(table(`left,G,0,1,${cell},,,`)).study.methods[0]?.left.items[0]?.object).toBe(object);
    },
  );

  it('gaps inside, before and after become unmarked, each with a note', () => {
    const { study, notes } = read(table('left,G,1,2,,,,', 'left,TL,3,4,,,,', 'right,H,1.5,3.5,,,,'));
    expect(study.methods[0]?.left.items.map((motion) => [motion.kind, motion.start])).toEqual([
      ['G', 1e6],
      ['unmarked', 2e6],
      ['TL', 3e6],
    ]);
    expect(study.methods[0]?.right.items.map((motion) => [motion.kind, motion.start])).toEqual([
      ['unmarked', 1e6],
      ['H', 1.5e6],
      ['unmarked', 3.5e6],
    ]);
    expect(notes.map(({ code, severity, where }) => [code, severity, where.line, where.hand])).toEqual([
      ['csv/gap', 'note', 3, 'left'],
      ['csv/gap', 'note', 4, 'right'],
      ['csv/gap', 'note', 4, 'right'],
    ]);
    expect(notes[0]?.message).toContain('Between 2 s and 3 s the left hand has no motion');
  });
});

describe('faults of a table are found by line and column', () => {
  it.each<[string, string, [string, number, number | undefined][]]>([
    ['nothing', '', [['csv/empty', 1, undefined]]],
    ['only the head', `${head}\n`, [['csv/empty', 1, undefined]]],
    ['a missing column', 'hand,motion,end_s\nleft,G,1', [['csv/missing-column', 1, undefined]]],
    ['a column twice', 'hand,motion,start_s,end_s,hand\nleft,G,0,1,left', [['csv/duplicate-column', 1, 5]]],
    ['no head at all', 'left,G,0,1\nright,G,0,1', Array(4).fill(['csv/missing-column', 1, undefined])],
    ['a spreadsheet file', 'PK\u0003\u0004\u0000\u0000', [['csv/not-text', 1, undefined]]],
    ['an unknown hand', table('feet,G,0,1,,,,'), [['csv/hand', 2, 1]]],
    ['both hands in one line', table('both,G,0,1,,,,'), [['csv/hand-both', 2, 1]]],
    ['no hand', table(',G,0,1,,,,'), [['csv/hand-unsaid', 2, 1]]],
    ['an unspecified hand', table('unspecified,G,0,1,,,,'), [['csv/hand-unsaid', 2, 1]]],
    ['an unknown motion', table('left,reach,0,1,,,,'), [['csv/motion', 2, 2]]],
    ['no motion', table('left,,0,1,,,,'), [['csv/motion', 2, 2]]],
    ['a time that is a word', table('left,G,soon,1,,,,'), [['csv/number', 2, 3]]],
    ['an empty time', table('left,G,,1,,,,'), [['csv/number', 2, 3]]],
    ['a negative time', table('left,G,-1,1,,,,'), [['csv/number', 2, 3]]],
    ['a time with an exponent', table('left,G,1e-3,1,,,,'), [['csv/number', 2, 3]]],
    ['a clock time', table('left,G,0:01,1,,,,'), [['csv/number', 2, 3]]],
    ['a mark for thousands', table('left,G,0,"1,234.5",,,,'), [['csv/number', 2, 4]]],
    ['a time too large to write', table('left,G,0,99999999999,,,,'), [['csv/number', 2, 4]]],
    [
      'two decimal marks in one file',
      table('left,G,0.5,1,,,,', 'left,H,"1,5",2,,,,'),
      [['csv/decimal-mark', 3, 3]],
    ],
    ['an end before the start', table('left,G,2,1,,,,'), [['csv/order', 2, 4]]],
    ['an end at the start', table('left,G,1,1,,,,'), [['csv/order', 2, 4]]],
    ['a motion below a microsecond', table('left,G,1,1.0000001,,,,'), [['csv/too-fine', 2, 4]]],
    ['a cycle that is a word', table('left,G,0,1,,,,first'), [['csv/cycle', 2, 8]]],
    ['cycle nought', table('left,G,0,1,,,,0'), [['csv/cycle', 2, 8]]],
    ['half a cycle', table('left,G,0,1,,,,1.5'), [['csv/cycle', 2, 8]]],
    ['a cycle out of order', table('left,G,0,1,,,,2', 'left,H,1,2,,,,1'), [['csv/cycle-order', 3, 8]]],
    [
      'two cycles that begin at once',
      table('left,G,0,1,,,,1', 'right,H,0,1,,,,2'),
      [['csv/cycle-order', 3, 8]],
    ],
    ['cycles with no room for one that is missing', table('left,G,0,1,,,,2'), [['csv/cycle-room', 2, 8]]],
    [
      'a quotation mark that is not closed',
      table('left,G,0,1,"ring,,,', 'left,H,1,2,,,,'),
      [['csv/quote', 2, 5]],
    ],
    ['text after a quoted cell', table('left,G,0,1,"a" ring,,,'), [['csv/after-quote', 2, 5]]],
    ['a lost cell', table('left,G,0,1'), [['csv/cells', 2, undefined]]],
    ['a comma that is not quoted', table('left,G,0,1,a,b,c,1,d'), [['csv/cells', 2, undefined]]],
    ['an object too long', table(`left,G,0,1,${'x'.repeat(201)},,,`), [['csv/too-long', 2, 5]]],
  ])('%s', (_, text, wanted) => {
    expect(faults(text)).toEqual(wanted);
  });

  it('all faults come at once, in the order of the text', () => {
    const text = table('left,G,x,1,,,,', 'both,Q,0,1,,,,', 'right,G,0,1,,,,');
    expect(faults(text)).toEqual([
      ['csv/number', 2, 3],
      ['csv/hand-both', 3, 1],
      ['csv/motion', 3, 2],
    ]);
  });

  it('an overlap in one hand names both lines; the other hand may do what it likes', () => {
    const text = table('left,H,0,5,,,,', 'right,TE,1,2,,,,', 'left,G,4.5,6,,,,', 'left,TL,4.9,7,,,,');
    expect(faults(text)).toEqual([
      ['csv/overlap', 4, 3],
      ['csv/overlap', 5, 3],
    ]);
    expect(messages(text)).toContain('this motion starts at 4.5 s, the one on line 2 ends at 5 s');
    expect(messages(text)).toContain('this motion starts at 4.9 s, the one on line 4 ends at 6 s');
  });

  it('a line for both hands is told to be written twice', () => {
    expect(messages(table('both,G,0,1,,,,'))).toContain(
      'Write the line twice, once with left and once with right.',
    );
    expect(messages(table('?,G,0,1,,,,'))).toContain('write left or right');
  });
});

describe('cycles of a table', () => {
  const cyclesOf = (...lines: string[]) => {
    const { study, notes } = read(table(...lines));
    const cycles = study.methods[0]?.cycles;
    return {
      starts: cycles?.items.map((cycle) => cycle.start / 1e6),
      end: (cycles?.end ?? 0) / 1e6,
      notes: notes.map((item) => item.code),
    };
  };

  it('begin with the first motion of either hand that has their number', () => {
    expect(
      cyclesOf('left,G,0,2,,,,1', 'left,H,2,4,,,,2', 'right,G,0,1.5,,,,1', 'right,H,1.5,4,,,,1'),
    ).toEqual({ starts: [0, 2], end: 4, notes: [] });
  });

  it('leave out what lies before the first and after the last', () => {
    const lines = ['left,G,0,1,,,,', 'left,H,1,2,,,,1', 'left,RL,2,3,,,,', 'right,H,0,3,,,,'];
    expect(cyclesOf(...lines)).toEqual({ starts: [1], end: 2, notes: [] });
  });

  it('a line without a number between two of one cycle belongs to it, with a note', () => {
    expect(
      cyclesOf('left,G,0,1,,,,1', 'left,H,1,2,,,,', 'left,RL,2,3,,,,1', 'right,H,0,3,,,,1').notes,
    ).toEqual(['csv/cycle-filled']);
  });

  it('a number that no motion has is put just before the next cycle, with a note', () => {
    const made = cyclesOf('left,G,0,1,,,,1', 'left,H,1,2,,,,3', 'right,H,0,2,,,,1');
    expect(made).toEqual({ starts: [0, 0.999_999, 1], end: 2, notes: ['csv/cycle-gap'] });
  });
});
