import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type PacedMethod,
  type PacedNoise,
  pacedStudy,
} from '../../../../../../tests/helpers/paced-study.ts';
import { overlappingTexts, tableTexts, textsOutside } from '../../../../../../tests/helpers/read-scene.ts';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import type { Scene, SceneNode } from '../../../ground/scene/index.ts';
import { textBox, textsOf } from '../../../ground/scene/index.ts';
import type { Comparison, Study } from '../../../ground/study/index.ts';
import { motionFacts } from '../../../ground/tables/index.ts';
import { comparisonOf } from '../comparison/comparison.ts';
import type { DecompositionRow } from '../decomposition/decomposition.ts';
import { decompositionPicture, pictureSteps } from './decomposition-picture.ts';
import { mattersMostWords, moneyRows } from './money-rows.ts';
import { placeScene } from './place-scene.ts';
import { proofPage } from './proof-page.ts';
import { tornadoPicture } from './tornado-picture.ts';

const noise: PacedNoise = { motion: 0.15, cycle: 0.04 };
const motions = [
  'TE ring bench>bin 5',
  'G ring 3',
  'TL ring bin>bench 6',
  'P ring 5',
  'A ring 7',
  'Sh collar 8',
];
const method = (cycles: number, more: Partial<PacedMethod> = {}): PacedMethod => ({
  motions,
  pace: 1,
  cycles,
  ...more,
});
const money: NonNullable<Comparison['money']> = {
  currency: '€',
  basis: 'measured',
  unitsAYear: 200_000,
  hourlyCost: 36,
  cost: 5000,
  years: 5,
  discountRate: 0.08,
  ranges: { cost: { low: 4000, high: 9000 }, unitsAYear: { low: 100_000, high: 250_000 } },
};
const comparison: Comparison = {
  id: 'c',
  before: { method: 'before' },
  after: { method: 'after' },
  confidence: 0.95,
  money,
};
const factsOf = (study: Study, of: Comparison = comparison) => {
  const facts = comparisonOf(study, of);
  if (!facts.ok) throw new Error(facts.error.message);
  return facts.value;
};
const usual = () => pacedStudy(method(12), method(12, { motions: motions.slice(0, 5) }), noise, 1);

function expectSound(scene: Scene): void {
  expect(textsOutside(scene)).toEqual([]);
  expect(overlappingTexts(scene)).toEqual([]);
  const bad: string[] = [];
  JSON.stringify(scene, (key, value) => {
    if (typeof value === 'number' && !Number.isFinite(value)) bad.push(key);
    return value;
  });
  expect(bad).toEqual([]);
}

describe('the decomposition as a picture', () => {
  it('its steps add up to the difference, however few stand alone', () => {
    const { decomposition } = factsOf(usual()).proof;
    for (const most of [0, 1, 3, 50]) {
      const steps = pictureSteps(decomposition, most);
      expect(steps.reduce((sum, { saved }) => sum + saved, 0)).toBe(decomposition.saved);
      expect(steps.filter(({ row }) => row !== undefined).length).toBeGreaterThanOrEqual(
        Math.min(most, decomposition.rows.flatMap(({ parts }: DecompositionRow) => parts).length),
      );
    }
  });

  it('the bars lead from the time before to the time after, each where the one above ended', () => {
    const { decomposition } = factsOf(usual()).proof;
    const scene = decompositionPicture(decomposition, {
      width: 500,
      unit: 'seconds',
      names: { before: 'Old', after: 'New' },
    });
    const bars = rectsOf(scene.nodes);
    const [first, ...steps] = bars;
    const last = steps.pop();
    let at = (first?.x ?? 0) + (first?.width ?? 0);
    const ends = pictureSteps(decomposition).map(({ saved }, index) => {
      const bar = steps[index];
      const [from, to] =
        saved > 0
          ? [(bar?.x ?? 0) + (bar?.width ?? 0), bar?.x ?? 0]
          : [bar?.x ?? 0, (bar?.x ?? 0) + (bar?.width ?? 0)];
      // A bar is never thinner than a hair, so a step of nearly nothing may stand out by that.
      expect(Math.abs(from - at)).toBeLessThan(0.7);
      at = to;
      return to;
    });
    expect(ends.length).toBe(steps.length);
    expect(Math.abs((last?.x ?? 0) + (last?.width ?? 0) - at)).toBeLessThan(0.7);
    expectSound(scene);
  });
});

