import type { Check, PublishedSource } from './check.ts';

/**
 * Figures on the number of cycles to observe: the normal distribution, relative and absolute.
 * As printed, and as computed in full precision by another program from the formulas in the sources. Units are those of
 * the source.
 */
export const sources = {
  'heizer-10-3': {
    reference:
      'J. Heizer, B. Render. Operations Management / Principles of OM, ch. 10, Example 3 (reproduced by holooly.com). 2011-2017',
    locator:
      'Example 3 https://holooly.com/solutions/computing-sample-size-thomas-w-jones-manufacturing-co-has-asked-you-to-check-a-labor-standard-prepared-by-a-recently-terminated-analyst-your-first-task-is-to-determine-the-correct-sample-size-you',
    how: 'text seen',
  },
  utec: {
    reference:
      'UTEC slides after W. J. Stevenson, Operations Management 14e. Work design and measurement (slides). 2021',
    locator: 'slides 15-25',
    how: 'text seen in excerpts, page address not kept',
  },
  'heizer-sol-10': {
    reference: 'J. Heizer, B. Render. Solutions manual ch. 10 (coursepaper). 2013',
    locator:
      '10.23, 10.26-10.29 https://www.coursepaper.com/solution-manual/978-0132921145-chapter-10-part-2/',
    how: 'text seen',
  },
  reid: {
    reference:
      'R. D. Reid, N. R. Sanders. Operations Management, ch. 11 solutions (Course Hero file 6300973). 2010',
    locator: 'Problems 2, 4, 6 https://www.coursehero.com/file/6300973/ch11/',
    how: 'text seen',
  },
  'note-c': { reference: 'public page. Methods analyst sample-size exercise', how: 'text seen' },
  'note-a': {
    reference:
      'public study note. Work study, work measurement, work sampling, learning curves (sections 1-12)',
    how: 'text seen in excerpts, page address not kept',
  },
  'tutors-5': {
    reference: 'Tutorsglobe. Given the following unit time observations',
    locator:
      'https://tutorsglobe.com/question/given-the-following-unit-time-observations-time-in-52676888.aspx',
    how: 'data and standard deviations seen; the other answers are not shown',
  },
} as const satisfies Readonly<Record<string, PublishedSource>>;

type SourceName = keyof typeof sources;
type Numbers = readonly number[];

export const normalFromFigures: readonly Check<
  { readonly z: number; readonly s: number; readonly mean: number; readonly h: number },
  SourceName
