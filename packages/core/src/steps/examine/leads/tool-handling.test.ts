import { describe, expect, it } from 'vitest';
import { leadContext } from './context.ts';
import { findLeads } from './find-leads.ts';
import { type CycleRows, readingOf } from './testing/record.ts';
import { toolHandling } from './tool-handling.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [toolHandling]).leads;
const s = 1_000_000;

const take = 'TE 0.5 driver front>stand, G 0.5 driver stand>';
const bring = 'TL 1 driver stand>front';
const lay = 'TL 1 driver front>stand, PP 0.5 driver, RL 0.5 driver';

describe('taking up and laying down a tool in every cycle', () => {
  it('a driver that is used and put back; at best all of the handling goes, at the worst the pre-positioning', () => {
    const reading = readingOf([['H 10 body', `${take}, ${bring}, P 1 driver, U 5 driver, ${lay}`]]);
    const [lead, ...more] = findLeads(reading, [toolHandling]).leads;
    expect(more).toEqual([]);
    expect(lead?.id).toBe('tool-handling:right:driver');
    // 0.5 + 0.5 + 1 before, 1 + 0.5 + 0.5 after.
    expect(lead?.evidence).toBe(
      'The right hand takes up driver and lays it down in 1 of 1 cycles: 4.00 s a cycle, 40 % of it; 0.50 s of that is pre-positioning.',
    );
    expect(lead?.traces.map(({ from, to }) => [from / s, to / s])).toEqual([
      [0, 0.5],
      [0.5, 1],
      [1, 2],
      [8, 9],
      [9, 9.5],
      [9.5, 10],
    ]);
    const [draft] = toolHandling.find(leadContext(reading));
    expect(draft?.effects.map(({ piece, least, most }) => [piece.kind, least, most / s])).toEqual([
      ['TE', 0, 0.5],
      ['G', 0, 0.5],
      ['TL', 0, 1],
      ['TL', 0, 1],
      ['PP', 0, 0],
      ['RL', 0, 0.5],
    ]);
    expect(lead?.atStake).toEqual({ low: 0.5 * s, high: 4 * s });
  });

  it('a gauge that goes back to its place is a tool though nobody marked its use', () => {
    const [lead] = leadsOf([
      'H 6',
      'TE 1 gauge, G 1 gauge stand>, TL 1 gauge >front, I 1, TL 1 gauge >stand, RL 1 gauge',
    ]);
    expect(lead?.evidence).toBe(
      'The right hand takes up gauge and lays it down in 1 of 1 cycles: 5.00 s a cycle, 83 % of it.',
    );
  });

  const idle: CycleRows = ['H 6', 'A 6'];
  it.each([
    [
      'a part that stays where it was brought',
      [['H 4', 'TE 1 ring, G 1 ring bin>, TL 1 ring bin>front, RL 1 ring']],
    ],
    [
      'a part taken up and let go where it lies',
      [['H 4', 'TE 1 ring, G 1 ring front>, A 1 ring, RL 1 ring']],
    ],
    ['a tool that stays in the hand', [['H 4', 'U 4 driver']]],
    ['a tool in one of three cycles', [['H 10', `${take}, ${bring}, U 6 driver, ${lay}`], idle, idle]],
  ] as const)('%s is no lead', (_, cycles) => expect(leadsOf(...cycles)).toEqual([]));
});