describe('the page of the proof', () => {
  const cases: readonly (readonly [string, Study, Comparison])[] = [
    ['a better method', usual(), comparison],
    [
      'no money',
      usual(),
      { id: 'c', before: { method: 'before' }, after: { method: 'after' }, confidence: 0.95 },
    ],
    [
      'one cycle of each',
      pacedStudy(method(1), method(1, { motions: motions.slice(0, 4) }), noise, 2),
      comparison,
    ],
    [
      'a worse method',
      pacedStudy(method(9, { motions: motions.slice(0, 4) }), method(9), noise, 3),
      comparison,
    ],
    [
      'pace alone',
      pacedStudy(method(15), method(15, { pace: 0.75 }), noise, 4),
      { ...comparison, money: { ...money, basis: 'equal-pace' } },
    ],
    [
      'no shared motion',
      pacedStudy(method(9), method(9, { motions: ['U pen 5', 'I lid 6'] }), noise, 5),
      comparison,
    ],
    [
      'money that cannot be reckoned',
      usual(),
      { ...comparison, money: { ...money, ranges: { cost: { low: 9000, high: 9500 } } } },
    ],
  ];
  it.each(cases)('%s: nothing overlaps, nothing leaves the paper', (_, study, of) => {
    for (const paper of ['a4', 'letter'] as const) {
      const page = proofPage(study, factsOf(study, of), { paper, unit: 'seconds', date: '2026-03-31' });
      expectSound(page);
      const words = textsOf(page.nodes)
        .map(({ text }) => text)
        .join(' ');
      expect(words).toContain('What it rests on');
      expect(words).toContain('local rules and qualified people');
      expect(page.description).toBe(factsOf(study, of).proof.claim.sentence);
    }
  });

  it('long names are cut and not run over', () => {
    const study = usual();
    const long = 'A method with a very long name that was given by somebody with much time '.repeat(2);
    const named: Study = {
      ...study,
      title: long,
      operation: { name: long, part: long, analyst: long },
      methods: study.methods.map((item) => ({ ...item, name: `${long}${item.id}`.slice(-200) })),
    };
    const page = proofPage(named, factsOf(named), { paper: 'a4', unit: 'tmu' });
    expectSound(page);
    // The claim becomes smaller, and no word of it is lost.
    expect(claimOn(page)).toBe(factsOf(named).proof.claim.sentence.replace(/\s+/g, ' '));
  });

  it('a plant manager finds the claim, the odds, which saving is safe, and what the money is reckoned with', () => {
    const page = proofPage(usual(), factsOf(usual()), { paper: 'letter', unit: 'seconds' });
    const { proof, money: worked } = factsOf(usual());
    expect(claimOn(page)).toBe(proof.claim.sentence);
    const words = textsOf(page.nodes)
      .map(({ text }) => text)
      .join(' ');
    expect(words).toContain('If both methods took equally long, chance alone');
    expect(words).toMatch(/pace (plays a part|changes little)|saving (as measured|at equal pace)/);
    expect(words).toContain('Old method: 1 unit in');
    expect(words).toContain('TE transport empty');
    expect(words).toContain('200\u2009000 units a year (100\u2009000 to 250\u2009000)');
    expect(words).toContain('€ 36 an hour');
    const most = mattersMostWords(worked?.outlook ?? neverMade(), '€', String);
    expect(words).toContain(most?.slice(0, 30));
  });

  it('without money the motions that both share stand there, with their ratio', () => {
    const { money: _, ...rest } = comparison;
    const page = proofPage(usual(), factsOf(usual(), rest), { paper: 'a4', unit: 'seconds' });
    const rows = tableTexts(page, 'Shared motions');
    const { pace } = factsOf(usual(), rest).proof;
    expect(rows.length).toBe(pace.motions.length + 1);
    expect(rows.at(-1)?.at(-1)).toBe((pace.ratio ?? 0).toFixed(2));
  });

  it('only motions are in colour', () => {
    const known = new Set<string>(motionFacts.map(({ colour }) => colour));
    const page = proofPage(usual(), factsOf(usual()), { paper: 'a4', unit: 'seconds' });
    const seen: string[] = [];
    JSON.stringify(page, (key, value) => {
      if (key === 'colour') seen.push(value);
      return value;
    });
    expect(seen.length).toBeGreaterThan(10);
    expect(seen.filter((colour) => !known.has(colour))).toEqual([]);
  });

  it('any study gives a whole page or a finding', () => {
    fc.assert(
      fc.property(studyArb, (study) => {
        const facts = comparisonOf(study, {
          ...comparison,
          before: { method: 'filmed' },
          after: { method: 'plain' },
        });
        if (!facts.ok) {
          expect(facts.error.message).not.toMatch(/NaN|\{\w+\}/);
          return;
        }
        const page = proofPage(study, facts.value, { paper: 'a4', unit: 'minutes' });
        expect(textsOutside(page)).toEqual([]);
        expect(JSON.stringify(page)).not.toMatch(/NaN|null,/);
      }),
      { seed: 5, numRuns: 60 },
    );
  });
});