>[] = [
  {
    id: '1-09',
    inputs: { z: 1.96, s: 1, mean: 3, h: 0.05 },
    printed: [
      { name: 'n', value: 170.74, decimals: 2, agrees: true },
      { name: 'nCeil', value: 171, decimals: 0, agrees: true },
    ],
    computed: { n: 170.7377777778, nCeil: 171 },
    seen: 'seen',
    source: 'heizer-10-3',
  },
  {
    id: '1-10',
    inputs: { z: 1.65, s: 1, mean: 3, h: 0.05 },
    printed: [{ name: 'nRound', value: 121, decimals: 0, agrees: true }],
    computed: { n: 121, nCeil: 121, nRound: 121 },
    seen: 'seen',
    source: 'heizer-10-3',
    note: 'Same case at 90 % (z = 1.65 printed; exact quantile 1.6449). n = 121.0 exactly, so ceil and round agree.',
  },
  {
    id: '1-13',
    inputs: { z: 2.58, s: 1.28, mean: 3.2, h: 0.05 },
    printed: [{ name: 'nRound', value: 426, decimals: 0, agrees: true }],
    computed: { n: 426.0096, nCeil: 427, nRound: 426 },
    seen: 'seen',
    source: 'heizer-sol-10',
    note: 'Problem 10.27: source takes 426 and says 381 more after 45. Rounding up would give 427 (n = 426.0096).',
  },
  {
    id: '1-15a',
    inputs: { z: 2.58, s: 0.2, mean: 1.1, h: 0.05 },
    printed: [{ name: 'nCeil', value: 89, decimals: 0, agrees: true }],
    computed: { n: 88.01851239669, nCeil: 89 },
    seen: 'seen',
    source: 'reid',
    note: 'Problem 2 element 1. The largest element sets the sample: 89.',
  },
  {
    id: '1-15b',
    inputs: { z: 2.58, s: 0.1, mean: 0.8, h: 0.05 },
    printed: [{ name: 'nCeil', value: 42, decimals: 0, agrees: true }],
    computed: { n: 41.6025, nCeil: 42 },
    seen: 'seen',
    source: 'reid',
    note: 'Problem 2 element 2.',
  },
  {
    id: '1-15c',
    inputs: { z: 2.58, s: 0.15, mean: 0.9, h: 0.05 },
    printed: [{ name: 'nCeil', value: 74, decimals: 0, agrees: true }],
    computed: { n: 73.96, nCeil: 74 },
    seen: 'seen',
    source: 'reid',
    note: 'Problem 2 element 3.',
  },
  {
    id: '1-15d',
    inputs: { z: 2.58, s: 0.1, mean: 1, h: 0.05 },
    printed: [{ name: 'nCeil', value: 27, decimals: 0, agrees: true }],
    computed: { n: 26.6256, nCeil: 27 },
    seen: 'seen',
    source: 'reid',
    note: 'Problem 2 element 4.',
  },
  {
    id: '1-15e',
    inputs: { z: 2.58, s: 0.6, mean: 2.4, h: 0.05 },
    printed: [{ name: 'nCeil', value: 167, decimals: 0, agrees: true }],
    computed: { n: 166.41, nCeil: 167 },
    seen: 'seen',
    source: 'reid',
    note: 'Problem 4 element 1.',
  },
  {
    id: '1-15f',
    inputs: { z: 2.58, s: 0.2, mean: 1.5, h: 0.05 },
    printed: [{ name: 'nCeil', value: 48, decimals: 0, agrees: true }],
    computed: { n: 47.3344, nCeil: 48 },
    seen: 'seen',
    source: 'reid',
    note: 'Problem 4 element 2.',
  },
  {
    id: '1-15g',
    inputs: { z: 2.58, s: 1.1, mean: 3.85, h: 0.05 },
    printed: [{ name: 'nCeil', value: 218, decimals: 0, agrees: true }],
    computed: { n: 217.3518367347, nCeil: 218 },
    seen: 'seen',
    source: 'reid',
    note: 'Problem 4 element 3.',
  },
  {
    id: '1-15h',
    inputs: { z: 2.58, s: 0.85, mean: 2.55, h: 0.05 },
    printed: [{ name: 'nCeil', value: 296, decimals: 0, agrees: true }],
    computed: { n: 295.84, nCeil: 296 },
    seen: 'seen',
    source: 'reid',
    note: 'Problem 4 element 4. The largest element sets the sample: 296 (73.1 % more than at 95 %).',
  },
  {
    id: '1-15i',
    inputs: { z: 2.58, s: 0.4, mean: 1.6, h: 0.05 },
    printed: [{ name: 'nCeil', value: 167, decimals: 0, agrees: true }],
    computed: { n: 166.41, nCeil: 167 },
    seen: 'seen',
    source: 'reid',
    note: 'Problem 4 element 5.',
  },
  {
    id: '1-15j',
    inputs: { z: 2.58, s: 0.5, mean: 2.5, h: 0.05 },
    printed: [{ name: 'nCeil', value: 107, decimals: 0, agrees: true }],
    computed: { n: 106.5024, nCeil: 107 },
    seen: 'seen',
    source: 'reid',
    note: 'Problem 4 element 6.',
  },
];

export const normalFromReadings: readonly Check<
  { readonly readings: Numbers; readonly z: number; readonly h: number },
  SourceName
