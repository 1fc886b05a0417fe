import { readFile } from 'node:fs/promises';
import { causes, type Proof, proofOf } from '@evenhand/core/evaluate';
import { endOf, type Method, methodClock, parseStudy, type Study } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';

const file = new URL('../../examples/couplings/couplings.evenhand.json', import.meta.url);

async function demo(): Promise<Study> {
  const parsed = parseStudy(await readFile(file, 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.error));
  return parsed.value;
}

function proof(study: Study, before = 'present', after = 'improved'): Proof {
  const result = proofOf(study, { before, after });
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

const sum = (numbers: readonly number[]) => numbers.reduce((all, value) => all + value, 0);

/** Mean time for a unit from the frames alone, microseconds. */
function meanUnit(study: Study, id: string): number {
  const method = study.methods.find((item) => item.id === id) as Method;
  const clock = methodClock(study, method);
  const times = method.cycles.items.flatMap((cycle, index) =>
    cycle.setAside === undefined
      ? [clock.timeOf(endOf(method.cycles, index)) - clock.timeOf(cycle.start)]
      : [],
  );
  return sum(times) / times.length / method.unitsPerCycle;
}

describe('the proof of the demonstration (invented data)', () => {
  it('starts from the mean times that the frames give, without the cycle that is set aside', async () => {
    const study = await demo();
    const { difference, decomposition } = proof(study);
    expect(difference.before.sample.mean).toBeCloseTo(meanUnit(study, 'present'), 6);
    expect(difference.after.sample.mean).toBeCloseTo(meanUnit(study, 'improved'), 6);
    expect(difference.before.sample.n).toBe(6);
    expect(decomposition.saved).toBe(decomposition.before - decomposition.after);
    expect(Math.abs(decomposition.saved - difference.saved)).toBeLessThanOrEqual(1);
  });

  it('takes the difference apart without a remainder, by cause, by motion and by hand', async () => {
    const { decomposition } = proof(await demo());
    const { rows, totals, byHand, saved } = decomposition;
    expect(sum(rows.map((row) => row.saved))).toBe(saved);
    expect(sum(causes.map((cause) => totals[cause]))).toBe(saved);
    expect(byHand.left + byHand.right).toBe(saved);
    // The improved method does for two units at once, with both hands, what one hand did for one.
    expect(totals['made simultaneous']).toBeGreaterThan(saved / 2);
    // Only the improved method lays bodies into a fixture, and only in the present one the left hand holds them.
    expect(rows.find(({ name }) => name === 'position, body')?.parts.map(({ cause }) => cause)).toEqual([
      'added',
    ]);
  });

  it('mirrored, it is the same proof with the hands exchanged', async () => {
    const study = await demo();
    const turned = {
      ...study,
      methods: study.methods.map((method) => ({ ...method, left: method.right, right: method.left })),
    };
    const [straight, mirror] = [proof(study), proof(turned)];
    expect(mirror.difference).toEqual(straight.difference);
    expect(mirror.decomposition.totals).toEqual(straight.decomposition.totals);
    expect(Math.abs(mirror.decomposition.byHand.left - straight.decomposition.byHand.right)).toBeLessThan(50);
    expect(mirror.pace.ratio).toBeCloseTo(straight.pace.ratio ?? 0, 12);
    expect(mirror.pace.motions.map(({ name }) => name).sort()).toEqual(
      straight.pace.motions.map(({ name }) => name).sort(),
    );
  });

  it('the other way round it is a loss of the same time, at the inverse pace', async () => {
    const study = await demo();
    const [there, back] = [proof(study), proof(study, 'improved', 'present')];
    expect(back.decomposition.saved).toBe(-there.decomposition.saved);
    expect((there.pace.ratio ?? 0) * (back.pace.ratio ?? 0)).toBeCloseTo(1, 9);
    expect(back.difference.chance).toBeCloseTo(there.difference.chance ?? 0, 12);
    expect([there.difference.verdict, back.difference.verdict]).toEqual(['shorter', 'longer']);
  });

  it('is told in one sentence that says it is invented, and points at the film', async () => {
    const { claim, decomposition } = proof(await demo());
    expect(claim.sentence).toMatch(/^Invented data, no proof: “Improved method” takes/);
    expect(claim.restsOn[0]).toBe(
      'It rests on cycles 1–5, 7 of 7 of “Present method” and cycles 1–6 of 6 of “Improved method”.',
    );
    for (const row of decomposition.rows) {
      const [before, after] = [row.before.pieces.length, row.after.pieces.length];
      expect(before + after).toBeGreaterThan(0);
    }
  });
});
