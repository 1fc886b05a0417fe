import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  barsOf,
  overlappingTexts,
  printedScale,
  tableTexts,
  textsOutside,
} from '../../../../../../tests/helpers/read-scene.ts';
import { textsOf } from '../../../ground/scene/index.ts';
import { type Hand, hands } from '../../../ground/study/index.ts';
import { motionFactsOf } from '../../../ground/tables/index.ts';
import { timeUnitNames } from '../../../ground/units/index.ts';
import { type ChartFacts, chartFacts } from './facts.ts';
import { barWidth } from './hand-column.ts';
import { anyCycle } from './testing/any-cycle.ts';
import { chartedStudy, type ShortMotion, type ShortStudy } from './testing/charted-study.ts';
import { type TwoHandChartLook, twoHandChart } from './two-hand-chart.ts';

const usual: TwoHandChartLook = { paper: 'a4', unit: 'winks', grouping: 'niebel-freivalds' };

function factsOf(short: ShortStudy): ChartFacts {
  const result = chartFacts(chartedStudy(short), 'm');
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

const short: ShortStudy = {
  left: [
    ['TE', 12],
    ['G', 2],
    ['TL', 15, { object: 'hinge', from: 'bin', to: 'jig' }],
    ['H', 61],
  ],
  right: [
    ['TE', 18],
    ['G', 3],
    ['TL', 20],
    ['P', 12],
    ['A', 30],
    ['RL', 1],
    ['UD', 6],
  ],
  cycles: [0, 90],
};

const long: ShortStudy = {
  left: Array.from(
    { length: 150 },
    (_, index): ShortMotion => [index % 2 === 0 ? 'TE' : 'G', 5 + (index % 7)],
  ),
  right: Array.from(
    { length: 120 },
    (_, index): ShortMotion => [index % 3 === 0 ? 'TL' : 'P', 6 + (index % 5)],
  ),
  cycles: [0, 1190],
};

const looks: fc.Arbitrary<TwoHandChartLook> = fc.record({
  paper: fc.constantFrom('a4', 'letter'),
  unit: fc.constantFrom(...timeUnitNames),
  grouping: fc.constantFrom('niebel-freivalds', 'groover'),
});

const labels: Readonly<Record<Hand, string>> = { left: 'Left hand', right: 'Right hand' };

describe('the simultaneous-motion chart', () => {
  it('every bar is as long as its motion at the scale that the sheet names, within 1e-9 point (1 in = 25.4 mm)', () => {
    const facts = factsOf(short);
    const [scene, ...more] = twoHandChart(facts, usual);
    expect(more).toEqual([]);
    if (scene === undefined) return;
    const scale = printedScale(scene, 'winks') ?? 0;
    for (const hand of hands) {
      const bars = barsOf(scene, hand, barWidth);
      expect(bars).toHaveLength(facts[hand].length);
      bars.forEach((bar, index) => {
        const motion = facts[hand][index];
        expect(Math.abs(bar.height - (motion?.duration ?? 0) * scale)).toBeLessThan(1e-9);
        expect(Math.abs(bar.y - (bars[0]?.y ?? 0) - (motion?.start ?? 0) * scale)).toBeLessThan(1e-9);
      });
    }
  });

  it('prints for each motion its code, its time in winks of 1/2000 min and its words', () => {
    const [scene] = twoHandChart(factsOf(short), usual);
    if (scene === undefined) return;
    expect(tableTexts(scene, 'Left hand')).toEqual([
      ['TE', '13.3', 'reach'],
      ['G', '2.2', 'grasp'],
      ['TL', '16.7', 'carry hinge from screw bin to jig'],
      ['H', '67.8', 'hold'],
    ]);
  });

  it('the foot names the grouping and gives totals that were summed by hand', () => {
    const [scene] = twoHandChart(factsOf(short), { ...usual, grouping: 'groover' });
    if (scene === undefined) return;
    const rows = tableTexts(scene, 'Totals of each motion and hand');
    expect(rows.find((row) => row[0] === 'TE')).toEqual([
      'TE',
      'transport empty',
      '1',
      '13.3',
      '13.3 %',
      '1',
      '20.0',
      '20.0 %',
    ]);
    expect(rows.find((row) => row[1] === 'Cycle')).toEqual([
      '',
      'Cycle',
      '4',
      '100.0',
      '100.0 %',
      '7',
      '100.0',
      '100.0 %',
    ]);
    // Left: 29 of 90 frames reach, grasp and carry; right: 18 + 3 + 20 + 30 + 1 = 72 of 90.
    expect(rows.find((row) => row[1] === 'Effective (Groover)')).toEqual([
      '',
      'Effective (Groover)',
      '',
      '32.2',
      '32.2 %',
      '',
      '80.0',
      '80.0 %',
    ]);
  });

  it('says so when the data are invented, on every sheet', () => {
    for (const scene of twoHandChart(factsOf({ ...long, demo: true }), usual)) {
      expect(textsOf(scene.nodes).map((node) => node.text)).toContain('Invented data');
    }
    for (const scene of twoHandChart(factsOf(long), usual)) {
      expect(textsOf(scene.nodes).some((node) => node.text.includes('nvented'))).toBe(false);
    }
  });

  it('breaks a long cycle over sheets, numbers them and goes on at the time where the last one stopped', () => {
    const scenes = twoHandChart(factsOf(long), usual);
    expect(scenes.length).toBeGreaterThan(2);
    scenes.forEach((scene, index) => {
      const texts = textsOf(scene.nodes).map((node) => node.text);
      expect(texts).toContain(`Sheet ${index + 1} of ${scenes.length}`);
      const bold = (at: number) =>
        textsOf(scenes[at]?.nodes ?? [])
          .filter((node) => node.weight === 600 && node.align === 'middle')
          .map((node) => node.text);
      if (index > 0) expect(bold(index)[0]).toBe(bold(index - 1).at(-1));
    });
  });

  it('a mark and words tell that a motion goes on beyond the cycle', () => {
    const [scene] = twoHandChart(factsOf({ left: [['H', 60]], right: [['A', 60]], cycles: [10, 50] }), usual);
    if (scene === undefined) return;
    expect(tableTexts(scene, 'Left hand')[0]?.[2]).toBe('hold (began before, goes on after)');
  });

  it('no text lies over another and none leaves the sheet, whatever was marked and written', () => {
    fc.assert(
      fc.property(anyCycle(45), looks, (cycle, look) => {
        for (const scene of twoHandChart(factsOf(cycle), look)) {
          expect(overlappingTexts(scene)).toEqual([]);
          expect(textsOutside(scene)).toEqual([]);
        }
      }),
      { seed: 31, numRuns: 60 },
    );
  });

  it('page breaks lose nothing: every motion has its row once, and its bars add up to its length', () => {
    fc.assert(
      fc.property(anyCycle(120), looks, (cycle, look) => {
        const facts = factsOf(cycle);
        const scenes = twoHandChart(facts, look);
        const scale = printedScale(scenes.at(-1) ?? scenes[0] ?? fail(), look.unit) ?? fail();
        for (const hand of hands) {
          const rows = scenes
            .flatMap((scene) => tableTexts(scene, labels[hand]))
            .filter((row) => row[1] !== '');
          expect(rows.map((row) => row[0])).toEqual(
            facts[hand].map((motion) => motionFactsOf(motion.kind).code),
          );
          const bars = scenes.flatMap((scene) => barsOf(scene, hand, barWidth));
          const length = bars.reduce((sum, bar) => sum + bar.height, 0);
          expect(Math.abs(length - facts.duration * scale)).toBeLessThan(1e-6);
        }
      }),
      { seed: 32, numRuns: 40 },
    );
  });

  it('the same facts give the same scenes', () => {
    expect(JSON.stringify(twoHandChart(factsOf(long), usual))).toBe(
      JSON.stringify(twoHandChart(factsOf(long), usual)),
    );
  });

  it('lays out a row of 4,000 motions in each hand', () => {
    const many = Array.from({ length: 4_000 }, (): ShortMotion[] => [
      ['TE', 7],
      ['G', 3],
    ])
      .flat()
      .slice(0, 4_000);
    const scenes = twoHandChart(factsOf({ left: many, right: many }), usual);
    const rows = scenes.flatMap((scene) => tableTexts(scene, 'Right hand')).filter((row) => row[1] !== '');
    expect(rows).toHaveLength(4_000);
  });
});

function fail(): never {
  throw new Error('the sheet names no scale');
}
