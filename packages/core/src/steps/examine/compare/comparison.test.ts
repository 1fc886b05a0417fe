import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textBox, textsOf } from '../../../ground/scene/index.ts';
import type { Study } from '../../../ground/study/index.ts';
import { type CycleRows, studyOf } from '../leads/testing/record.ts';
import {
  compareCycles,
  comparisonRows,
  comparisonScene,
  comparisonWords,
  cycleOptions,
  cycleOptionWords,
  cycleSteps,
  defaultComparison,
} from './index.ts';

/** Two methods in one study: each from its own rows. */
function twoMethods(present: readonly CycleRows[], better: readonly CycleRows[], units = 1): Study {
  const study = studyOf(present);
  const other = studyOf(better, { method: { id: 'b', name: 'Better method', unitsPerCycle: units } });
  return { ...study, methods: [...study.methods, ...other.methods] };
}

function compared(study: Study, upper = { method: 'm' }, lower = { method: 'b' }) {
  const result = compareCycles(study, upper, lower);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

describe('two cycles compared', () => {
  it('38 s → 25 s is 34 % of the time saved and 52 % more output (common practice, no source)', () => {
    const comparison = compared(twoMethods([['H 38 board', 'A 38 pin']], [['A 25 pin', 'A 25 pin']]));
    expect(comparison.change.saved).toBeCloseTo(1 - 25 / 38, 12);
    expect(comparison.change.gained).toBeCloseTo(38 / 25 - 1, 12);
    expect(comparisonWords(comparison, 'seconds').difference).toBe(
      '13.00 s a cycle less: 34 % of the time saved, 52 % more output in the same time.',
    );
  });

  it('twice as many is 50 % of the time saved and 100 % more output (common practice, no source)', () => {
    const comparison = compared(twoMethods([['H 10 board', 'A 10 pin']], [['A 10 pin', 'A 10 pin']], 2));
    expect(comparison.change).toMatchObject({ cycle: 0, unit: -5_000_000, saved: 0.5, gained: 1 });
    expect(comparisonWords(comparison, 'seconds')).toMatchObject({
      lower: 'Better method, cycle 1: 10.00 s for 2 units = 5.00 s a unit.',
      difference:
        '5.00 s a unit less: 50 % of the time saved, 100 % more output in the same time. The cycles are equally long.',
    });
  });

  it('says more time where the lower one takes longer, and no difference where there is none', () => {
    const rows: CycleRows[] = [['H 8', 'A 8']];
    expect(comparisonWords(compared(twoMethods(rows, [['H 10', 'A 10']])), 'seconds').difference).toBe(
      '2.00 s a cycle more: 25 % more time, 20 % less output in the same time.',
    );
    expect(comparisonWords(compared(twoMethods(rows, rows)), 'seconds').difference).toBe(
      'No difference a cycle.',
    );
  });

  it('offers the cycle of middle length first, and two cycles where there is one method', () => {
    const study = studyOf([9, 7, 8].map((time): CycleRows => [`A ${time} body`, `H ${time} body`]));
    expect(defaultComparison(study)).toEqual({
      upper: { method: 'm', cycle: 3 },
      lower: { method: 'm', cycle: 2 },
    });
    expect(cycleOptions(study, 'm').map((option) => cycleOptionWords(option, 'seconds'))).toEqual([
      '1: 9.00 s, the longest',
      '2: 7.00 s, the shortest',
      '3: 8.00 s, of middle length',
    ]);
    expect(compareCycles(study, { method: 'm', cycle: 9 }, { method: 'm' })).toMatchObject({
      ok: false,
      error: { code: 'record/no-cycle' },
    });
    expect(defaultComparison({ ...study, methods: [] })).toBeUndefined();
  });

  it('tells the change motion by motion for one unit, largest first', () => {
    const rows = comparisonRows(
      compared(
        twoMethods([['H 6 body', 'G 2 ring, A 4 ring']], [['G 2 ring, A 4 ring', 'G 2 ring, A 4 ring']], 2),
      ),
    );
    expect(
      rows.map(({ hand, kind, upper, lower, change }) => [
        hand,
        kind,
        upper / 1e6,
        lower / 1e6,
        change / 1e6,
      ]),
    ).toEqual([
      ['left', 'H', 6, 0, -6],
      ['left', 'A', 0, 2, 2],
      ['right', 'A', 4, 2, -2],
      ['left', 'G', 0, 1, 1],
      ['right', 'G', 2, 1, -1],
    ]);
  });
});

describe('a cycle in words', () => {
  it('says stretch by stretch what both hands do, and what goes on', () => {
    const study = studyOf([['H 3 body', 'TE 1 ring bench>bin, G 2 ring']]);
    const steps = cycleSteps(compared(study, { method: 'm' }, { method: 'm' }).upper);
    expect(steps.map(({ start, duration, left, right }) => [start, duration, left, right])).toEqual([
      [0, 1_000_000, 'hold body', 'reach for ring from bench to bin'],
      [1_000_000, 2_000_000, '… hold body', 'grasp ring'],
    ]);
  });
});

describe('the picture of two cycles', () => {
  it('draws both on one time scale: the widths stand as the times do, and no text leaves the sheet', () => {
    const seconds = fc.integer({ min: 1, max: 90 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(seconds, seconds, fc.integer({ min: 400, max: 1600 }), (first, second, width) => {
        const comparison = compared(
          twoMethods([[`H ${first} body`, `A ${first} ring`]], [[`A ${second} ring`, `A ${second} ring`]]),
        );
        const scene = comparisonScene(comparison, { width, unit: 'seconds' });
        const widths = blockWidths(scene.nodes);
        expect(widths.length).toBeGreaterThanOrEqual(4);
        const [longest, shortest] = [Math.max(...widths), Math.min(...widths)];
        expect(shortest / longest).toBeCloseTo(Math.min(first, second) / Math.max(first, second), 6);
        for (const text of textsOf(scene.nodes)) {
          const { left, top, right, bottom } = textBox(text);
          expect(left).toBeGreaterThanOrEqual(0);
          expect(top).toBeGreaterThanOrEqual(0);
          expect(bottom).toBeLessThanOrEqual(scene.height);
          expect(right).toBeLessThanOrEqual(scene.width);
        }
      }),
      { seed: 81, numRuns: 120 },
    );
  });
});

function blockWidths(nodes: ReturnType<typeof comparisonScene>['nodes']): number[] {
  return nodes.flatMap((node) =>
    node.kind === 'group'
      ? blockWidths(node.nodes)
      : node.kind === 'rect' && node.stroke !== undefined
        ? [node.width]
        : [],
  );
}
