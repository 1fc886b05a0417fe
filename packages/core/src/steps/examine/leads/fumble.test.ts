import { describe, expect, it } from 'vitest';
import { leadContext } from './context.ts';
import { findLeads } from './find-leads.ts';
import { fumble } from './fumble.ts';
import { type CycleRows, readingOf } from './testing/record.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [fumble]).leads;
const s = 1_000_000;

describe('regrasp and fumble', () => {
  it('a thing let go and grasped again where it was', () => {
    const reading = readingOf([
      [
        'H 10 body',
        'TL 2 collar bin>front, A 3 collar, RL 0.5 collar, TE 1 collar front>front, G 0.5 collar front>, A 3 collar',
      ],
    ]);
    const [lead, ...more] = findLeads(reading, [fumble]).leads;
    expect(more).toEqual([]);
    expect(lead?.id).toBe('fumble:right:collar');
    expect(lead?.evidence).toBe(
      'The right hand takes collar up again once, 2.00 s a cycle, 20 % of it, in 1 of 1 cycles.',
    );
    expect(lead?.traces).toEqual([{ cycle: 0, hand: 'right', from: 5 * s, to: 7 * s }]);
    const [draft] = fumble.find(leadContext(reading));
    expect(draft?.effects.map(({ piece, least, most }) => [piece.kind, least, most])).toEqual([
      ['RL', 0, 0],
      ['TE', 0, 0],
      ['G', 0, 0],
    ]);
    expect(lead?.atStake).toEqual({ low: 2 * s, high: 2 * s });
  });

  it('a thing that slips away is taken up, carried and lined up a second time', () => {
    const reading = readingOf([
      [
        'H 10 body',
        'G 1 ring bin>, TL 1 ring bin>front, P 1 ring >front, RL 0.5 ring >side, TE 1 ring front>side, G 0.5 ring side>, TL 0.5 ring side>front, P 1 ring >front, A 3.5 ring',
      ],
    ]);
    const [lead, ...more] = findLeads(reading, [fumble]).leads;
    expect(more).toEqual([]);
    // 0.5 + 1 + 0.5 s to the second grasp, 0.5 + 1 s after it: 3.5 s of 10 s.
    expect(lead?.evidence).toBe(
      'The right hand takes ring up again once, 3.50 s a cycle, 35 % of it, in 1 of 1 cycles. 1.50 s a cycle of it is carrying or lining up a second time.',
    );
    expect(lead?.traces).toEqual([{ cycle: 0, hand: 'right', from: 3 * s, to: 6.5 * s }]);
    const [draft] = fumble.find(leadContext(reading));
    expect(draft?.effects.map(({ piece }) => piece.kind)).toEqual(['RL', 'TE', 'G', 'TL', 'P']);
    expect(lead?.atStake).toEqual({ low: 3.5 * s, high: 3.5 * s });
  });

  it('carrying on to another place after the second grasp is work, not done twice', () => {
    const [lead] = leadsOf([
      'H 6',
      'TL 1 ring bin>front, RL 1 ring, TE 1 ring front>front, G 1 ring front>, TL 2 ring front>box',
    ]);
    expect(lead?.traces).toEqual([{ cycle: 0, hand: 'right', from: s, to: 4 * s }]);
  });

  it('two grasps in a row, in one of two cycles', () => {
    const [lead] = leadsOf(
      ['H 4', 'G 1 ring bin>, G 1 ring bin>, A 2 ring'],
      ['H 4', 'G 1 ring bin>, A 3 ring'],
    );
    expect(lead?.evidence).toBe(
      'The right hand takes ring up again once, 0.50 s a cycle, 13 % of it, in 1 of 2 cycles.',
    );
    expect(lead?.traces).toEqual([{ cycle: 0, hand: 'right', from: s, to: 2 * s }]);
  });

  it.each([
    [
      'the next ring from the bin',
      ['H 6', 'TL 1 ring bin>front, RL 1 ring, TE 1 ring front>bin, G 1 ring bin>, A 2 ring'],
    ],
    ['the next ring where no place is noted', ['H 6', 'TL 1 ring, RL 1 ring, TE 1 ring, G 1 ring, A 2 ring']],
    ['things without a name', ['H 4', 'G 1, G 1, A 2']],
    ['another part', ['H 4', 'RL 1 ring, G 1 collar, A 2 collar']],
    [
      'a thing worked on between two grips',
      ['H 6', 'G 1 ring, A 2 ring, RL 1 ring, A 1 body, G 1 ring front>'],
    ],
  ] as const)('%s is no lead', (_, rows) => expect(leadsOf(rows)).toEqual([]));
});
