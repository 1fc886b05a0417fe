import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import type { Hand, Method, Motion, Study } from '../../../ground/study/index.ts';
import { type MethodReading, readMethod } from '../reading/index.ts';
import { type Effect, stakeOf } from '../stake/index.ts';
import { leadContext } from './context.ts';
import { findLeads } from './find-leads.ts';
import type { Lead } from './lead.ts';
import { leadRules } from './rules.ts';
import { type CycleRows, studyOf } from './testing/record.ts';

/** Cycles as they are seen in assembly work: things are fetched, worked on and let go, with faults in between. */
const thingArb = fc.constantFrom('ring', 'collar', 'body', 'driver');
const timeArb = fc.integer({ min: 1, max: 30 }).map((tenths) => tenths / 10);
const partArb = fc
  .tuple(thingArb, fc.array(timeArb, { minLength: 9, maxLength: 9 }), fc.nat(13))
  .map(([thing, t, way]) => {
    const fetch = `TE ${t[0]} ${thing} front>${thing}-bin, G ${t[1]} ${thing} ${thing}-bin>, TL ${t[2]} ${thing} ${thing}-bin>front`;
    const work = `A ${t[3]} ${thing} >front, RL ${t[4]} ${thing}`;
    const ways: readonly string[] = [
      `${fetch}, ${work}`,
      `${fetch}, P ${t[5]} ${thing} >front, ${work}`,
      `Sh ${t[6]} ${thing}, ${fetch}, ${work}`,
      `${fetch}, H ${t[7]} ${thing} >front, ${work}`,
      `UD ${t[8]}`,
      `AD ${t[8]}, ${fetch}, ${work}`,
      `${fetch}, RL ${t[5]} ${thing}, TE ${t[6]} ${thing} front>front, G ${t[7]} ${thing} front>, ${work}`,
      `${fetch}, U ${t[5]} ${thing}, TL ${t[6]} ${thing} front>${thing}-bin, PP ${t[7]} ${thing}, RL ${t[8]} ${thing}`,
      `I ${t[8]} ${thing}`,
      `TE ${t[0]} ${thing} [bends down], G ${t[1]} ${thing}`,
      `R ${t[8]}`,
      `H ${t[7]} ${thing}`,
      Array(3).fill(`${fetch}, ${work}`).join(', '),
      `Pn ${t[8]}, ${fetch}, ${work}, TL ${t[2]} coupling front>box, RL ${t[4]} coupling`,
    ];
    return ways[way] ?? '';
  });
const rowArb = fc.array(partArb, { minLength: 1, maxLength: 5 }).map((parts) => parts.join(', '));
const recordArb: fc.Arbitrary<Study> = fc
  .array(fc.tuple(rowArb, rowArb), { minLength: 1, maxLength: 6 })
  .map((cycles) => studyOf(cycles as CycleRows[], { unitsAYear: 100_000 }));
const seeded = (seed: number, numRuns = 250) => ({ seed, numRuns });

function reading(study: Study, method = 'm'): MethodReading | undefined {
  const result = readMethod(study, method);
  return result.ok ? result.value : undefined;
}

function withMethod(study: Study, change: (method: Method) => Method): Study {
  return { ...study, methods: study.methods.map(change) };
}

function read(study: Study): MethodReading {
  const found = reading(study);
  if (found === undefined) throw new Error('the record cannot be read');
  return found;
}

function expectHonest(from: MethodReading): void {
  const { leads, joint, cycle } = findLeads(from);
  expect(new Set(leads.map(({ id }) => id)).size).toBe(leads.length);
  for (const { low, high } of [...leads.map(({ atStake }) => atStake), joint.atStake]) {
    expect(low).toBeGreaterThanOrEqual(0);
    expect(high).toBeGreaterThanOrEqual(low);
    expect(high).toBeLessThanOrEqual(cycle);
  }
  for (const lead of leads) {
    expect(joint.atStake.low).toBeGreaterThanOrEqual(lead.atStake.low);
    expect(joint.atStake.high).toBeGreaterThanOrEqual(lead.atStake.high);
    expectTraced(from, lead);
  }
}

