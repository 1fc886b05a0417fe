import {
  fundamentalMotions,
  groupings,
  groupOf,
  type MotionKind,
  motionFacts,
  motionFactsOf,
  processSymbols,
  sources,
  symbolOfMotion,
} from '@evenhand/core/ground/tables';
import { describe, expect, it } from 'vitest';

const lecture =
  'lecture page “therblig figure”, http://dainahuayi.com/~kazov/Nis/lecture/mansci/therblig_fig.htm';
const twoColumns =
  'Niebel & Freivalds, two-column list, https://www.slideshare.net/slideshow/therbligs-details/88319335';
const answer =
  'Groover, Work Systems, ch. 10, answer 10.4, https://www.scribd.com/doc/123235405/Ch10-Motion-Study-s';
const slides = 'Groover ch. 10 slides, https://www.scribd.com/document/813075028/IE333-week-9';
const twoHand = 'two-handed process chart, https://studylib.net/doc/10323826/two-handed-process-chart';

const sorted = (list: readonly string[]) => [...list].sort();
const codes = fundamentalMotions.map((facts) => facts.code);
const seventeen = [
  'Sh',
  'St',
  'G',
  'H',
  'TL',
  'TE',
  'P',
  'A',
  'U',
  'DA',
  'I',
  'PP',
  'RL',
  'UD',
  'AD',
  'Pn',
  'R',
];

describe('the fundamental motions', () => {
  it(`are eighteen with find and seventeen without (${slides})`, () => {
    expect(sorted(codes)).toEqual(sorted([...seventeen, 'F']));
    expect(seventeen.length).toBe(17);
  });

  it.each<[string, string]>([
    ['Sh', 'search'],
    ['F', 'find'],
    ['St', 'select'],
    ['G', 'grasp'],
    ['H', 'hold'],
    ['TL', 'transport loaded'],
    ['TE', 'transport empty'],
    ['P', 'position'],
    ['A', 'assemble'],
    ['U', 'use'],
    ['DA', 'disassemble'],
    ['I', 'inspect'],
    ['PP', 'pre-position'],
    ['RL', 'release load'],
    ['UD', 'unavoidable delay'],
    ['AD', 'avoidable delay'],
    ['Pn', 'plan'],
    ['R', 'rest'],
  ])(`%s is %s (${lecture}; three lists agree)`, (code, name) => {
    expect(fundamentalMotions.find((facts) => facts.code === code)?.name).toBe(name);
  });

  it.each<[MotionKind, RegExp]>([
    ['Sh', /black/],
    ['F', /^gr[ea]y$/],
    ['St', /light gr[ea]y/],
    ['G', /lake red/],
    ['H', /gold ochre/],
    ['TL', /^green$/],
    ['TE', /olive green/],
    ['P', /^blue$/],
    ['A', /(heavy|dark) violet/],
    ['U', /purple/],
    ['DA', /light violet/],
    ['I', /burnt ochre/],
    ['PP', /(sky|pale) blue/],
    ['RL', /carmine/],
    ['UD', /yellow ochre/],
  ])(`%s has its traditional colour %s (${lecture})`, (kind, colour) => {
    expect(motionFactsOf(kind).colourName).toMatch(colour);
    expect(sources[motionFactsOf(kind).colourSource].seen).not.toBe('memory');
  });

  it.each<[MotionKind, string]>([
    ['AD', 'lemon yellow'],
    ['Pn', 'brown'],
    ['R', 'orange'],
  ])('%s is %s (FROM MEMORY of Barnes; the table says so)', (kind, colour) => {
    expect(motionFactsOf(kind).colourName).toBe(colour);
    expect(sources[motionFactsOf(kind).colourSource].seen).toBe('memory');
  });

  it('are told apart by colour, by pattern and by code (our own choice; no source)', () => {
    for (const key of ['colour', 'pattern', 'code', 'name'] as const) {
      expect(new Set(motionFacts.map((facts) => facts[key])).size).toBe(19);
    }
  });
});

describe('effective and ineffective motions', () => {
  const { 'niebel-freivalds': niebel, groover } = groupings;

  it(`Niebel & Freivalds: 8 effective, 9 ineffective (${twoColumns})`, () => {
    expect(sorted(niebel.effective)).toEqual(sorted(['TE', 'TL', 'G', 'RL', 'PP', 'U', 'A', 'DA']));
    expect(sorted(niebel.ineffective)).toEqual(sorted(['Sh', 'St', 'P', 'I', 'Pn', 'UD', 'AD', 'R', 'H']));
    expect([niebel.effective.length, niebel.ineffective.length]).toEqual([8, 9]);
  });

  it(`Groover: 8 ineffective, the rest of his seventeen effective (${answer})`, () => {
    expect(sorted(groover.ineffective)).toEqual(sorted(['H', 'PP', 'P', 'Sh', 'St', 'Pn', 'UD', 'AD']));
    expect(sorted([...groover.effective, ...groover.ineffective])).toEqual(sorted(seventeen));
  });

  it(`the two differ in pre-position, inspect and rest and in nothing else (${twoColumns}; ${answer})`, () => {
    const kinds = fundamentalMotions.map((facts) => facts.kind);
    const differ = kinds.filter((kind) => groupOf(kind, 'niebel-freivalds') !== groupOf(kind, 'groover'));
    expect(sorted(differ)).toEqual(['I', 'PP', 'R']);
    expect(groupOf('PP', 'niebel-freivalds')).toBe('effective');
    expect(groupOf('I', 'groover')).toBe('effective');
    expect(groupOf('R', 'groover')).toBe('effective');
  });

  it('neither author lists find, and what is not marked is in no group', () => {
    for (const grouping of ['niebel-freivalds', 'groover'] as const) {
      expect(groupOf('F', grouping)).toBe('unlisted');
      expect(groupOf('unmarked', grouping)).toBe('unlisted');
    }
  });
});

describe('the symbols of the two-handed process chart', () => {
  it.each<[MotionKind, string, string]>([
    ['G', 'operation', 'circle'],
    ['P', 'operation', 'circle'],
    ['U', 'operation', 'circle'],
    ['RL', 'operation', 'circle'],
    ['TE', 'transport', 'arrow'],
    ['TL', 'transport', 'arrow'],
    ['H', 'hold', 'triangle-down'],
    ['UD', 'delay', 'capital-d'],
    ['AD', 'delay', 'capital-d'],
  ])(`%s is drawn as %s, a %s (${twoHand})`, (kind, symbol, shape) => {
    if (kind === 'unmarked') throw new Error('no motion');
    expect(symbolOfMotion[kind]).toBe(symbol);
    expect(processSymbols.find((facts) => facts.symbol === symbol)?.shape).toBe(shape);
  });

  it('every one of the eighteen has a symbol', () => {
    expect(sorted(Object.keys(symbolOfMotion))).toEqual(sorted(codes));
  });
});
