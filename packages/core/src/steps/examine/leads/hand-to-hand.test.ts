import { describe, expect, it } from 'vitest';
import { leadContext } from './context.ts';
import { findLeads } from './find-leads.ts';
import { handToHand } from './hand-to-hand.ts';
import { type CycleRows, readingOf } from './testing/record.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [handToHand]).leads;
const s = 1_000_000;

describe('passing from hand to hand', () => {
  it('costs a letting go and a grasp, at best the reach as well', () => {
    const reading = readingOf([
      [
        'TE 1 body front>bin, G 1 body bin>, TL 1 body bin>front, H 1 body, RL 0.5 body, UD 5.5',
        'UD 3, TE 0.5 body, G 0.5 body front>, A 6 body',
      ],
    ]);
    const [lead, ...more] = findLeads(reading, [handToHand]).leads;
    expect(more).toEqual([]);
    expect(lead?.id).toBe('hand-to-hand:left:body');
    expect(lead?.evidence).toBe(
      'The left hand passes body to the right hand, in 1 of 1 cycles: letting go, reaching and grasping take 1.50 s a cycle, 15 % of it.',
    );
    expect(lead?.traces).toEqual([
      { cycle: 0, hand: 'right', from: 3 * s, to: 3.5 * s },
      { cycle: 0, hand: 'right', from: 3.5 * s, to: 4 * s },
      { cycle: 0, hand: 'left', from: 4 * s, to: 4.5 * s },
    ]);
    const [draft] = handToHand.find(leadContext(reading));
    expect(draft?.effects.map(({ piece, least, most }) => [piece.kind, least, most])).toEqual([
      ['RL', 0, 0],
      ['G', 0, 0],
      ['TE', 0, 0.5 * s],
    ]);
    // At least the grasp, 0.5 s; the letting go lay beside the assembly. At most 1 s: the body goes through 3 s and 6 s.
    expect(lead?.atStake).toEqual({ low: 0.5 * s, high: s });
  });

  it('without places it needs both hands on the thing at once', () => {
    const [lead] = leadsOf(['H 2 body, RL 1 body, UD 3', 'UD 1, G 1.5 body, A 3.5 body']);
    expect(lead?.evidence).toBe(
      'The left hand passes body to the right hand, in 1 of 1 cycles: letting go and grasping take 2.50 s a cycle, 42 % of it.',
    );
    expect(leadsOf(['H 1 body, RL 1 body, UD 4', 'UD 1.5, G 1.5 body, A 3 body'])).toEqual([]);
  });

  it.each([
    [
      'two things from two bins',
      ['TL 2 ring >left-nest, RL 1 ring, TE 1', 'TE 2 ring >bin, G 1 ring, TL 1 ring'],
    ],
    ['another thing', ['H 2 body, RL 1 body, UD 1', 'UD 2, G 1 ring, A 1']],
    ['laid down long before', ['TL 1 body >front, RL 1 body, UD 4', 'UD 4, G 1 body front>, A 1']],
    ['let go of what was joined', ['A 2 body, RL 1 body, UD 1', 'UD 2, G 1 body, A 1']],
    ['a fiftieth of a second', ['H 2 body, RL 0.02 body, UD 1', 'UD 2, G 0.02 body, A 1']],
  ] as const)('%s: no lead', (_, rows) => expect(leadsOf(rows)).toEqual([]));
});
