import { describe, expect, it } from 'vitest';
import { furtherPrinciples, motionClasses, principleOf, principles, sources } from './index.ts';

describe('the principles of motion economy', () => {
  it('are twenty-two, numbered without a gap, nine on the body, eight on the place, five on tools (list by N. Rao; 17 to 22 from memory of Barnes)', () => {
    expect(principles.map(({ number }) => number)).toEqual(
      Array.from({ length: 22 }, (_, index) => index + 1),
    );
    const count = (area: string) => principles.filter((item) => item.area === area).length;
    expect([count('body'), count('place'), count('tool')]).toEqual([9, 8, 5]);
  });

  it('say from memory where the number was not read, and name a source that says the same', () => {
    for (const { number, numbering, source } of principles) {
      expect([number, numbering]).toEqual([number, number <= 16 ? 'read' : 'memory']);
      expect(sources[source].seen === 'memory').toBe(numbering === 'memory');
    }
  });

  // The headings are those of the numbered list (1, 2, 10, 13) and, from memory, of Barnes (18, 20).
  it.each([
    [1, /begin.*together/],
    [2, /idle at the same time/],
    [10, /fixed place/],
    [13, /dropped/],
    [18, /fixture/],
    [20, /stand ready/],
  ] as const)('number %d speaks of %s', (number, words) => {
    expect(principleOf(number).fact).toMatch(words);
    expect(principleOf(number).number).toBe(number);
  });

  it('asking for a number that is not there is a fault of the program', () => {
    expect(() => principleOf(23 as 22)).toThrow('from 1 to 22');
    expect(() => principleOf(0 as 1)).toThrow(RangeError);
  });

  it('the two further ones carry no number', () => {
    expect(furtherPrinciples.map(({ number }) => number)).toEqual([undefined, undefined]);
  });

  it('are whole sentences', () => {
    for (const { fact } of [...principles, ...furtherPrinciples]) expect(fact).toMatch(/^[A-Z].*\.$/);
  });
});

describe('the classes of motion', () => {
  it('run from the knuckles to the trunk, and each moves all that the one before moves (ILO, slides on the two-handed chart)', () => {
    expect(motionClasses.map(({ pivot }) => pivot)).toEqual([
      'knuckles',
      'wrist',
      'elbow',
      'shoulder',
      'trunk',
    ]);
    const parts = ['fingers', 'hand', 'forearm', 'upper arm', 'trunk'];
    motionClasses.forEach(({ moves }, index) => {
      expect(parts.filter((part) => moves.includes(part)).slice(0, index + 1)).toEqual(
        parts.slice(0, index + 1),
      );
    });
  });
});
