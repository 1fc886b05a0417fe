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
    // There is one release: the quickest quarter is itself, so it is not slow.
    expect(draft?.effects.map(({ piece, least, most }) => [piece.kind, least / s, most / s])).toEqual([
      ['TL', 0, 1],
      ['P', 0, 0],
      ['RL', 0.5, 0.5],
    ]);
    // The right hand holds and waits, so what the left hand loses shortens the cycle.
    expect(lead?.atStake).toEqual({ low: 0.5 * s, high: 1.5 * s });
  });

  it('a slow release and a long way are told with their figures; drop chutes close by are not', () => {
    const cycle = (to: string): CycleRows => [
      `TL 1 ring bin>nest, A 5 ring >nest, RL 0.2 ring, G 0.3 coupling nest>, TL 1 coupling nest>${to}, RL 0.5 coupling, UD 2`,
      'A 10 body >nest',
    ];
    const places = { nest: { x: 0, y: 200 }, box: { x: -300, y: 600 }, chute: { x: -120, y: 200 } };
    const of = (to: string) => findLeads(readingOf([cycle(to)], { places }), [placedAside]).leads;
    // The releases take 0.2 and 0.5 s: a quarter of the way between them 0.275 s. 0.5 s is 1.8 times that.
    // From (0, 200) to (−300, 600): 300 and 400 are the sides of 500.
    expect(of('box').map(({ evidence }) => evidence)).toEqual([
      'The left hand carries coupling to box and lets go for 1.50 s a cycle, 15 % of it, in 1 of 1 cycles. Letting go takes 0.50 s, the quickest quarter of the releases 0.28 s or less. The way is 500 mm.',
    ]);
    const quick = [cycle('chute')[0].replace('RL 0.5', 'RL 0.2'), cycle('chute')[1]] as const;
    expect(findLeads(readingOf([quick], { places }), [placedAside]).leads).toEqual([]);
  });

  it('the same thing laid at two places is one lead', () => {
    const cycle = (to: string): CycleRows => [`A 8 cap, TL 1 cap front>${to}, RL 1 cap`, 'A 10 body'];
    const [lead, ...more] = leadsOf(cycle('box'), cycle('tray'));
    expect(more).toEqual([]);
    expect(lead?.id).toBe('placed-aside:left:cap');
    expect(lead?.evidence).toBe(
      'The left hand carries cap to box, tray and lets go for 2.00 s a cycle, 20 % of it, in 2 of 2 cycles.',
    );
  });

  it.each([
    ['a part let go where it is done', ['A 7 coupling, RL 0.5 coupling, UD 2.5', 'A 10 body']],
    [
      'pins put into a board one by one',
      [
        'H 10 board',
        Array(2)
          .fill('TE 1 pin board>bin, G 1 pin bin>, TL 1 pin bin>board, P 1 pin >board, RL 1 pin')
          .join(),
      ],
    ],
    [
      'a part laid where it is held next',
      ['TL 1 cap bin>nest, P 1 cap >nest, RL 1 cap, UD 7', 'H 10 cap >nest'],
    ],
    ['a part laid where it is taken up again', ['G 1 cap nest>, TL 8 cap >nest, RL 1 cap', 'A 10 body']],
    ['a quick drop', ['A 9.6 coupling, TL 0.3 coupling front>chute, RL 0.1 coupling', 'A 10 body']],
    [
      'a part brought to the work, which goes on',
      ['TL 1 ring bin>front, P 1 ring, RL 1 ring, A 7 ring', 'A 10 body'],
    ],
  ] as readonly (readonly [string, CycleRows])[])('%s is no lead', (_, rows) =>
    expect(leadsOf(rows)).toEqual([]),
  );
});
