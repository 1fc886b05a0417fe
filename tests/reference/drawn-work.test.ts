import { readFileSync } from 'node:fs';
import { checkWork, type Work, type WorkStep, workFromRecord } from '@evenhand/core/develop';
import { parseStudy, type Study } from '@evenhand/core/ground/study';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { improvedScript } from '../../examples/couplings/script-improved.ts';
import { presentScript } from '../../examples/couplings/script-present.ts';
import { twoHandStudyArb } from '../helpers/two-hand-records.ts';
import { twoHandStudy } from '../helpers/two-hand-study.ts';

const demo = parseStudy(
  readFileSync(new URL('../../examples/couplings/couplings.evenhand.json', import.meta.url), 'utf8'),
);
function drawn(study: Study, method: string, cycle?: number) {
  const work = workFromRecord(study, method, { cycle });
  if (!work.ok) throw new Error(work.error.message);
  return work.value;
}
const demoWork = (method: string) => {
  if (!demo.ok) throw new Error('demo');
  return drawn(demo.value, method, 1).work;
};
const kindsOf = ({ motions }: WorkStep) => motions.map(({ kind }) => kind).join(' ');
const stepWith = (work: Work, place: string, kinds: string, unit = 1) => {
  const found = work.steps.filter(
    (step) => step.place === place && kindsOf(step) === kinds && step.unit === unit,
  );
  expect(found.length, `${place} ${kinds} ${unit}`).toBeGreaterThan(0);
  return found;
};
const ends = ({ before, after }: WorkStep) => `${before ?? '-'} > ${after ?? '-'}`;

/** Every step that must have ended before, also through others. */
function allBefore(work: Work, step: WorkStep): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (id: string) => {
    for (const link of work.steps.find((item) => item.id === id)?.follows ?? []) {
      if (found.has(link.step)) continue;
      found.add(link.step);
      visit(link.step);
    }
  };
  visit(step.id);
  return found;
}

describe('the present method of the demonstration, as its script says', () => {
  const work = demoWork('present');

  it('what the script does at a place is in a step, every motion once, in its order', () => {
    const [, second] = presentScript().cycles;
    const script = presentScript();
    for (const hand of ['left', 'right'] as const) {
      const wanted = script[hand].filter(
        ({ kind, start }) =>
          start >= (script.cycles[0]?.start ?? 0) &&
          start < (second?.start ?? 0) &&
          !['TE', 'TL', 'H', 'UD', 'unmarked'].includes(kind),
      );
      const found = work.steps.filter(({ from }) => from?.every((motion) => motion.hand === hand));
      expect(found.flatMap(({ motions }) => motions.map(({ kind }) => kind))).toEqual(
        wanted.map(({ kind }) => kind),
      );
    }
  });

  it('parts are taken up, fitted and laid aside: loads, places and unit', () => {
    expect(work.unitsPerCycle).toBe(1);
    expect(stepWith(work, 'body-bin', 'G').map(ends)).toEqual(['- > body']);
    expect(stepWith(work, 'ring-bin', 'St G').map(ends)).toEqual(['- > sealing ring']);
    expect(stepWith(work, 'collar-bin', 'G').map(ends)).toEqual(['- > collar']);
    expect(stepWith(work, 'holding-place', 'A RL').map(ends)).toEqual(['sealing ring > -', 'collar > -']);
    expect(stepWith(work, 'finished-box', 'RL').map(ends)).toEqual(['coupling > -']);
    expect(new Set(work.steps.map(({ unit }) => unit))).toEqual(new Set([1]));
  });

  it('the left hand holds the body at every step in front, and it is a coupling after the last', () => {
    const front = work.steps.filter(({ place }) => place === 'holding-place');
    expect(front).toHaveLength(5);
    for (const { held } of front)
      expect(held).toMatchObject({ object: 'body', place: 'holding-place', by: 'hand' });
    expect(front.map(({ held }) => held?.becomes)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
      'coupling',
    ]);
  });

  it('ring before collar, both on the body, and all before it is laid aside', () => {
    const [aside] = stepWith(work, 'finished-box', 'RL');
    const [body] = stepWith(work, 'body-bin', 'G');
    const [collar] = stepWith(work, 'collar-bin', 'G');
    const [ring, fitted] = stepWith(work, 'holding-place', 'P');
    if (!aside || !body || !collar || !ring || !fitted) throw new Error('steps');
    expect(allBefore(work, aside).size).toBe(work.steps.length - 1);
    expect(allBefore(work, ring)).toContain(body.id);
    expect(allBefore(work, fitted)).toContain(ring.id);
    expect(allBefore(work, fitted)).toContain(collar.id);
    // Getting the collar waits for nothing: the script fetches it late, but nothing asks for that.
    expect(allBefore(work, collar).size).toBe(0);
  });

  it('select and position are looked at', () => {
    for (const step of work.steps) {
      expect(step.eyes, step.name).toBe(step.motions.some(({ kind }) => kind === 'P' || kind === 'St'));
    }
  });
});

