import { describe, expect, it } from 'vitest';
import { inUnit } from '../../../ground/units/index.ts';
import { type ChartChoice, type ChartFacts, chartFacts } from './facts.ts';
import { chartedStudy, type ShortStudy } from './testing/charted-study.ts';

function facts(short: ShortStudy, choice: ChartChoice = {}): ChartFacts {
  const result = chartFacts(chartedStudy(short), 'm', choice);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

function refusal(short: ShortStudy, choice: ChartChoice = {}, method = 'm') {
  const result = chartFacts(chartedStudy(short), method, choice);
  return result.ok ? undefined : result.error;
}

const short: ShortStudy = {
  left: [
    ['TE', 10],
    ['G', 5],
    ['H', 45],
    ['TE', 12],
  ],
  right: [
    ['TE', 20],
    ['G', 10],
    ['A', 30],
    ['UD', 12],
  ],
  cycles: [0, 30, 60],
};

describe('chart facts', () => {
  it('one wink is 1/2000 min, so 2 frames at 1000/30 ms last 66.667 ms = 2.222 winks (ILO, Introduction to Work Study, from memory)', () => {
    const [first] = facts({
      left: [
        ['G', 2],
        ['H', 28],
      ],
      right: [['UD', 30]],
      cycles: [0, 30],
    }).left;
    expect(first?.duration).toBe(66_667);
    expect(inUnit(first?.duration ?? (0 as never), 'winks')).toBeCloseTo(2.2222, 4);
  });

  it('cuts motions to the cycle, marks them as cut and counts only what lies inside', () => {
    const { left, duration } = facts(short, { cycle: 2 });
    expect(duration).toBe(1_000_000);
    expect(
      left.map(({ kind, start, end, cutStart, cutEnd }) => ({ kind, start, end, cutStart, cutEnd })),
    ).toEqual([{ kind: 'H', start: 0, end: 1_000_000, cutStart: true, cutEnd: false }]);
    expect(facts(short, { cycle: 1 }).left.at(-1)).toMatchObject({
      kind: 'H',
      duration: 500_000,
      cutEnd: true,
    });
  });

  it('takes the first typical cycle when none is asked for', () => {
    const chosen = facts({ ...short, setAside: { 1: 'dropped a screw' } });
    expect(chosen.cycle).toBe(2);
    expect(chosen.header.span).toBe('Cycle 2 of 2');
    expect(chosen.header.reading).toBe('frames 30 to 60');
  });

  it('takes a cycle without proposals where there is one, and says what rests on proposals where it is asked for', () => {
    const study = chartedStudy(short);
    const [method] = study.methods;
    if (method === undefined) throw new Error('no method');
    const items = method.left.items.map((motion, index) =>
      index === 0 ? { ...motion, said: 'proposed' as const, confidence: 0.7 } : motion,
    );
    const open = { ...study, methods: [{ ...method, left: { ...method.left, items } }] };
    const chosen = chartFacts(open, 'm');
    expect(chosen.ok && [chosen.value.cycle, chosen.value.notes]).toEqual([2, []]);
    const asked = chartFacts(open, 'm', { cycle: 1 });
    if (!asked.ok) throw new Error(asked.error.message);
    expect(asked.value.left[0]?.description).toMatch(/ \(proposed\)$/);
    expect(asked.value.notes.map(({ code, message }) => [code, message])).toEqual([
      [
        'record/chart-with-proposals',
        'With proposals that nobody has confirmed. So many motions of this chart are proposed, and its totals rest on them: 1.',
      ],
    ]);
  });

  it('says why a cycle that was asked for is set aside', () => {
    const { notes } = facts({ ...short, setAside: { 1: 'dropped a screw' } }, { cycle: 1 });
    expect(notes.map((note) => note.code)).toEqual(['record/cycle-set-aside']);
    expect(notes[0]?.message).toContain('dropped a screw');
  });

  it('takes everything that is marked when no cycle is', () => {
    const { cycle, left, right, duration, notes } = facts({
      left: [
        ['unmarked', 15],
        ['TE', 15],
        ['unmarked', 30],
      ],
      right: [
        ['unmarked', 30],
        ['G', 15],
        ['unmarked', 15],
      ],
    });
    expect(cycle).toBeUndefined();
    expect(duration).toBe(1_000_000);
    expect(left.map((motion) => motion.kind)).toEqual(['TE', 'unmarked']);
    expect(right.map((motion) => motion.kind)).toEqual(['unmarked', 'G']);
    expect(notes.map((note) => note.code)).toEqual([
      'record/no-cycles',
      'record/unmarked-in-span',
      'record/unmarked-in-span',
    ]);
  });

  it('fills a row that ends inside the cycle, so that both hands end at the same reading', () => {
    const { left, right, duration } = facts({ left: [['G', 10]], right: [['H', 30]], cycles: [0, 30] });
    expect(left.map(({ kind, end }) => [kind, end])).toEqual([
      ['G', 333_333],
      ['unmarked', 1_000_000],
    ]);
    expect(left.at(-1)?.end).toBe(duration);
    expect(right.at(-1)?.end).toBe(duration);
  });

  it('names the place and not its id', () => {
    const { left } = facts({
      left: [['TL', 30, { object: 'screw', from: 'bin', to: 'jig' }]],
      right: [['UD', 30]],
      cycles: [0, 30],
    });
    expect(left[0]?.description).toBe('carry screw from screw bin to jig');
  });

  it('fills the title block from the study, the film and the date that is passed in', () => {
    expect(facts(short, { date: '12 May' }).header).toEqual({
      operation: 'Screw hinges',
      part: 'Hinge',
      number: '12',
      department: 'Fitting',
      film: 'hinges.mp4',
      method: 'Present method',
      analyst: 'Analyst 3',
      operatorCode: 'P7',
      date: '12 May',
      span: 'Cycle 1 of 2',
      reading: 'frames 0 to 30',
    });
  });

  it('refuses a method or a cycle that is not there, and a chart of nothing', () => {
    expect(refusal(short, {}, 'x')).toMatchObject({ code: 'record/no-method' });
    expect(refusal(short, {}, 'x')?.message).toContain('m');
    for (const cycle of [0, 3, -1])
      expect(refusal(short, { cycle })).toMatchObject({ code: 'record/no-cycle' });
    const nothing: ShortStudy = { left: [['unmarked', 30]], right: [['unmarked', 30]] };
    expect(refusal(nothing)).toMatchObject({ code: 'record/nothing-marked' });
    expect(refusal({ ...nothing, cycles: [0, 30] })).toMatchObject({ code: 'record/nothing-marked' });
    expect(refusal({ left: [], right: [] })).toMatchObject({ code: 'record/nothing-marked' });
  });
});
