import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  meanCycle,
  type PacedMethod,
  type PacedNoise,
  pacedStudy,
} from '../../../../../../tests/helpers/paced-study.ts';
import { mirrored, twoHandStudyArb } from '../../../../../../tests/helpers/two-hand-records.ts';
import type { Study } from '../../../ground/study/index.ts';
import { type MethodReading, readMethod } from '../../examine/index.ts';
import { type EqualPace, paceOf } from './pace.ts';
import { sharedMotions } from './shared-motions.ts';

/** Ring and collar are fetched as before from a fixture beside the bench; a search is gone, the far bin is moved nearer. */
const oldMotions = [
  'TE ring bench>bin 5',
  'St ring 4',
  'G ring 3',
  'TL ring bin>bench 6',
  'P ring 5',
  'A ring 7',
  'Sh collar 6',
  'TE collar bench>far-bin 11',
  'G collar 3',
  'TL collar far-bin>bench 12',
  'A collar 9',
  'TL coupling bench>box 5',
];
const newMotions = [
  'TE ring fixture>bin 5',
  'St ring 4',
  'G ring 3',
  'TL ring bin>fixture 6',
  'P ring 5',
  'A ring 7',
  'TE collar fixture>bin 6',
  'G collar 3',
  'TL collar bin>fixture 7',
  'PP collar 2',
  'A collar 9',
  'TL coupling fixture>box 5',
];

const quiet: PacedNoise = { motion: 0, cycle: 0 };
const usual: PacedNoise = { motion: 0.18, cycle: 0.05 };

function pace(study: Study, confidence?: number): EqualPace {
  const [before, after] = ['before', 'after'].map((id) => readMethod(study, id));
  if (!before?.ok || !after?.ok) throw new Error('cannot be read');
  return paceOf(before.value, after.value, confidence);
}

const old = (cycles: number, more: Partial<PacedMethod> = {}): PacedMethod => ({
  motions: oldMotions,
  pace: 1,
  cycles,
  ...more,
});
const fresh = (cycles: number, ratio: number, more: Partial<PacedMethod> = {}): PacedMethod => ({
  motions: newMotions,
  pace: ratio,
  cycles,
  ...more,
});

