import { examinationReportSchema } from '@evenhand/core/examine';
import { writeStudy } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';
import { smallStudy } from '../testing/small-study.ts';

const study = { ...smallStudy, operation: { name: 'Put a coupling together', unitsAYear: 90_000 } };
const examine = (...more: string[]) =>
  call(['examine', 'a.json', ...more], { files: { 'a.json': writeStudy(study) } });
const asJson = async (...more: string[]) => JSON.parse((await examine('--json', ...more)).out);

describe('evenhand examine', () => {
  it('prints leads with what is at stake, their frames, principle, remedies, questions and rule', async () => {
    const { code, out } = await examine('--cycles', '1');
    expect(code).toBe(0);
    expect(out).toContain('Hose couplings: Present method, cycle 1 (1 of 2), 1 unit a cycle');
    // One hand holds for all 2.5 s of the cycle; shared, the other hand's 2.5 s are two times 1.25 s.
    // The ring goes through grasp and transport, 1.5 s, one after the other: 1.0 s at most, 25 h in 90,000 cycles.
    expect(out).toContain('Holding in one hand, left hand, body');
    expect(out).toContain('At stake 0.00 to 1.00 s a cycle, 0 to 25 hours a year');
    expect(out).toContain('See 0.00 s to 2.50 s in cycle 1.');
    expect(out).toMatch(/Principle 18: .+number from memory/s);
    expect(out).toMatch(/– eliminate: A fixture/);
    expect(out).toMatch(/\? What does the hand prevent/);
    expect(out).toMatch(/How it is computed: The hold is gone/);
    expect(out).toMatch(/Not the sum of the leads/);
    expect(out).toContain('Figures of one cycle: no spread and no interval');
  });

  it('gives mean, spread and interval over two cycles', async () => {
    // 2.5 s and 1.5 s: mean 2, deviation √0.5, interval ± 12.706 × 0.5 by Student's t with one degree of freedom.
    const { cycleTime } = await asJson();
    expect(cycleTime).toMatchObject({ n: 2, mean: 2_000_000 });
    expect(cycleTime.deviation).toBeCloseTo(Math.SQRT1_2 * 1e6, 3);
    expect((cycleTime.interval.high - cycleTime.interval.low) / 2e6).toBeCloseTo(12.7062 / 2, 3);
    const { out } = await examine('--figures');
    expect(out).toContain('2.00 s    0.71 s     0.00 s to 8.35 s');
  });

  it('prints one part alone when asked', async () => {
    const leads = await examine('--leads');
    expect(leads.out).toContain('lead');
    expect(leads.out).not.toContain('Time by motion');
    const figures = await examine('--figures');
    expect(figures.out).toContain('Time by motion');
    expect(figures.out).not.toContain('At stake');
    expect(Object.keys(await asJson('--leads'))).not.toContain('figures');
    expect(Object.keys(await asJson('--figures'))).not.toContain('leads');
  });

  it('the JSON keeps to its published schema and names the stretch behind every figure', async () => {
    for (const more of [
      [],
      ['--leads'],
      ['--figures', '--cycles', '2'],
      ['--method', 'better', '--unit', 'tmu'],
    ]) {
      const report = await asJson(...more);
      expect(examinationReportSchema.parse(report)).toEqual(report);
    }
    const { figures } = await asJson('--cycles', '1');
    const grasp = figures.rows.find(
      (row: { label: string; hand: string }) => row.label === 'grasp: time' && row.hand === 'right',
    );
    expect(grasp).toMatchObject({
      value: 500_000,
      traces: [{ cycle: 1, hand: 'right', from: 1_000_000, to: 1_500_000 }],
    });
  });

  it('names the author of the grouping', async () => {
    expect((await examine('--figures', '--grouping', 'groover')).out).toContain('after Groover');
    expect((await examine('--figures')).out).toContain('after Niebel & Freivalds');
  });

  it('says which critical examinations were noted', async () => {
    const noted = {
      ...study,
      examinations: [
        {
          id: 'x1',
          subject: { kind: 'lead' as const, method: 'present', lead: 'hold:left:body' },
          decision: { choice: 'eliminate' as const, reason: 'A nest holds the body.' },
        },
      ],
    };
    const files = { 'a.json': writeStudy(noted) };
    const json = JSON.parse((await call(['examine', 'a.json', '--json'], { files })).out);
    expect(json.examinations[0].decision).toEqual({ choice: 'eliminate', reason: 'A nest holds the body.' });
    expect((await call(['examine', 'a.json'], { files })).out).toContain('eliminate: A nest holds the body.');
  });

  it.each<[readonly string[], RegExp]>([
    [['--cycles', '4-2'], /4–2 runs backwards\. Write 2-4\./],
    [['--cycles', 'all'], /“all” is no choice of cycles\. Write numbers and stretches, such as 1-4, 6\./],
    [['--cycles', '1-900000000'], /too many cycles at once/],
    [['--cycles', '3'], /3/],
    [['--method', 'other'], /other/],
    [['--unit', 'jiffies'], /--unit jiffies is not known/],
    [['--grouping', 'nobody'], /--grouping nobody is not known/],
  ])('%j is refused in words', async (more, words) => {
    const { code, out, err } = await examine(...more);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(words);
    expect(err).not.toMatch(/\{\w+\}|undefined|NaN/);
  });
});
