import { readFileSync } from 'node:fs';
import { emptyHandTrack, encodeTrack } from '@evenhand/core/record';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';
import { smallStudy } from '../testing/small-study.ts';

const demo = readFileSync('examples/couplings/couplings.evenhand.json', 'utf8');
const hands = new Uint8Array(readFileSync('tests/films/tracks/present.track.bin'));
const files = {
  'a.json': demo,
  'small.json': JSON.stringify(smallStudy),
  'hands.bin': hands,
  'one.csv': 'frame,hand,x,y\n0,right,5,5\n1,right,6,5\n2,right,7,5\n',
  'other.csv': 'frame,hand,x,y\n99999,right,1,2\n',
  'other.bin': encodeTrack({
    source: 'bands',
    frames: 7,
    width: 1,
    height: 1,
    unit: 'pixels',
    right: emptyHandTrack(7),
  }),
};
const paths = (...more: string[]) => call(['record', 'paths', 'a.json', ...more], { files });

describe('evenhand record paths', () => {
  it('writes a line for each motion of the demonstration film, with the figures of its hand', async () => {
    const { code, files: after } = await paths('--track', 'hands.bin', '-o', 'paths.csv');
    expect(code).toBe(0);
    const [head, ...lines] = String(after['paths.csv']).trim().split('\r\n');
    expect(head).toBe(
      'hand,motion,object,frame,start_s,seconds,unit,path,straight,peak_speed,peak_frame,smoothness,seen',
    );
    const marked = (['left', 'right'] as const).flatMap((hand) =>
      (JSON.parse(demo).methods[0][hand].items as { kind: string }[])
        .filter(({ kind }) => kind !== 'unmarked')
        .map(({ kind }) => `${hand},${kind}`),
    );
    expect(lines.map((line) => line.split(',').slice(0, 2).join())).toEqual(marked);
    // A hand that holds hardly moves beside one that reaches: what the film shows.
    const mean = (kind: string) => {
      const peaks = lines
        .filter((line) => line.startsWith(`left,${kind},`))
        .map((line) => Number(line.split(',')[9]));
      return peaks.reduce((sum, peak) => sum + peak, 0) / peaks.length;
    };
    expect(mean('TE')).toBeGreaterThan(5 * mean('H'));
  });

  it('says what the track lacks', async () => {
    const { code, err } = await paths('--track', 'one.csv', '-o', 'paths.csv');
    expect([code, err.includes('Only the right hand is in the track.')]).toEqual([0, true]);
  });

  it('to standard output, or tells as JSON where it is', async () => {
    expect((await paths('--track', 'hands.bin', '-o', '-')).out).toMatch(/^hand,motion,object/);
    const { out } = await paths('--track', 'hands.bin', '-o', 'paths.csv', '--json');
    expect(JSON.parse(out)).toEqual({ ok: true, file: 'paths.csv', method: JSON.parse(demo).methods[0].id });
  });

  it.each([
    ['other.csv', 'is not in the film'],
    ['other.bin', 'The track is of 7 frames, but the film has'],
    ['none.csv', 'none.csv cannot be read'],
  ])('%s: refused in words', async (file, words) => {
    const { code, err } = await paths('--track', file, '-o', 'paths.csv');
    expect([code > 0, err.includes(words)]).toEqual([true, true]);
  });

  it('a method without a film, and a table that would share standard output with JSON, are refused', async () => {
    const small = await call(['record', 'paths', 'small.json', '--track', 'one.csv', '-o', 'p.csv'], {
      files,
    });
    expect([small.code > 0, small.err.includes('has no film')]).toEqual([true, true]);
    const both = await paths('--track', 'hands.bin', '-o', '-', '--json');
    expect(both.err).toContain('both want standard output');
  });
});
