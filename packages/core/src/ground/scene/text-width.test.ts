import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitText, fontCovers, textWidth, wrapText } from './text-width.ts';

describe('the width of a text', () => {
  it('figures are tabular: every digit is 0.6 em wide in both weights (IBM Plex Sans, hmtx table)', () => {
    for (const digit of '0123456789') {
      expect(textWidth(digit, 10, 400)).toBeCloseTo(6, 9);
      expect(textWidth(digit, 10, 600)).toBeCloseTo(6, 9);
    }
  });

  it('a line is the sum of its letters, and grows with the size', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.string({ unit: 'grapheme' }), (a, b) => {
        const whole = textWidth(a + b, 8, 400);
        expect(whole).toBeCloseTo(textWidth(a, 8, 400) + textWidth(b, 8, 400), 6);
        expect(textWidth(a + b, 16, 400)).toBeCloseTo(2 * whole, 6);
      }),
      { seed: 51 },
    );
  });

  it('a character that the font lacks counts as one em', () => {
    expect(textWidth('部', 10, 400)).toBe(10);
    expect(fontCovers('Größe → 5 µm, žluť, Ωmega')).toBe(true);
    expect(fontCovers('部品')).toBe(false);
  });
});

describe('fitting a text', () => {
  it('leaves a text alone that fits and cuts one that does not', () => {
    expect(fitText('grasp', 100, 10, 400)).toBe('grasp');
    // 50 points hold seven figures of 6 points and an ellipsis of 8.03, not eight.
    expect(fitText('0000000000', 50.1, 10, 400)).toBe('0000000…');
    expect(fitText('grasp', 3, 10, 400)).toBe('');
  });

  it('never gives back more than there is room for', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme' }),
        fc.double({ min: 0, max: 200, noNaN: true }),
        (text, room) => {
          expect(textWidth(fitText(text, room, 9, 600), 9, 600)).toBeLessThanOrEqual(room);
        },
      ),
      { seed: 52 },
    );
  });
});

describe('wrapping a text', () => {
  it('breaks between words (by hand: a figure is 6 wide, a space 2.36)', () => {
    expect(wrapText('111 222 333', 40, 10, 400)).toEqual(['111 222', '333']);
    expect(wrapText('111 222 333', 38, 10, 400)).toEqual(['111', '222', '333']);
  });

  it('keeps together what a no-break or a thin space stands between', () => {
    expect(wrapText('111 222\u00a0333', 40, 10, 400)).toEqual(['111', '222\u00a0333']);
    expect(wrapText('111 22\u202f33', 40, 10, 400)).toEqual(['111', '22\u202f33']);
  });

  it('breaks a word that is too long alone, and loses no letter', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme' }),
        fc.double({ min: 12, max: 120, noNaN: true }),
        (text, room) => {
          const lines = wrapText(text, room, 10, 400);
          expect(lines.join('').replace(/\s+/g, '')).toBe(text.replace(/\s+/g, ''));
          for (const line of lines) expect(textWidth(line, 10, 400)).toBeLessThanOrEqual(room);
        },
      ),
      { seed: 53 },
    );
  });

  it('ends in an ellipsis where more lines are needed than there may be', () => {
    expect(wrapText('111 222 333', 22, 10, 400, 2)).toEqual(['111', '22…']);
  });
});
