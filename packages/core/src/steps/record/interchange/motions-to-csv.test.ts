import { describe, expect, it } from 'vitest';
import { emptyStudy, type Method, type Motion, type Study } from '../../../ground/study/index.ts';
import { csvToStudy, motionsToCsv } from './index.ts';

const motion = (id: string, start: number, kind: Motion['kind'], more: Partial<Motion> = {}): Motion => ({
  id,
  start,
  kind,
  said: 'marked',
  ...more,
});

const method: Method = {
  id: 'm',
  name: 'Present',
  kind: 'recorded',
  base: { kind: 'micros' },
  unitsPerCycle: 1,
  left: {
    items: [
      motion('a', 0, 'H', { object: 'body, large' }),
      motion('b', 1_500_000, 'unmarked'),
      motion('c', 2_000_000, 'RL'),
    ],
    end: 2_000_001,
  },
  right: {
    items: [
      motion('d', 0, 'TE', { from: 'p', to: 'q' }),
      motion('e', 1_000_000, 'G', { object: '=SUM(A1)' }),
    ],
    end: 2_000_000,
  },
  cycles: {
    items: [
      { id: 'x', start: 0 },
      { id: 'y', start: 900_000, setAside: 'dropped' },
    ],
    end: 2_000_000,
  },
};
const study: Study = {
  ...emptyStudy('s', 'Couplings'),
  places: [
    { id: 'p', name: 'fixture' },
    { id: 'q', name: 'the "red" bin' },
  ],
  methods: [method],
};

describe('proposals in a table', () => {
  const [first, ...rest] = method.left.items as [Motion, ...Motion[]];
  const items = [{ ...first, said: 'proposed' as const, confidence: 0.734 }, ...rest];
  const open: Study = { ...study, methods: [{ ...method, left: { ...method.left, items } }] };

  it('say so in two columns more, and come back as proposals', () => {
    const csv = motionsToCsv(open, 'm');
    if (!csv.ok) throw new Error(csv.error.message);
    const lines = csv.value.split('\r\n');
    expect(lines[0]).toBe('hand,motion,start_s,end_s,object,from,to,cycle,said,confidence');
    expect(lines[1]).toMatch(/^left,H,.*,proposed,0\.73$/);
    expect(lines[2]).toMatch(/^right,TE,.*,marked,$/);
    const again = csvToStudy(csv.value, { title: 'Again', newId: () => 'again' });
    if (!again.ok) throw new Error(again.error.map(({ message }) => message).join(' '));
    const [back] = again.value.study.methods;
    expect(back?.left.items[0]).toMatchObject({ kind: 'H', said: 'proposed', confidence: 0.73 });
    expect(back?.right.items[0]?.said).toBe('marked');
  });
});

describe('motions as CSV', () => {
  it('is RFC 4180 with exact seconds, in the order of time, formulas guarded, unmarked left out (worked by hand)', () => {
    const csv = motionsToCsv(study, 'm');
    expect(csv.ok && csv.value).toBe(
      [
        'hand,motion,start_s,end_s,object,from,to,cycle',
        'left,H,0,1.5,"body, large",,,1',
        'right,TE,0,1,,fixture,"the ""red"" bin",1',
        "right,G,1,2,'=SUM(A1),,,2",
        'left,RL,2,2.000001,,,,',
        '',
      ].join('\r\n'),
    );
  });

  it('begins with a byte order mark only where a letter beyond ASCII makes one useful', () => {
    const csv = motionsToCsv(
      {
        ...study,
        places: [
          { id: 'p', name: 'Kästchen' },
          { id: 'q', name: 'q' },
        ],
      },
      'm',
    );
    expect(csv.ok && csv.value.startsWith('\uFEFFhand,')).toBe(true);
  });

  it('names the methods there are when asked for another', () => {
    const csv = motionsToCsv(study, 'z');
    expect(csv.ok ? '' : csv.error.message).toContain('There is no method z. The study has: m');
  });
});
