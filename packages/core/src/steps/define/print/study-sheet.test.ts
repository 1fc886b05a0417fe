import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  groupsOf,
  overlappingTexts,
  tableTexts,
  textsOutside,
} from '../../../../../../tests/helpers/read-scene.ts';
import { timeStudyArb } from '../../../../../../tests/helpers/time-arbitraries.ts';
import { type Scene, type SceneNode, textsOf } from '../../../ground/scene/index.ts';
import type { Study, TimeStudy, TimeStudyElement } from '../../../ground/study/index.ts';
import { timeStudySheet } from '../sheet/index.ts';
import { letterOf } from './sheet-marks.ts';
import { timeCell } from './sheet-numbers.ts';
import { studySheetPages } from './study-sheet.ts';
import { secondsOf, timedElement, timedStudy, timeStudyOf } from './testing/timed-study.ts';

const a4 = { paper: 'a4' } as const;

function pagesOf(
  timed: TimeStudy,
  look: Parameters<typeof studySheetPages>[2] = a4,
  study: Study = timedStudy,
) {
  return studySheetPages(study, timeStudySheet(study, timed), look);
}

function wordsOf(pages: readonly Scene[]): string {
  return pages.flatMap(({ nodes }) => textsOf(nodes).map(({ text }) => text)).join(' ');
}

/** Rows of a table over all sheets. */
function rowsOf(pages: readonly Scene[], label: string): readonly (readonly string[])[] {
  return pages.flatMap((page) => {
    const labels = groupsOf(page.nodes, 'table').flatMap((group) => group.label ?? []);
    return labels.filter((each) => each.startsWith(label)).flatMap((each) => tableTexts(page, each));
  });
}

/** What stands in the cells of the readings, without the names of the rows and without the row of the whole cycle. */
function readingCells(pages: readonly Scene[]): readonly string[] {
  return rowsOf(pages, 'Readings')
    .filter(([name]) => name !== 'Whole cycle')
    .flatMap(([, ...cells]) => cells)
    .filter((text) => text !== '');
}

/** Of a reading alone: no bracket, no mark, no rating below it. */
function bare(cell: string): string {
  return (cell.split(' ')[0] ?? '').replace(/[()]/g, '');
}

function outsideThePaper({ nodes, width, height }: Scene): readonly string[] {
  const bad = (x: number, y: number) => x < 0 || y < 0 || x > width || y > height;
  const check = (node: SceneNode): readonly string[] => {
    if (node.kind === 'group') return node.nodes.flatMap(check);
    if (node.kind === 'line') return bad(node.x1, node.y1) || bad(node.x2, node.y2) ? ['line'] : [];
    if (node.kind === 'rect') {
      return bad(node.x, node.y) || bad(node.x + node.width, node.y + node.height) ? ['rect'] : [];
    }
    if (node.kind !== 'path') return [];
    const ends = [...node.d.matchAll(/(-?[\d.]+) (-?[\d.]+)(?= [A-Z]|$)/g)];
    return ends.some(([, x, y]) => bad(Number(x), Number(y))) ? ['path'] : [];
  };
  return nodes.flatMap(check);
}

function expectClean(pages: readonly Scene[]): void {
  for (const page of pages) {
    expect(overlappingTexts(page)).toEqual([]);
    expect(textsOutside(page)).toEqual([]);
    expect(outsideThePaper(page)).toEqual([]);
    expect(JSON.stringify(page)).not.toMatch(/NaN|Infinity|:null|undefined/);
  }
}

const worked = timeStudyOf(
  [
    // Mean 4 s at 90 is 3.6 s basic.
    timedElement('fit', secondsOf(3, 4, 5), { rating: 90, endsWhen: 'sleeve touches the stop' }),
    // 10 s every fifth cycle is 2 s a cycle.
    timedElement(
      'fetch',
      [
        { cycle: 2, us: 10_000_000 },
        { cycle: 3, us: 10_000_000 },
      ],
      {
        occurs: { times: 1, cycles: 5 },
      },
    ),
    timedElement('cure', secondsOf(20, 20, 20), { work: 'process' }),
    timedElement('load next', secondsOf(8, 8, 8), { work: 'inside' }),
  ],
  {
    allowances: {
      convention: 'share-of-shift',
      relaxation: { kind: 'share', share: 0.2 },
      process: 0,
      contingency: 0.1,
    },
    piecesPerCycle: 2,
  },
);

