import { describe, expect, it } from 'vitest';
import { type Examination, emptyStudy, type Method, readStudy, type Study, subjectKey } from './index.ts';

const row = { items: [], end: 0 };
const film = {
  id: 'f',
  sha256: '0'.repeat(64),
  name: 'couplings.mp4',
  bytes: 1,
  container: 'MP4',
  codec: 'avc1',
  width: 1,
  height: 1,
  rotation: 0,
  frameTimes: { ticksPerSecond: 25, start: 0, steps: [{ repeat: 100, deltas: [1] }] },
  clock: { kind: 'identity' },
} as const;

const method = (elements: Method['elements']): Method => ({
  id: 'm',
  name: 'Present',
  kind: 'recorded',
  base: { kind: 'frames', film: 'f' },
  unitsPerCycle: 1,
  left: row,
  right: row,
  cycles: row,
  ...(elements === undefined ? {} : { elements }),
});

const element = (id: string, hand: 'left' | 'right', at: number) => ({ id, name: id, hand, at });

function findings(elements: Method['elements'], examinations?: readonly Examination[]) {
  const study: Study = {
    ...emptyStudy('s', 'Couplings'),
    films: [film],
    methods: [method(elements)],
    ...(examinations === undefined ? {} : { examinations }),
  };
  const read = readStudy(structuredClone(study));
  return read.ok ? [] : read.error.map((item) => [item.code, item.where.pointer]);
}

const lead = { kind: 'lead', method: 'm', lead: 'hold:left:body' } as const;
const text = 'because';

describe('elements of a method', () => {
  it('may begin at any frame of the film, in any order, and in both hands at once', () => {
    expect(findings([element('b', 'left', 99), element('a', 'left', 0), element('c', 'right', 99)])).toEqual(
      [],
    );
  });

  it.each<[string, Method['elements'], string, string]>([
    [
      'outside the film',
      [element('a', 'left', 100)],
      'study/element-outside-film',
      '/methods/0/elements/0/at',
    ],
    [
      'twice at one boundary',
      [element('a', 'left', 4), element('b', 'left', 4)],
      'study/element-twice',
      '/methods/0/elements/1/at',
    ],
    [
      'two of one id',
      [element('a', 'left', 4), element('a', 'left', 5)],
      'study/duplicate-id',
      '/methods/0/elements/1/id',
    ],
    ['an empty list', [], 'study/shape', '/methods/0/elements'],
  ])('%s is found', (_, elements, code, pointer) => {
    expect(findings(elements)).toEqual([[code, pointer]]);
  });
});

describe('examinations', () => {
  it('stay when the motion, the element or the lead is gone', () => {
    expect(
      findings(undefined, [
        { id: 'x1', subject: { kind: 'motion', method: 'm', hand: 'left', motion: 'gone' } },
        { id: 'x2', subject: { kind: 'element', method: 'm', element: 'gone' } },
        { id: 'x3', subject: lead },
        { id: 'x4', subject: { kind: 'operation', method: 'm' } },
      ]),
    ).toEqual([]);
  });

  it.each<[string, readonly Examination[], string, string]>([
    [
      'the same thing twice',
      [
        { id: 'x1', subject: lead },
        { id: 'x2', subject: { ...lead } },
      ],
      'study/examined-twice',
      '/examinations/1/subject',
    ],
    [
      'a method that is not there',
      [{ id: 'x1', subject: { kind: 'operation', method: 'gone' } }],
      'study/unknown-method',
      '/examinations/0/subject/method',
    ],
    [
      'two answers to one question',
      [
        {
          id: 'x1',
          subject: lead,
          answers: [
            { question: 'place-2', text },
            { question: 'place-2', text },
          ],
        },
      ],
      'study/answered-twice',
      '/examinations/0/answers/1/question',
    ],
    ['an empty list', [], 'study/shape', '/examinations'],
    [
      'a decision without a reason',
      [{ id: 'x1', subject: lead, decision: { choice: 'keep', reason: '' } }],
      'study/shape',
      '/examinations/0/decision/reason',
    ],
    [
      'a question that nobody asks',
      [{ id: 'x1', subject: lead, answers: [{ question: 'place-5' as 'place-4', text }] }],
      'study/shape',
      '/examinations/0/answers/0/question',
    ],
  ])('%s is found', (_, examinations, code, pointer) => {
    expect(findings(undefined, examinations)).toEqual([[code, pointer]]);
  });

  it('the keys of subjects are apart however their parts are spelt', () => {
    const keys = [
      subjectKey({ kind: 'lead', method: 'm', lead: 'a' }),
      subjectKey({ kind: 'element', method: 'm', element: 'a' }),
      subjectKey({ kind: 'motion', method: 'm', hand: 'left', motion: 'a' }),
      subjectKey({ kind: 'motion', method: 'm', hand: 'right', motion: 'a' }),
      subjectKey({ kind: 'operation', method: 'm' }),
      subjectKey({ kind: 'lead', method: 'm', lead: '","a' }),
    ];
    expect(new Set(keys).size).toBe(keys.length);
  });
});
