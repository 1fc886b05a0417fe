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
    expect(lead?.id).toBe(`repeated:right:run ${words}`);
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

  it('a tool taken up and laid down twice in a cycle', () => {
    const use = 'TE 1 driver front>rack, G 0.5 driver rack>, TL 1 driver rack>front, P 0.5 screw, U 2 screw';
    const back = 'TL 1 driver front>rack, RL 0.5 driver';
    const reading = readingOf([['H 14 body', `${use}, ${back}, A 1 body, ${use}, ${back}`]]);
    const [lead, ...more] = findLeads(reading, [repeated]).leads;
    expect(more).toEqual([]);
    expect(lead?.id).toBe('repeated:right:tool driver');
    // 1 + 0.5 + 1 s to bring it, 1 + 0.5 s to lay it down: 4 s each time, of 14 s.
    expect(lead?.evidence).toBe(
      'The right hand takes up driver, uses it and lays it down up to 2 times in one cycle. Taking up and laying down takes 8.00 s a cycle, 57 % of it, all but the first time 4.00 s, in 1 of 1 cycles.',
    );
    expect(lead?.traces).toEqual([
      { cycle: 0, hand: 'right', from: 0, to: 6.5 * s },
      { cycle: 0, hand: 'right', from: 7.5 * s, to: 14 * s },
    ]);
    const [draft] = repeated.find(leadContext(reading));
    expect(draft?.effects.map(({ piece }) => piece.kind)).toEqual(['TE', 'G', 'TL', 'TL', 'RL']);
    expect(lead?.atStake).toEqual({ low: 0, high: 4 * s });
  });

  it('what the tool already tells is not told again as a sequence', () => {
    const turn = 'TE 1 driver, G 1 driver, TL 1 driver, U 2 screw, TL 1 driver, RL 1 driver';
    const leads = leadsOf(['H 21 body', `${turn}, ${turn}, ${turn}`]);
    expect(leads.map(({ id }) => id)).toEqual(['repeated:right:tool driver']);
  });

  it('a record without marked cycles is left out: the cycle itself repeats', () => {
    const rows: CycleRows = ['H 15 body', `${screw}, ${screw}, ${screw}`];
    const cycles = { items: [], end: 15 * s };
    expect(findLeads(readingOf([rows], { method: { cycles } }), [repeated]).leads).toEqual([]);
  });

  it('long names that are alike where they are cut have leads of their own', () => {
    const run = (end: string): CycleRows => {
      const part = ['TE', 'G', 'TL', 'PP'].map((kind) => `${kind} 1 ${'x'.repeat(90)}${end}`).join(', ');
      return ['H 12', `${part}, ${part}, ${part}`];
    };
    const ids = leadsOf(run('a'), run('b')).map(({ id }) => id);
    expect(new Set(ids).size).toBe(2);
  });

  it.each([
    [
      'a tool used twice without laying it down',
      [
        'H 8 body',
        'TE 1 driver, G 1 driver, TL 1 driver, U 1 screw, TL 1 driver, U 1 screw, TL 1 driver, RL 1 driver',
      ],
    ],
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
