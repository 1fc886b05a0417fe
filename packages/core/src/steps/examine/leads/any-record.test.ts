import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import { type MethodReading, readMethod } from '../reading/index.ts';
import { leadContext } from './context.ts';
import { findLeads } from './find-leads.ts';
import { leadRules } from './rules.ts';
import { readingOf } from './testing/record.ts';

const readings = fc
  .tuple(studyArb, fc.constantFrom('filmed', 'plain'), fc.boolean())
  .map(([study, id, proposed]) => readMethod(study, id, { proposed }))
  .filter((result) => result.ok)
  .map((result): MethodReading => result.value);

describe('every lead on any record', () => {
  it('shows where it lies, inside its cycle, and says it in figures', () => {
    fc.assert(
      fc.property(readings, (reading) => {
        for (const lead of findLeads(reading).leads) {
          expect(lead.traces.length).toBeGreaterThan(0);
          for (const { cycle, from, to } of lead.traces) {
            const whole = reading.cycles[cycle];
            expect(from).toBeGreaterThanOrEqual(whole?.from ?? Number.NaN);
            expect(to).toBeLessThanOrEqual(whole?.to ?? Number.NaN);
            expect(from).toBeLessThan(to);
          }
          expect(lead.figures.every(({ value }) => Number.isFinite(value) && value >= 0)).toBe(true);
          expect(lead.evidence).not.toMatch(/NaN|Infinity|undefined/);
          expect(lead.evidence).toMatch(/\d/);
        }
      }),
      { seed: 311, numRuns: 300 },
    );
  });

  it('has a name of its own, and changes only motions of the reading, each to no more than it is', () => {
    fc.assert(
      fc.property(readings, (reading) => {
        const ids = findLeads(reading).leads.map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
        const context = leadContext(reading);
        for (const { effects } of leadRules.flatMap((rule) => rule.find(context))) {
          for (const { piece, least, most } of effects) {
            expect(reading.cycles[piece.cycle]?.[piece.hand][piece.position]).toBe(piece);
            expect(least).toBeGreaterThanOrEqual(0);
            expect(most).toBeGreaterThanOrEqual(least);
            expect(most).toBeLessThanOrEqual(piece.duration);
            expect(piece.kind).not.toBe('unmarked');
          }
        }
      }),
      { seed: 312, numRuns: 300 },
    );
  });

  it('is worth between nothing and the cycle; all together no less than any one', () => {
    fc.assert(
      fc.property(readings, (reading) => {
        const { cycle, joint, leads } = findLeads(reading);
        for (const { atStake } of [...leads, joint]) {
          expect(atStake.low).toBeGreaterThanOrEqual(0);
          expect(atStake.high).toBeGreaterThanOrEqual(atStake.low);
          expect(atStake.high).toBeLessThanOrEqual(cycle + 1);
          expect(joint.atStake.low).toBeGreaterThanOrEqual(atStake.low);
          expect(joint.atStake.high).toBeGreaterThanOrEqual(atStake.high);
        }
      }),
      { seed: 313, numRuns: 300 },
    );
  });
});

describe('an ideal record: both hands the same effective motions at the same times, near bins, drop delivery', () => {
  const places = {
    'bin-left': { x: -168, y: 250 },
    'bin-right': { x: 168, y: 250 },
    'nest-left': { x: -75, y: 150 },
    'nest-right': { x: 75, y: 150 },
  };
  const side = (hand: string) =>
    `TE 0.4 ring nest-${hand}>bin-${hand}, G 0.3 ring bin-${hand}>, TL 0.4 ring bin-${hand}>nest-${hand}, A 0.6 ring >nest-${hand}, RL 0.1 ring`;

  it('has no lead, in one cycle or in many, with places or without', () => {
    const rows = [side('left'), side('right')] as const;
    const plain = rows.map((row) => row.replaceAll(/ [\w-]*>[\w-]*/g, ''));
    const bare = [plain[0] ?? '', plain[1] ?? ''] as const;
    for (const cycles of [[rows], [rows, rows, rows], [bare], [bare, bare, bare, bare, bare]]) {
      expect(findLeads(readingOf(cycles, { places })).leads).toEqual([]);
    }
  });
});
