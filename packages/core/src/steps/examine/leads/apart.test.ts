import { describe, expect, it } from 'vitest';
import { apart } from './apart.ts';
import { findLeads } from './find-leads.ts';
import { type CycleRows, readingOf } from './testing/record.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [apart]).leads;
const s = 1_000_000;

describe('hands not beginning or ending together', () => {
  it('one begins a second later, the other ends a second sooner', () => {
    const leads = leadsOf(['UD 1, A 4', 'A 4, UD 1']);
    expect(leads.map(({ id, evidence, traces, atStake }) => ({ id, evidence, traces, atStake }))).toEqual([
      {
        id: 'apart:left:begin',
        evidence: 'The left hand begins after the right hand: 1.00 s a cycle, 20 % of it, in 1 of 1 cycles.',
        traces: [{ cycle: 0, hand: 'left', from: 0, to: s }],
        // Nothing had ended before the left hand began: both work 4 s from the start.
        atStake: { low: s, high: s },
      },
      {
        id: 'apart:right:end',
        evidence: 'The right hand ends before the left hand: 1.00 s a cycle, 20 % of it, in 1 of 1 cycles.',
        traces: [{ cycle: 0, hand: 'right', from: 4 * s, to: 5 * s }],
        // The left hand still begins late: at least nothing. If its wait follows, both have 4 s of work.
        atStake: { low: 0, high: s },
      },
    ]);
  });

  it('the gap is taken from where the other hand is at it: both idle before is not a gap', () => {
    const [lead, ...more] = leadsOf(['UD 3, A 3', 'UD 1, A 5'], ['A 4', 'A 4']);
    expect(more).toEqual([]);
    // 2 s in two cycles of 6 s and 4 s.
    expect(lead?.evidence).toBe(
      'The left hand begins after the right hand: 1.00 s a cycle, 20 % of it, in 1 of 2 cycles.',
    );
    expect(lead?.traces).toEqual([{ cycle: 0, hand: 'left', from: s, to: 3 * s }]);
  });

  it.each([
    ['a tenth of a second', ['UD 0.1, A 0.9', 'A 1']],
    ['rest at the end', ['A 3, R 1', 'A 4']],
    ['not marked at the end', ['A 3', 'A 4']],
    ['a hold at the end', ['A 3, H 1', 'A 4']],
    ['a wait in the middle', ['A 1, UD 2, A 1', 'A 4']],
    ['a hand that does nothing at all', ['UD 4', 'A 4']],
  ] as const)('%s is no lead', (_, rows) => expect(leadsOf(rows)).toEqual([]));
});
