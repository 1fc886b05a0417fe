import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  meanCycle,
  type PacedMethod,
  type PacedNoise,
  pacedStudy,
} from '../../../../../../tests/helpers/paced-study.ts';
import { plainStudy } from '../../../../../../tests/helpers/plain-study.ts';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import type { Study } from '../../../ground/study/index.ts';
import { type Proof, type ProofChoice, proofOf } from './proof.ts';

const usual: PacedNoise = { motion: 0.15, cycle: 0.04 };
const motions = [
  'TE ring bench>bin 5',
  'G ring 3',
  'TL ring bin>bench 6',
  'P ring 5',
  'A ring 7',
  'Sh collar 8',
];
const shorter = motions.slice(0, 5);
const method = (cycles: number, more: Partial<PacedMethod> = {}): PacedMethod => ({
  motions,
  pace: 1,
  cycles,
  ...more,
});

function proof(study: Study, more: Partial<ProofChoice> = {}): Proof {
  const result = proofOf(study, { before: 'before', after: 'after', ...more });
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

describe('the claim', () => {
  it('of a better method at equal pace has the saving, its interval, output and pace', () => {
    const study = pacedStudy(method(40), method(40, { motions: shorter }), usual, 1);
    const { sentence, restsOn } = proof(study).claim;
    expect(sentence).toMatch(
      /^“New method” takes 2\.\d\d s a unit and “Old method” 3\.\d\d s: \d\d\.\d % of the time is saved, which is \d\d\.\d % more output in the same time \(95 % interval of the time saved \d\d\.\d % to \d\d\.\d %\); by the motions that both share, faster work does not explain it\.$/,
    );
    const [, saved] = /: (\d+\.\d) %/.exec(sentence) ?? [];
    const truth = 100 * (1 - meanCycle({ motions: shorter }) / meanCycle({ motions }));
    expect(Math.abs(Number(saved) - truth)).toBeLessThan(5);
    expect(restsOn[0]).toBe(
      'It rests on cycles 1–40 of 40 of “Old method” and cycles 1–40 of 40 of “New method”.',
    );
    expect(restsOn.join(' ')).toMatch(/2000 draws of the cycles from seed 1 .* removed 0\.\d\d s/);
  });

  it('of pace alone is no saving of the method', () => {
    const { claim, difference } = proof(pacedStudy(method(15), method(15, { pace: 0.75 }), usual, 2));
    expect(difference.verdict).toBe('shorter');
    expect(claim.sentence).toMatch(
      /: at equal pace a saving is not shown .*; of the \d+\.\d % of the time that was measured as saved, a part is faster work and not method\.$/,
    );
  });

  it('of method and pace together is the saving at equal pace', () => {
    const study = pacedStudy(method(30), method(30, { motions: shorter, pace: 0.8 }), usual, 3);
    const { sentence } = proof(study).claim;
    const [, saved] = /at equal pace (\d+\.\d) % of the time is saved/.exec(sentence) ?? [];
    const truth = 100 * (1 - meanCycle({ motions: shorter }) / meanCycle({ motions }));
    expect(Math.abs(Number(saved) - truth)).toBeLessThan(5);
  });

  it('of too few cycles is none', () => {
    const few = proof(
      pacedStudy(method(2), method(2, { motions: [...motions.slice(0, 5), 'Sh collar 7'] }), usual, 4),
    );
    expect(few.difference.verdict).toBe('open');
    expect(few.claim.sentence).toMatch(
      /: a difference is not shown \(95 % interval .*; \d+ more cycles of each could settle it\.$/,
    );
    const one = proof(pacedStudy(method(1), method(1, { motions: shorter }), usual, 4));
    expect(one.claim.sentence).toMatch(/but how sure this is cannot be said from these cycles\.$/);
    expect(one.notes.map(({ code }) => code)).toContain('evaluate/one-cycle');
  });

  it('of a worse method says so', () => {
    const { sentence } = proof(pacedStudy(method(20, { motions: shorter }), method(20), usual, 5)).claim;
    expect(sentence).toMatch(/more time is needed, which is \d+\.\d % less output in the same time/);
  });

  it('of invented data says so first, in the unit that is asked for', () => {
    const study = { ...pacedStudy(method(9), method(9, { motions: shorter }), usual, 6), demo: true };
    expect(proof(study, { unit: 'tmu' }).claim.sentence).toMatch(
      /^Invented data, no proof: “New method” takes \d+\.\d TMU a unit/,
    );
  });
});

describe('bad input', () => {
  it('is refused in words', () => {
    const study = pacedStudy(method(3), method(3), usual, 7);
    const code = (choice: ProofChoice, from = study) => {
      const result = proofOf(from, choice);
      return result.ok ? 'fine' : result.error.code;
    };
    expect(code({ before: 'before', after: 'before' })).toBe('evaluate/same-method');
    expect(code({ before: 'before', after: 'nowhere' })).toBe('record/no-method');
    expect(code({ before: 'before', after: 'after', cyclesAfter: [9] })).toBe('record/no-cycle');
    expect(code({ before: 'before', after: 'after', confidence: 2 })).toBe('evaluate/number');
    expect(code({ before: 'm', after: 'm' }, plainStudy())).toBe('record/nothing-marked');
  });

  it('any study gives whole sentences and finite numbers, or a finding', () => {
    fc.assert(
      fc.property(studyArb, fc.boolean(), (study, proposed) => {
        const result = proofOf(study, { before: 'filmed', after: 'plain', proposed, draws: 100 });
        const told = result.ok ? JSON.stringify(result.value.claim) : result.error.message;
        expect(told).not.toMatch(/NaN|Infinity|undefined|\{\w+\}/);
        if (!result.ok) return;
        const { difference, decomposition } = result.value;
        const numbers: number[] = [];
        JSON.stringify({ difference, totals: decomposition.totals }, (_, value) => {
          if (typeof value === 'number') numbers.push(value);
          return value;
        });
        expect(numbers.every(Number.isFinite)).toBe(true);
      }),
      { seed: 61, numRuns: 200 },
    );
  });
});