>[] = [
  {
    id: '1-11',
    inputs: { readings: [5.2, 5.5, 5.8, 5.3, 5.5, 5.1], z: 2.58, h: 0.02 },
    printed: [
      { name: 'mean', value: 5.4, decimals: 1, agrees: true },
      { name: 's', value: 0.253, decimals: 3, agrees: true },
      { name: 'nCeil', value: 37, decimals: 0, agrees: true },
    ],
    computed: { n: 36.52345679012, nCeil: 37, mean: 5.4, s: 0.2529822128135, cv: 0.04684855792842 },
    seen: 'seen',
    source: 'utec',
    note: 'n exact 36.53 with unrounded s.',
  },
  {
    id: '1-12',
    inputs: { readings: [3.5, 3.2, 4.1, 3.6, 3.9], z: 1.96, h: 0.05 },
    printed: [
      { name: 'mean', value: 3.66, decimals: 2, agrees: true },
      { name: 's', value: 0.35, decimals: 2, agrees: true },
      {
        name: 'n',
        value: 14.13,
        decimals: 2,
        agrees: false,
        why: 'exact 14.1096 with unrounded s; 14.13 comes from s = .351; 14.05 from the printed s = .35; all round up to 15',
      },
      { name: 'nCeil', value: 15, decimals: 0, agrees: true },
    ],
    computed: { n: 14.10961211144, nCeil: 15, mean: 3.66, s: 0.350713558335, cv: 0.09582337659426 },
    seen: 'seen',
    source: 'heizer-sol-10',
    note: 'Problem 10.26.',
  },
  {
    id: '1-14',
    inputs: { readings: [3, 3, 5, 5, 4], z: 1.96, h: 0.05 },
    printed: [
      { name: 'mean', value: 4, decimals: 1, agrees: true },
      { name: 's', value: 1, decimals: 1, agrees: true },
      { name: 'n', value: 96.04, decimals: 2, agrees: true },
      { name: 'nRound', value: 96, decimals: 0, agrees: true },
    ],
    computed: { n: 96.04, nCeil: 97, nRound: 96, mean: 4, s: 1, cv: 0.25 },
    seen: 'seen',
    source: 'heizer-sol-10',
    note: 'Problem 10.28c: source takes 96 although the chapter rounds up elsewhere (ceil = 97).',
  },
  {
    id: '1-21',
    inputs: { readings: [1, 1.12, 0.95, 1.08, 1.2, 0.98, 1.05, 1.15, 0.92, 1.1], z: 1.96, h: 0.05 },
    printed: [
      { name: 'mean', value: 1.055, decimals: 3, agrees: true },
      { name: 's', value: 0.0912, decimals: 4, agrees: true },
      { name: 'n', value: 11.5, decimals: 1, agrees: true },
      { name: 'nCeil', value: 12, decimals: 0, agrees: true },
    ],
    computed: { n: 11.48197270202, nCeil: 12, mean: 1.055, s: 0.09119576013536, cv: 0.08644147880129 },
    seen: 'seen',
    source: 'note-a',
  },
];

export const absoluteFromFigures: readonly Check<
  { readonly z: number; readonly s: number; readonly e: number },
  SourceName
>[] = [
  {
    id: '1-20',
    inputs: { z: 2, s: 2, e: 1 },
    printed: [{ name: 'nCeil', value: 16, decimals: 0, agrees: true }],
    computed: { n: 16, nCeil: 16 },
    seen: 'seen',
    source: 'note-c',
    note: 'Absolute error in the same unit as s.',
  },
];

export const absoluteFromReadings: readonly Check<
  { readonly readings: Numbers; readonly z: number; readonly e: number },
  SourceName
