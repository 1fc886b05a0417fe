import type { Check, PublishedSource } from './check.ts';

/**
 * Figures on learning curves: cumulative averages (Wright), inverses and fits.
 * As printed, and as computed in full precision by another program from the formulas in the sources. Units are those of
 * the source.
 */
export const sources = {
  'note-a': {
    reference:
      'public study note. Work study, work measurement, work sampling, learning curves (sections 1-12)',
    how: 'text seen in excerpts, page address not kept',
  },
  acca: {
    reference: '(exam text). Learning curve table: 100 h, 80 %. 2018',
    locator: 'p. 324 / P. 330 https://online.flipbuilder.com/bmcx/vksq/files/basic-html/page330.html',
    how: 'text seen',
  },
  om13: {
    reference: 'textbook solutions. Learning curves, ch. 13 (Course Hero file 6536972)',
    locator: 'https://www.coursehero.com/file/6536972/',
    how: 'text seen',
  },
  kerzner: {
    reference: 'H. Kerzner. Project Management, ch. 18, Table 18-1 (web reproduction). 2009',
    locator: 'ch. 18 https://www.gristprojectmanagement.us/planning-scheduling/k-etf.html and .../k-dse.html',
    how: 'text seen (formulas are images)',
  },
  wideman: {
    reference: 'R. M. Wideman. Learning Curve Mathematics (Appendix 2). 1994',
    locator: 'http://www.maxwideman.com/papers/resource/appendix2.htm',
    how: 'text seen',
  },
  gaodun: {
    reference: 'exam text (CMA). Cumulative average-time learning model',
    locator: 'https://www.gaodun.com/q/706idj',
    how: 'text seen',
  },
  derived: { reference: 'Evenhand. derived identity. 2025', how: 'own derivation' },
  'heizer-14064008': {
    reference: 'student solution of a Heizer ch. 10 problem. Chapter 10 (Course Hero file 14064008)',
    locator: 'https://www.coursehero.com/file/14064008/Chapter-10/',
    how: 'text seen',
  },
  stev7s: {
    reference: 'W. J. Stevenson. Operations Management, ch. 7S solutions part 2. 2014',
    locator: '7S-14 https://www.coursepaper.com/solution-manual/978-0078024108-imchap07s-part-2/',
    how: 'text seen',
  },
} as const satisfies Readonly<Record<string, PublishedSource>>;

type SourceName = keyof typeof sources;
type Numbers = readonly number[];

export const cumulativeAverages: readonly Check<
  { readonly a: number; readonly n: number; readonly r: number },
  SourceName
