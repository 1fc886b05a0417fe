import { describe, expect, it } from 'vitest';
import { readMethod } from '../reading/index.ts';
import { leadContext } from './context.ts';
import { findLeads } from './find-leads.ts';
import { longTransport } from './long-transport.ts';
import { type CycleRows, type RecordOptions, readingOf, studyOf } from './testing/record.ts';

const leadsOf = (cycles: readonly CycleRows[], options?: RecordOptions) =>
  findLeads(readingOf(cycles, options), [longTransport]).leads;
const s = 1_000_000;

const ring = 'TE 0.4 ring front>near, G 0.5 ring near>, TL 0.5 ring near>front, RL 0.5 ring';
const collar = 'TE 1.2 collar front>far, G 0.5 collar far>, TL 1.5 collar far>front, RL 0.4 collar';
const body = 'TE 0.6 body front>mid, G 0.5 body mid>, TL 0.7 body mid>front, A 2.7 body';
const cycle: CycleRows = ['H 10', `${ring}, ${collar}, ${body}`];
/** 300 to the right of the right shoulder of a small woman (168 mm) and 400 away: 500 mm. */
const far = { x: 468, y: 400 };

describe('long transports', () => {
  it('are measured by the others of their kind in the same record', () => {
    const reading = readingOf([cycle]);
    const leads = findLeads(reading, [longTransport]).leads;
    // Loaded: 1.5 s against 0.5 and 0.7, whose middle is 0.6. Empty: 1.2 s against 0.4 and 0.6, whose middle is 0.5.
    expect(leads.map(({ id, evidence }) => [id, evidence])).toEqual([
      [
        'long-transport:right:TL collar, from far to front',
        'The right hand carries collar from far to front for 1.50 s a cycle, 15 % of it, in 1 of 1 cycles. One takes 1.50 s, 2.5 times the middle one of the other loaded transports (0.60 s).',
      ],
      [
        'long-transport:right:TE collar, from front to far',
        'The right hand reaches for collar from front to far for 1.20 s a cycle, 12 % of it, in 1 of 1 cycles. One takes 1.20 s, 2.4 times the middle one of the other empty transports (0.50 s).',
      ],
    ]);
    // As long as the quickest or as the middle one: 1.5 − 0.6 and 1.5 − 0.5; 1.2 − 0.5 and 1.2 − 0.4.
    expect(leads.map(({ atStake }) => [atStake.low / s, atStake.high / s])).toEqual([
      [0.9, 1],
      [0.7, 0.8],
    ]);
    expect(leads[1]?.traces).toEqual([{ cycle: 0, hand: 'right', from: 1.9 * s, to: 3.1 * s }]);
    const effects = longTransport.find(leadContext(reading)).flatMap((draft) => draft.effects);
    expect(effects.map(({ piece, least, most }) => [piece.kind, least / s, most / s])).toEqual([
      ['TE', 0.4, 0.5],
      ['TL', 0.5, 0.6],
    ]);
  });

  it('where places are known, the reach is said, and a caution stands with it', () => {
    const lead = leadsOf([cycle], { places: { far, front: { x: 168, y: 200 } } })[1];
    expect(lead?.evidence).toBe(
      'The right hand reaches for collar from front to far for 1.20 s a cycle, 12 % of it, in 1 of 1 cycles. One takes 1.20 s, 2.4 times the middle one of the other empty transports (0.50 s). far lies 500 mm from the right shoulder, beyond the maximum work area of 488 mm (women, 5th percentile).',
    );
    expect(lead?.figures.at(-1)).toEqual({ name: 'from the shoulder', value: 500, unit: 'length' });
    expect(lead?.caution).toMatch(/ANSUR II.*local rules and qualified people/);
  });

  it('both hands to far places that mirror one another are one lead: the cycle is shorter only where both are quicker', () => {
    const side = (hand: string) =>
      `TE 0.5 ring nest-${hand}>near-${hand}, G 1.5 ring near-${hand}>, A 1 ring, TE 2 cap nest-${hand}>far-${hand}, G 2 cap far-${hand}>, A 3 cap`;
    const study = studyOf([[side('left'), side('right')]]);
    const places = study.places.map((place) => ({
      ...place,
      mirror: place.id.endsWith('left')
        ? place.id.replace('left', 'right')
        : place.id.replace('right', 'left'),
    }));
    const result = readMethod({ ...study, places }, 'm');
    const [lead, ...more] = result.ok ? findLeads(result.value, [longTransport]).leads : [];
    expect(more).toEqual([]);
    expect(lead?.id).toBe('long-transport:both:TE cap, from nest left / nest right to far left / far right');
    // The others: near of this hand, and near and far of the other: 0.5, 0.5, 2; their middle is 0.5 s.
    expect(lead?.evidence).toMatch(
      /^The left hand reaches for cap from nest left to far left for 2.00 s a cycle, 20 % of it/,
    );
    expect(lead?.atStake).toEqual({ low: 1.5 * s, high: 1.5 * s });
  });

  it('a place beyond reach is a lead though the transport is not slow; nothing in the record says that it could be quicker', () => {
    const rows: CycleRows = ['H 4', 'TE 1 ring >far, G 1 ring far>, TL 1 ring far>front, RL 1 ring'];
    expect(leadsOf([rows])).toEqual([]);
    const leads = leadsOf([rows], { places: { far } });
    expect(leads.map(({ evidence, atStake }) => [evidence, atStake])).toEqual([
      [
        'The right hand reaches for ring to far for 1.00 s a cycle, 25 % of it, in 1 of 1 cycles. One takes 1.00 s; the record has no other empty transport to compare. far lies 500 mm from the right shoulder, beyond the maximum work area of 488 mm (women, 5th percentile).',
        { low: 0, high: 0 },
      ],
      [
        'The right hand carries ring from far to front for 1.00 s a cycle, 25 % of it, in 1 of 1 cycles. One takes 1.00 s; the record has no other loaded transport to compare. far lies 500 mm from the right shoulder, beyond the maximum work area of 488 mm (women, 5th percentile).',
        { low: 0, high: 0 },
      ],
    ]);
  });

  it.each([
    ['transports of like length', [['H 8', `${ring}, ${body}`]]],
    [
      'one and a half times a transport from a place to itself',
      [['H 3', 'TE 0.2 ring front>front, A 1.8 ring, TE 1 ring front>bin']],
    ],
    ['0.04 s longer', [['H 10', 'TE 0.08 a >x, A 4.88 a, TE 0.12 b >y, A 4.92 b']]],
    ['no transport', [['H 4', 'A 4']]],
  ] as const)('%s: no lead', (_, cycles) => expect(leadsOf(cycles)).toEqual([]));
});
