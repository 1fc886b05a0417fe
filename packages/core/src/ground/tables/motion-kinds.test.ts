import { describe, expect, it } from 'vitest';
import { motionFacts, motionFactsOf, parseMotionKind } from './index.ts';

describe('reading a motion', () => {
  it.each(motionFacts.map((facts) => [facts.kind, facts.name] as const))(
    '%s by code and by name, in any case',
    (kind, name) => {
      for (const text of [
        kind,
        name,
        kind.toLowerCase(),
        name.toUpperCase(),
        ` ${name} `,
        name.replaceAll(' ', '_'),
      ]) {
        expect(parseMotionKind(text)).toBe(kind);
      }
    },
  );

  it.each(['', ' ', 'reach', 'X', 'T', 'transport', 'G G', '__proto__'])('%j is none', (text) => {
    expect(parseMotionKind(text)).toBeUndefined();
  });

  it('asking for the facts of what is no motion is a fault of the program', () => {
    expect(() => motionFactsOf('X' as 'G')).toThrow(RangeError);
  });

  it('every motion says where it begins and ends and who says so', () => {
    for (const facts of motionFacts) {
      expect(facts.begins.length).toBeGreaterThan(5);
      expect(facts.ends.length).toBeGreaterThan(5);
    }
  });
});