describe('the time study sheet', () => {
  it('worked by hand: outside work 5.6 / 0.8 = 7 s and the machine 20 s, with 10 % contingency 29.7 s', () => {
    const pages = pagesOf(worked);
    expect(rowsOf(pages, 'The standard, step by step')).toEqual([
      ['Basic time of a cycle', '25.60 s'],
      ['Allowance for relaxation and machine time', '1.40 s'],
      ['Contingency, 10.0 % of the sum', '2.70 s'],
      ['Standard time of a cycle', '29.70 s'],
      ['Standard time of a piece, 2 a cycle', '14.850 s'],
      // 3600 / 14.85 = 242.42
      ['Output at the standard', '242.4 pieces an hour, 242 whole ones'],
    ]);
    expect(rowsOf(pages, 'Work outside and inside')).toEqual([
      ['Work outside machine time', '5.60', '7.00'],
      ['Machine time', '20.00', '20.00'],
      ['Work inside machine time', '8.00', '10.00'],
      ['The worker waits for the machine', '', '10.00'],
      ['Cycle: outside work and the longer of the other two, here machine time', '25.60', '27.00'],
    ]);
  });

  it('the summary gives n, mean, median, deviation (1 by hand), variation, ratings, basic time, frequency and allowance', () => {
    const [fit, fetch, cure] = rowsOf(pagesOf(worked), 'Summary of the elements');
    // Sample deviation of 3, 4, 5 is 1; t(2) = 4.303 gives 4 ± 2.484 (table of Student’s t).
    expect(fit?.slice(1, 8)).toEqual(['fit', '3', '4.00', '4.00', '1.00', '25.0 %', '1.52 to 6.48']);
    expect(fit?.slice(9)).toEqual(['90', '3.60', '1', '3.60', '× 1.250', '4.50']);
    expect(fetch?.slice(9)).toEqual(['100', '10.00', '1 in 5', '2.00', '× 1.250', '2.50']);
    expect(cure?.slice(9)).toEqual(['not rated', '20.00', '1', '20.00', '× 1.000', '20.00']);
  });

  it('heads the sheet with operation, part, number, department, analyst, watch and kind of timing, scale and unit', () => {
    const timed = {
      ...worked,
      sittings: [
        { id: 'a', start: 1, operatorCode: 'K3', observer: 'Analyst 2', date: '2026-03-30' },
        { id: 'b', start: 3, operatorCode: 'K7', date: '2026-04-02' },
      ],
    };
    const head = rowsOf(pagesOf(timed), 'Heading of the sheet').flat();
    for (const words of [
      'Operation Fit hose couplings',
      'Part Coupling 12 mm',
      'Operation no. 40',
      'Department Bench 3',
      'Analyst Analyst 2',
      'Date of study 2026-03-30 to 2026-04-02',
      'Times from Watch, continuous timing (it runs on)',
      'Operators (codes) K3, K7',
      'Cycles 3: 1–3',
      'Rating scale 0–100 standard scale (BS 3138), standard 100',
      'Unit of all times seconds',
      'Pieces a cycle 2',
    ]) {
      expect(head).toContain(words);
    }
    expect(rowsOf(pagesOf(timed), 'Sittings')).toEqual([
      ['1–2', 'K3', '2026-03-30', 'Analyst 2'],
      ['3', 'K7', '2026-04-02', '–'],
    ]);
  });

  it('names the convention, the figure in the other one (0.2 / 0.8 = 25 %), and how the interval was made', () => {
    const words = wordsOf(pagesOf(worked));
    expect(words).toContain('share of the shift');
    expect(words).toContain('25.0 %, a share of the basic time');
    expect(words).toContain('Student’s t');
    expect(words).toContain('Either way basic time is multiplied by 1.250.');
  });

  it('prints the edition, the rows, the source and the caution of a published table of allowances', () => {
    const timed = timeStudyOf([timedElement('fit', secondsOf(3, 4, 5))], {
      allowances: {
        convention: 'share-of-basic-time',
        relaxation: {
          kind: 'table',
          edition: 'kilograms',
          column: 'women',
          choices: [
            { row: 'personal', level: 0 },
            { row: 'standing', level: 0 },
          ],
        },
        process: 0,
        contingency: 0,
      },
    });
    const pages = pagesOf(timed);
    expect(rowsOf(pages, 'Rows of the allowance table')).toEqual([
      ['Personal needs: always', '7 %'],
      ['Standing: standing', '4 %'],
      ['Sum', '11 %'],
    ]);
    const words = wordsOf(pages);
    expect(words).toContain('Table with loads in kilograms');
    expect(words).toContain('Suplementos por descanso');
    expect(words).toContain('local rules and qualified people settle that');
  });

  it('a standard without an allowance says so where it stands', () => {
    const { allowances, ...rest } = timeStudyOf([timedElement('fit', secondsOf(3, 4, 5))]);
    const none = { ...allowances, relaxation: { kind: 'share', share: 0 } } as const;
    const [first] = pagesOf({ ...rest, allowances: none });
    expect(wordsOf(first === undefined ? [] : [first])).toContain('No relaxation allowance is in it.');
    expect(wordsOf(pagesOf(worked))).not.toContain('No relaxation allowance');
  });

  it('a reading set aside stands in brackets with the number of its reason, a missed one as M, a foreign element as a letter', () => {
    const timed = timeStudyOf(
      [
        timedElement('fit', [
          { cycle: 1, us: 3_000_000 },
          { cycle: 2, us: 38_500_000, setAside: 'part fell' },
          { cycle: 3 },
        ]),
        timedElement('press', [
          { cycle: 1, us: 2_000_000, rating: 95 },
          { cycle: 2, us: 2_100_000, setAside: 'part fell' },
          { cycle: 3, us: 2_200_000, setAside: 'drill' },
        ]),
      ],
      {
        foreign: [
          { id: 'x', cycle: 1, element: 'fit', us: 4_000_000, what: 'phone' },
          { id: 'y', cycle: 3, us: 5_000_000, what: 'fire drill' },
        ],
      },
    );
    const pages = pagesOf(timed);
    expect(rowsOf(pages, 'Readings')).toEqual([
      ['1 fit', '3.00 A', '(38.50) 1', 'M'],
      ['2 press', '2.00 95', '(2.10) 1', '(2.20) 2'],
      ['Whole cycle', '5.00', '', ''],
    ]);
    const words = wordsOf(pages);
    expect(words).toContain('1: part fell (cycle 2, all readings).');
    expect(words).toContain('2: drill (cycle 3, “press”).');
    expect(words).toContain('A: cycle 1, during “fit”: phone, 4.00 s.');
    expect(words).toContain('B: cycle 3: fire drill, 5.00 s.');
    expect(words).toContain('M: missed.');
  });

  it('a study with faults has no standard: it says so, and what stands in its way', () => {
    const pages = pagesOf(timeStudyOf([timedElement('fit', secondsOf(3, 0, 5))]));
    const words = wordsOf(pages);
    expect(words).toContain('none yet');
    expect(words).toContain('The reading of “fit” in cycle 2 is 0.');
    expect(words).not.toContain('pieces an hour');
    expect(words).toContain('Signed for this sheet: readings alone, there is no standard yet.');
    expect(readingCells(pages).map(bare)).toEqual(['3.00', '0.00', '5.00']);
    expect(wordsOf(pagesOf(timeStudyOf([])))).toContain('none yet');
  });

  it('where no cycle has all elements, the run of the longest is shown, and what counts too often is told', () => {
    const pages = pagesOf(
      timeStudyOf([
        timedElement('bag', secondsOf(undefined, 30, 31, 32)),
        timedElement('fold', secondsOf(9, undefined, undefined, undefined)),
      ]),
    );
    const words = wordsOf(pages);
    expect(words).toContain('Run of “bag”: no cycle has all elements');
    expect(words).toContain('“fold” has a time in 1 of 4 cycles, but counts once in every cycle.');
    expect(words).not.toContain('“bag” has a time in');
  });

  it('is to be signed on the first sheet by analyst and checker, for all sheets', () => {
    const many = timeStudyOf([
      timedElement('fit', secondsOf(...Array.from({ length: 2_000 }, (_, i) => 3 + (i % 7) / 10))),
    ]);
    const pages = pagesOf(many, { paper: 'a4', printed: '2026-04-02' });
    expect(pages.length).toBeGreaterThan(1);
    for (const [index, page] of pages.entries()) {
      const texts = textsOf(page.nodes).map(({ text }) => text);
      expect(texts).toContain(`Sheet ${index + 1} of ${pages.length}`);
      expect(texts).toContain('Printed 2026-04-02');
      expect(texts.includes('Checked')).toBe(index === 0);
      expect(texts.includes(`Signed for all ${pages.length} sheets of this study.`)).toBe(index === 0);
    }
  });

  it('invented data are marked on every sheet, others on none', () => {
    const long = timeStudyOf([timedElement('fit', secondsOf(...Array.from({ length: 2_000 }, () => 3)))]);
    const marked = (study: Study) =>
      pagesOf(long, a4, study).map(({ nodes }) =>
        textsOf(nodes).some(({ text }) => text === 'Invented data'),
      );
    expect(marked(timedStudy).every(Boolean)).toBe(true);
    const { demo: _, ...real } = timedStudy;
    expect(marked(real).some(Boolean)).toBe(false);
  });

  it.each([
    [1, 1, 'a4'],
    [1, 40, 'letter'],
    [500, 1, 'letter'],
    [500, 40, 'a4'],
    [33, 12, 'letter'],
  ] as const)(
    '%i cycles of %i elements on %s: every reading once, heads repeated, nothing over another',
    (cycles, count, paper) => {
      const time = (element: number, cycle: number) => 1 + element + ((cycle * 37 + element * 11) % 97) / 100;
      const elements = Array.from({ length: count }, (_, element) =>
        timedElement(
          `e${element}`,
          secondsOf(...Array.from({ length: cycles }, (__, cycle) => time(element, cycle))),
          { name: `Element ${element + 1} with a name that is longer than its column is wide, as they are` },
        ),
      );
      const pages = pagesOf(timeStudyOf(elements), { paper });
      expectClean(pages);
      const expected = elements.flatMap((_, element) =>
        Array.from({ length: cycles }, (__, cycle) => timeCell(time(element, cycle), 'seconds')),
      );
      expect(readingCells(pages).map(bare).sort()).toEqual(expected.sort());
      for (const page of pages) {
        for (const table of groupsOf(page.nodes, 'table')) {
          if (table.label?.startsWith('Readings') !== true) continue;
          expect(groupsOf(table.nodes, 'head-row')).toHaveLength(1);
        }
      }
    },
  );

  it('whatever the schema allows is laid out: no text over another, none outside, no number cut, every reading once', () => {
    fc.assert(
      fc.property(timeStudyArb('t'), fc.constantFrom('a4' as const, 'letter' as const), (timed, paper) => {
        const sheet = timeStudySheet(timedStudy, timed);
        const pages = studySheetPages(timedStudy, sheet, { paper });
        expectClean(pages);
        const cells = sheet.rows.flatMap((row) => row.cells);
        expect(readingCells(pages)).toHaveLength(cells.length);
        for (const row of rowsOf(pages, 'Summary of the elements')) {
          for (const cell of row.slice(2)) expect(cell).not.toContain('…');
        }
      }),
      { seed: 402, numRuns: 120 },
    );
  }, 60_000);

  it('the longest words and the largest times that a study may hold', () => {
    const name = (letter: string) => `${letter.repeat(90)} ${'m'.repeat(100)}`;
    const long = (id: string, more: Partial<TimeStudyElement>): TimeStudyElement =>
      timedElement(
        id,
        [
          { cycle: 999_998, us: 999_999_999_999, rating: 95 },
          { cycle: 999_999, us: 900_000_000_001, setAside: name('r') },
          { cycle: 1_000_000, us: 1 },
        ],
        { name: name(id), endsWhen: name('e'), ...more },
      );
    for (const unit of ['seconds', 'minutes', 'winks', 'tmu', 'hours'] as const) {
      const timed = timeStudyOf(
        [long('W', { occurs: { times: 10_000, cycles: 1 } }), long('X', { work: 'process' })],
        {
          unit,
          name: name('t'),
          note: `${'word '.repeat(3000)}`,
          sittings: [
            { id: 's', start: 1, operatorCode: name('o'), observer: name('v'), note: 'note '.repeat(2000) },
          ],
          foreign: [{ id: 'f', cycle: 999_998, us: 1e12, what: name('w') }],
          allowances: {
            convention: 'share-of-shift',
            relaxation: { kind: 'share', share: 0.999999 },
            process: 0.9,
            contingency: 0.99,
          },
        },
      );
      const study: Study = {
        ...timedStudy,
        operation: {
          name: name('O'),
          part: name('P'),
          number: name('N'),
          department: name('D'),
          analyst: name('A'),
        },
      };
      expectClean(pagesOf(timed, { paper: 'letter', printed: name('p') }, study));
    }
  });

  it('the same study gives the same sheets', () => {
    expect(JSON.stringify(pagesOf(worked))).toBe(JSON.stringify(pagesOf(worked)));
  });

  it('letters foreign elements A to Z, then AA', () => {
    expect([0, 25, 26, 51, 52, 701, 702].map(letterOf)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA', 'ZZ', 'AAA']);
  });
});
