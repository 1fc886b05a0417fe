import { describe, expect, it } from 'vitest';
import { leadContext } from './context.ts';
import { findLeads } from './find-leads.ts';
import { notMirrored } from './not-mirrored.ts';
import { type CycleRows, readingOf } from './testing/record.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [notMirrored]).leads;
const s = 1_000_000;

const pin = 'TE 1 pin board>bin, G 1 pin bin>, TL 1 pin bin>board, RL 1 pin';

describe('the same work done twice, one after the other', () => {
  it('by one hand alone: the shorter one could be done during the other', () => {
    const reading = readingOf([['H 8 supply', `${pin}, ${pin.replace('RL 1', 'RL 0.5')}, UD 0.5`]]);
    const [lead, ...more] = findLeads(reading, [notMirrored]).leads;
    expect(more).toEqual([]);
    expect(lead?.id).toBe('not-mirrored:right:pin');
    // 1 + 1 + 1 + 0.5 s of 8 s: 43.75 %.
    expect(lead?.evidence).toBe(
      'The right hand does the same work with pin one after the other (TE G TL RL), in 1 of 1 cycles. The shorter one of each two takes 3.50 s a cycle, 44 % of it, and could be done during the other.',
    );
    expect(lead?.traces).toEqual([
      { cycle: 0, hand: 'right', from: 0, to: 4 * s },
      { cycle: 0, hand: 'right', from: 4 * s, to: 7.5 * s },
    ]);
    expect(lead?.atStake).toEqual({ low: 0, high: 3.5 * s });
    const [draft] = notMirrored.find(leadContext(reading));
    expect(draft?.effects.map(({ piece, least, most }) => [piece.position, least, most / s])).toEqual([
      [4, 0, 1],
      [5, 0, 1],
      [6, 0, 1],
      [7, 0, 0.5],
    ]);
  });

  it('by one hand after the other', () => {
    const [lead, ...more] = leadsOf([
      'TE 1 ring >lb, G 1 ring lb>, TL 1 ring lb>lf, UD 3',
      'UD 3, TE 1 ring >rb, St 0.2 ring, G 0.8 ring rb>, TL 0.8 ring rb>rf, UD 0.2',
    ]);
    expect(more).toEqual([]);
    expect(lead?.id).toBe('not-mirrored:both:ring');
    expect(lead?.evidence).toBe(
      'The hands do the same work with ring one after the other (TE G TL), in 1 of 1 cycles. The shorter one of each two takes 2.80 s a cycle, 47 % of it, and could be done during the other.',
    );
    expect(lead?.traces.map(({ hand, from, to }) => [hand, from / s, to / s])).toEqual([
      ['left', 0, 3],
      ['right', 3, 5.8],
    ]);
    expect(lead?.atStake).toEqual({ low: 0, high: 2.8 * s });
  });

  it('says that symmetry itself is advice (109 people, about 1 %, not significant)', () => {
    expect(notMirrored.limit).toMatch(/advice.*109 people.*1 %.*not significant/);
  });

  it.each([
    ['both hands at once', [[`${pin}, ${pin}`, `${pin}, ${pin}`]]],
    [
      'once in each cycle',
      [
        ['H 4', pin],
        ['H 4', pin],
      ],
    ],
    ['the other hand at work all the time', [['A 8', `${pin}, ${pin}`]]],
    ['other things', [['H 8', `${pin}, ${pin.replaceAll('pin', 'ring')}`]]],
    [
      'the same ring taken up again',
      [
        [
          'H 8',
          'TE 1 ring >front, G 1 ring front>, A 1 ring, RL 1 ring, TE 1 ring >front, G 1 ring front>, A 1 ring, RL 1 ring',
        ],
      ],
    ],
    [
      'turns without places',
      [['H 8', 'TE 1 ring, G 1 ring, A 1 ring, RL 1 ring, TE 1 ring, G 1 ring, A 1 ring, RL 1 ring']],
    ],
  ] as const)('%s: no lead', (_, cycles) => expect(leadsOf(...cycles)).toEqual([]));
});
