import { findLeads, readMethod } from '@evenhand/core/examine';
import { emptyStudy, type Motion, type Study } from '@evenhand/core/ground/study';
import type { MotionKind } from '@evenhand/core/ground/tables';
import { describe, expect, it } from 'vitest';

/**
 * Thirty pins into a board of thirty holes: 38 s when one hand holds the supply and the other places, 25 s at the same pace
 * when both hands get and place together. Common practice, no source. The element times below are ours; they add up to 38 s.
 */
const published = { oneHand: 38_000_000, bothHands: 25_000_000, pins: 30 };
const elements: readonly (readonly [MotionKind, number, Partial<Motion>])[] = [
  ['TE', 290_000, { object: 'pin', to: 'supply' }],
  ['G', 310_000, { object: 'pin', from: 'supply' }],
  ['TL', 300_000, { object: 'pin', from: 'supply', to: 'board' }],
  ['P', 250_000, { object: 'pin', to: 'board' }],
  ['RL', 116_000, { object: 'pin' }],
];

function board(): Study {
  const right: Motion[] = [];
  let at = 0;
  for (let pin = 0; pin < published.pins; pin += 1) {
    for (const [kind, time, details] of elements) {
      right.push({ id: `r${right.length}`, start: at, kind, said: 'marked', ...details });
      at += time;
    }
  }
  // 30 × 1.266 s are 37.98 s; the last release is 0.02 s longer.
  const end = at + 20_000;
  return {
    ...emptyStudy('pins', 'Pins into a board'),
    places: [
      { id: 'supply', name: 'Supply, held in the left hand' },
      { id: 'board', name: 'Board' },
    ],
    methods: [
      {
        id: 'one-hand',
        name: 'One hand holds the supply',
        kind: 'recorded',
        base: { kind: 'micros' },
        unitsPerCycle: 1,
        left: { items: [{ id: 'l0', start: 0, kind: 'H', object: 'supply', said: 'marked' }], end },
        right: { items: right, end },
        cycles: { items: [{ id: 'c1', start: 0 }], end },
      },
    ],
  };
}

describe('pins into a board of thirty holes (common practice, no source)', () => {
  const reading = readMethod(board(), 'one-hand');
  if (!reading.ok) throw new Error(reading.error.message);
  const hold = findLeads(reading.value).leads.find((lead) => lead.code === 'hold');

  it('the record takes 38 s', () => {
    expect(reading.value.cycles[0]?.duration).toBe(published.oneHand);
  });

  it('the hold lead puts the 25 s of both hands inside its interval', () => {
    const saved = published.oneHand - published.bothHands;
    expect(hold?.hand).toBe('left');
    expect(hold?.atStake.low).toBeLessThanOrEqual(saved);
    expect(hold?.atStake.high).toBeGreaterThanOrEqual(saved);
  });

  it('and is no wider than its rule: nothing if each hand keeps its work, half of the work if both share it', () => {
    expect(hold?.atStake).toEqual({ low: 0, high: published.oneHand / 2 });
  });
});
