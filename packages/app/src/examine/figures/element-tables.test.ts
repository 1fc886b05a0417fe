import { findElements, type MethodReading, readMethod } from '@evenhand/core/examine';
import type { ElementMark } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { tenth, twoHandStudy } from '../../../../../tests/helpers/two-hand-study.ts';
import { beginningsIn, elementTable, modelPosition } from './element-tables.ts';

const mark = (name: string, at: number): ElementMark => ({ id: name, name, hand: 'right', at: at * tenth });

function readingOf(cycles: Parameters<typeof twoHandStudy>[0]): MethodReading {
  const read = readMethod(twoHandStudy(cycles), 'm');
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
}

describe('elements as a table', () => {
  const reading = readingOf([
    { left: 'UD 1', right: 'TE ring 2, G ring 1, A nut 3' },
    { left: 'UD 1', right: 'TE ring 2, G ring 2, A bolt 5' },
  ]);
  const marks = [mark('fetch', 0), mark('fit', 3)];

  it('gives mean and spread of each, and how its beginning was found (0.3 and 0.4 s: mean 0.35, s = 0.1/√2)', () => {
    const table = elementTable(findElements(reading, marks), 2, 'seconds');
    expect(table.rows.map(({ cells }) => cells.slice(0, 5))).toEqual([
      ['fetch', 'right hand', '2', '0.35', '0.07'],
      ['fit', 'right hand', '2', '0.40', '0.14'],
    ]);
    expect(table.rows.map(({ cells }) => cells.at(-1))).toEqual(['all 2', '1 of 2; 1 with another object']);
    expect(table.rows[1]?.traces?.()).toHaveLength(2);
    for (const { cells } of table.rows) expect(cells).toHaveLength(table.columns.length);
  });

  it('an element can begin with every motion of a cycle at which none begins yet', () => {
    const free = beginningsIn(reading, 0, 'seconds');
    expect(free.map(({ words }) => words)).toEqual([
      '0.00 s left: unavoidable delay',
      '0.00 s right: transport empty ring',
      '0.20 s right: grasp ring',
      '0.30 s right: assemble nut',
    ]);
    const method = { ...reading.method, elements: marks };
    expect(beginningsIn({ ...reading, method }, 0, 'seconds').map(({ at }) => at / tenth)).toEqual([0, 2]);
    expect(beginningsIn(reading, 7, 'seconds')).toEqual([]);
  });

  it('are named on in the cycle in which they were named', () => {
    expect([2, 1, undefined, 9].map((number) => modelPosition(reading, number))).toEqual([1, 0, 0, 0]);
  });
});
