import { describe, expect, it } from 'vitest';
import {
  emptyStudy,
  type Method,
  type Motion,
  type Study,
  unmarkedMethod,
} from '../../ground/study/index.ts';
import { recordAdvice } from './index.ts';

const film: Study['films'][number] = {
  ...{
    id: 'f',
    sha256: '0'.repeat(64),
    name: 'f.mp4',
    bytes: 1,
    container: 'MP4',
    codec: 'avc1',
    width: 1,
    height: 1,
    rotation: 0,
  },
  frameTimes: { ticksPerSecond: 10, start: 0, steps: [{ repeat: 200, deltas: [1] }] },
  clock: { kind: 'identity' },
};
const row = (end: number, ...items: [start: number, kind: Motion['kind']][]) => ({
  items: items.map(([start, kind], index) => ({ id: `i${index}`, start, kind, said: 'marked' as const })),
  end,
});
const adviceOn = (change: Partial<Method>) => {
  const method = {
    ...unmarkedMethod(
      'm',
      'Present',
      film,
      (() => {
        let n = 0;
        return () => `n${n++}`;
      })(),
    ),
    ...change,
  };
  return recordAdvice({ ...emptyStudy('s', 'S'), films: [film], methods: [method] });
};
const cycles = (...starts: number[]) => ({
  items: starts.map((start, index) => ({ id: `c${index}`, start })),
  end: 100,
});
const brief = (found: ReturnType<typeof adviceOn>) => found.map(({ code, where }) => [code, where.pointer]);

describe('advice on a record', () => {
  it('says that nothing is marked, and then nothing else', () => {
    expect(brief(adviceOn({}))).toEqual([['record/nothing-marked', '/methods/0']]);
  });

  it('is silent on a record that is complete', () => {
    const left = row(100, [0, 'H']);
    const right = row(100, [0, 'TE'], [40, 'G'], [50, 'TL']);
    expect(adviceOn({ left, right, cycles: cycles(0, 50) })).toEqual([]);
  });

  it('says where no cycle is marked', () => {
    expect(brief(adviceOn({ left: row(10, [0, 'G']), right: row(10, [0, 'G']) }))).toEqual([
      ['record/no-cycles', '/methods/0'],
    ]);
  });

  it('adds up what is not marked in a cycle, also where the row is too short, and skips cycles set aside', () => {
    const left = row(100, [0, 'G'], [20, 'unmarked'], [25, 'TL']);
    const right = row(90, [0, 'H']);
    const found = adviceOn({ left, right, cycles: cycles(0, 50) });
    expect(brief(found)).toEqual([
      ['record/long-motion', '/methods/0/left/items/2'],
      ['record/unmarked-in-cycle', '/methods/0/cycles/items/0'],
      ['record/unmarked-in-cycle', '/methods/0/cycles/items/1'],
    ]);
    expect(found[1]?.message).toContain('In cycle 1 the left hand has 0.50 s');
    expect(found[2]?.message).toContain('In cycle 2 the right hand has 1.00 s');
    const aside = { items: [{ id: 'c', start: 0, setAside: 'dropped a ring' }], end: 100 };
    expect(brief(adviceOn({ left, right, cycles: aside }))).toEqual([
      ['record/long-motion', '/methods/0/left/items/2'],
    ]);
  });

  it('notes a motion that runs to the end of the film, but not a row that is unmarked there', () => {
    const found = adviceOn({
      left: row(200, [0, 'H']),
      right: row(200, [0, 'G'], [10, 'unmarked']),
      cycles: { items: [{ id: 'c', start: 0 }], end: 10 },
    });
    expect(brief(found)).toEqual([['record/open-end', '/methods/0/left/end']]);
  });

  it('asks about a grasp of more than five seconds, not about a hold', () => {
    const found = adviceOn({
      left: row(60, [0, 'H']),
      right: row(60, [0, 'G']),
      cycles: { items: [{ id: 'c', start: 0 }], end: 60 },
    });
    expect(found.map((item) => item.message)).toEqual([
      'A motion of the right hand lasts 6.00 s. Check that none is missing inside it.',
    ]);
  });
});
