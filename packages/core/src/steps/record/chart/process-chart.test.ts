import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  groupsOf,
  overlappingTexts,
  tableTexts,
  textsOutside,
} from '../../../../../../tests/helpers/read-scene.ts';
import { textsOf } from '../../../ground/scene/index.ts';
import { hands } from '../../../ground/study/index.ts';
import { type ChartFacts, chartFacts } from './facts.ts';
import { processChart } from './process-chart.ts';
import { processLines, symbolCounts } from './process-lines.ts';
import { anyCycle } from './testing/any-cycle.ts';
import { chartedStudy, type ShortStudy } from './testing/charted-study.ts';

function factsOf(short: ShortStudy): ChartFacts {
  const result = chartFacts(chartedStudy(short), 'm');
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

const short: ShortStudy = {
  left: [
    ['TE', 10],
    ['G', 5],
    ['TL', 10],
    ['H', 45],
    ['UD', 20],
  ],
  right: [
    ['UD', 25],
    ['TE', 11],
    ['G', 4],
    ['U', 20],
    ['I', 10],
    ['RL', 20],
  ],
  cycles: [0, 90],
};

describe('the two-handed process chart', () => {
  it('what begins together stands on one line, and every line has an entry for each hand (ILO, from memory)', () => {
    const lines = processLines(factsOf(short));
    expect(
      lines.map((line) => [
        line.left.motion.kind,
        line.left.goesOn,
        line.right.motion.kind,
        line.right.goesOn,
      ]),
    ).toEqual([
      ['TE', false, 'UD', false],
      ['G', false, 'UD', true],
      ['TL', false, 'UD', true],
      ['H', false, 'TE', false],
      ['H', true, 'G', false],
      ['H', true, 'U', false],
      ['H', true, 'I', false],
      ['UD', false, 'RL', false],
    ]);
  });

  it('starts two frames apart at 30 a second share a line, three frames apart do not (the limit is ours)', () => {
    const lines = (right: number) =>
      processLines(
        factsOf({
          left: [
            ['TE', 30],
            ['G', 60],
          ],
          right: [
            ['TE', right],
            ['G', 90 - right],
          ],
          cycles: [0, 90],
        }),
      );
    expect(lines(32)).toHaveLength(2);
    expect(lines(33)).toHaveLength(3);
  });

  it('grasp is an operation, carrying a transport, holding a hold and waiting a delay (two-handed process chart after the ILO)', () => {
    const lines = processLines(factsOf(short));
    expect(symbolCounts(lines, 'left')).toEqual({
      symbols: { operation: 1, transport: 2, delay: 1, hold: 4, inspection: 0 },
      unmarked: 0,
      lines: 8,
    });
    expect(symbolCounts(lines, 'right')).toEqual({
      symbols: { operation: 3, transport: 1, delay: 3, hold: 0, inspection: 1 },
      unmarked: 0,
      lines: 8,
    });
  });

  it('the summary counts the symbols of each hand, and both hands have the same total', () => {
    const scene = processChart(factsOf(short), { paper: 'a4' }).at(-1);
    if (scene === undefined) throw new Error('there is no sheet');
    expect(tableTexts(scene, 'Count of each symbol')).toEqual([
      ['operation', '1', '3'],
      ['transport', '2', '1'],
      ['delay', '1', '3'],
      ['hold', '4', '0'],
      ['inspection', '0', '1'],
      ['Lines', '8', '8'],
    ]);
  });

  it('a hand that is not marked has no symbol and is counted apart', () => {
    const facts = factsOf({
      left: [
        ['G', 10],
        ['unmarked', 80],
      ],
      right: [['U', 90]],
      cycles: [0, 90],
    });
    const scene = processChart(facts, { paper: 'letter' }).at(-1);
    if (scene === undefined) throw new Error('there is no sheet');
    expect(tableTexts(scene, 'Count of each symbol')).toContainEqual(['not marked yet', '1', '0']);
  });

  it('every motion has a line of its own, in order, and every chosen symbol is named in words', () => {
    fc.assert(
      fc.property(anyCycle(60), (cycle) => {
        const facts = factsOf(cycle);
        const lines = processLines(facts);
        for (const hand of hands) {
          expect(lines.filter((line) => !line[hand].goesOn).map((line) => line[hand].motion)).toEqual(
            facts[hand],
          );
        }
        const scenes = processChart(facts, { paper: 'a4' });
        const rows = scenes.flatMap((scene) =>
          tableTexts(scene, 'Lines of the chart: left hand, then right hand'),
        );
        expect(rows.map((row) => row[0])).toEqual(lines.map((line) => String(line.number)));
        const named = scenes.flatMap((scene) =>
          groupsOf(scene.nodes, 'row').flatMap((row) => groupsOf(row.nodes, 'figure')),
        );
        const chosen = lines
          .flatMap((line) => [line.left.symbol, line.right.symbol])
          .filter((symbol) => symbol !== undefined);
        expect(named.map((figure) => figure.label)).toEqual(chosen);
      }),
      { seed: 41, numRuns: 40 },
    );
  });

  it('no text lies over another and none leaves the sheet', () => {
    fc.assert(
      fc.property(anyCycle(45), fc.constantFrom('a4' as const, 'letter' as const), (cycle, paper) => {
        for (const scene of processChart(factsOf(cycle), { paper })) {
          expect(overlappingTexts(scene)).toEqual([]);
          expect(textsOutside(scene)).toEqual([]);
        }
      }),
      { seed: 42, numRuns: 60 },
    );
  });

  it('every sheet is numbered', () => {
    const motions = Array.from({ length: 90 }, (_, index) => [index % 2 === 0 ? 'TE' : 'G', 9] as const);
    const scenes = processChart(factsOf({ left: motions, right: motions, cycles: [0, 810] }), {
      paper: 'a4',
    });
    expect(scenes.length).toBeGreaterThan(1);
    scenes.forEach((scene, index) => {
      expect(textsOf(scene.nodes).map((node) => node.text)).toContain(
        `Sheet ${index + 1} of ${scenes.length}`,
      );
    });
  });
});
