import { describe, expect, it } from 'vitest';
import { leadContext } from './context.ts';
import { findLeads } from './find-leads.ts';
import { inspection } from './inspection.ts';
import { type CycleRows, readingOf } from './testing/record.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [inspection]).leads;
const s = 1_000_000;

describe('inspection that stops both hands', () => {
  it('one hand inspects body while the other holds or waits; what goes on beside work is left out', () => {
    const reading = readingOf([['A 4 body, H 4 body', 'A 3 body, I 3 body, A 2 body']]);
    const [lead, ...more] = findLeads(reading, [inspection]).leads;
    expect(more).toEqual([]);
    expect(lead?.id).toBe('inspection:right');
    // From 3 to 4 s the left hand works; from 4 to 6 s it holds: 2 s of 8 s.
    expect(lead?.evidence).toBe(
      'The right hand inspects body while the left hand holds or waits, 2.00 s a cycle, 25 % of it, in 1 of 1 cycles.',
    );
    expect(lead?.traces).toEqual([{ cycle: 0, hand: 'right', from: 4 * s, to: 6 * s }]);
    const [draft] = inspection.find(leadContext(reading));
    expect(draft?.effects.map(({ piece, least, most }) => [piece.kind, least / s, most / s])).toEqual([
      ['I', 1, 3],
    ]);
    expect(lead?.atStake).toEqual({ low: 0, high: 2 * s });
    expect(lead?.caution).toMatch(/never drop or shorten/);
  });

  it('both hands inspect at once', () => {
    const [lead] = leadsOf(['A 3 body, I 1 body', 'A 3 body, I 1 body']);
    expect(lead?.id).toBe('inspection:both');
    expect(lead?.evidence).toBe(
      'Both hands stand still to inspect body, 1.00 s a cycle, 25 % of it, in 1 of 1 cycles.',
    );
    expect(lead?.atStake).toEqual({ low: 0, high: s });
  });

  it.each([
    ['an inspection beside work', ['A 4 body', 'I 2 body, A 2 body']],
    ['no inspection', ['H 4 body', 'A 4 body']],
  ] as const)('%s is no lead', (_, rows) => expect(leadsOf(rows)).toEqual([]));
});
