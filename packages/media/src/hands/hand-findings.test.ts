import { describe, expect, it } from 'vitest';
import { handFindings } from './hand-findings.ts';
import type { HandReport } from './tracking.ts';

const good: HandReport = { frames: 1000, both: 900, leftOnly: 50, rightOnly: 40, none: 10, more: 0 };
const still = { looks: 100, moves: 0 };
const codes = (report: Partial<HandReport>, camera = still) =>
  handFindings({ ...good, ...report }, camera).map(({ code }) => code);

describe('what a person should know of a search for hands', () => {
  it('is nothing when both hands were seen', () => {
    expect(codes({})).toEqual([]);
  });

  it.each([
    [
      'no hand at all',
      { both: 0, leftOnly: 0, rightOnly: 0, none: 1000 },
      'hands/none',
      'in 0 of 1000 frames',
    ],
    ['hardly any', { both: 5, leftOnly: 5, rightOnly: 0, none: 990 }, 'hands/none', 'in 10 of 1000 frames'],
    [
      'the right hand alone',
      { both: 3, leftOnly: 0, rightOnly: 700, none: 297 },
      'hands/one',
      'Only the right hand was seen, in 703',
    ],
    [
      'the left hand alone',
      { both: 0, leftOnly: 700, rightOnly: 10, none: 290 },
      'hands/one',
      'Only the left hand was seen, in 700',
    ],
    ['three hands', { more: 400 }, 'hands/more', 'In 400 of 1000 frames'],
  ])('%s', (_, report, code, text) => {
    const [found, ...others] = handFindings({ ...good, ...report }, still);
    expect([found?.code, others]).toEqual([code, []]);
    expect(found?.message).toContain(text);
  });

  it('a third hand in single frames is not worth a word', () => {
    expect(codes({ more: 5 })).toEqual([]);
  });

  it('a camera that moves, but not one that was pushed once', () => {
    expect(codes({}, { looks: 100, moves: 30 })).toEqual(['hands/camera']);
    expect(codes({}, { looks: 100, moves: 2 })).toEqual([]);
  });
});