>[] = [
  {
    id: '5-16a',
    inputs: { a: 1000, n: 20, r: 0.8 },
    printed: [
      { name: 'avg', value: 381.2, decimals: 1, agrees: true },
      { name: 'total', value: 7624, decimals: 0, agrees: true },
      { name: 'unit', value: 260.6, decimals: 1, agrees: true },
    ],
    computed: { avg: 381.2078999122, total: 7624.157998244, unit: 260.6139282474 },
    seen: 'seen',
    source: 'note-a',
  },
  {
    id: '5-16b',
    inputs: { a: 1000, n: 10, r: 0.8 },
    printed: [{ name: 'unit', value: 328.6, decimals: 1, agrees: true }],
    computed: { avg: 476.5098748902, total: 4765.098748902, unit: 328.552263804 },
    seen: 'seen',
    source: 'note-a',
  },
  {
    id: '5-16c',
    inputs: { a: 1000, n: 8, r: 0.8 },
    printed: [{ name: 'avg', value: 512, decimals: 0, agrees: true }],
    computed: { avg: 512, total: 4096, unit: 354.5733274071 },
    seen: 'seen',
    source: 'note-a',
  },
  {
    id: '5-24-2',
    inputs: { a: 100, n: 2, r: 0.8 },
    printed: [
      { name: 'avg', value: 80, decimals: 0, agrees: true },
      { name: 'total', value: 160, decimals: 0, agrees: true },
    ],
    computed: { avg: 80, total: 160, unit: 60 },
    seen: 'seen',
    source: 'acca',
  },
  {
    id: '5-24-4',
    inputs: { a: 100, n: 4, r: 0.8 },
    printed: [
      { name: 'avg', value: 64, decimals: 0, agrees: true },
      { name: 'total', value: 256, decimals: 0, agrees: true },
    ],
    computed: { avg: 64, total: 256, unit: 45.36888916643 },
    seen: 'seen',
    source: 'acca',
  },
  {
    id: '5-24-8',
    inputs: { a: 100, n: 8, r: 0.8 },
    printed: [
      { name: 'avg', value: 51.2, decimals: 1, agrees: true },
      { name: 'total', value: 409.6, decimals: 1, agrees: true },
    ],
    computed: { avg: 51.2, total: 409.6, unit: 35.45733274071 },
    seen: 'seen',
    source: 'acca',
  },
  {
    id: '5-24-16',
    inputs: { a: 100, n: 16, r: 0.8 },
    printed: [
      { name: 'avg', value: 40.96, decimals: 2, agrees: true },
      { name: 'total', value: 655.36, decimals: 2, agrees: true },
    ],
    computed: { avg: 40.96, total: 655.36, unit: 28.06122330442 },
    seen: 'seen',
    source: 'acca',
  },
  {
    id: '5-51',
    inputs: { a: 100, n: 2, r: 0.8 },
    printed: [
      { name: 'avg', value: 80, decimals: 0, agrees: true },
      { name: 'unit', value: 60, decimals: 0, agrees: true },
    ],
    computed: { avg: 80, total: 160, unit: 60 },
    seen: 'seen',
    source: 'wideman',
    note: 'second unit takes 60 % of the first under the average model',
  },
  {
    id: '5-52',
    inputs: { a: 100, n: 4, r: 0.8 },
    printed: [{ name: 'avg', value: 64, decimals: 0, agrees: true }],
    computed: { avg: 64, total: 256, unit: 45.36888916643 },
    seen: 'seen',
    source: 'wideman',
  },
  {
    id: '5-53',
    inputs: { a: 10, n: 8, r: 0.9 },
    printed: [{ name: 'avg', value: 7.29, decimals: 2, agrees: true }],
    computed: { avg: 7.29, total: 58.32, unit: 6.243651621243 },
    seen: 'seen',
    source: 'gaodun',
    note: '10, 9, 8.1, 7.29 minutes',
  },
  {
    id: '5-58',
    inputs: { a: 50, n: 2, r: 0.8 },
    printed: [{ name: 'unit', value: 30, decimals: 0, agrees: true }],
    computed: { avg: 40, total: 80, unit: 30 },
    seen: 'seen',
    source: 'om13',
    note: 'cumulative average 50 h, 80 %: second unit',
  },
  {
    id: '5-68',
    inputs: { a: 1000, n: 10, r: 0.8 },
    printed: [{ name: 'total', value: 4765, decimals: 0, agrees: true }],
    computed: { avg: 476.5098748902, total: 4765.098748902, unit: 328.552263804 },
    seen: 'seen',
    source: 'note-a',
  },
];

export const unitsReaching: readonly Check<
  { readonly a: number; readonly y: number; readonly r: number },
  SourceName
>[] = [
  {
    id: '5-19',
    inputs: { a: 1000, y: 400, r: 0.8 },
    printed: [{ name: 'n', value: 17.2, decimals: 1, agrees: true }],
    computed: { n: 17.22322877292, nCeil: 18 },
    seen: 'seen',
    source: 'note-a',
  },
  {
    id: '5-21',
    inputs: { a: 6, y: 2, r: 0.85 },
    printed: [{ name: 'nRound', value: 108, decimals: 0, agrees: true }],
    computed: { n: 108.3761544547, nCeil: 109, nRound: 108 },
    seen: 'seen',
    source: 'note-a',
  },
  {
    id: '5-66',
    inputs: { a: 30, y: 18, r: 0.8333333333333334 },
    printed: [{ name: 'nRound', value: 7, decimals: 0, agrees: true }],
    computed: { n: 6.973021920566, nCeil: 7, nRound: 7 },
    seen: 'seen',
    source: 'stev7s',
    note: '30 then 25 min (.8333); repetitions to reach 18 min.',
  },
];

