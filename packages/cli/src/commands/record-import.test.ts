import { parseStudy } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { call } from '../testing/fake-io.ts';

const csv =
  'hand,motion,start_s,end_s,object,from,to,cycle\r\nleft,H,0,2,body,,,1\r\nright,TE,0,1,,,,1\r\nright,G,1.5,2,ring,bin,,1\r\n';
const files = { 'motions.csv': csv };

describe('evenhand record import', () => {
  it('writes a study, tells what was made and what was filled', async () => {
    const {
      code,
      out,
      err,
      files: after,
    } = await call(['record', 'import', 'motions.csv', '-o', 'new.json'], { files });
    expect([code, out]).toEqual([0, '']);
    expect(err).toContain('note: motions.csv: line 4: Between 1 s and 1.5 s the right hand has no motion');
    expect(err).toContain('new.json: left hand 1 motion, right hand 2 motions; 1 cycle, 1 place.');
    const study = parseStudy(String(after['new.json']));
    expect(study.ok && study.value).toMatchObject({
      id: 'new-id',
      title: 'motions',
      places: [{ name: 'bin' }],
    });
  });

  it('takes a title, standard input and standard output', async () => {
    const { code, out } = await call(['record', 'import', '-', '--title', 'Couplings', '-o', '-'], {
      stdin: csv,
    });
    expect(code).toBe(0);
    const study = parseStudy(out);
    expect(study.ok && study.value.title).toBe('Couplings');
  });

  it('prints JSON with --json', async () => {
    const { code, out } = await call(['record', 'import', 'motions.csv', '-o', 'new.json', '--json'], {
      files,
    });
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      ok: true,
      file: 'new.json',
      left: 1,
      right: 2,
      cycles: 1,
      places: 1,
      notes: [{ code: 'csv/gap' }],
    });
  });

  it('never writes over a study unless told to', async () => {
    const there = { ...files, 'old.json': 'precious' };
    const kept = await call(['record', 'import', 'motions.csv', '-o', 'old.json'], { files: there });
    expect(kept.code).toBe(2);
    expect(kept.files['old.json']).toBe('precious');
    expect(kept.err).toContain('old.json is there already and was left as it is.');
    const replaced = await call(['record', 'import', 'motions.csv', '-o', 'old.json', '--replace'], {
      files: there,
    });
    expect(replaced.code).toBe(0);
    expect(replaced.files['old.json']).not.toBe('precious');
  });

  it.each<[string, string | Uint8Array, string]>([
    [
      'an overlap',
      `${csv}left,G,1,3,,,,\r\n`,
      'motions.csv: line 5, column 3: The left hand does two things at once: this motion starts at 1 s, the one on line 2 ends at 2 s.',
    ],
    [
      'a wrong motion',
      csv.replace('right,TE', 'right,reach'),
      'motions.csv: line 3, column 2: “reach” is not one of the fundamental motions.',
    ],
    ['an empty file', '', 'motions.csv: line 1: There are no rows.'],
    [
      'letters of an old spreadsheet',
      new Uint8Array([0x68, 0xe4, 0x6e, 0x64]),
      'motions.csv is not UTF-8 text',
    ],
    [
      'a workbook',
      new Uint8Array([0x50, 0x4b, 0x03, 0x04, 0xff]),
      'such as a workbook of a spreadsheet program',
    ],
    ['UTF-16', new Uint8Array([0xff, 0xfe, 0x68, 0x00]), 'it is UTF-16'],
  ])('%s is bad input, and nothing is written', async (_, text, message) => {
    const {
      code,
      out,
      err,
      files: after,
    } = await call(['record', 'import', 'motions.csv', '-o', 'new.json'], { files: { 'motions.csv': text } });
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(message);
    expect('new.json' in after).toBe(false);
  });

  it('a disk that is full and a file that is not there are told', async () => {
    const full = await call(['record', 'import', 'motions.csv', '-o', 'full/new.json'], { files });
    expect([full.code, full.err.includes('full/new.json cannot be written: the disk is full.')]).toEqual([
      2,
      true,
    ]);
    const gone = await call(['record', 'import', 'gone.csv', '-o', 'new.json']);
    expect([gone.code, gone.err.includes('gone.csv cannot be read')]).toEqual([2, true]);
  });

  it('--json and -o - cannot both have standard output', async () => {
    const { code, out, err } = await call(['record', 'import', 'motions.csv', '-o', '-', '--json'], {
      files,
    });
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('both want standard output');
  });
});
