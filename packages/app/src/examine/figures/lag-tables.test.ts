import { figuresOf, type LagAgreement, readMethod } from '@evenhand/core/examine';
import { describe, expect, it } from 'vitest';
import { twoHandStudy } from '../../../../../tests/helpers/two-hand-study.ts';
import { curveTable, lagTable, lagWords } from './lag-tables.ts';

/** The right hand does what the left does, 0.2 s later; 0.6 s of 0.8 s are left to compare at that lag. */
function later(): LagAgreement {
  const read = readMethod(
    twoHandStudy([{ left: 'TE 2, G 2, TL 2, RL 2', right: 'UD 2, TE 2, G 2, TL 2' }]),
    'm',
  );
  if (!read.ok) throw new Error(read.error.message);
  const { lag } = figuresOf(read.value, 'groover').sameMotion;
  if (lag === undefined) throw new Error('both hands are marked');
  return lag;
}

describe('the lag between the hands', () => {
  it('is told with its agreement, and which hand is first', () => {
    expect(lagWords(later(), 'seconds')).toBe(
      'As recorded the rows agree in 0.0 %; they agree best, in 100.0 %, when they are 0.20 s apart, the left hand first.',
    );
    expect(lagTable(later(), 'seconds').rows.map(({ cells }) => cells)).toEqual([
      ['as recorded', '0.00', 'neither', '0.0'],
      ['best agreement', '0.20', 'left', '100.0'],
    ]);
  });

  it('has a curve with lag 0 in every shortened table', () => {
    const lag = later();
    const [all, some] = [curveTable(lag, 'seconds', 1), curveTable(lag, 'seconds', 10)];
    expect(all.rows).toHaveLength(lag.curve.length);
    expect(some.rows).toHaveLength(21);
    expect(some.rows.map(({ key }) => key)).toContain('0');
    expect(all.rows.find(({ key }) => key === '200000')?.cells[1]).toBe('100.0');
  });
});
