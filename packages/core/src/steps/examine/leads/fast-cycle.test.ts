import { describe, expect, it } from 'vitest';
import { fastCycle } from './fast-cycle.ts';
import { findLeads } from './find-leads.ts';
import { type CycleRows, readingOf } from './testing/record.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [fastCycle]).leads;
const s = 1_000_000;
const usual: CycleRows = ['H 10 body', 'Sh 1 ring, G 1 ring, P 2 ring, A 6 ring'];
const quick: CycleRows = ['H 8 body', 'G 1 ring, P 1 ring, A 6 ring'];

describe('one cycle much faster, for a reason that can be named', () => {
  it('names what it did without and what it did in less time', () => {
    const [lead, ...more] = leadsOf(usual, usual, quick, usual);
    expect(more).toEqual([]);
    expect(lead?.id).toBe('fast-cycle:both:cycle 3');
    expect(lead?.evidence).toBe(
      'Cycle 3 takes 8.00 s, 20 % less than the others on average (10.00 s): position ring (right hand) 1.00 s against 2.00 s; without search ring (right hand), 1.00 s in the others.',
    );
    expect(lead?.traces).toEqual([{ cycle: 2, hand: 'both', from: 20 * s, to: 28 * s }]);
    // 1 s of the search and 1 s of the position in three of four cycles.
    expect(lead?.atStake).toEqual({ low: 0, high: 1.5 * s });
    expect(lead?.caution).toMatch(/not at the person/);
  });

  it('a cycle without part of the work is no whole cycle; the next one is looked at', () => {
    const fragment: CycleRows = ['H 2 body', 'G 1 ring, P 1 ring'];
    const [lead, ...more] = leadsOf(usual, fragment, usual, quick, usual, usual, usual, usual, usual);
    expect(more).toEqual([]);
    // Seven of 10 s and the 2 s of the fragment: 72 / 8 = 9 s. Positioning: (7 × 2 + 1) / 8 = 1.875 s; search: 7 / 8 = 0.875 s, as much less, so by name.
    expect(lead?.evidence).toBe(
      'Cycle 4 takes 8.00 s, 11 % less than the others on average (9.00 s): position ring (right hand) 1.00 s against 1.88 s; without search ring (right hand), 0.88 s in the others.',
    );
  });

  it('an inspection left out is a warning and never a reason', () => {
    const checked: CycleRows = ['H 11 body', 'Sh 2 ring, P 2 ring, A 6 ring, I 1 ring'];
    const bare: CycleRows = ['H 8 body', 'P 2 ring, A 6 ring'];
    const [lead] = leadsOf(checked, checked, checked, bare);
    expect(lead?.evidence).toBe(
      'Cycle 4 takes 8.00 s, 27 % less than the others on average (11.00 s): without search ring (right hand), 2.00 s in the others. It has less inspection than the others: see whether a check was left out.',
    );
    const onlyChecked: CycleRows = ['H 9 body', 'P 2 ring, A 6 ring, I 1 ring'];
    expect(leadsOf(onlyChecked, onlyChecked, onlyChecked, bare)).toEqual([]);
  });

  it('a hold is a reason only where there is no other', () => {
    const held: CycleRows = ['UD 10', 'A 6 ring, H 4 ring'];
    const short: CycleRows = ['UD 7', 'A 6 ring, H 1 ring'];
    expect(leadsOf(held, held, held, short).map(({ evidence }) => evidence)).toEqual([
      'Cycle 4 takes 7.00 s, 30 % less than the others on average (10.00 s): hold ring (right hand) 1.00 s against 4.00 s.',
    ]);
  });

  it.each([
    ['three cycles are too few', [usual, usual, quick]],
    ['cycles alike', [usual, usual, usual, usual]],
    [
      'a cycle 5 % shorter',
      [usual, usual, usual, ['H 9.5 body', 'Sh 0.5 ring, G 1 ring, P 2 ring, A 6 ring']],
    ],
    [
      'few motions, each a fifth shorter: no reason, only pace',
      [
        ...Array.from({ length: 3 }, (): CycleRows => ['H 10', 'TE 1 a, P 3 a, A 6 a']),
        ['H 8', 'TE 0.8 a, P 2.4 a, A 4.8 a'],
      ],
    ],
    [
      'many motions, each a fifth shorter',
      [
        ...Array.from(
          { length: 3 },
          (): CycleRows => [
            'H 10',
            'TE 1 a, G 1 b, TL 1 c, P 1 d, A 1 e, RL 1 f, U 1 g, I 1 h, TE 1 i, G 1 j',
          ],
        ),
        [
          'H 8',
          'TE 0.8 a, G 0.8 b, TL 0.8 c, P 0.8 d, A 0.8 e, RL 0.8 f, U 0.8 g, I 0.8 h, TE 0.8 i, G 0.8 j',
        ],
      ],
    ],
  ] as readonly (readonly [string, readonly CycleRows[]])[])('%s is no lead', (_, cycles) =>
    expect(leadsOf(...cycles)).toEqual([]),
  );
});
