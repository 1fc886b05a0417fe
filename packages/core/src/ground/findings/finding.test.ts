import { describe, expect, it } from 'vitest';
import { finding, findingLine, findingTexts } from './index.ts';

describe('findings', () => {
  it('every text is a sentence: it begins large, ends with a full stop and has no double blank', () => {
    for (const [code, { text }] of Object.entries(findingTexts)) {
      expect(text, code).toMatch(/^[A-Z“{]/);
      expect(text, code).toMatch(/[.}]$/);
      expect(text, code).not.toMatch(/ {2}/);
      expect(code).toMatch(/^[a-z]+\/[a-z-]+$/);
    }
  });

  it('fills the words in and leaves what a person wrote in braces alone', () => {
    const made = finding('csv/cycle', { line: 3, column: 8 }, { found: '{other} $& $1' });
    expect(made.message).toContain('“{other} $& $1” is not a cycle number');
    expect(made.severity).toBe('error');
  });

  it.each([
    [{ file: 'a.csv', line: 2, column: 7 }, 'a.csv: line 2, column 7: '],
    [{ line: 2 }, 'line 2: '],
    [{ pointer: '/films/0' }, '/films/0: '],
    [{ pointer: '' }, 'the whole document: '],
    [{}, 'This edit'],
  ])('says first where: %j', (where, start) => {
    expect(findingLine(finding('edit/shape', where, { reason: 'x' })).startsWith(start)).toBe(true);
  });
});
