import { emptyTimeStudy, timeStudySheet } from '@evenhand/core/define';
import { type Study, type TimeStudy, writeStudy } from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import type { Call } from '../command.ts';
import { type Io, IoFault } from '../io.ts';
import { call } from '../testing/fake-io.ts';
import { smallStudy } from '../testing/small-study.ts';
import { readSheetOutput, writeStudySheet } from './define-print.ts';

function callOf(options: Readonly<Record<string, string>>, flags: readonly string[] = []): Call {
  return { operands: [], text: (option) => options[option], flag: (option) => flags.includes(option) };
}

function stored(us: number): TimeStudy {
  return {
    ...emptyTimeStudy({ id: 't', name: 'Couplings by watch' }),
    elements: [
      {
        id: 'e',
        name: 'fit ring',
        work: 'worker',
        readings: Array.from({ length: 2_000 }, (_, index) => ({ cycle: index + 1, us })),
      },
    ],
  };
}

const sheet = timeStudySheet(smallStudy, stored(4_000_000));

/** What a page asks of the world, and what was written. */
function world(): { readonly io: Io; readonly files: Record<string, string> } {
  const files: Record<string, string> = {};
  const io: Pick<Io, 'svgFonts' | 'pdf' | 'writeFile' | 'out' | 'say' | 'today'> = {
    svgFonts: async () => [],
    pdf: async (pages, { paper, title }) =>
      new TextEncoder().encode(`%PDF of ${pages.length} on ${paper}: ${title}`),
    writeFile: async (file, content) => {
      if (file.startsWith('full/')) throw new IoFault('the disk is full');
      files[file] = typeof content === 'string' ? content : new TextDecoder().decode(content);
    },
    out: async () => {},
    say: () => {},
    today: () => '2026-03-14',
  };
  return { io: io as Io, files };
}

describe('the time study sheet of the command line', () => {
  it('several sheets are one PDF', async () => {
    const { io, files } = world();
    const page = { output: 's.pdf', format: 'pdf', paper: 'letter' } as const;
    expect(await writeStudySheet(io, smallStudy, sheet, page)).toEqual({ ok: true, value: ['s.pdf'] });
    expect(files['s.pdf']).toMatch(/^%PDF of \d+ on letter: Time study sheet: Hose couplings$/);
  });

  it('as SVG they are numbered files, each with the day of printing', async () => {
    const { io, files } = world();
    const page = { output: 's.svg', format: 'svg', paper: 'a4' } as const;
    const written = await writeStudySheet(io, smallStudy, sheet, page);
    const names = written.ok ? written.value : [];
    expect(names.length).toBeGreaterThan(1);
    expect(names[0]).toBe('s-1.svg');
    for (const name of names) expect(files[name]).toContain('Printed 2026-03-14');
    expect(files['s-1.svg']).toContain('Couplings by watch');
  });

  it('what cannot be written is told', async () => {
    const { io } = world();
    const page = { output: 'full/s.pdf', format: 'pdf', paper: 'a4' } as const;
    const written = await writeStudySheet(io, smallStudy, sheet, page);
    expect(written.ok ? '' : written.error.message).toContain('the disk is full');
  });

  it('reads where the sheet goes and says what is not known', () => {
    expect(readSheetOutput(callOf({}))).toEqual({ ok: true, value: undefined });
    expect(readSheetOutput(callOf({ output: 's.pdf', paper: 'Letter' }))).toEqual({
      ok: true,
      value: { output: 's.pdf', format: 'pdf', paper: 'letter' },
    });
    const words = (call: Call) => {
      const read = readSheetOutput(call);
      return read.ok ? '' : read.error;
    };
    expect(words(callOf({ output: 's.pdf', paper: 'a3' }))).toBe(
      '--paper a3 is not known; it can be a4 or letter.',
    );
    expect(words(callOf({ output: 's.doc' }))).toBe('s.doc does not end in .svg or .pdf.');
    expect(words(callOf({ output: '-', as: 'svg' }, ['json']))).toContain('both want standard output');
  });

  it('define -o writes the sheet of a stored time study beside the text', async () => {
    const study: Study = { ...smallStudy, timeStudies: [stored(4_000_000)] };
    const argv = ['define', 'a.json', '--study', 'couplings by watch', '-o', 's.pdf', '--date', 'in spring'];
    const outcome = await call(argv, { files: { 'a.json': writeStudy(study) } });
    expect([outcome.code, outcome.err]).toEqual([0, expect.stringContaining('Wrote s.pdf.')]);
    expect(outcome.out).toContain('fit ring');
    const pdf = new TextDecoder().decode(outcome.files['s.pdf'] as Uint8Array);
    expect(pdf).toMatch(/^%PDF of \d+ on a4: Time study sheet: Hose couplings$/);
  });

  it('define -o writes a table of readings as a sheet, in its unit and with its name', async () => {
    const files = { 'r.csv': 'cycle,fit hose,press ring\n1,4.2,2.1\n2,4.4,\n3,38.5 (part fell),2.3\n' };
    const { code, files: after } = await call(['define', 'r.csv', '-o', 's.svg'], { files });
    expect(code).toBe(0);
    const names = Object.keys(after).filter((name) => /^s(-\d+)?\.svg$/.test(name));
    const svg = names.map((name) => String(after[name])).join('');
    for (const words of ['r.csv', 'fit hose', '(38.50)', '1: part fell', 'the pace is taken as standard']) {
      expect(svg).toContain(words);
    }
  });

  it('define -o writes the sheet also where no standard can be made, and still fails', async () => {
    const study: Study = { ...smallStudy, timeStudies: [stored(0)] };
    const argv = ['define', 'a.json', '--study', 't', '-o', '-', '--as', 'pdf'];
    const outcome = await call(argv, { files: { 'a.json': writeStudy(study) } });
    expect(outcome.code).not.toBe(0);
    expect(outcome.out).toMatch(/^%PDF of \d+ on a4/);
    expect(outcome.err).toContain('is 0.');
  });
});
