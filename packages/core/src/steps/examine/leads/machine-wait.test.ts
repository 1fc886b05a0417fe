import { describe, expect, it } from 'vitest';
import { leadContext } from './context.ts';
import { findLeads } from './find-leads.ts';
import { machineWait } from './machine-wait.ts';
import { type CycleRows, readingOf } from './testing/record.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [machineWait]).leads;
const s = 1_000_000;

describe('both hands wait for a machine or a process', () => {
  it('shows where both wait or hold, and only the common part of it', () => {
    const reading = readingOf([['A 2 body, H 3 body, UD 2, A 1 body', 'A 3 body, UD 5']]);
    const [lead, ...more] = findLeads(reading, [machineWait]).leads;
    expect(more).toEqual([]);
    expect(lead?.id).toBe('machine-wait:both');
    // Left holds from 2 to 5 s and waits to 7 s, right waits from 3 to 8 s: common from 3 to 7 s, half of 8 s.
    expect(lead?.evidence).toBe(
      'Both hands only wait or hold for 4.00 s a cycle, 50 % of it, in 1 of 1 cycles.',
    );
    expect(lead?.traces).toEqual([{ cycle: 0, hand: 'both', from: 3 * s, to: 7 * s }]);
    const [draft] = machineWait.find(leadContext(reading));
    expect(
      draft?.effects.map(({ piece, least, most }) => [piece.hand, piece.kind, least / s, most / s]),
    ).toEqual([
      ['left', 'H', 1, 3],
      ['right', 'UD', 1, 5],
      ['left', 'UD', 0, 2],
    ]);
    // At worst the process needs its time. At best 2 + 1 s of the left hand and the hold beside the right one stay.
    expect(lead?.atStake).toEqual({ low: 0, high: 4 * s });
  });

  it('both hold while something sets or cures', () => {
    const [lead] = leadsOf(['A 2 body, H 2 body', 'A 2 ring, H 2 ring']);
    expect(lead?.evidence).toBe(
      'Both hands only wait or hold for 2.00 s a cycle, 50 % of it, in 1 of 1 cycles.',
    );
    expect(lead?.atStake).toEqual({ low: 0, high: 2 * s });
  });

  it.each([
    ['a wait while the other hand works', ['UD 4', 'A 4 body']],
    ['a delay that could be avoided', ['AD 4', 'UD 4']],
    ['a rest', ['R 4', 'UD 4']],
    ['a common wait of 0.04 s', ['A 4 body, UD 0.04', 'A 4 ring, UD 0.04']],
  ] as const)('%s is no lead', (_, rows) => expect(leadsOf(rows)).toEqual([]));
});
