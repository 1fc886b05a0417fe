import { figuresOf, readMethod } from '@evenhand/core/examine';
import { describe, expect, it } from 'vitest';
import { twoHandStudy } from '../../../../../tests/helpers/two-hand-study.ts';
import { paceTable, partsTable, timeTable } from './time-tables.ts';

/** Two cycles of 1.0 s: the left hand holds, the right one works 0.6 s and 0.8 s and waits for the rest. */
function figures() {
  const study = twoHandStudy([
    { left: 'H body 10', right: 'A ring 6, UD 4' },
    { left: 'H body 10', right: 'A ring 8, UD 2' },
  ]);
  const read = readMethod(study, 'm');
  if (!read.ok) throw new Error(read.error.message);
  return figuresOf(read.value, 'groover');
}
const look = { unit: 'seconds', cycles: 2 } as const;

describe('tables of times', () => {
  it('give number, mean, deviation, interval and share (0.6 and 0.8 s: mean 0.7, s = 0.2/√2, t(0.975; 1) = 12.706)', () => {
    const rows = figures().times.motions.map((row) => ({ ...row, name: row.kind }));
    const table = timeTable('Time by motion', 'Motion', rows, look);
    expect(table.caption).toBe('Time by motion, means of 2 cycles');
    const assemble = table.rows.find(({ cells }) => cells[0] === 'A' && cells[1] === 'right');
    // 0.7 ± 12.706 · 0.1414 / √2 = 0.7 ± 1.271
    expect(assemble?.cells).toEqual(['A', 'right', '1.00', '0.70', '0.14', '−0.57 to 1.97', '70.0']);
    expect(assemble?.traces?.()).toHaveLength(2);
    for (const { cells } of table.rows) expect(cells).toHaveLength(table.columns.length);
  });

  it('leave out spread with one cycle, and lead nowhere where nothing happened', () => {
    const { together } = figures();
    const table = partsTable('Together', 'Together', together, { unit: 'seconds', cycles: 1 });
    expect(table.columns.map(({ head }) => head)).toEqual(['Together', 's a cycle', '% of the cycle']);
    const shown = table.rows.filter(({ traces }) => traces !== undefined).map(({ cells }) => cells);
    expect(shown).toEqual([
      ['right works, left holds', '0.70', '70.0'],
      ['left holds, right waits', '0.30', '30.0'],
    ]);
  });

  it('count motions a cycle and a minute of marked time (2 in 1 s: 120 a minute)', () => {
    const { rows, columns } = paceTable(figures(), look);
    expect(rows.map(({ cells }) => [cells[0], cells[1], cells.at(-1)])).toEqual([
      ['left', '1.00', '60.0'],
      ['right', '2.00', '120.0'],
    ]);
    for (const { cells } of rows) expect(cells).toHaveLength(columns.length);
  });
});
