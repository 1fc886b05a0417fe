import { relaxationFrom } from '@evenhand/core/define';
import { describe, expect, it } from 'vitest';
import { firstTable, inEdition, type TableRelaxation } from './editions.ts';

const percentOf = ({ edition, column, choices }: TableRelaxation) => {
  const sum = relaxationFrom(edition, column, choices);
  return sum.ok ? sum.value.percent : undefined;
};

describe('editions of the relaxation table', () => {
  it('begin with the rows that always apply: 5 % personal and 4 % basic fatigue (both sheets, see the table’s source)', () => {
    expect(percentOf(firstTable('pounds'))).toBe(9);
    expect(percentOf(firstTable('kilograms'))).toBe(9);
  });

  it('take over what they print in the same words, and never a load in another unit', () => {
    const kilograms: TableRelaxation = {
      ...firstTable('kilograms'),
      choices: [...firstTable('kilograms').choices, { row: 'standing', level: 0 }, { row: 'load', level: 3 }],
    };
    const pounds = inEdition(kilograms, 'pounds');
    expect(pounds.column).toBe('one');
    expect(pounds.choices.map(({ row }) => row)).toEqual(['personal', 'basic-fatigue', 'standing']);
    expect(inEdition(kilograms, 'constant').choices.map(({ row }) => row)).toEqual([
      'personal',
      'basic-fatigue',
    ]);
  });

  it('keep the column where the other edition has it', () => {
    const women: TableRelaxation = { ...firstTable('kilograms'), column: 'women' };
    expect(inEdition(women, 'constant').column).toBe('women');
    // 7 % and 7 % in one sheet, 7 % and 4 % in the other: the editions differ as printed.
    expect(percentOf(women)).toBe(14);
    expect(percentOf(inEdition(women, 'constant'))).toBe(11);
  });
});
