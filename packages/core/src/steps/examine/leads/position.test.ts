import { describe, expect, it } from 'vitest';
import { leadContext } from './context.ts';
import { findLeads } from './find-leads.ts';
import { position } from './position.ts';
import { type CycleRows, readingOf } from './testing/record.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [position]).leads;
const s = 1_000_000;
const cycle = (p: number): CycleRows => [`H ${8 + p}`, `G 3 ring, P ${p} ring, A 5 ring`];

describe('position taking more than its share', () => {
  it('is compared with the best of the same record: the lower quartile', () => {
    // Lower quartile (type 7) of 1, 1.4, 1.6, 2, 4: the second of five, 1.4. Sum 10 s; mean 2 s of a mean cycle of 10 s.
    const reading = readingOf([2, 1, 4, 1.4, 1.6].map(cycle));
    const [lead, ...more] = findLeads(reading, [position]).leads;
    expect(more).toEqual([]);
    expect(lead?.id).toBe('position:right:ring');
    expect(lead?.evidence).toBe(
      "The right hand positions ring for 2.00 s a cycle, 20 % of it and 20 % of the hand's working time, in 5 of 5 cycles. One takes 1.00 s to 4.00 s; a quarter of the 5 take no more than 1.40 s.",
    );
    const [draft] = position.find(leadContext(reading));
    expect(draft?.effects.map(({ least, most }) => [least, most / s])).toEqual([
      [0, 1.4],
      [0, 1],
      [0, 1.4],
      [0, 1.4],
      [0, 1.4],
    ]);
    expect(lead?.traces[0]).toEqual({ cycle: 0, hand: 'right', from: 3 * s, to: 5 * s });
    // At least 0.6 + 0 + 2.6 + 0 + 0.2 = 3.4 s in five cycles; at most all of it.
    expect(lead?.atStake).toEqual({ low: 0.68 * s, high: 2 * s });
  });

  it('with fewer than four there is no quartile: at least nothing', () => {
    const [lead] = leadsOf(cycle(2), cycle(2));
    expect(lead?.evidence).toBe(
      "The right hand positions ring for 2.00 s a cycle, 20 % of it and 20 % of the hand's working time, in 2 of 2 cycles.",
    );
    expect(lead?.atStake).toEqual({ low: 0, high: 2 * s });
  });

  it.each([
    ['less than a tenth of the working time', ['H 10', 'A 9.1, P 0.9']],
    ['no positioning', ['H 10', 'A 10']],
    ['a flick of 0.04 s', ['H 0.2', 'A 0.16, P 0.04']],
  ] as const)('%s is no lead', (_, rows) => expect(leadsOf(rows)).toEqual([]));
});