describe('the improved method of the demonstration, as its script says', () => {
  const work = demoWork('improved');

  it('two units, each hand’s own, every motion of the script once', () => {
    const script = improvedScript();
    expect(work.unitsPerCycle).toBe(2);
    expect(new Set(work.steps.map(({ unit }) => unit))).toEqual(new Set([1, 2]));
    for (const side of ['left', 'right']) {
      const own = work.steps.filter(({ place }) => place.endsWith(side));
      expect(new Set(own.map(({ unit }) => unit)).size, side).toBe(1);
      const wanted = script[side as 'left' | 'right'].filter(
        ({ kind, start }) =>
          start >= (script.cycles[0]?.start ?? 0) &&
          start < (script.cycles[1]?.start ?? 0) &&
          !['TE', 'TL', 'H', 'UD', 'unmarked'].includes(kind),
      );
      expect(own.flatMap(({ motions }) => motions.map(({ kind }) => kind))).toEqual(
        wanted.map(({ kind }) => kind),
      );
    }
  });

  it('a nest holds the body: no hand holds, and it is free when the coupling is lifted out', () => {
    expect(work.steps.every(({ held }) => held?.by !== 'hand')).toBe(true);
    expect(work.spots).toHaveLength(2);
    for (const { place, claimedBy, releasedBy } of work.spots ?? []) {
      const [claims, frees] = [claimedBy, releasedBy].map((id) => work.steps.find((step) => step.id === id));
      expect(claims?.place).toBe(place);
      expect(claims && ends(claims)).toBe('body > -');
      expect(frees && ends(frees)).toBe('- > coupling');
    }
    for (const { id, kind } of work.places) {
      if (id.startsWith('nest')) expect(kind).toBe('fixture');
      if (id.startsWith('chute')) expect(kind).toBe('exit');
      if (id.includes('-bin-')) expect(kind).toBe('bin');
    }
  });
});

describe('small records, by hand', () => {
  const cycle = (left: string, right: string) => drawn(twoHandStudy([{ left, right }]), 'm');

  it('a hold that nothing is done to is left out, and told', () => {
    const { work, notes } = cycle(
      'TE lid x>shelf 3, G lid shelf>shelf 2, H lid x>shelf 9',
      'TE nut >tray 3, G nut tray> 2, TL nut tray>box 4, RL nut >box 1',
    );
    expect(work.steps.every(({ held }) => held === undefined)).toBe(true);
    expect(notes.map(({ code }) => code)).toContain('develop/hold-serves-nothing');
  });

  it('both hands doing one thing at one place are one step of both', () => {
    const side = (hand: string) =>
      `TE case ${hand}>stack 4, G case stack> 3, TL case stack>table 5, P case >table 4, RL case >table 1`;
    const { work } = cycle(side('l'), side('r'));
    const both = work.steps.filter(({ hand }) => hand === 'both');
    expect(both.map(kindsOf)).toEqual(['P RL']);
    expect(checkWork(work)).toEqual([]);
  });

  it('a mirrored record gives the same work', () => {
    const [left, right] = [
      'TE body x>bin 3, G body bin> 2, TL body bin>front 4, H body >front 12, TL body front>box 4, RL body >box 1',
      'TE ring x>rings 3, G ring rings> 2, TL ring rings>front 4, P ring >front 3, A ring >front 5, RL ring >front 1, UD 6',
    ];
    const plain = ({ work: { steps } }: ReturnType<typeof cycle>) =>
      steps
        .map(({ place, motions, before, after, held, eyes, hand }) => ({
          place,
          motions,
          before,
          after,
          held,
          eyes,
          hand,
        }))
        .sort((a, b) => JSON.stringify(a).localeCompare(JSON.stringify(b), 'en'));
    expect(plain(cycle(right, left))).toEqual(plain(cycle(left, right)));
    expect(cycle(left, right).work.steps.filter(({ held }) => held !== undefined)).toHaveLength(2);
  });

  it('what passes from hand to hand is let go only after the other hand has it', () => {
    const { work } = cycle(
      'TE rod x>rack 3, G rod rack> 2, TL rod rack>front 4, H rod >front 2, RL rod >front 1',
      'UD 9, G rod front> 2, TL rod front>box 5, RL rod >box 1',
    );
    const [taken] = stepWith(work, 'rack', 'G');
    const [over] = stepWith(work, 'front', 'G');
    const [free] = stepWith(work, 'front', 'RL');
    const [aside] = stepWith(work, 'box', 'RL');
    if (!taken || !over || !free || !aside) throw new Error('steps');
    expect(allBefore(work, over)).toContain(taken.id);
    expect(allBefore(work, free)).toContain(over.id);
    expect(allBefore(work, aside)).toContain(over.id);
    expect(checkWork(work)).toEqual([]);
  });
});

describe('any record', () => {
  it('gives a work whose faults are told in words, or a finding', () => {
    fc.assert(
      fc.property(twoHandStudyArb(), (study) => {
        const result = workFromRecord(study, study.methods[0]?.id ?? '');
        const told = result.ok ? [...checkWork(result.value.work), ...result.value.notes] : [result.error];
        for (const { message } of told) expect(message).not.toMatch(/undefined|NaN|\{\w+\}/);
        if (!result.ok) return;
        const { steps } = result.value.work;
        expect(checkWork(result.value.work).map(({ code }) => code)).not.toContain('develop/circle');
        expect(checkWork(result.value.work).map(({ code }) => code)).not.toContain('develop/unknown-step');
        expect(checkWork(result.value.work).map(({ code }) => code)).not.toContain('develop/unknown-place');
        expect(
          steps.flatMap(({ motions }) => motions).some(({ kind }) => kind === 'TE' || kind === 'TL'),
        ).toBe(false);
      }),
      { numRuns: 300, seed: 5 },
    );
  });
});
