import { describe, expect, it } from 'vitest';
import { scoreLayout } from './score-layout.ts';
import { composed, row, scoreOf } from './testing/made-up.ts';

// 1 s over 1000 px from x = 78: one pixel is a millisecond.
const method = composed({
  left: row('l', 1_000_000, [
    [0, 'TE'],
    [400_000, 'G'],
    [412_000, 'TL'],
    [413_000, 'P'],
    [700_000, 'H'],
  ]),
  right: row('r', 900_000, [[100_000, 'UD']]),
  cycles: { items: [{ id: 'c0', start: 200_000 }], end: 800_000 },
});
const view = { fromUs: 0, toUs: 1_000_000 };
const score = scoreLayout(scoreOf(method, { view, whole: { fromUs: 0, toUs: 2_000_000 } }));
const [inLeft, inAxis, inRight, inCycles, inOverview] = [80, 155, 240, 10, 310];
const at = (ms: number, y: number, touch = false) => score.hitTest(78 + ms, y, touch);

describe('what lies under the pointer', () => {
  it('a motion in its middle, a boundary within 5 px of it: a grab zone of 10 px', () => {
    expect(at(200, inLeft)).toEqual({ part: 'motion', hand: 'left', motionId: 'l0' });
    for (const ms of [695, 700, 705])
      expect(at(ms, inLeft)).toEqual({ part: 'boundary', row: 'left', id: 'l4' });
    expect(at(694, inLeft)).toMatchObject({ part: 'motion', motionId: 'l3' });
    expect(at(706, inLeft)).toMatchObject({ part: 'motion', motionId: 'l4' });
  });

  it('a finger reaches 12 px', () => {
    expect(at(689, inLeft, true)).toMatchObject({ part: 'boundary', id: 'l4' });
    expect(at(687, inLeft, true)).toMatchObject({ part: 'motion', motionId: 'l3' });
  });

  it('half of a narrow motion stays its own: of 12 px, 3 at either end are boundary', () => {
    const found = Array.from({ length: 12 }, (_, px) => at(400.5 + px, inLeft).part);
    expect(found.filter((part) => part === 'motion')).toHaveLength(6);
    expect(found.slice(3, 9).every((part) => part === 'motion')).toBe(true);
  });

  it('motions that are merged in the picture are a run: nothing to take hold of', () => {
    expect(at(412.5, inLeft)).toEqual({ part: 'run', hand: 'left' });
  });

  it('the beginning of the film is not to be moved, the ends of the rows are', () => {
    expect(at(1, inLeft)).toMatchObject({ part: 'motion', motionId: 'l0' });
    expect(at(102, inRight)).toEqual({ part: 'boundary', row: 'right', id: 'r0' });
    expect(at(97, inRight)).toEqual({ part: 'boundary', row: 'right', id: 'r0' });
    expect(at(903, inRight)).toEqual({ part: 'boundary', row: 'right', id: undefined });
    expect(at(920, inRight)).toEqual({ part: 'hand', hand: 'right' });
    expect(at(50, inRight)).toEqual({ part: 'hand', hand: 'right' });
  });

  it('cycles: their marks, the end of the last one, and what is between', () => {
    expect(at(203, inCycles)).toEqual({ part: 'boundary', row: 'cycles', id: 'c0' });
    expect(at(500, inCycles)).toEqual({ part: 'cycle', cycleId: 'c0' });
    expect(at(797, inCycles)).toEqual({ part: 'boundary', row: 'cycles', id: undefined });
    expect(at(900, inCycles)).toEqual({ part: 'cycles' });
  });

  it('the axis, the overview with the two sides of its frame, and the headings', () => {
    expect(at(500, inAxis)).toEqual({ part: 'axis' });
    // The frame shows 1 of 2 s: it reaches from 0 to 500 px.
    expect(at(250, inOverview)).toEqual({ part: 'overview', grip: 'window' });
    expect(at(498, inOverview)).toEqual({ part: 'overview', grip: 'to' });
    expect(at(700, inOverview)).toEqual({ part: 'overview', grip: 'outside' });
    expect(score.hitTest(20, inLeft)).toEqual({ part: 'nothing' });
  });

  it('a hand with an empty row is only a hand', () => {
    const empty = scoreLayout(scoreOf(composed({}), { view }));
    expect(empty.hitTest(400, inLeft)).toEqual({ part: 'hand', hand: 'left' });
  });
});
