import { describe, expect, it } from 'vitest';
import { avoidableDelay } from './avoidable-delay.ts';
import { findLeads } from './find-leads.ts';
import { type CycleRows, readingOf } from './testing/record.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [avoidableDelay]).leads;
const s = 1_000_000;

describe('avoidable delay and planning', () => {
  it('are told apart, each hand by itself', () => {
    const leads = leadsOf(['UD 1.5, A 3 body, UD 0.5', 'AD 1, Pn 0.5, A 3 ring, AD 0.5']);
    // 1.5 s and 0.5 s of 5 s. The left hand only waits then, so all of it is gained.
    expect(leads.map(({ id, evidence, atStake }) => ({ id, evidence, atStake }))).toEqual([
      {
        id: 'avoidable-delay:right',
        evidence:
          'The right hand stands idle though nothing in the method asks for it, 1.50 s a cycle, 30 % of it, in 1 of 1 cycles.',
        atStake: { low: 1.5 * s, high: 1.5 * s },
      },
      {
        id: 'avoidable-delay:right:plan',
        evidence: 'The right hand stands still for a decision, 0.50 s a cycle, 10 % of it, in 1 of 1 cycles.',
        atStake: { low: 0.5 * s, high: 0.5 * s },
      },
    ]);
    expect(leads[0]?.traces).toEqual([
      { cycle: 0, hand: 'right', from: 0, to: s },
      { cycle: 0, hand: 'right', from: 4.5 * s, to: 5 * s },
    ]);
    expect(leads[0]?.caution).toMatch(/not about the person/);
  });

  it.each([
    ['rest', ['A 4 body', 'R 2, A 2 ring']],
    ['an unavoidable delay', ['A 4 body', 'UD 2, A 2 ring']],
    ['a delay of 0.03 s', ['A 4 body', 'AD 0.03, A 3.97 ring']],
  ] as const)('%s is no lead', (_, rows) => expect(leadsOf(rows)).toEqual([]));
});