describe('a known mixture of method and pace, without noise', () => {
  it.each([0.75, 0.9, 1, 1.2])('at a pace of %d is told apart exactly', (ratio) => {
    const found = pace(pacedStudy(old(4), fresh(4, ratio), quiet, 1));
    expect(found.ratio).toBeCloseTo(ratio, 5);
    const truth = 1 - meanCycle({ motions: newMotions }) / meanCycle({ motions: oldMotions });
    expect(found.equal?.saving.timeSaved).toBeCloseTo(truth, 5);
    expect(found.raw.timeSaved).toBeCloseTo(1 - ratio * (1 - truth), 5);
  });

  it('leaves alone what a machine does: only the time in which a hand works follows the pace', () => {
    const study = pacedStudy(old(4, { wait: 30 }), fresh(4, 0.8, { wait: 30 }), quiet, 1);
    const found = pace(study);
    const [before, after] = [oldMotions, newMotions].map((motions) => meanCycle({ motions, wait: 30 }));
    expect(found.ratio).toBeCloseTo(0.8, 5);
    expect(found.equal?.after).toBeCloseTo(after ?? 0, -2);
    expect(found.equal?.saving.timeSaved).toBeCloseTo(1 - (after ?? 0) / (before ?? 1), 5);
  });

  it('compares only what is shared: what was searched, moved nearer or added is left out', () => {
    const { motions } = pace(pacedStudy(old(4), fresh(4, 1), quiet, 1));
    expect(motions.map(({ name }) => name)).toEqual([
      'assemble, collar',
      'assemble, ring',
      'grasp, collar',
      'grasp, ring',
      'position, ring',
      'select, ring',
      'transport empty, ring',
      'transport loaded, coupling',
      'transport loaded, ring',
    ]);
    const ring = motions.find(({ name }) => name === 'transport empty, ring');
    expect(ring?.before.distance).toBeCloseTo(Math.hypot(250, 100), 9);
    expect(ring?.after.distance).toBeCloseTo(Math.hypot(240, 90), 9);
    expect(motions.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
  });
});

describe('a known mixture of method and pace, with noise', () => {
  const studies = 400;
  it.each([0.8, 1, 1.15])('at a pace of %d, 95 of 100 intervals hold the truth', (ratio) => {
    const truth =
      1 - meanCycle({ motions: newMotions, wait: 10 }) / meanCycle({ motions: oldMotions, wait: 10 });
    let [paceHeld, savingHeld] = [0, 0];
    for (let seed = 1; seed <= studies; seed += 1) {
      const study = pacedStudy(old(8, { wait: 10 }), fresh(6, ratio, { wait: 10 }), usual, seed);
      const { interval, equal } = pace(study);
      if (interval && interval.low <= ratio && ratio <= interval.high) paceHeld += 1;
      const saved = equal?.timeSaved;
      if (saved && saved.low <= truth && truth <= saved.high) savingHeld += 1;
    }
    // Three standard errors of a share of 0.95 of 400 are 0.033.
    expect(Math.abs(paceHeld / studies - 0.95)).toBeLessThan(0.033);
    expect(Math.abs(savingHeld / studies - 0.95)).toBeLessThan(0.033);
  });
});

describe('what the reader is told', () => {
  const notes = (study: Study) => pace(study).notes.map(({ code }) => code);

  it('a pace that explains a material part is a warning with the saving at equal pace', () => {
    const found = pace(pacedStudy(old(12), fresh(12, 0.8), usual, 5));
    const [note] = found.notes;
    expect(note).toMatchObject({ code: 'evaluate/pace-explains', severity: 'warning' });
    expect(note?.message).toMatch(
      /The same motions took \d+ % of their time in “Old method” when done in “New method”.* Use the saving at equal pace, \d/,
    );
  });

  it('equal pace with enough cycles is no warning; too few cycles leave it open', () => {
    expect(notes(pacedStudy(old(60), fresh(60, 1), usual, 6))).toEqual([]);
    expect(notes(pacedStudy(old(2), fresh(2, 1), { motion: 0.3, cycle: 0.1 }, 7))).toEqual([
      'evaluate/pace-unsure',
    ]);
    expect(notes(pacedStudy(old(1), fresh(1, 0.7), usual, 8))).toEqual(['evaluate/pace-unknown']);
  });

  it('slower work that hides a saving is a note', () => {
    expect(notes(pacedStudy(old(12), fresh(12, 1.25), usual, 9))).toEqual(['evaluate/pace-hides']);
  });

  it('pace alone, with the same method: nothing is left at equal pace', () => {
    const found = pace(pacedStudy(old(12), { ...old(12), pace: 0.8 }, usual, 10));
    expect(found.raw.timeSaved).toBeGreaterThan(0.1);
    const saved = found.equal?.timeSaved;
    expect(saved && saved.low < 0 && 0 < saved.high).toBe(true);
    expect(found.explained).toBeGreaterThan(0.8);
    expect(found.notes[0]?.code).toBe('evaluate/pace-explains');
  });

  it('motions that do not agree are pointed at, with what the ratio is without one of them', () => {
    const harder = newMotions.map((text) => (/^(G|St) /.test(text) ? text.replace(/\d+$/, '14') : text));
    const found = pace(pacedStudy(old(12), fresh(12, 0.4, { motions: harder }), usual, 11));
    expect(found.notes.map(({ code }) => code)).toEqual([
      'evaluate/pace-explains',
      'evaluate/pace-disagrees',
    ]);
    expect(found.notes[1]?.message).toMatch(
      /^Of the 9 shared motions, 6 ran faster in the new method and 3 slower/,
    );
    expect(found.withoutOne?.low).toBeLessThan(found.ratio ?? 0);
    expect(found.withoutOne?.high).toBeGreaterThan(found.ratio ?? 0);
  });

  it('without a shared motion nothing is said about pace', () => {
    const found = pace(
      pacedStudy(old(5), fresh(5, 0.8, { motions: ['PP nut 5', 'U spanner 9'] }), usual, 12),
    );
    expect(found).toMatchObject({ ratio: undefined, equal: undefined, explained: undefined, share: 0 });
    expect(found.notes.map(({ code }) => code)).toEqual(['evaluate/no-shared-motion']);
  });
});

describe('laws on random records', () => {
  const readings = (study: Study) => {
    const result = readMethod(study, 'm');
    return result.ok ? result.value : undefined;
  };

  it('a method against itself shares every motion at the same pace; mirrored ones too', () => {
    fc.assert(
      fc.property(twoHandStudyArb(), (study) => {
        const [one, turned] = [readings(study), readings(mirrored(study))];
        if (one === undefined || turned === undefined) return;
        for (const other of [one, turned]) {
          const found = paceOf(one, other);
          for (const { ratio } of other === one ? found.motions : []) expect(ratio).toBeCloseTo(1, 12);
          if (other === one && found.ratio !== undefined) expect(found.ratio).toBeCloseTo(1, 12);
          const numbers: number[] = [];
          JSON.stringify(
            { ...found, motions: found.motions.map(({ before: _, after: __, ...rest }) => rest) },
            (_, value) => {
              if (typeof value === 'number') numbers.push(value);
              return value;
            },
          );
          expect(numbers.every(Number.isFinite)).toBe(true);
        }
      }),
      { seed: 47, numRuns: 300 },
    );
  });

  it('the other way round gives the inverse ratio and the same shared motions', () => {
    fc.assert(
      fc.property(twoHandStudyArb(), twoHandStudyArb(), (first, second) => {
        const [one, two] = [readings(first), readings(second)] as (MethodReading | undefined)[];
        if (one === undefined || two === undefined) return;
        const names = (a: MethodReading, b: MethodReading) =>
          sharedMotions(a, b).map(({ name, hand }) => `${name} ${hand}`);
        expect(names(two, one)).toEqual(names(one, two));
        const [there, back] = [paceOf(one, two).ratio, paceOf(two, one).ratio];
        if (there === undefined || back === undefined) expect(there).toBe(back);
        else expect(there * back).toBeCloseTo(1, 9);
      }),
      { seed: 48, numRuns: 300 },
    );
  });
});
