import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { overlappingTexts, textsOutside } from '../../../../../../tests/helpers/read-scene.ts';
import { type PathNode, type SceneNode, textsOf } from '../../../ground/scene/index.ts';
import type { TimeStudyElement } from '../../../ground/study/index.ts';
import { timeStudySheet } from '../sheet/index.ts';
import { runChart } from './run-chart.ts';
import { type RunFacts, runOf } from './run-facts.ts';
import { axisMarks, timeSpan } from './run-scales.ts';
import { secondsOf, timedElement, timedStudy, timeStudyOf } from './testing/timed-study.ts';

const look = { width: 600, height: 240 };

function flat(nodes: readonly SceneNode[]): readonly SceneNode[] {
  return nodes.flatMap((node) => (node.kind === 'group' ? flat(node.nodes) : [node]));
}

function paths(run: RunFacts): readonly PathNode[] {
  return flat(runChart(run, look).nodes).filter((node): node is PathNode => node.kind === 'path');
}

/** The line through the readings is the one path that is neither filled nor closed. */
function lineOf(run: RunFacts): string {
  return paths(run).find(({ fill, d }) => fill === undefined && !d.includes('A'))?.d ?? '';
}

function words(run: RunFacts): string {
  return textsOf(runChart(run, look).nodes)
    .map(({ text }) => text)
    .join(' ');
}

function elementRun(
  readings: TimeStudyElement['readings'],
  sittings?: readonly [number, string][],
): RunFacts {
  const timed = timeStudyOf([timedElement('fit', readings)], {
    ...(sittings === undefined
      ? {}
      : {
          sittings: sittings.map(([start, operatorCode], index) => ({
            id: `s${index}`,
            start,
            operatorCode,
          })),
        }),
  });
  return runOf(timeStudySheet(timedStudy, timed), 'fit');
}