>[] = [
  {
    id: '1-23a',
    inputs: { readings: [23, 20, 21, 19, 22, 19, 21, 23, 20, 23], z: 1.96, e: 1 },
    printed: [{ name: 's', value: 1.5951, decimals: 4, agrees: true }],
    computed: { n: 9.774737777778, nCeil: 10, mean: 21.1, s: 1.595131481867 },
    seen: 'seen',
    source: 'tutors-5',
    note: 'Hundredths of a minute; +/-1 hundredth at 95 %. Only the standard deviations are printed; n is ours.',
  },
  {
    id: '1-23b',
    inputs: { readings: [13, 14, 16, 15, 15, 13, 16, 17, 16, 17], z: 1.96, e: 1 },
    printed: [{ name: 's', value: 1.4757, decimals: 4, agrees: true }],
    computed: { n: 8.366151111111, nCeil: 9, mean: 15.2, s: 1.475729574745 },
    seen: 'seen',
    source: 'tutors-5',
    note: 'Hundredths of a minute; +/-1 hundredth at 95 %. Only the standard deviations are printed; n is ours.',
  },
  {
    id: '1-23c',
    inputs: { readings: [16, 21, 18, 17, 18, 19, 17, 18, 19, 20], z: 1.96, e: 1 },
    printed: [{ name: 's', value: 1.4944, decimals: 4, agrees: true }],
    computed: { n: 8.579573333333, nCeil: 9, mean: 18.3, s: 1.494434118097 },
    seen: 'seen',
    source: 'tutors-5',
    note: 'Hundredths of a minute; +/-1 hundredth at 95 %. Only the standard deviations are printed; n is ours.',
  },
  {
    id: '1-23d',
    inputs: { readings: [10, 10, 9, 10, 9, 12, 9, 11, 10, 9], z: 1.96, e: 1 },
    printed: [{ name: 's', value: 0.9944, decimals: 4, agrees: true }],
    computed: { n: 3.798915555556, nCeil: 4, mean: 9.9, s: 0.9944289260118 },
    seen: 'seen',
    source: 'tutors-5',
    note: 'Hundredths of a minute; +/-1 hundredth at 95 %. Only the standard deviations are printed; n is ours.',
  },
  {
    id: '1-23e',
    inputs: { readings: [12, 11, 10, 13, 12, 11, 13, 12, 11, 13], z: 1.96, e: 1 },
    printed: [{ name: 's', value: 1.0328, decimals: 4, agrees: true }],
    computed: { n: 4.097706666667, nCeil: 5, mean: 11.8, s: 1.032795558989 },
    seen: 'seen',
    source: 'tutors-5',
    note: 'Hundredths of a minute; +/-1 hundredth at 95 %. Only the standard deviations are printed; n is ours.',
  },
];

export const normalMultipliers: readonly Check<{ readonly conf: number }, SourceName>[] = [
  {
    id: '1-24-90',
    inputs: { conf: 0.9 },
    printed: [
      { name: 'z', value: 1.65, decimals: 2, agrees: false, why: 'exact 1.6449: the table rounds up' },
    ],
    computed: { z: 1.644853626951 },
    seen: 'seen',
    source: 'heizer-10-3',
    note: 'Printed z table.',
  },
  {
    id: '1-24-95',
    inputs: { conf: 0.95 },
    printed: [{ name: 'z', value: 1.96, decimals: 2, agrees: true }],
    computed: { z: 1.95996398454 },
    seen: 'seen',
    source: 'heizer-10-3',
    note: 'Printed z table.',
  },
  {
    id: '1-24-9545',
    inputs: { conf: 0.9545 },
    printed: [{ name: 'z', value: 2, decimals: 2, agrees: true }],
    computed: { z: 2.0000024439 },
    seen: 'seen',
    source: 'heizer-10-3',
    note: 'Printed z table.',
  },
  {
    id: '1-24-99',
    inputs: { conf: 0.99 },
    printed: [{ name: 'z', value: 2.58, decimals: 2, agrees: true }],
    computed: { z: 2.575829303549 },
    seen: 'seen',
    source: 'heizer-10-3',
    note: 'Printed z table.',
  },
  {
    id: '1-24-9973',
    inputs: { conf: 0.9973 },
    printed: [{ name: 'z', value: 3, decimals: 2, agrees: true }],
    computed: { z: 2.999976992703 },
    seen: 'seen',
    source: 'heizer-10-3',
    note: 'Printed z table.',
  },
];
