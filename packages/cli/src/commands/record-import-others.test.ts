import { parseStudy } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';

const steps = [
  'subject,hand,label,start_s,end_s',
  'bench 1,left,pick up hose,0,2',
  'bench 1,right,press coupling,0,3',
  'bench 1,right,nod,2.5,4',
  'bench 1,both,nod,4,5',
  'bench 1,unspecified,press coupling,5,6',
  'bench 2,left,nod,0,1',
].join('\n');
const labels = 'label,motion,object\nPick up hose,G,hose\npress coupling,assemble,coupling\nsing,unmarked,\n';
const files = { 'steps.csv': steps, 'labels.csv': labels };
const argv = (...more: string[]) => ['record', 'import', 'steps.csv', '-o', 'new.json', ...more];
const whole = argv(
  '--mapping',
  'labels.csv',
  '--subject',
  'bench 1',
  '--hand',
  'right',
  '--both',
  'copy',
  '--overlaps',
  'cut',
);

describe('evenhand record import on records of others', () => {
  it('refuses labels without a motion with the list of them and writes nothing', async () => {
    const { code, out, err, files: after } = await call(whole, { files });
    expect([code, out, 'new.json' in after]).toEqual([2, '', false]);
    expect(err).toBe(
      'error: steps.csv: line 4, column 3: “nod” stands for no motion (2 times, here first). Give it one in a mapping (evenhand record import --mapping FILE), or take all such labels as not marked (--unmapped unmarked). [csv/unmapped]\n',
    );
  });

  it('takes them as not marked on wish, and tells all that it did', async () => {
    const { code, err, files: after } = await call([...whole, '--unmapped', 'unmarked'], { files });
    expect(code).toBe(0);
    const told = [...err.matchAll(/\[(csv\/[a-z-]+)\]/g)].map((match) => match[1]);
    expect(told).toEqual([
      'csv/unmapped-read',
      'csv/mapping-unused',
      'csv/both-copied',
      'csv/hand-given',
      'csv/cut-late',
      'csv/gap',
      'csv/gap',
    ]);
    expect(err).toContain('line 4 was cut by 0.5 s in the right hand. It begins at 3 s and not at 2.5 s');
    expect(err).toContain('new.json: left hand 1 motion, right hand 2 motions; 0 cycles, 0 places.');
    const study = parseStudy(String(after['new.json']));
    expect(study.ok && study.value.methods[0]?.right.items).toMatchObject([
      { kind: 'A', object: 'coupling', note: 'press coupling', start: 0 },
      { kind: 'unmarked', note: 'nod', start: 3_000_000 },
      { kind: 'unmarked', note: 'nod', start: 4_000_000 },
      { kind: 'A', start: 5_000_000 },
    ]);
    const examined = await call(['examine', 'new.json'], { files: { ...after } });
    expect([examined.code, examined.out.length > 0]).toEqual([0, true]);
  });

  it('refuses several subjects, overlaps and hands as long as nothing is chosen', async () => {
    const subjects = await call(argv(), { files });
    expect(subjects.code).toBe(2);
    expect(subjects.err).toContain('The table tells of 2 subjects');
    expect(subjects.err).toContain('“bench 1”, “bench 2”.');
    const one = argv('--subject', 'bench 1', '--mapping', 'labels.csv', '--unmapped', 'unmarked');
    const hands = await call(one, { files });
    expect(hands.err).toContain('line 5, column 2: “both” stands for both hands');
    expect(hands.err).toContain('(evenhand record import --both copy)');
    expect(hands.err).toContain('line 6, column 2: It is not said which hand this is (“unspecified”)');
    expect(hands.err).toContain('(evenhand record import --hand left or --hand right)');
    const overlaps = await call([...one, '--hand', 'right', '--both', 'copy'], { files });
    expect([overlaps.code, overlaps.err]).toEqual([
      2,
      'error: steps.csv: line 4, column 4: The right hand does two things at once: this motion starts at 2.5 s, the one on line 3 ends at 3 s. A hand can do one motion at a time; correct one of the two times, or let the earlier one be cut (evenhand record import --overlaps cut). [csv/overlap]\n',
    ]);
  });

  it('tells faults of the mapping by its own name, line and column', async () => {
    const wrong = { ...files, 'labels.csv': 'label,motion\nnod,bow\nNOD,G\nnod,H' };
    const { code, err } = await call(whole, { files: wrong });
    expect(code).toBe(2);
    expect(err).toContain('error: labels.csv: line 2, column 2: “bow” is not a motion.');
    expect(err).toContain('error: labels.csv: line 4, column 1: The label “nod” stands on line 3 already');
    const gone = await call(argv('--mapping', 'gone.csv'), { files });
    expect([gone.code, gone.err.includes('gone.csv cannot be read')]).toEqual([2, true]);
    const odd = await call([...whole, '--unmapped', 'unmarked', '--json'], {
      files: { ...files, 'labels.csv': 'label,motion,mood\nnod,UD,glad\npress coupling,A,\npick up hose,G,' },
    });
    expect(odd.err).toContain('labels.csv: line 1, column 3: The column “mood” is not known');
    expect(JSON.parse(odd.out).notes[0]).toMatchObject({ code: 'csv/unknown-column' });
  });

  it('reads the mapping from standard input, but not both files', async () => {
    const { code } = await call(argv('--mapping', '-', '--subject', 'bench 2', '--unmapped', 'unmarked'), {
      files,
      stdin: labels,
    });
    expect(code).toBe(0);
    const both = await call(['record', 'import', '-', '--mapping', '-', '-o', 'new.json'], { stdin: labels });
    expect([both.code, both.err.includes('both want standard input')]).toEqual([2, true]);
  });

  it.each([
    [['--unmapped', 'drop'], '--unmapped drop is not known; it can be unmarked.'],
    [['--hand', 'both'], '--hand both is not known; it can be left or right.'],
    [['--both', 'left'], '--both left is not known; it can be copy.'],
    [['--overlaps', 'keep'], '--overlaps keep is not known; it can be cut.'],
    [['--shape', 'round'], '--shape round is not known; it can be motions or elements.'],
  ])('%j is bad use', async (more, reason) => {
    const { code, err } = await call(argv(...more), { files });
    expect(code).toBe(2);
    expect(err).toContain(reason);
  });

  it('says what a table of elements by cycle is, and reads it', async () => {
    const table = { 'times.csv': 'cycle,start_s,grasp,hold\n1,0,1,2\n2,2.5,1,' };
    const words = ['record', 'import', 'times.csv', '-o', 'new.json'];
    const refused = await call(words, { files: table });
    expect([refused.code, refused.err.includes('This is a table of elements by cycle')]).toEqual([2, true]);
    const shape = [...words, '--shape', 'elements', '--hand', 'right'];
    const beyond = await call(shape, { files: table });
    expect([
      beyond.code,
      beyond.err.includes('“hold” ends at 3 s, and the cycle on line 3 begins at 2.5 s'),
    ]).toEqual([2, true]);
    const cut = await call([...shape, '--overlaps', 'cut'], { files: table });
    expect(cut.code).toBe(0);
    expect(cut.err).toContain('The element “hold” was cut by 0.5 s');
    expect(cut.err).toContain('right hand 3 motions; 2 cycles');
  });
});
