import { describe, expect, it } from 'vitest';
import { bodyMotion } from './body-motion.ts';
import { leadContext } from './context.ts';
import { findLeads } from './find-leads.ts';
import { type CycleRows, readingOf } from './testing/record.ts';

const leadsOf = (...cycles: CycleRows[]) => findLeads(readingOf(cycles), [bodyMotion]).leads;
const s = 1_000_000;

describe('motions of the shoulder or the trunk', () => {
  it('where a note says so, each class by itself', () => {
    const reading = readingOf([
      [
        'H 10 body',
        'TE 2 crate >floor [bends down], G 1 crate, TL 3 crate [Shoulder and load], TE 1 ring, A 3 ring',
      ],
    ]);
    const leads = findLeads(reading, [bodyMotion]).leads;
    expect(leads.map(({ id, evidence }) => [id, evidence])).toEqual([
      [
        'body-motion:right:class 5',
        'Motions of the right hand about the trunk (class 5) are noted for 2.00 s a cycle, 20 % of it, in 1 of 1 cycles.',
      ],
      [
        'body-motion:right:class 4',
        'Motions of the right hand about the shoulder (class 4) are noted for 3.00 s a cycle, 30 % of it, in 1 of 1 cycles.',
      ],
    ]);
    expect(leads[0]?.traces).toEqual([{ cycle: 0, hand: 'right', from: 0, to: 2 * s }]);
    const drafts = bodyMotion.find(leadContext(reading));
    // A plain reach takes 1 s; there is no other transport with something in the hand to compare with.
    expect(
      drafts.map(({ effects }) => effects.map(({ piece, least, most }) => [piece.kind, least / s, most / s])),
    ).toEqual([[['TE', 1, 2]], [['TL', 3, 3]]]);
    expect(leads[0]?.atStake).toEqual({ low: 0, high: s });
    expect(leads[0]?.caution).toMatch(/by limb, not by effort/);
  });

  it.each([
    ['walks to the rack', 5],
    ['Bends', 5],
    ['leans over the box', 5],
    ['twist of the trunk', 5],
    ['steps aside', 5],
    ['turns the whole body', 5],
    ['arms outstretched', 4],
    ['from the shoulder', 4],
  ])('“%s” is a motion of class %d', (note, classOf) => {
    const ids = leadsOf(['H 4', `TE 2 ring [${note}], G 2 ring`]).map(({ id }) => id);
    expect(ids).toEqual([`body-motion:right:class ${classOf}`]);
  });

  it('the name of what is handled may say it too, as in records without notes', () => {
    const [lead] = leadsOf(['UD 4', 'TE 3 walk to rack, G 1 box']);
    expect(lead?.traces).toEqual([{ cycle: 0, hand: 'right', from: 0, to: 3 * s }]);
  });

  it.each([
    ['a note about something else', ['H 4', 'TE 2 ring [a new box was opened], G 2 ring']],
    ['a word inside another', ['H 4', 'TE 2 ring [stepper motor on a backing plate], G 2 ring']],
    [
      'what is done to a part',
      [
        'H 8',
        'A 2 tab [bends the tab], A 2 collar [twists tight], A 2 cap [second step], RL 2 cap [puts back]',
      ],
    ],
    ['a bolt with a shoulder', ['H 4', 'A 4 shoulder bolt']],
    ['what is not done', ['H 4', 'TE 4 ring [without bending down; no walking]']],
    ['no note', ['H 4', 'TE 2 ring, G 2 ring']],
  ] as const)('%s is no lead', (_, rows) => expect(leadsOf(rows)).toEqual([]));
});