function expectTraced(from: MethodReading, lead: Lead): void {
  const { method } = from;
  const known = new Set(
    [method.left, method.right, method.cycles].flatMap((row) => [
      row.end,
      ...row.items.map(({ start }) => start),
    ]),
  );
  for (const cycle of from.cycles) known.add(cycle.from).add(cycle.to);
  expect(lead.traces.length).toBeGreaterThan(0);
  for (const trace of lead.traces) {
    const cycle = from.cycles[trace.cycle];
    expect(trace.from).toBeGreaterThanOrEqual(cycle?.from ?? Number.NaN);
    expect(trace.to).toBeLessThanOrEqual(cycle?.to ?? Number.NaN);
    expect(trace.to).toBeGreaterThan(trace.from);
    expect([known.has(trace.from), known.has(trace.to)]).toEqual([true, true]);
  }
  expect(lead.evidence).not.toMatch(/undefined|NaN|Infinity|\{|\[object/);
  expect(lead.cycles.length).toBeGreaterThan(0);
}

describe('laws of all leads', () => {
  it('plausible records: bounds, joint bound, traces on boundaries inside their cycles, ids once', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(recordArb, (study) => {
        const from = reading(study);
        if (from === undefined) return;
        expectHonest(from);
        for (const lead of findLeads(from).leads) seen.add(lead.code);
      }),
      seeded(71),
    );
    // A law that no lead ever meets says nothing.
    expect([...seen].sort()).toEqual(leadRules.map(({ code }) => code).sort());
  });

  it('any record at all, filmed or not', () => {
    fc.assert(
      fc.property(studyArb, fc.constantFrom('filmed', 'plain'), (study, method) => {
        const from = reading(study, method);
        if (from !== undefined) expectHonest(from);
      }),
      seeded(72),
    );
  });

  it('hands exchanged: the same leads in the other hand, worth the same', () => {
    const other: Readonly<Record<string, Hand | 'both'>> = { left: 'right', right: 'left', both: 'both' };
    fc.assert(
      fc.property(recordArb, (study) => {
        if (reading(study) === undefined) return;
        const mirrored = withMethod(study, (method) => ({
          ...method,
          left: method.right,
          right: method.left,
        }));
        const told = (of: Study, swap: boolean) =>
          findLeads(read(of))
            .leads.map(({ code, hand, about, atStake }) => ({
              code,
              hand: swap ? other[hand] : hand,
              about,
              ...atStake,
            }))
            .map((item) => JSON.stringify(item))
            .sort();
        expect(told(mirrored, true)).toEqual(told(study, false));
      }),
      seeded(73),
    );
  });

  it('where every motion is far above the floor, all times doubled give the same leads, worth twice as much', () => {
    fc.assert(
      fc.property(recordArb, (study) => {
        if (reading(study) === undefined) return;
        // Motions of 10 s to 300 s: no limit in fractions of a second plays a part, in one cycle of six neither.
        const slow = withMethod(study, (method) => stretched(method, 100));
        const twice = withMethod(slow, (method) => stretched(method, 2));
        const told = new Map(findLeads(read(twice)).leads.map((lead) => [lead.id, lead.atStake]));
        const { leads } = findLeads(read(slow));
        expect([...told.keys()].sort()).toEqual(leads.map(({ id }) => id).sort());
        for (const { id, atStake } of leads) {
          expect(Math.abs((told.get(id)?.low ?? Number.NaN) - 2 * atStake.low)).toBeLessThanOrEqual(1);
          expect(Math.abs((told.get(id)?.high ?? Number.NaN) - 2 * atStake.high)).toBeLessThanOrEqual(1);
        }
      }),
      seeded(76, 150),
    );
  });

  it('a lead that would change fewer motions is worth no more', () => {
    fc.assert(
      fc.property(recordArb, fc.array(fc.boolean(), { minLength: 1, maxLength: 7 }), (study, keeps) => {
        const from = reading(study);
        if (from === undefined) return;
        const context = leadContext(from);
        for (const rule of leadRules) {
          for (const draft of rule.find(context)) {
            const arrangement = draft.arrangement ?? rule.arrangement;
            const fewer = draft.effects.filter((_, index) => keeps[index % keeps.length]);
            for (const model of context.models) {
              const mine = (effects: readonly Effect[]) =>
                effects.filter(({ piece }) => piece.cycle === model.cycle.position);
              const all = stakeOf(model, mine(draft.effects), arrangement);
              const less = stakeOf(model, mine(fewer), arrangement);
              expect(less.low, rule.code).toBeLessThanOrEqual(all.low);
              expect(less.high, rule.code).toBeLessThanOrEqual(all.high);
            }
          }
        }
      }),
      seeded(77, 150),
    );
  });

  it('an ideal record, both hands the same effective motions at the same times, has no lead', () => {
    const durations = fc.array(fc.integer({ min: 4, max: 6 }), { minLength: 5, maxLength: 5 });
    const part = fc.tuple(durations, fc.nat()).map(([t, index]) => ({ t, index }));
    const cycles = fc.array(fc.array(part, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(cycles, (list) => {
        const rows = list.map((parts): CycleRows => {
          const row = (hand: string) =>
            parts
              .map(({ t }, index) => {
                const name = `part${index}`;
                const [a, b, c, d, e] = t.map((tenths) => tenths / 10);
                return `TE ${a} ${name} nest-${hand}>${name}-${hand}, G ${b} ${name} ${name}-${hand}>, TL ${c} ${name} ${name}-${hand}>nest-${hand}, A ${d} ${name} >nest-${hand}, RL ${e} ${name}`;
              })
              .join(', ');
          return [row('left'), row('right')];
        });
        expect(findLeads(read(studyOf(rows))).leads.map(({ id }) => id)).toEqual([]);
      }),
      seeded(75),
    );
  });
});

function stretched(method: Method, factor: number): Method {
  const row = <Item extends { readonly start: number }>(of: {
    readonly items: readonly Item[];
    readonly end: number;
  }) => ({
    items: of.items.map((item) => ({ ...item, start: item.start * factor })),
    end: of.end * factor,
  });
  return {
    ...method,
    left: row<Motion>(method.left),
    right: row<Motion>(method.right),
    cycles: row(method.cycles),
  };
}
