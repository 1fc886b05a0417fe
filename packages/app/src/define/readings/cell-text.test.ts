import { toUs } from '@evenhand/core/define';
import { describe, expect, it } from 'vitest';
import { cellText, fullCellText, plainNumber, readRating } from './cell-text.ts';

describe('the text of a cell', () => {
  it('comes back unchanged when the cell is opened again', () => {
    for (const unit of ['seconds', 'minutes', 'winks', 'tmu', 'hours'] as const) {
      for (const us of [1, 36_000, 3_141_593, 59_999_999, 3_600_000_000]) {
        const again = toUs(fullCellText(us, unit), unit);
        expect(again).toEqual({ ok: true, value: { kind: 'time', us } });
      }
    }
  });

  it('stands in the cell with the decimals of the sheet', () => {
    expect(cellText(3_141_593, 'minutes')).toBe('0.052');
    expect(cellText(3_141_593, 'seconds')).toBe('3.14');
  });
});

describe('a rating', () => {
  it('is taken within its scale, and nothing takes it away', () => {
    expect(readRating('95', 'the time study', '0-100')).toEqual({ ok: true, value: 95 });
    expect(readRating(' ', 'the time study', '0-100')).toEqual({ ok: true, value: null });
  });

  it.each(['0', '400', '-5', 'fast'])('“%s” is refused in a sentence', (text) => {
    const read = readRating(text, 'the time study', '0-100');
    expect(read.ok ? '' : read.error).toMatch(/\w.*\.$/);
  });
});

it('a plain number has a point or a comma and nothing else', () => {
  expect(['12', '1,5', '−3', '.5', '5.', '1 000', '12 %', '', '0x1'].map(plainNumber)).toEqual([
    12,
    1.5,
    -3,
    0.5,
    5,
    undefined,
    undefined,
    undefined,
    undefined,
  ]);
});
