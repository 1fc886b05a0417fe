import { describe, expect, it } from 'vitest';
import { type PacedMethod, pacedStudy } from '../../../../../../tests/helpers/paced-study.ts';
import { overlappingTexts, textsOutside } from '../../../../../../tests/helpers/read-scene.ts';
import { type SceneNode, textsOf } from '../../../ground/scene/index.ts';
import type { Study } from '../../../ground/study/index.ts';
import { motionFacts } from '../../../ground/tables/index.ts';
import { readMethod } from '../../examine/index.ts';
import { representativeRuns } from './cycle-run.ts';
import { twoScoresOnOneScale, twoScoresWords } from './two-scores.ts';

const motions = ['TE ring bench>bin 5', 'G ring 3', 'TL ring bin>bench 6', 'P ring 5', 'A ring 7'];
const method = (cycles: number): PacedMethod => ({ motions, pace: 1, cycles });

function readings(units: readonly [number, number], cycles = 6) {
  const study = pacedStudy(method(cycles), method(cycles), { motion: 0.1, cycle: 0.1 }, 4);
  const named: Study = {
    ...study,
    methods: study.methods.map((item, index) => ({ ...item, unitsPerCycle: units[index] ?? 1 })),
  };
  const read = (id: string) => {
    const reading = readMethod(named, id);
    if (!reading.ok) throw new Error(reading.error.message);
    return reading.value;
  };
  return [read('before'), read('after')] as const;
}

describe('cycles that stand for a method', () => {
  it('turn out equally many units: two cycles of one unit beside one of two', () => {
    const [before, after] = readings([1, 2]);
    const runs = representativeRuns(before, after);
    expect([runs.before.units, runs.after.units, runs.even]).toEqual([2, 2, true]);
    const [first, second] = runs.before.cycles;
    expect(second?.number).toBe((first?.number ?? 0) + 1);
    expect(runs.before.joined.duration).toBe((first?.duration ?? 0) + (second?.duration ?? 0));
    expect(runs.before.breaks).toEqual([first?.duration]);
    for (const hand of ['left', 'right'] as const) {
      const pieces = runs.before.joined[hand];
      expect(pieces[0]?.start).toBe(0);
      expect(pieces.at(-1)?.end).toBe(runs.before.joined.duration);
      expect(pieces.slice(1).map(({ start }) => start)).toEqual(pieces.slice(0, -1).map(({ end }) => end));
    }
  });

  it('are, of all that follow each other, those nearest to the mean', () => {
    const [before, after] = readings([1, 3]);
    const times = before.cycles.map(({ duration }) => duration);
    const mean = times.reduce((sum, time) => sum + time, 0) / times.length;
    const away = (start: number) =>
      Math.abs(times.slice(start, start + 3).reduce((sum, time) => sum + time, 0) - 3 * mean);
    const { cycles } = representativeRuns(before, after).before;
    expect(cycles.length).toBe(3);
    const chosen = away((cycles[0]?.number ?? 0) - 1);
    expect(Math.min(...[0, 1, 2, 3].map(away))).toBe(chosen);
  });

  it('one of each, said aloud, where equal output would take more than four or than there are', () => {
    for (const [before, after] of [readings([1, 7]), readings([1, 2], 1)]) {
      const runs = representativeRuns(before, after);
      expect([runs.before.cycles.length, runs.after.cycles.length, runs.even]).toEqual([1, 1, false]);
      expect(twoScoresWords(runs, 'seconds')).toContain('compare the times for a unit and not the lengths');
    }
    const [three, six] = readings([3, 6]);
    expect(representativeRuns(three, six).before.units).toBe(6);
  });
});

describe('two scores on one scale', () => {
  it('one microsecond is equally wide in both, and both begin at the same place', () => {
    const [before, after] = readings([1, 2]);
    const runs = representativeRuns(before, after);
    const scene = twoScoresOnOneScale(before, after, { width: 500, unit: 'seconds' });
    // The rows of a run are read out under the name of their hand; the two runs follow each other.
    const rows = rowsOf(scene.nodes, 'Right hand');
    const scales = [runs.before, runs.after].map((run, index) => {
      const rects = rows[index] ?? [];
      const pieces = run.joined.right.filter(({ kind }) => kind !== 'unmarked');
      expect(rects.length).toBe(pieces.length);
      const [first] = rects;
      rects.forEach((rect, at) => {
        const piece = pieces[at];
        if (piece === undefined || first === undefined) throw new Error('a block without its motion');
        expect((rect.x - first.x) * run.joined.duration).toBeCloseTo(
          piece.start * ((rects.at(-1)?.x ?? 0) + (rects.at(-1)?.width ?? 0) - first.x),
          -1,
        );
      });
      const end = rects.at(-1);
      return [first?.x, ((end?.x ?? 0) + (end?.width ?? 0) - (first?.x ?? 0)) / run.joined.duration] as const;
    });
    expect(scales[0]?.[0]).toBe(scales[1]?.[0]);
    expect((scales[0]?.[1] ?? 0) / (scales[1]?.[1] ?? 1)).toBeCloseTo(1, 9);
    expect(textsOutside(scene)).toEqual([]);
    expect(overlappingTexts(scene)).toEqual([]);
    expect(textsOf(scene.nodes).some(({ text }) => /2 units in .* s \(cycles \d, \d\)/.test(text))).toBe(
      true,
    );
  });

  it('only motions are in colour, each with its pattern', () => {
    const [before, after] = readings([1, 1]);
    const scene = twoScoresOnOneScale(before, after, { width: 500, unit: 'seconds' });
    const patterns = new Map<string, string>(motionFacts.map(({ colour, pattern }) => [colour, pattern]));
    const seen: unknown[] = [];
    JSON.stringify(scene, (key, value) => {
      if (key === 'fill' && typeof value.ink === 'object') seen.push([value.ink.colour, value.pattern]);
      return value;
    });
    expect(seen.length).toBeGreaterThan(5);
    for (const [colour, pattern] of seen as [string, string][]) expect(pattern).toBe(patterns.get(colour));
  });
});

function rowsOf(nodes: readonly SceneNode[], label: string): { x: number; width: number }[][] {
  return nodes.flatMap((node) =>
    node.kind !== 'group'
      ? []
      : node.label === label
        ? [node.nodes.flatMap((inner) => (inner.kind === 'rect' ? [{ x: inner.x, width: inner.width }] : []))]
        : rowsOf(node.nodes, label),
  );
}
