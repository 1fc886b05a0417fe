import { emptyTimeStudy, timeStudySheet } from '@evenhand/core/define';
import { applyEdit } from '@evenhand/core/ground/edit';
import type { TimeStudy } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../../../tests/helpers/plain-study.ts';
import { newElement } from '../define-edits.ts';
import { gridModel } from './grid-model.ts';
import { blockOf, isTable, paste } from './pasted.ts';
import { readingsText } from './table-text.ts';

function benchStudy(names: readonly string[]): TimeStudy {
  return {
    ...emptyTimeStudy({ id: 'bench', name: 'at the bench' }),
    elements: names.map((name) => newElement(name, name.replace(/\W/g, '-'))),
  };
}

function pasteInto(
  timeStudy: TimeStudy,
  text: string,
  { line = 0, column = 0, turned = false, ratings = false } = {},
) {
  const study = { ...plainStudy(), timeStudies: [timeStudy] };
  const model = gridModel(timeStudy, timeStudySheet(study, timeStudy), ratings);
  let count = 0;
  const pasted = paste(model, { line, column }, text, turned, () => `new-${++count}`);
  const applied = pasted.edit === undefined ? undefined : applyEdit(study, pasted.edit);
  if (applied?.ok === false) throw new Error(applied.error.message);
  const result = applied === undefined ? timeStudy : (applied.value.study.timeStudies?.[0] as TimeStudy);
  const seconds = result.elements.map(({ name, readings }) => [
    name,
    readings.map(({ cycle, us }) => [cycle, us === undefined ? 'missed' : us / 1e6]),
  ]);
  return { ...pasted, result, seconds: Object.fromEntries(seconds) as Record<string, unknown[]> };
}

describe('the cells of a clipboard', () => {
  it('are parted by tabs and lines, with quoted cells and the line ends of every system', () => {
    expect(blockOf('1\t2\r\n3\t"a\tb"\r\n')).toEqual([
      ['1', '2'],
      ['3', 'a\tb'],
    ]);
    expect(blockOf('"say ""ah"""\t2')).toEqual([['say "ah"', '2']]);
    expect(blockOf('1,5;2,5\n3;4')).toEqual([
      ['1,5', '2,5'],
      ['3', '4'],
    ]);
  });
});

describe('whether a block has names', () => {
  it.each([
    ['cycle\ttake\tput\n4\t1\t2', true],
    ['\ttake\tput\n4\t1\t2', true],
    ['take\tput\n1\t2', true],
    ['\t4\t5\ntake\t1\t3\nput\t2\t4', true],
    ['take\t1\t3\nput\t2\t4', true],
    ['cycle,take,put\n1,2,3', true],
    ['take\n1\n2', true],
    ['1\t2\n3\t4', false],
    ['1\tfoo\n3\t4', false],
    ['1,5', false],
    ['-\t2\n3\t4', false],
    ['5 (fell)\t2', false],
    ['2,5\n3,5', false],
  ])('%j', (text, expected) => {
    expect(isTable(text)).toBe(expected);
  });
});

describe('pasting', () => {
  it('puts a block where the cursor stands, beyond the last cycle too', () => {
    const { seconds } = pasteInto(benchStudy(['take', 'put']), '1\t2\n3\t4', { column: 9 });
    expect(seconds).toEqual({
      take: [
        [10, 1],
        [11, 2],
      ],
      put: [
        [10, 3],
        [11, 4],
      ],
    });
  });

  it('fills elements of the same name whatever their case, and makes those that are new', () => {
    const { seconds, result, words } = pasteInto(benchStudy(['Take body']), 'TAKE BODY\tscrew\n1\t2\n\t4');
    expect(seconds).toEqual({
      'Take body': [[1, 1]],
      screw: [
        [1, 2],
        [2, 4],
      ],
    });
    expect(result.elements).toHaveLength(2);
    expect(words).toContain('New: screw.');
  });

  it('takes what it can and keeps the rest as it was written, with the reason', () => {
    const { seconds, wrong, words } = pasteInto(benchStudy(['take']), '1\tfoo\t-\t0\t5 (fell)');
    expect(seconds.take).toEqual([
      [1, 1],
      [3, 'missed'],
      [5, 5],
    ]);
    expect([...wrong].map(([key, { text }]) => [key, text])).toEqual([
      ['time 2 take', 'foo'],
      ['time 4 take', '0'],
    ]);
    expect([...wrong.values()].every(({ message }) => message.length > 20)).toBe(true);
    expect(words).toContain('2 cells could not be taken');
  });

  it('leaves a line out whose cycle is none, and says which', () => {
    const { seconds, words } = pasteInto(benchStudy(['take']), 'cycle\ttake\n1\t1\nx\t2\n1\t3\n3\t4');
    expect(seconds.take).toEqual([
      [1, 1],
      [3, 4],
    ]);
    expect(words).toContain('Line 3, column 1: “x” is no number of a cycle');
    expect(words).toContain('Line 4, column 1: Cycle 1 stands on line 2 already');
  });

  it('turned, it runs down the cycles', () => {
    expect(pasteInto(benchStudy(['take', 'put']), '1\t2\n3\t4', { turned: true }).seconds).toEqual({
      take: [
        [1, 1],
        [2, 3],
      ],
      put: [
        [1, 2],
        [2, 4],
      ],
    });
  });

  it('marks what a table with names had wrong in the cell where it belongs, however the table runs', () => {
    for (const text of ['cycle\ttake\tput\n4\t1\tfoo\n5\t3\t4', '\t4\t5\ntake\t1\t3\nput\tfoo\t4']) {
      const { wrong, seconds } = pasteInto(benchStudy(['take', 'put']), text);
      expect([...wrong].map(([key, cell]) => [key, cell.text])).toEqual([['time 4 put', 'foo']]);
      expect(seconds).toEqual({
        take: [
          [4, 1],
          [5, 3],
        ],
        put: [[5, 4]],
      });
    }
  });

  it('does not guess where points and commas are mixed', () => {
    const { wrong, seconds } = pasteInto(benchStudy(['take']), '1.5\t1,5\t2.5');
    expect(seconds.take).toEqual([
      [1, 1.5],
      [3, 2.5],
    ]);
    expect([...wrong.values()][0]?.message).toContain('another decimal mark');
  });

  it('of the readings that were copied gives the same readings', () => {
    const { result } = pasteInto(
      benchStudy(['take', 'put']),
      'cycle\ttake\tput\n2\t0.123456\t-\n5\t7 (fell)\t\n',
    );
    const text = readingsText(result.elements, [1, 2, 3, 4, 5], 'seconds');
    expect(text).toBe('cycle\ttake\tput\n2\t0.123456\t-\n5\t7 (fell)\t');
    const again = pasteInto(benchStudy(['take', 'put']), text).result;
    expect(again.elements.map(({ readings }) => readings)).toEqual(
      result.elements.map(({ readings }) => readings),
    );
  });

  it('of ratings goes to the readings that are there', () => {
    const study = benchStudy(['take']);
    const timed = pasteInto(study, '1\t2').result;
    const { result, wrong } = pasteInto(timed, '95\t105\t100', { line: 1, ratings: true });
    expect(result.elements[0]?.readings.map(({ rating }) => rating)).toEqual([95, 105]);
    expect([...wrong.keys()]).toEqual(['rating 3 take']);
  });

  it('names the elements of an empty sheet by their places', () => {
    expect(Object.keys(pasteInto(benchStudy([]), '1\t2\n3\t4').seconds)).toEqual(['element 1', 'element 2']);
  });
});
