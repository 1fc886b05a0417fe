import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readingsFromTable, type TableChoice } from './from-table.ts';

const read = (text: string, choice?: TableChoice) => {
  const found = readingsFromTable(text, choice);
  if (!found.ok) throw new Error(found.error.map(({ message }) => message).join('\n'));
  return found.value;
};
const faults = (text: string, choice?: TableChoice) => {
  const found = readingsFromTable(text, choice);
  return found.ok ? [] : found.error.map(({ code, where }) => [code, where.line, where.column]);
};

describe('a table of readings', () => {
  it('has a column for each element; an empty or a lost cell is a missed reading, and that is told', () => {
    const { elements, cycles, notes } = read('cycle,fit hose,press ring\n1,4.2,2.1\n2,,2.25\n4,4.5\n');
    expect(cycles).toEqual([1, 2, 4]);
    expect(elements).toEqual([
      {
        name: 'fit hose',
        work: 'worker',
        readings: [
          { cycle: 1, time: 4.2 },
          { cycle: 2, time: undefined },
          { cycle: 4, time: 4.5 },
        ],
      },
      {
        name: 'press ring',
        work: 'worker',
        readings: [
          { cycle: 1, time: 2.1 },
          { cycle: 2, time: 2.25 },
          { cycle: 4, time: undefined },
        ],
      },
    ]);
    expect(notes.map(({ message }) => message)).toEqual([
      expect.stringContaining('“fit hose” has no reading in 1 of 3 cycles (cycle 2)'),
      expect.stringContaining('“press ring” has no reading in 1 of 3 cycles (cycle 4)'),
    ]);
  });

  it.each([
    ['semicolons', 'cycle;a;b\n1;4,2;2,1'],
    ['tabs', 'cycle\ta\tb\r\n1.0\t4,2\t2,1\r\n'],
    ['quoted cells and padding', 'cycle,a,b,,\n1,"4,2","2,1",,'],
    ['a byte order mark', '\uFEFFcycle,a,b\n1,4.2,2.1'],
  ])('with %s', (_, text) => {
    expect(read(text).elements.map(({ readings }) => readings[0]?.time)).toEqual([4.2, 2.1]);
  });

  it('a time with a reason behind it is set aside with it', () => {
    const [element] = read('cycle,a\n1,38.5 (part fell)\n2,4').elements;
    expect(element?.readings[0]).toEqual({ cycle: 1, time: 38.5, setAside: 'part fell' });
  });

  it('columns that are no element are left out by name', () => {
    const text = 'cycle,clip,start_s,a\n1,x,0,4\n2,y,0,5';
    expect(faults(text)).toEqual([
      ['define/table-no-times', 2, 2],
      ['define/table-zero', 2, 3],
      ['define/table-zero', 3, 3],
    ]);
    const { elements, skipped } = read(text, { skip: ['Clip', 'start_s'] });
    expect(elements.map(({ name }) => name)).toEqual(['a']);
    expect(skipped).toEqual(['Clip', 'start_s']);
    expect(faults(text, { skip: ['begin'] })).toEqual([['define/table-skip', 1, undefined]]);
    expect(faults('cycle,a\n1,2', { skip: ['a'] })).toEqual([['define/table-no-element', 1, undefined]]);
  });

  it('a zero is set aside when that is asked for, and each is told', () => {
    const { elements, notes } = read('cycle,a\n1,0\n2,4', { zeros: 'aside' });
    expect(elements[0]?.readings[0]).toMatchObject({ time: 0, setAside: expect.stringMatching(/too short/) });
    expect(notes.map(({ code, where }) => [code, where.line, where.column])).toEqual([
      ['define/table-zero-aside', 2, 2],
    ]);
  });

  it('everything wrong is told by line and column', () => {
    const text = 'cycle,a,b\n1,4,0\n1,-3,2\nx,4,2 min\n4,5 (),NaN\n5,1e3,';
    expect(faults(text)).toEqual([
      ['define/table-zero', 2, 3],
      ['define/table-cycle-twice', 3, 1],
      ['define/reading-negative', 3, 2],
      ['define/table-cycle', 4, 1],
      ['define/table-not-number', 4, 3],
      ['define/no-reason', 5, 2],
      ['define/table-not-number', 5, 3],
      ['define/table-not-number', 6, 2],
    ]);
  });

  it.each<[string, string, (string | number | undefined)[]]>([
    ['nothing', '', ['csv/empty', 1, undefined]],
    ['a head alone', 'cycle,a', ['csv/empty', 1, undefined]],
    ['two marks', 'cycle;a\n1;4,5\n2;4.5', ['define/table-decimals', 3, 2]],
    ['one name twice', 'cycle,a,A\n1,2,3', ['csv/duplicate-column', 1, 3]],
    ['a column without a name', 'cycle,a,\n1,2,3', ['define/table-unnamed', 1, 3]],
    ['more cells than columns', 'cycle,a\n1,2,3', ['csv/cells', 2, undefined]],
    ['cycle 0', 'cycle,a\n0,2', ['define/table-cycle', 2, 1]],
    ['a quotation mark that stays open', 'cycle,a\n1,"2', ['csv/quote', 2, 2]],
  ])('%s is refused', (_, text, wanted) => {
    expect(faults(text)[0]).toEqual(wanted);
  });

  it('a column of ratings rates each reading, also with a decimal comma and apart from its element', () => {
    const found = readingsFromTable('cycle;rating of B;a;b\n1;95,5;1;2\n2;;1;2,5\n3;110;1;\n4;80;1;9 (fell)');
    expect(found.ok && found.value.elements).toEqual([
      { name: 'a', work: 'worker', readings: [1, 2, 3, 4].map((cycle) => ({ cycle, time: 1 })) },
      {
        name: 'b',
        work: 'worker',
        readings: [
          { cycle: 1, time: 2, rating: 95.5 },
          { cycle: 2, time: 2.5 },
          { cycle: 3, time: undefined, rating: 110 },
          { cycle: 4, time: 9, setAside: 'fell', rating: 80 },
        ],
      },
    ]);
  });

  it.each<[string, string, (string | number | undefined)[]]>([
    ['a word', 'cycle,a,rating of a\n1,2,good', ['define/table-rating', 2, 3]],
    ['0', 'cycle,a,rating of a\n1,2,0', ['define/table-rating', 2, 3]],
    ['a reason', 'cycle,a,rating of a\n1,2,90 (slow)', ['define/table-rating', 2, 3]],
    ['another element', 'cycle,a,rating of b\n1,2,90', ['define/table-rating-of', 1, 3]],
    ['an element that is skipped', 'cycle,a,rating of a,b\n1,2,90,1', ['define/table-rating-of', 1, 3]],
    ['another decimal mark', 'cycle;a;rating of a\n1;2,5;90.5', ['define/table-decimals', 2, 3]],
  ])('as a rating %s is refused', (what, text, wanted) => {
    expect(faults(text, what.includes('skipped') ? { skip: ['a'] } : {})[0]).toEqual(wanted);
  });

  it('whatever the text, every reading has a time above 0, none, or a reason; nothing is thrown', () => {
    const cell = fc.oneof(
      fc.constantFrom('', '0', '-1', '3,5', '2.5', '7 (x)', 'NaN', '"', '1e9', 'cycle'),
      fc.string({ maxLength: 6 }),
    );
    const text = fc
      .array(fc.array(cell, { minLength: 1, maxLength: 4 }), { maxLength: 6 })
      .map((lines) => `cycle,a,b\n${lines.map((line, index) => [index + 1, ...line].join(',')).join('\n')}`);
    fc.assert(
      fc.property(text, fc.constantFrom(undefined, 'aside' as const), (table, zeros) => {
        const found = readingsFromTable(table, { zeros });
        if (!found.ok) {
          expect(found.error.length).toBeGreaterThan(0);
          for (const { message } of found.error) expect(message).not.toMatch(/undefined|\{[a-z]+\} /);
          return;
        }
        for (const { readings } of found.value.elements) {
          for (const { time, setAside } of readings) {
            expect(time === undefined || time > 0 || setAside !== undefined).toBe(true);
          }
        }
      }),
      { seed: 47, numRuns: 300 },
    );
  });
});