export const ratesFromTwo: readonly Check<
  { readonly t1: number; readonly t2: number; readonly n1: number; readonly n2: number },
  SourceName
>[] = [
  {
    id: '5-23',
    inputs: { t1: 100, t2: 72, n1: 1, n2: 4 },
    printed: [{ name: 'r', value: 0.849, decimals: 3, agrees: true }],
    computed: { b: -0.2369655941662, r: 0.8485281374239 },
    seen: 'seen',
    source: 'note-a',
    note: 'average of 4 = 72 when the first is 100',
  },
  {
    id: '5-46',
    inputs: { t1: 95, t2: 71, n1: 1, n2: 4 },
    printed: [{ name: 'r', value: 0.86, decimals: 2, agrees: true }],
    computed: { b: -0.2100542444131, r: 0.8645047258706 },
    seen: 'seen',
    source: 'om13',
  },
];

export const averageBatches: readonly Check<
  { readonly a: number; readonly m: number; readonly n: number; readonly r: number },
  SourceName
>[] = [
  {
    id: '5-25',
    inputs: { a: 100, m: 9, n: 16, r: 0.8 },
    printed: [
      {
        name: 'total',
        value: 254.76,
        decimals: 2,
        agrees: false,
        why: '655.36 - 409.60 = 245.76 (the printed average 30.72 confirms it)',
      },
    ],
    computed: { total: 245.76 },
    seen: 'seen',
    source: 'acca',
    trap: true,
    note: 'printed increment for units 9-16 is a typo.',
  },
  {
    id: '5-69',
    inputs: { a: 1000, m: 11, n: 20, r: 0.8 },
    printed: [{ name: 'total', value: 2859, decimals: 0, agrees: true, why: 'exact 2859.0' }],
    computed: { total: 2859.059249341 },
    seen: 'seen',
    source: 'note-a',
    note: 'Units 11-20.',
  },
];

export const firstFromLater: readonly Check<
  { readonly t: number; readonly m: number; readonly n: number; readonly r: number },
  SourceName
>[] = [
  {
    id: '5-49',
    inputs: { t: 120, m: 100, n: 1, r: 0.75 },
    printed: [],
    computed: { y: 811.4396863463 },
    seen: 'seen-inputs',
    source: 'kerzner',
    note: 'backward from unit 100 = 120 h: ours 811.4; text says approximate agreement with 812',
  },
];

export const fits: readonly Check<{ readonly x: Numbers; readonly y: Numbers }, SourceName>[] = [
  {
    id: '5-60',
    inputs: { x: [1, 2, 4, 8, 16, 32], y: [100, 80, 64, 51.2, 40.96, 32.768] },
    printed: [],
    computed: { b: -0.3219280948874, a: 100, r: 0.8, r2: 1 },
    seen: 'derived',
    source: 'derived',
    note: 'Exact 80 % data: b = -.3219281, a = 100, R2 = 1.',
  },
  {
    id: '5-61',
    inputs: {
      x: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10],
      y: [15, 12, 10.53, 9.6, 8.93, 8.42, 8.02, 7.68, 7.39, 7.15],
    },
    printed: [],
    computed: { b: -0.3219599977346, a: 14.99893081732, r: 0.7999823095007, r2: 0.9999978650996 },
    seen: 'derived',
    source: 'heizer-14064008',
    note: 'Rounded published unit times; log-log fit recovers r near .80.',
  },
];

export const nearTotals: readonly Check<
  { readonly a: number; readonly n: number; readonly r: number },
  SourceName
>[] = [
  {
    id: '5-67',
    inputs: { a: 1000, n: 20, r: 0.8 },
    printed: [{ name: 'total', value: 10512, decimals: 0, agrees: true }],
    computed: { total: 10511.99244188 },
    seen: 'seen',
    source: 'note-a',
    note: 'Half-unit integral approximation against the exact 10 485.',
  },
];
