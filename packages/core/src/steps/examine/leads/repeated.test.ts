import { describe, expect, it } from 'vitest';
import { leadContext } from './context.ts';
import { findLeads } from './find-leads.ts';
import { repeated } from './repeated.ts';
import { type CycleRows, readingOf } from './testing/record.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [repeated]).leads;
const s = 1_000_000;
const screw = 'TE 1 screw, G 1 screw, TL 1 screw, U 2 screw';

describe('the same sequence over and over', () => {
  it('shows the run, how often it comes, and what its handling takes after the first time', () => {
    const reading = readingOf([['H 17 body', `A 2 body, ${screw}, ${screw}, ${screw}`]]);
    const [lead, ...more] = findLeads(reading, [repeated]).leads;
    expect(more).toEqual([]);
    const words = 'transport empty screw, grasp screw, transport loaded screw, use screw';
    expect(lead?.id).toBe(`repeated:right:${words}`);
    expect(lead?.evidence).toBe(
      `The right hand makes the same sequence up to 3 times one after another: ${words}. It takes 15.00 s a cycle, in 1 of 1 cycles.`,
    );
    expect(lead?.traces).toEqual([{ cycle: 0, hand: 'right', from: 2 * s, to: 17 * s }]);
    const [draft] = repeated.find(leadContext(reading));
    // Reaching, grasping and carrying of the second and third time: 2 × 3 s.
    expect(draft?.effects.map(({ piece, least, most }) => [piece.kind, least, most / s])).toEqual(
      [1, 2].flatMap(() => [
        ['TE', 0, 1],
        ['G', 0, 1],
        ['TL', 0, 1],
      ]),
    );
    expect(lead?.atStake).toEqual({ low: 0, high: 6 * s });
  });

  it.each([
    ['twice', ['H 10 body', `${screw}, ${screw}`]],
    [
      'other things each time',
      [
        'H 12 body',
        ['ring', 'collar', 'cap'].map((part) => `TE 1 ${part}, G 1 ${part}, A 2 ${part}`).join(', '),
      ],
    ],
    [
      'two motions to and fro',
      ['H 8 body', 'U 1 file, TE 1 file, U 1 file, TE 1 file, U 1 file, TE 1 file, U 1 file, TE 1 file'],
    ],
  ] as const)('%s is no lead', (_, rows) => expect(leadsOf(rows as CycleRows)).toEqual([]));
});