describe('money on the page', () => {
  it('the table says what the case says, and the tornado has the widest bar first', () => {
    const { money: worked } = factsOf(usual());
    if (worked?.outlook === undefined) throw new Error('the case is not reckoned');
    const rows = moneyRows(worked.outlook, '€');
    // cost ÷ money a year, by hand from the rows themselves.
    const yearly = worked.outlook.likely.yearly.money;
    expect(rows.find(({ name }) => name === 'Payback')?.likely).toBe(`${(5000 / yearly).toFixed(2)} years`);
    const swings = worked.outlook.tornado.map(({ swing }) => swing);
    expect(swings).toEqual([...swings].sort((a, b) => b - a));
    expectSound(tornadoPicture(worked.outlook, { width: 480, unit: 'seconds', currency: '€' }));
  });
});

describe('a scene at another place', () => {
  it('is moved and made larger in all its parts', () => {
    const nodes: SceneNode[] = [
      { kind: 'path', d: 'M 1 2 A 3 3 0 1 1 7 2 Z', stroke: { ink: 'ink', width: 1, dash: [2, 1] } },
      { kind: 'group', role: 'layer', nodes: [{ kind: 'rect', x: 1, y: 1, width: 2, height: 3 }] },
    ];
    const [path, group] = placeScene({ nodes }, 10, 20, 2);
    expect(path).toEqual({
      kind: 'path',
      d: 'M 12 24 A 6 6 0 1 1 24 24 Z',
      stroke: { ink: 'ink', width: 2, dash: [4, 2] },
    });
    expect(group).toMatchObject({ nodes: [{ x: 12, y: 22, width: 4, height: 6 }] });
    const box = textBox({
      kind: 'text',
      x: 0,
      y: 0,
      text: 'a',
      size: 10,
      weight: 400,
      align: 'start',
      ink: 'ink',
    });
    expect(box.right).toBeGreaterThan(0);
  });
});

function neverMade(): never {
  throw new Error('the case is not reckoned');
}

function claimOn(page: Scene): string {
  const claim = page.nodes.find((node) => node.kind === 'group' && node.label === 'The claim');
  return textsOf(claim === undefined ? [] : [claim])
    .map(({ text }) => text)
    .join(' ');
}

function rectsOf(nodes: readonly SceneNode[]): { x: number; width: number }[] {
  return nodes.flatMap((node) =>
    node.kind === 'group'
      ? rectsOf(node.nodes)
      : node.kind === 'rect'
        ? [{ x: node.x, width: node.width }]
        : [],
  );
}
