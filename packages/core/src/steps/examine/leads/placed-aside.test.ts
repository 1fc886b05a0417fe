import { describe, expect, it } from 'vitest';
import { leadContext } from './context.ts';
import { findLeads } from './find-leads.ts';
import { placedAside } from './placed-aside.ts';
import { type CycleRows, readingOf } from './testing/record.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [placedAside]).leads;
const s = 1_000_000;

describe('laying aside instead of drop delivery', () => {
  it('a finished part carried to a box, lined up there and let go', () => {
    const reading = readingOf([
      [
        'A 7 coupling, TL 1 coupling front>box, P 0.5 coupling, RL 0.5 coupling, TE 1 box>front',
        'H 8 body, UD 2',
      ],
    ]);
    const [lead, ...more] = findLeads(reading, [placedAside]).leads;
    expect(more).toEqual([]);
    expect(lead?.id).toBe('placed-aside:left:coupling');
    // 1 + 0.5 + 0.5 s of 10 s.
    expect(lead?.evidence).toBe(
      'The left hand carries coupling to box and lets go for 2.00 s a cycle, 20 % of it, 0.50 s of it lining it up, in 1 of 1 cycles.',
    );
    expect(lead?.traces).toEqual([{ cycle: 0, hand: 'left', from: 7 * s, to: 9 * s }]);
    const [draft] = placedAside.find(leadContext(reading));
    // There is one release: the quickest quarter is itself.
    expect(draft?.effects.map(({ piece, least, most }) => [piece.kind, least / s, most / s])).toEqual([
      ['TL', 0, 1],
      ['P', 0, 0],
      ['RL', 0.5, 0.5],
    ]);
    // The right hand holds and waits, so what the left hand loses shortens the cycle.
    expect(lead?.atStake).toEqual({ low: 0.5 * s, high: 1.5 * s });
  });

  it.each([
    ['a part let go where it is done', ['A 7 coupling, RL 0.5 coupling, UD 2.5', 'A 10 body']],
    ['a quick drop', ['A 9.6 coupling, TL 0.3 coupling front>chute, RL 0.1 coupling', 'A 10 body']],
    [
      'a part brought to the work, which goes on',
      ['TL 1 ring bin>front, P 1 ring, RL 1 ring, A 7 ring', 'A 10 body'],
    ],
  ] as const)('%s is no lead', (_, rows) => expect(leadsOf(rows)).toEqual([]));
});
