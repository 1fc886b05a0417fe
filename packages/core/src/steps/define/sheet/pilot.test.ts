import { describe, expect, it } from 'vitest';
import { cyclesByTrial } from '../../../../../../tests/oracles/cycles-by-trial.ts';
import { emptyStudy, type TimeStudy, type TimeStudyElement } from '../../../ground/study/index.ts';
import { emptyTimeStudy } from './begin.ts';
import { timeStudySheet } from './sheet.ts';

const of = (
  id: string,
  times: readonly number[],
  more: Partial<TimeStudyElement> = {},
): TimeStudyElement => ({
  id,
  name: id,
  work: 'worker',
  readings: times.map((time, index) => ({ cycle: index + 1, us: Math.round(time * 1e6) })),
  ...more,
});
const pilotOf = (elements: TimeStudyElement[], more: Partial<TimeStudy> = {}) =>
  timeStudySheet(emptyStudy('s', 'S'), { ...emptyTimeStudy({ id: 't', name: 'T' }), elements, ...more })
    .pilot;

const steady = [4, 4.1, 3.9, 4, 4.05, 3.95];
const wild = [4, 6, 2, 5, 3, 4];

describe('the pilot beside what is needed', () => {
  it('says that there is enough', () => {
    expect(pilotOf([of('fit', steady)])).toEqual({
      gaps: [],
      enough: true,
      moreCycles: 0,
      words: 'There are enough readings: the mean of “fit” is known to ± 5.0 % at 95 % confidence or better.',
    });
  });

  it('names the element that keeps the study longest, with as many readings as trying them one by one gives (oracle)', () => {
    const { gaps, moreCycles, words } = pilotOf([of('fit', steady), of('turn', wild)]);
    // s = √2 of 6 readings with mean 4; half width 0.05 · 4.
    const wanted = cyclesByTrial(Math.sqrt(2), 0.2, 0.95, 1000);
    expect(gaps).toEqual([
      { element: 'turn', name: 'turn', counted: 6, needed: wanted, more: wanted - 6, moreCycles: wanted - 6 },
    ]);
    expect(moreCycles).toBe(wanted - 6);
    expect(words).toBe(
      `For ± 5.0 % at 95 % confidence, 1 of 2 elements has enough readings. “turn” keeps the study longest: 6 of ${wanted}, ${wanted - 6} more.`,
    );
  });

  it('counts cycles for an element that is not in every cycle', () => {
    const { gaps, words } = pilotOf([of('fetch', wild, { occurs: { times: 1, cycles: 5 } })]);
    expect(gaps[0]?.moreCycles).toBe((gaps[0]?.more ?? 0) * 5);
    expect(words).toContain(
      `It comes 1 time in 5 cycles, so that takes about ${gaps[0]?.moreCycles} cycles.`,
    );
  });

  it('each reading changes it, and below two it says what is wanting', () => {
    const { gaps, enough, moreCycles, words } = pilotOf([of('fit', [4]), of('turn', steady), of('wipe', [])]);
    expect(gaps.map(({ name, counted, needed }) => [name, counted, needed])).toEqual([
      ['fit', 1, undefined],
      ['wipe', 0, undefined],
    ]);
    expect([enough, moreCycles]).toEqual([false, undefined]);
    expect(words).toContain('Fewer than two readings count of “fit”, “wipe”; with two it can be told');
    expect(pilotOf([of('fit', [4, 4.01]), of('turn', steady)]).gaps).toEqual([]);
  });

  it('says so when nobody could take so many, and when there is no element', () => {
    const { gaps, words } = pilotOf([of('fit', wild)], { precision: { kind: 'absolute', us: 1 } });
    expect(gaps[0]).toMatchObject({ more: undefined, moreCycles: undefined, counted: 6 });
    expect(words).toMatch(/More readings would be needed of “fit” than can be taken/);
    expect(pilotOf([])).toMatchObject({
      enough: false,
      moreCycles: undefined,
      words: 'There is no element yet.',
    });
  });
});
