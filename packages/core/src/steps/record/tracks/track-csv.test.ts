import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTrackCsv, type Track, type TrackCsvOptions, trackGaps, writeTrackCsv } from './index.ts';

const read = (text: string, options: TrackCsvOptions = {}) => {
  const result = readTrackCsv(text, options);
  if (!result.ok) throw new Error(result.error.map((fault) => fault.message).join(' '));
  return result.value;
};
const faults = (text: string, options: TrackCsvOptions = {}) => {
  const result = readTrackCsv(text, options);
  if (result.ok) throw new Error('the table was taken');
  return result.error.map(({ code, where }) => `${where.line}:${where.column ?? ''} ${code}`);
};
const codes = (text: string, options: TrackCsvOptions = {}) =>
  read(text, options).notes.map((note) => note.code);

const both = 'frame,hand,x,y\n0,left,1,2\n0,right,300,400\n1,left,3,4\n1,right,301,402\n';

describe('a table of a track', () => {
  it('gives each hand its places, with nothing to note when all is there', () => {
    const { track, notes } = read(both);
    expect(notes).toEqual([]);
    expect([track.frames, track.source, track.unit, track.width]).toEqual([2, 'table', 'pixels', 0]);
    expect([...(track.left?.x ?? [])]).toEqual([1, 3]);
    expect([...(track.right?.y ?? [])]).toEqual([400, 402]);
    expect([...(track.right?.presence ?? [])]).toEqual([1, 1]);
    expect(track.left?.opening).toBeUndefined();
  });

  it.each([
    [
      'columns and lines in another order',
      'Y,hand,FRAME,x\n402,Right,1,301\n4,left,1,3\n2,LEFT,0,1\n400,right,0,300',
    ],
    [
      'semicolons and decimal commas',
      'frame;hand;x;y\n0;left;1,0;2\n0;right;300;400\n1,0;left;3;4,00\n1;right;301;402',
    ],
    ['tabs, a byte order mark and CR LF', `\uFEFF${both.replaceAll(',', '\t').replaceAll('\n', '\r\n')}`],
    ['exponents as programs write them', both.replace('301', '3.01000e+02').replace('400', '4.0e2')],
  ])('%s: the same track', (_, text) => {
    expect(read(text).track).toEqual(read(both).track);
  });

  it('what is empty is missing and told as a gap; nothing is filled in', () => {
    const text =
      'frame,hand,x,y,opening\n0,left,1,2,0.5\n1,left,,,\n2,left,NaN,NA,0.4\n5,left,500,5,\n0,right,9,9,1';
    const { track, notes } = read(text);
    expect(track.left?.x).toEqual(Float32Array.of(1, Number.NaN, Number.NaN, Number.NaN, Number.NaN, 500));
    expect([...(track.left?.presence ?? [])]).toEqual([1, 0, 0, 0, 0, 1]);
    expect(track.left?.opening).toEqual(Float32Array.of(0.5, ...new Array<number>(5).fill(Number.NaN)));
    expect(trackGaps(track, 'left')).toEqual([{ start: 1, end: 5 }]);
    expect(notes.map(({ code, where }) => [code, where.frame ?? where.line])).toEqual([
      ['track/opening-alone', 4],
      ['track/gaps', 1],
      ['track/gaps', 1],
    ]);
    expect(notes[1]?.message).toContain(
      'The left hand is not seen in 4 of 6 frames; the longest gap is of 4 frames',
    );
  });

  it.each([
    ['an extra column', 'frame,hand,x,y,speed\n0,left,10,20,5\n0,right,30,20,5', {}, ['csv/unknown-column']],
    ['one hand only', 'frame,hand,x,y\n0,left,10,20', {}, ['track/one-hand']],
    ['a film that goes on', both, { frames: 9 }, ['track/ends-early', 'track/gaps', 'track/gaps']],
    ['shares of the picture', 'frame,hand,x,y\n0,left,0.1,0.2\n0,right,0.5,0.9', {}, ['track/shares']],
    ['places off the picture', both, { width: 200, height: 100 }, ['track/outside-picture']],
    ['a hand that is never there', `${both.replaceAll(/right,.*/g, 'right,,')}`, {}, ['track/one-hand']],
  ])('%s is taken and told', (_, text, options, expected) => {
    expect(codes(text, options)).toEqual(expected);
  });

  it.each([
    ['no rows', 'frame,hand,x,y', {}, ['1: csv/empty']],
    ['no text', '\uFFFDEHTRACK\0\0\u0001', {}, ['1: csv/not-text']],
    ['no hand', 'frame,x,y\n0,1,2', {}, ['1: csv/missing-column']],
    ['a column twice', 'frame,hand,x,y,x\n0,left,1,2,3', {}, ['1:5 csv/duplicate-column']],
    ['a lost cell', 'frame,hand,x,y\n0,left,1', {}, ['2: csv/cells']],
    ['another word for a hand', 'frame,hand,x,y\n0,both,1,2', {}, ['2:2 csv/hand']],
    [
      'a time for a frame',
      'frame,hand,x,y\n0.5,left,1,2\n-1,left,1,2',
      {},
      ['2:1 track/frame', '3:1 track/frame'],
    ],
    ['a frame beyond all films', 'frame,hand,x,y\n99999999999,left,1,2', {}, ['2:1 track/too-many-frames']],
    ['words for numbers', 'y,hand,x,frame\n2px,left,inf,0', {}, ['2:1 track/number', '2:3 track/number']],
    ['a number too large to keep', 'frame,hand,x,y\n0,left,1e99,2', {}, ['2:3 track/too-large']],
    [
      'half a place',
      'frame,hand,x,y\n0,left,1,\n1,left,,2',
      {},
      ['2:4 track/half-point', '3:3 track/half-point'],
    ],
    ['an opening below 0', 'frame,hand,x,y,opening\n0,left,1,2,-0.1', {}, ['2:5 track/opening']],
    ['a presence in per cent', 'frame,hand,x,y,presence\n0,left,1,2,95', {}, ['2:5 track/presence']],
    ['the same frame twice', `${both}1,right,7,8`, {}, ['6:1 track/twice']],
    [
      'frames the film does not have',
      both,
      { frames: 1 },
      ['4:1 track/beyond-film', '5:1 track/beyond-film'],
    ],
    [
      'frames counted from 1',
      'frame,hand,x,y\n1,left,1,2\n2,left,3,4',
      { frames: 2 },
      ['3:1 track/from-one'],
    ],
    ['two decimal marks', 'frame;hand;x;y\n0;left;1.5;2\n1;left;-1,5;2', {}, ['3:3 csv/decimal-mark']],
    ['nothing seen', 'frame,hand,x,y\n0,left,,\n1,right,,', {}, ['2:3 track/nothing-seen']],
  ])('%s is refused with its line and column', (_, text, options, expected) => {
    expect(faults(text, options)).toEqual(expected);
  });

  it('wrong columns: what is missing, what there is, and which may be left out', () => {
    const found = readTrackCsv('time,hand,px,y\n0,left,1,2');
    expect(found.ok ? [] : found.error.map(({ message }) => message)).toEqual(
      ['frame', 'x'].map(
        (column) =>
          `The column “${column}” is missing. The first line must name the columns: frame, hand, x, y, and z, opening, presence where they are known. It names: time, hand, px, y.`,
      ),
    );
  });

  it('a slip in every line is told by the first ones and a count', () => {
    const lines = Array.from({ length: 5000 }, (_, frame) => `${frame},left,x,2`).join('\n');
    const found = readTrackCsv(`frame,hand,x,y\n${lines}`);
    if (found.ok) throw new Error('the table was taken');
    expect(found.error).toHaveLength(21);
    expect(found.error.at(-1)?.message).toMatch(/^There are 4980 more faults/);
  });
});