describe('the run chart', () => {
  it('draws readings in their order, one place a cycle, higher for a longer time', () => {
    const line = lineOf(elementRun(secondsOf(10, 12, 11, 13)));
    const places = [...line.matchAll(/[ML] (\S+) (\S+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
    expect(places).toHaveLength(4);
    const steps = places.slice(1).map(([x], index) => x - (places[index]?.[0] ?? 0));
    for (const step of steps) expect(step).toBeCloseTo(steps[0] ?? 0, 1);
    const heights = places.map(([, y]) => y);
    // 10 → 12 is twice the way of 11 → 12, whatever the scale.
    expect(((heights[0] ?? 0) - (heights[1] ?? 0)) / ((heights[2] ?? 0) - (heights[1] ?? 0))).toBeCloseTo(
      2,
      1,
    );
  });

  it('a missed reading breaks the line and stands as a stroke at the foot; a cycle without a reading breaks it too', () => {
    expect(lineOf(elementRun(secondsOf(10, 12, undefined, 13, 12))).match(/M/g)).toHaveLength(2);
    const gap = [...secondsOf(10, 12), { cycle: 6, us: 11_000_000 }, { cycle: 7, us: 11_000_000 }];
    expect(lineOf(elementRun(gap)).match(/M/g)).toHaveLength(2);
    expect(words(elementRun(secondsOf(10, 12, undefined, 13, 12)))).toContain(
      'Stroke at the foot: 1 missed.',
    );
  });

  it('a reading set aside is no part of the line, hollow with a cross, and counted in the words', () => {
    const run = elementRun([
      ...secondsOf(10, 12, 11, 13),
      { cycle: 5, us: 15_000_000, setAside: 'part fell' },
    ]);
    expect(lineOf(run).match(/[ML]/g)).toHaveLength(4);
    expect(paths(run).filter(({ fill }) => fill?.ink === 'paper')).toHaveLength(1);
    expect(words(run)).toContain('Hollow with a cross: 1 set aside.');
    expect(words(run)).toContain('mean 11.50 s');
  });

  it('a stoppage of 385 s does not press readings of 10 s flat: it stands as an arrow, with its time in words', () => {
    const run = elementRun([
      ...secondsOf(10, 12, 11, 13),
      { cycle: 5, us: 385_000_000, setAside: 'stoppage' },
    ]);
    expect(words(run)).toContain('one of them lies off the chart, 385.00 s');
    const heights = [...lineOf(run).matchAll(/[ML] \S+ (\S+)/g)].map(([, y]) => Number(y));
    expect(Math.max(...heights) - Math.min(...heights)).toBeGreaterThan(look.height / 8);
  });

  it('gives the bounds of the rule (quartiles 10.75 and 12.25, fences 8.5 and 14.5 by hand) and rings what lies outside', () => {
    const run = elementRun(secondsOf(10, 11, 12, 13));
    expect(words(run)).toContain('bounds of the rule, 8.50 to 14.50 s');
    // Quartiles 1 and 9: the lower fence would be at −11.
    expect(words(elementRun(secondsOf(1, 1, 9, 9)))).toContain('upper bound of the rule, 21.00 s');
    const far = elementRun(secondsOf(10, 11, 12, 11, 12, 11, 13, 30));
    expect(words(far)).toContain('Ringed: 1 outside them; they count.');
  });

  it('names the unit and the cycles at the axes, the operators above the bands, and says where the axis begins', () => {
    const run = elementRun(secondsOf(10, 11, 12, 13, 11, 12), [
      [1, 'K3'],
      [4, 'K7'],
    ]);
    const texts = textsOf(runChart(run, look).nodes).map(({ text }) => text);
    for (const each of ['s', 'cycle', 'K3', 'K7', '6']) expect(texts).toContain(each);
    expect(words(run)).toMatch(/The axis begins at \d/);
    expect(runChart(run, look).description).toContain('2 sittings, operator K3, K7.');
    expect(runChart(run, look).title).toBe('Run chart of “fit”');
  });

  it('thins 10,000 readings to the least and the most of each column, loses no extreme, and says so', () => {
    const times = Array.from({ length: 10_000 }, (_, index) => 10 + ((index * 7919) % 1000) / 500);
    times[5000] = 31;
    times[7000] = 2;
    const run = elementRun(secondsOf(...times));
    const line = lineOf(run);
    expect(line.match(/[ML]/g)?.length).toBeLessThanOrEqual(2 * look.width);
    const heights = [...line.matchAll(/[ML] \S+ (\S+)/g)].map(([, y]) => Number(y));
    // The bulk lies between 10 and 12 and takes 2 of 29 parts of the height; the two single readings take all of it.
    const sorted = [...heights].sort((a, b) => a - b);
    const all = (sorted.at(-1) ?? 0) - (sorted[0] ?? 0);
    const bulk = (sorted.at(-2) ?? 0) - (sorted[1] ?? 0);
    expect(bulk / all).toBeCloseTo(2 / 29, 2);
    expect(words(run)).toContain('10000 readings are too many to draw');
    expect(runChart(run, look).description).toContain('Drawn as the least and the most in each column.');
    expect(JSON.stringify(runChart(run, look)).length).toBeLessThan(60_000);
  });

  it('the whole cycle sums its elements; a cycle with something set aside counts in nothing but is drawn', () => {
    const sheet = timeStudySheet(
      timedStudy,
      timeStudyOf([
        timedElement('fit', secondsOf(10, 11, 12)),
        timedElement('press', [
          { cycle: 1, us: 5_000_000 },
          { cycle: 2, us: 5_000_000, setAside: 'part fell' },
        ]),
      ]),
    );
    expect(runOf(sheet).points).toEqual([
      { cycle: 1, time: 15, setAside: undefined, proposed: false },
      { cycle: 2, time: 16, setAside: 'part fell', proposed: false },
      { cycle: 3, time: undefined, setAside: undefined, proposed: false },
    ]);
    expect(runOf(sheet).mean).toBe(15);
    expect(() => runOf(sheet, 'nobody')).toThrow(RangeError);
  });

  it('a run without a time has no axes and says why', () => {
    expect(words(elementRun([]))).toBe('There is no reading yet.');
    expect(words(elementRun(secondsOf(undefined, undefined)))).toBe('There is no time to draw: 2 missed.');
  });

  it('nothing lies over another text or outside the picture, whatever was read', () => {
    const reading = fc.record(
      {
        us: fc.oneof(fc.integer({ min: 0, max: 90_000_000 }), fc.integer({ min: 0, max: 1e12 })),
        setAside: fc.constantFrom('part fell', 'x'),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(
        fc.array(reading, { maxLength: 60 }),
        fc.uniqueArray(fc.integer({ min: 1, max: 80 }), { maxLength: 9 }),
        fc.constantFrom(
          { width: 120, height: 80, size: 5.8 },
          { width: 900, height: 300 },
          { width: 320, height: 180 },
        ),
        (list, starts, size) => {
          const readings = list.map((item, index) => ({ cycle: index * 2 + 1, ...item }));
          const sittings = [...starts]
            .sort((a, b) => a - b)
            .map((start): [number, string] => [start, `Operator ${start}`]);
          const scene = runChart(elementRun(readings as TimeStudyElement['readings'], sittings), size);
          expect(overlappingTexts(scene)).toEqual([]);
          expect(textsOutside(scene)).toEqual([]);
          expect(JSON.stringify(scene)).not.toMatch(/null|NaN|Infinity/);
        },
      ),
      { seed: 401, numRuns: 150 },
    );
  });
});

describe('the axes of a run chart', () => {
  it.each([
    [0, 10, 5, 0, [0, 2, 4, 6, 8, 10].length],
    [0, 1, 4, 0, 3],
    [1, 12, 12, 1, 12],
  ])('%d to %d in at most %d marks', (low, high, most, least, count) => {
    const marks = axisMarks(low, high, most, least);
    expect(marks.length).toBeLessThanOrEqual(Math.max(most, count));
    for (const { value } of marks) {
      expect(value).toBeGreaterThanOrEqual(low - 1e-9);
      expect(value).toBeLessThanOrEqual(high + 1e-9);
    }
  });

  it('begins at 0 where the least time is small beside the most, and holds all that counts', () => {
    expect(timeSpan([1, 10], undefined, []).low).toBe(0);
    const { low, high } = timeSpan([9, 10], { low: 8, high: 11 }, [100]);
    expect(low).toBeGreaterThan(0);
    expect(low).toBeLessThanOrEqual(8);
    expect(high).toBeGreaterThanOrEqual(11);
    expect(high).toBeLessThan(100);
  });
});
