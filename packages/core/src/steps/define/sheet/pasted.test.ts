import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PasteWish, parsePasted } from './pasted.ts';

const read = (text: string, wish: Partial<PasteWish> = {}) =>
  parsePasted(text, { unit: 'seconds', elements: [], ...wish });
/** Cells as "cycle element seconds (reason)", in their order. */
const told = (text: string, wish?: Partial<PasteWish>) =>
  read(text, wish).cells.map(
    ({ cycle, element, us, setAside }) =>
      `${cycle} ${element} ${us === undefined ? 'missed' : us / 1e6}${setAside === undefined ? '' : ` (${setAside})`}`,
  );
const faults = (text: string, wish?: Partial<PasteWish>) =>
  read(text, wish).faults.map(({ code, where }) => `${code} ${where.line ?? ''}:${where.column ?? ''}`);

const wanted = ['1 fit 2.35', '1 turn 4', '2 fit 2.4', '2 turn missed'];

describe('readings pasted from a spreadsheet', () => {
  it.each([
    ['tabs and points', 'cycle\tfit\tturn\n1\t2.35\t4\n2\t2.4\t-\n'],
    ['tabs and decimal commas', 'Cycle\tfit\tturn\r\n1\t2,35\t4\r\n2\t2,4\tmissed'],
    ['semicolons and decimal commas', ';fit;turn\n1;2,35;4,0\n2;2,4;–'],
    ['commas and points', 'no.,fit,turn\n1,2.35,4.0\n2,2.40,m\n'],
    ['commas and quoted decimal commas', 'cycle,"fit","turn"\n1,"2,35","4"\n2,"2,4","-"'],
    ['a word of its own over the cycles', 'Stück\tfit\tturn\n1\t2.35\t4\n2\t2.4\t-'],
    ['a byte order mark and old line ends', '\uFEFFcycle\tfit\tturn\r1\t2.35\t4\r2\t2.4\t-\r'],
    ['no cycles', 'fit\tturn\n2.35\t4\n2.4\t-'],
    ['elements down', 'cycle\t1\t2\nfit\t2.35\t2.4\nturn\t4\t-'],
    ['elements down without cycles', 'fit\t2.35\t2.4\nturn\t4\t-'],
    ['elements down, nothing in the corner', '\t1\t2\nfit\t2.35\t2.4\nturn\t4\t-'],
    ['a name on two lines', 'cycle\t"f\nit"\tturn\n1\t2.35\t4\n2\t2.4\t-'],
  ])('%s', (title, text) => {
    const name = title === 'a name on two lines' ? 'f it' : 'fit';
    expect(told(text).toSorted()).toEqual(wanted.map((line) => line.replace('fit', name)));
    expect(read(text)).toMatchObject({ added: expect.arrayContaining([name, 'turn']), left: [], faults: [] });
  });

  it('without names they are of the elements that are there, and of new ones beyond them', () => {
    const elements = ['fit', 'turn'];
    expect(told('1\t2.35\t4\n2\t2.4\t-', { elements })).toEqual(wanted);
    expect(told('2.35\t4\n2.4\t-', { elements, firstCycle: 7 })).toEqual([
      '7 fit 2.35',
      '7 turn 4',
      '8 fit 2.4',
      '8 turn missed',
    ]);
    expect(read('2.35\t4\t9\n', { elements })).toMatchObject({ added: ['element 3'] });
    // Two columns of whole numbers for two elements are times of both, not cycles.
    expect(told('1\t4\n2\t5', { elements })).toEqual(['1 fit 1', '1 turn 4', '2 fit 2', '2 turn 5']);
  });

  it('names that are there are known however they are written, and new ones are offered', () => {
    const { cells, added } = read('cycle\tFIT \tsweep\n1\t2\t3', { elements: ['fit'] });
    expect(cells.map(({ element }) => element)).toEqual(['fit', 'sweep']);
    expect(added).toEqual(['sweep']);
    expect(told('cycle\t2nd press\n1\t2.5')).toEqual(['1 2nd press 2.5']);
    expect(told('2nd press\tfit\n1.5\t2.5')).toEqual(['1 2nd press 1.5', '1 fit 2.5']);
  });

  it('keeps the reason of what is set aside, the unit of the sheet and units of their own', () => {
    expect(told('fit\n38.5 (part fell; picked up)\n')).toEqual(['1 fit 38.5 (part fell; picked up)']);
    expect(told('fit\n0.04\n2.5 s', { unit: 'minutes' })).toEqual(['1 fit 2.4', '2 fit 2.5']);
    expect(told('fit\n100', { unit: 'tmu' })).toEqual(['1 fit 3.6']);
  });

  it('times that happen to rise by one are times; a column that counts from 1, or three times, is that of the cycles', () => {
    expect(told('fit\tturn\n2\t4\n3\t5')).toEqual(['1 fit 2', '1 turn 4', '2 fit 3', '2 turn 5']);
    expect(told('Stück\tfit\n1\t4\n2\t5')).toEqual(['1 fit 4', '2 fit 5']);
    expect(told('11\t4\n12\t5\n13\t6')).toEqual(['11 element 1 4', '12 element 1 5', '13 element 1 6']);
    expect(told('7\t4\n9\t5', { elements: ['fit'] })).toEqual(['7 fit 4', '9 fit 5']);
    expect(told('cycle\tfit\n9\t5\n7\t4')).toEqual(['9 fit 5', '7 fit 4']);
    expect(told('n\tfit\n1\t5\n2\t4', { elements: ['n', 'fit'] })[0]).toBe('1 n 1');
  });

  it('an empty cell and an empty line say nothing, and the cycles behind keep their numbers', () => {
    expect(told('fit\tturn\n2\t\n\t\n\n3\t4')).toEqual(['1 fit 2', '4 fit 3', '4 turn 4']);
  });

  it('one column of decimal commas is one column, and a note says how it was taken', () => {
    expect(told('2,35\n2,40')).toEqual(['1 element 1 2.35', '2 element 1 2.4']);
    expect(faults('2,35\n2,40')).toEqual(['define/paste-comma 1:']);
    expect(told('fit\n2,35\n3')).toEqual(['1 fit 2.35', '2 fit 3']);
  });

  it('a bad cell is left with its line and column and takes nothing from the others', () => {
    const text = 'cycle\tfit\tturn\n1\ttwo\t4\n2\t0\t5\n3\t-2\t6';
    expect(told(text)).toEqual(['1 turn 4', '2 turn 5', '3 turn 6']);
    expect(faults(text)).toEqual([
      'define/cell-not-time 2:2',
      'define/cell-zero 3:2',
      'define/cell-negative 4:2',
    ]);
    expect(read(text).left.map((cell) => cell.text)).toEqual(['two', '0', '-2']);
  });

  it('of a turned block the places are those of the text', () => {
    expect(faults('cycle\t1\t2\nfit\t2.35\tbad')).toEqual(['define/cell-not-time 2:3']);
  });

  it.each([
    ['a cycle that is no number', 'cycle\tfit\nx\t1.5\n2\t2.5', ['define/paste-cycle 2:1'], 2],
    ['a cycle without a number', 'cycle\tfit\n\t1.5\n2\t2.5', ['define/paste-cycle 2:1'], 1],
    ['a cycle beyond all', 'cycle\tfit\n1000001\t1.5\n2\t2.5', ['define/paste-cycle 2:1'], 2],
    ['a cycle twice', 'cycle\tfit\n2\t2.5\n2\t1.5', ['define/table-cycle-twice 3:1'], 2],
    ['an element twice', 'cycle\tfit\tFit\n1\t2.5\t1.5', ['csv/duplicate-column 1:3'], 1],
    ['a column without a name', 'cycle\tfit\n1\t2.5\t1.5', ['define/table-unnamed 2:3'], 1],
    ['a long name', `cycle\tfit\t${'x'.repeat(201)}\n1\t2.5\t1.5`, ['define/paste-name 1:3'], 1],
    ['two decimal marks', 'fit\tturn\n2.5\t1,5', ['define/table-decimals 2:2'], 1],
    ['two decimal marks in a column', '2.5\n1,5', ['define/paste-comma 1:', 'define/table-decimals 2:1'], 1],
  ])('%s is told at its place, and what belongs to it is left', (_title, text, codes, left) => {
    expect(faults(text)).toEqual(codes);
    const found = read(text);
    expect(found.left.length).toBe(left);
    expect(found.cells.map(({ us }) => us)).toEqual([2_500_000]);
  });

  it('a line that ends in no quotation mark is told, nothing of it is taken for a time', () => {
    const { cells, left, faults: found } = read('fit\tturn\n2.5\t"3.5\n4\t5');
    expect(cells.map(({ us }) => us)).toEqual([2_500_000]);
    expect(left.length).toBe(1);
    expect(found.map(({ code }) => code)).toContain('csv/quote');
  });

  it('nothing at all is told', () => {
    for (const text of ['', ' \n\t\n', 'fit\tturn']) expect(faults(text)).toContain('define/paste-empty :');
  });

  it('every cell that holds something is taken or left with a finding, whatever is pasted', () => {
    const cell = fc.oneof(
      fc.constantFrom(
        '',
        '',
        '-',
        'm',
        '2.5',
        '2,5',
        '0',
        'x',
        '3 (fell)',
        'cycle',
        'fit',
        '1',
        '2',
        '3',
        '−1',
        '4 s',
      ),
      fc.stringMatching(/^[\w.,()-]{0,6}$/),
    );
    const blocks = fc.array(fc.array(cell, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(blocks, fc.constantFrom([], ['fit'], ['fit', 'turn', 'wipe']), (block, elements) => {
        const {
          cells,
          left,
          faults: found,
        } = read(block.map((line) => line.join('\t')).join('\n'), { elements });
        const places = [...cells, ...left].map(({ line, column }) => `${line}:${column}`);
        expect(new Set(places).size).toBe(places.length);
        expect(left.length === 0 || found.some(({ severity }) => severity === 'error')).toBe(true);
        const keys = cells.map(({ cycle, element }) => `${cycle} ${element}`);
        expect(new Set(keys).size).toBe(keys.length);
        // What is neither taken nor left is a name or the number of a cycle: at most a first line and a first column.
        const held = block.flatMap((line, at) =>
          line.flatMap((text, column) => (text.trim() === '' ? [] : [[at + 1, column + 1] as const])),
        );
        const top = Math.min(...held.map(([line]) => line));
        const rest = held.filter(([line, column]) => !places.includes(`${line}:${column}`));
        expect(rest.filter(([line, column]) => line !== top && column !== 1)).toEqual([]);
      }),
      { seed: 9, numRuns: 1500 },
    );
  });
});