const value = fc.oneof(
  fc.float({ noNaN: true, noDefaultInfinity: true }),
  fc.float({ min: 0, max: 2000, noNaN: true }),
);
const share = fc.float({ min: 0, max: 1, noNaN: true });
const sight = fc.option(
  fc.tuple(value, value, value, share, fc.float({ min: Math.fround(0.01), max: 1, noNaN: true })),
);

describe('writing a track', () => {
  it('reads back the same numbers to the last bit, gaps and all', () => {
    fc.assert(
      fc.property(fc.array(sight, { minLength: 1, maxLength: 20 }), (sights) => {
        fc.pre(sights.some((item) => item !== null));
        const pick = (place: number, missing = Number.NaN) =>
          Float32Array.from(sights, (item) => (item === null ? missing : item[place]) as number);
        const track: Track = {
          source: 'table',
          frames: sights.length,
          width: 0,
          height: 0,
          unit: 'pixels',
          right: { x: pick(0), y: pick(1), z: pick(2), opening: pick(3), presence: pick(4, 0) },
        };
        expect(withoutMinusZero(read(writeTrackCsv(track)).track)).toEqual(withoutMinusZero(track));
      }),
      { seed: 61, numRuns: 300 },
    );
  });

  it('is the table the guide shows', () => {
    expect(writeTrackCsv(read(both).track)).toBe(both.replaceAll('\n', '\r\n'));
  });

  it('takes any text at all, or says where it is wrong', () => {
    const bits = fc.constantFrom(
      'frame',
      'hand',
      'x',
      'y',
      'left',
      '0',
      '1',
      '2.5',
      ',',
      ',',
      ',',
      '\n',
      '\n',
      '"',
      ';',
      '-',
      'e9',
    );
    const any = fc.oneof(
      fc.array(bits, { maxLength: 40 }).map((list) => list.join('')),
      fc.string({ unit: 'binary' }),
    );
    const heads = fc.constantFrom('', 'frame,hand,x,y\n', 'hand;frame;y;x;opening\n');
    fc.assert(
      fc.property(heads, any, (head, rest) => {
        const result = readTrackCsv(head + rest);
        const told = result.ok ? result.value.notes : result.error;
        if (!result.ok) expect(told.every((fault) => (fault.where.line ?? 0) > 0)).toBe(true);
        for (const { message } of told) expect(message).not.toMatch(/undefined|\{\w+\}/);
      }),
      { seed: 62, numRuns: 600 },
    );
  });
});

function withoutMinusZero(track: Track): unknown {
  const plain = (list: Float32Array | undefined) => Array.from(list ?? [], (item) => item + 0);
  const { right } = track;
  return [
    track.frames,
    plain(right?.x),
    plain(right?.y),
    plain(right?.z),
    plain(right?.opening),
    plain(right?.presence),
  ];
}
