import { writeStudy } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { parseVtt } from '../../../../tests/oracles/vtt-parser.ts';
import { call } from '../testing/fake-io.ts';
import { smallStudy } from '../testing/small-study.ts';

const files = { 'a.json': writeStudy(smallStudy) };
const exported = (...more: string[]) => call(['record', 'export', 'a.json', ...more], { files });

describe('evenhand record export', () => {
  it('writes a table, worked by hand', async () => {
    const { code, out, files: after } = await exported('-o', 'm.csv', '--method', 'better');
    expect([code, out]).toEqual([0, '']);
    expect(after['m.csv']).toBe(
      'hand,motion,start_s,end_s,object,from,to,cycle\r\nleft,TE,0,1,,,,1\r\nright,TE,0,1,,,,1\r\nleft,G,1,2,body,,,1\r\nright,G,1,2,ring,,,1\r\n',
    );
  });

  it('writes captions that follow the W3C syntax', async () => {
    const { code, files: after } = await exported('-o', 'm.VTT');
    expect(code).toBe(0);
    expect(parseVtt(String(after['m.VTT'])).cues.length).toBe(8);
  });

  it('to standard output when it is said what, and takes a method by name', async () => {
    const { code, out } = await exported('-o', '-', '--as', 'csv', '--method', 'better METHOD');
    expect([code, out.startsWith('hand,motion')]).toEqual([0, true]);
  });

  it('says which method was taken where there are several', async () => {
    expect((await exported('-o', 'm.csv')).err).toContain(
      'The method present is taken; --method chooses another of: present (Present method), better (Better method).',
    );
  });

  it('prints JSON with --json', async () => {
    const { out } = await exported('-o', 'm.vtt', '--json');
    expect(JSON.parse(out)).toEqual({ ok: true, file: 'm.vtt', format: 'vtt', method: 'present' });
  });

  it.each([
    [['-o', 'm.xlsx'], 'm.xlsx does not end in .csv or .vtt.'],
    [['-o', '-'], 'With -o - it must be said what to write: --as csv or vtt.'],
    [['-o', 'm', '--as', 'pdf'], '--as pdf is not known; it can be csv or vtt.'],
    [['-o', '-', '--as', 'csv', '--json'], 'both want standard output'],
    [
      ['-o', 'm.csv', '--method', 'old'],
      'There is no method old. The study has: present (Present method), better (Better method).',
    ],
    [['-o', 'full/m.csv'], 'full/m.csv cannot be written: the disk is full.'],
  ])('%j is refused: %s', async (more, message) => {
    const { code, err, files: after } = await exported(...more);
    expect(code).toBe(2);
    expect(err).toContain(message);
    expect(Object.keys(after)).toEqual(['a.json']);
  });

  it('a study with faults is refused with all of them', async () => {
    const text = writeStudy(smallStudy).replaceAll('"end": 2000000', '"end": 0');
    const { code, err } = await call(['record', 'export', 'a.json', '-o', 'm.csv'], {
      files: { 'a.json': text },
    });
    expect(code).toBe(2);
    expect(err.match(/study\/row-end/g)?.length).toBe(3);
  });

  it('a study without a method is told so', async () => {
    const { code, err } = await call(['record', 'export', 'a.json', '-o', 'm.csv'], {
      files: { 'a.json': writeStudy({ ...smallStudy, methods: [] }) },
    });
    expect([code, err.includes('record/no-method')]).toEqual([2, true]);
  });
});
