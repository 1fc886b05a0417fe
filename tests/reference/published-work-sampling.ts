import type { Check, PublishedSource } from './check.ts';

/**
 * Figures on work sampling.
 * As printed, and as computed in full precision by another program from the formulas in the sources. Units are those of
 * the source. A rating is a share of standard, `job` means an allowance on basic time, `shift` one on the working day.
 */
export const sources = {
  'ilo-ws': {
    reference: 'after ILO. Work sampling exercises / lesson 9',
    locator: 'https://www.scribd.com/document/785169985/Lesson-9Work-Sampling',
    how: 'text seen (also scribd 403503610)',
  },
  'expertsmind-ws': {
    reference: 'Expertsmind. Calculate the normal time for the job (typist pool)',
    locator: 'http://www.expertsmind.com/questions/calculate-the-normal-time-for-the-job-30136654.aspx',
    how: 'text seen',
  },
  utec: {
    reference:
      'UTEC slides after W. J. Stevenson, Operations Management 14e. Work design and measurement (slides). 2021',
    locator: 'slides 15-25',
    how: 'text seen in excerpts, page address not kept',
  },
  fe: { reference: 'engineering exam notes. Work sampling formulas', how: 'text seen' },
  'note-b': {
    reference: 'public study note. Work sampling and learning-curve notes',
    how: 'text seen in excerpts, page address not kept',
  },
  'note-a': {
    reference:
      'public study note. Work study, work measurement, work sampling, learning curves (sections 1-12)',
    how: 'text seen in excerpts, page address not kept',
  },
  'mcq-heizer': { reference: 'J. Heizer, B. Render. Test bank ch. 10. 2013', how: 'text seen' },
  'transtutors-ws': {
    reference: 'Transtutors. Application of work sampling',
    locator:
      'table of N http://www.transtutors.com/homework-help/industrial-management/work-measurement/application-of-work-sampling.aspx',
    how: 'text seen',
  },
  'askfilo-ws': {
    reference: 'Filo. Work sampling standard time',
    locator: 'https://askfilo.com/',
    how: 'text seen',
  },
  edurev: { reference: 'EduRev. Work sampling question', locator: 'https://edurev.in/', how: 'text seen' },
  ques10b: {
    reference: 'Ques10. Work sampling standard time',
    locator: 'p/42122 https://www.ques10.com/p/42122/',
    how: 'text seen',
  },
  pchart: {
    reference: 'Wizedu and course notes. p-chart examples (general quality control)',
    locator: 'https://wizedu.com/',
    how: 'text seen',
  },
  'groover-rev': {
    reference: 'M. P. Groover. Work Systems review practice, ch. 13 and 15 (Course Hero file 76096463). 2007',
    locator: 'https://www.coursehero.com/file/76096463/WS-final-reviewpdf/',
    how: 'data seen; answers cut off',
  },
  'heizer-10-2': {
    reference: 'J. Heizer, B. Render. Operations Management, ch. 10, Example 2. 2011-2017',
    locator: 'Example 2 https://holooly.com/',
    how: 'inputs and method seen; printed intermediate figures from memory; the same data set (without the starred readings) also at studentsmerit.com paper 34661',
  },
} as const satisfies Readonly<Record<string, PublishedSource>>;

type SourceName = keyof typeof sources;
type Numbers = readonly number[];
type Convention = 'job' | 'shift';

export const observationNumbers: readonly Check<
  { readonly p: number; readonly e: number; readonly z: number },
  SourceName
>[] = [
  {
    id: '4-01',
    inputs: { p: 0.1, e: 0.05, z: 2 },
    printed: [{ name: 'nCeil', value: 144, decimals: 0, agrees: true }],
    computed: { n: 144, nCeil: 144 },
    seen: 'seen',
    source: 'ilo-ws',
    note: 'sigma = 2.5 (5/2). With z = 1.96: 138.3 -> 139.',
  },
  {
    id: '4-02',
    inputs: { p: 0.25, e: 0.1, z: 2 },
    printed: [{ name: 'nCeil', value: 75, decimals: 0, agrees: true }],
    computed: { n: 75, nCeil: 75 },
    seen: 'memory',
    source: 'ilo-ws',
    note: 'Problem seen (25/75, +/-10, 95 %); ILO answer 75 recalled (sigma = 5).',
  },
  {
    id: '4-03',
    inputs: { p: 0.3, e: 0.04, z: 2 },
    printed: [{ name: 'nCeil', value: 525, decimals: 0, agrees: true }],
    computed: { n: 525, nCeil: 525 },
    seen: 'seen',
    source: 'expertsmind-ws',
  },
  {
    id: '4-04',
    inputs: { p: 0.08, e: 0.02, z: 1.96 },
    printed: [
      { name: 'n', value: 706.85, decimals: 2, agrees: true },
      { name: 'nCeil', value: 707, decimals: 0, agrees: true },
    ],
    computed: { n: 706.8544, nCeil: 707 },
    seen: 'seen',
    source: 'utec',
  },
  {
    id: '4-05',
    inputs: { p: 0.25, e: 0.02, z: 1.96 },
    printed: [{ name: 'nRound', value: 1801, decimals: 0, agrees: true }],
    computed: { n: 1800.75, nCeil: 1801, nRound: 1801 },
    seen: 'seen',
    source: 'fe',
    note: 'exact 1800.75.',
  },
  {
    id: '4-06',
    inputs: { p: 0.3, e: 0.04, z: 1.96 },
    printed: [{ name: 'nRound', value: 504, decimals: 0, agrees: true }],
    computed: { n: 504.21, nCeil: 505, nRound: 504 },
    seen: 'seen',
    source: 'note-b',
    note: 'Exact 504.21: source takes 504, rounding up gives 505.',
  },
  {
    id: '4-07',
    inputs: { p: 0.3, e: 0.05, z: 1.96 },
    printed: [
      { name: 'n', value: 322.7, decimals: 1, agrees: true },
      { name: 'nCeil', value: 323, decimals: 0, agrees: true },
    ],
    computed: { n: 322.6944, nCeil: 323 },
    seen: 'seen',
    source: 'note-a',
  },
  {
    id: '4-08',
    inputs: { p: 0.3, e: 0.03, z: 1.96 },
    printed: [{ name: 'nRound', value: 896, decimals: 0, agrees: true }],
    computed: { n: 896.3733333333, nCeil: 897, nRound: 896 },
    seen: 'seen',
    source: 'note-a',
    note: 'Exact 896.37; rounding up gives 897.',
  },
  {
    id: '4-10',
    inputs: { p: 0.5, e: 0.1, z: 2 },
    printed: [{ name: 'nCeil', value: 100, decimals: 0, agrees: true }],
    computed: { n: 100, nCeil: 100 },
    seen: 'seen',
    source: 'mcq-heizer',
  },
  {
    id: '4-11',
    inputs: { p: 0.2, e: 0.1, z: 2 },
    printed: [{ name: 'nCeil', value: 64, decimals: 0, agrees: true }],
    computed: { n: 64, nCeil: 64 },
    seen: 'seen',
    source: 'mcq-heizer',
  },
  {
    id: '4-12-01',
    inputs: { p: 0.01, e: 0.05, z: 2 },
    printed: [{ name: 'nCeil', value: 16, decimals: 0, agrees: true }],
    computed: { n: 15.84, nCeil: 16 },
    seen: 'seen',
    source: 'transtutors-ws',
    note: '+/-5 % of total, 2 sigma: N = 1600 p(1-p).',
  },
  {
    id: '4-12-02',
    inputs: { p: 0.02, e: 0.05, z: 2 },
    printed: [{ name: 'nCeil', value: 32, decimals: 0, agrees: true }],
    computed: { n: 31.36, nCeil: 32 },
    seen: 'seen',
    source: 'transtutors-ws',
    note: '+/-5 % of total, 2 sigma: N = 1600 p(1-p).',
  },
  {
    id: '4-12-05',
    inputs: { p: 0.05, e: 0.05, z: 2 },
    printed: [{ name: 'nCeil', value: 76, decimals: 0, agrees: true }],
    computed: { n: 76, nCeil: 76 },
    seen: 'seen',
    source: 'transtutors-ws',
    note: '+/-5 % of total, 2 sigma: N = 1600 p(1-p).',
  },
  {
    id: '4-12-08',
    inputs: { p: 0.08, e: 0.05, z: 2 },
    printed: [{ name: 'nCeil', value: 118, decimals: 0, agrees: true }],
    computed: { n: 117.76, nCeil: 118 },
    seen: 'seen',
    source: 'transtutors-ws',
    note: '+/-5 % of total, 2 sigma: N = 1600 p(1-p).',
  },
  {
    id: '4-12-09',
    inputs: { p: 0.09, e: 0.05, z: 2 },
    printed: [{ name: 'nRound', value: 131, decimals: 0, agrees: true }],
    computed: { n: 131.04, nCeil: 132, nRound: 131 },
    seen: 'seen',
    source: 'transtutors-ws',
    note: '+/-5 % of total, 2 sigma: N = 1600 p(1-p).',
  },
  {
    id: '4-12-10',
    inputs: { p: 0.1, e: 0.05, z: 2 },
    printed: [{ name: 'nCeil', value: 144, decimals: 0, agrees: true }],
    computed: { n: 144, nCeil: 144 },
    seen: 'seen',
    source: 'transtutors-ws',
    note: '+/-5 % of total, 2 sigma: N = 1600 p(1-p).',
  },
  {
    id: '4-12-11',
    inputs: { p: 0.11, e: 0.05, z: 2 },
    printed: [{ name: 'nCeil', value: 157, decimals: 0, agrees: true }],
    computed: { n: 156.64, nCeil: 157 },
    seen: 'seen',
    source: 'transtutors-ws',
    note: '+/-5 % of total, 2 sigma: N = 1600 p(1-p).',
  },
  {
    id: '4-12-12',
    inputs: { p: 0.12, e: 0.05, z: 2 },
    printed: [{ name: 'nCeil', value: 169, decimals: 0, agrees: true }],
    computed: { n: 168.96, nCeil: 169 },
    seen: 'seen',
    source: 'transtutors-ws',
    note: '+/-5 % of total, 2 sigma: N = 1600 p(1-p).',
  },
  {
    id: '4-12-16',
    inputs: { p: 0.16, e: 0.05, z: 2 },
    printed: [{ name: 'nCeil', value: 216, decimals: 0, agrees: true }],
    computed: { n: 215.04, nCeil: 216 },
    seen: 'seen',
    source: 'transtutors-ws',
    note: '+/-5 % of total, 2 sigma: N = 1600 p(1-p).',
  },
  {
    id: '4-12-20',
    inputs: { p: 0.2, e: 0.05, z: 2 },
    printed: [{ name: 'nCeil', value: 256, decimals: 0, agrees: true }],
    computed: { n: 256, nCeil: 256 },
    seen: 'seen',
    source: 'transtutors-ws',
    note: '+/-5 % of total, 2 sigma: N = 1600 p(1-p).',
  },
  {
    id: '4-12-50',
    inputs: { p: 0.5, e: 0.05, z: 2 },
    printed: [{ name: 'nCeil', value: 400, decimals: 0, agrees: true }],
    computed: { n: 400, nCeil: 400 },
    seen: 'seen',
    source: 'transtutors-ws',
    note: '+/-5 % of total, 2 sigma: N = 1600 p(1-p).',
  },
  {
    id: '4-12-15',
    inputs: { p: 0.15, e: 0.05, z: 2 },
    printed: [{ name: 'nCeil', value: 205, decimals: 0, agrees: false, why: 'exact 204' }],
    computed: { n: 204, nCeil: 204 },
    seen: 'seen',
    source: 'transtutors-ws',
    trap: true,
    note: 'table error.',
  },
  {
    id: '4-13',
    inputs: { p: 0.06, e: 0.05, z: 2 },
    printed: [{ name: 'nCeil', value: 92, decimals: 0, agrees: false, why: 'exact 90.24 -> 91' }],
    computed: { n: 90.24, nCeil: 91 },
    seen: 'seen',
    source: 'transtutors-ws',
    trap: true,
    note: 'table error.',
  },
  {
    id: '4-14',
    inputs: { p: 0.07, e: 0.05, z: 2 },
    printed: [{ name: 'nCeil', value: 102, decimals: 0, agrees: false, why: 'exact 104.16 -> 105' }],
    computed: { n: 104.16, nCeil: 105 },
    seen: 'seen',
    source: 'transtutors-ws',
    trap: true,
    note: 'table error.',
  },
  {
    id: '4-15',
    inputs: { p: 0.01, e: 0.01, z: 2 },
    printed: [{ name: 'nCeil', value: 396, decimals: 0, agrees: true }],
    computed: { n: 396, nCeil: 396 },
    seen: 'seen',
    source: 'transtutors-ws',
    note: '+/-1 % of total.',
  },
  {
    id: '4-16',
    inputs: { p: 0.25, e: 0.01, z: 2 },
    printed: [{ name: 'nCeil', value: 7500, decimals: 0, agrees: true }],
    computed: { n: 7500, nCeil: 7500 },
    seen: 'seen',
    source: 'transtutors-ws',
    note: '+/-1 % of total.',
  },
  {
    id: '4-31',
    inputs: { p: 0.3, e: 0.025, z: 1.96 },
    printed: [],
    computed: { n: 1290.7776, nCeil: 1291 },
    seen: 'seen-inputs',
    source: 'heizer-10-2',
    note: 'Tellers idle 30 %, 2.5 %, 95 % (studentsmerit.com): ours 1290.8 -> 1291.',
  },
];

export const sharePrecisions: readonly Check<
  { readonly x: number; readonly n: number; readonly z: number },
  SourceName
>[] = [
  {
    id: '4-09',
    inputs: { x: 150, n: 600, z: 1.96 },
    printed: [
      { name: 'p', value: 0.25, decimals: 2, agrees: true },
      { name: 'e', value: 0.0346, decimals: 4, agrees: true },
      { name: 'lo', value: 0.215, decimals: 3, agrees: true },
      { name: 'hi', value: 0.285, decimals: 3, agrees: true },
    ],
    computed: {
      p: 0.25,
      e: 0.03464823227814,
      lo: 0.2153517677219,
      hi: 0.2846482322781,
      sigma: 0.01767766952966,
    },
    seen: 'seen',
    source: 'note-a',
  },
  {
    id: '4-30',
    inputs: { x: 77, n: 350, z: 1.6448536 },
    printed: [],
    computed: {
      p: 0.22,
      e: 0.03642100028078,
      lo: 0.1835789997192,
      hi: 0.2564210002808,
      sigma: 0.02214239630857,
    },
    seen: 'seen-inputs',
    source: 'groover-rev',
    note: '70 students x 5 observations, 90 % interval (ours .1836-.2564); then n for +/-.03 at 95 %: 733.',
  },
];

export const samplingStandards: readonly Check<
  {
    readonly totalMin: number;
    readonly share: number;
    readonly rating: number;
    readonly units: number;
    readonly allowance: number;
    readonly convention: Convention;
  },
  SourceName
>[] = [
  {
    id: '4-17',
    inputs: { totalMin: 400, share: 0.35, rating: 0.8, units: 150, allowance: 0.1, convention: 'shift' },
    printed: [
      { name: 'nt', value: 0.75, decimals: 2, agrees: true },
      { name: 'st', value: 0.83, decimals: 2, agrees: true },
    ],
    computed: { ot: 0.9333333333333, nt: 0.7466666666667, st: 0.8296296296296 },
    seen: 'seen',
    source: 'transtutors-ws',
    note: '400 min, 200 observations, 150 units; element with 70 observations.',
  },
  {
    id: '4-18',
    inputs: { totalMin: 400, share: 0.4, rating: 1.2, units: 150, allowance: 0.1, convention: 'shift' },
    printed: [
      { name: 'nt', value: 1.28, decimals: 2, agrees: true },
      { name: 'st', value: 1.42, decimals: 2, agrees: true },
    ],
    computed: { ot: 1.066666666667, nt: 1.28, st: 1.422222222222 },
    seen: 'seen',
    source: 'transtutors-ws',
  },
  {
    id: '4-19',
    inputs: { totalMin: 400, share: 0.25, rating: 1.1, units: 150, allowance: 0.1, convention: 'shift' },
    printed: [
      { name: 'nt', value: 0.73, decimals: 2, agrees: true },
      { name: 'st', value: 0.81, decimals: 2, agrees: true },
    ],
    computed: { ot: 0.6666666666667, nt: 0.7333333333333, st: 0.8148148148148 },
    seen: 'seen',
    source: 'transtutors-ws',
    note: 'Sum printed 3.06 (exact 3.0667).',
  },
  {
    id: '4-20',
    inputs: { totalMin: 480, share: 0.75, rating: 1.05, units: 300, allowance: 0.1, convention: 'job' },
    printed: [
      { name: 'nt', value: 1.26, decimals: 2, agrees: true },
      { name: 'st', value: 1.386, decimals: 3, agrees: true },
    ],
    computed: { ot: 1.2, nt: 1.26, st: 1.386 },
    seen: 'seen',
    source: 'note-a',
  },
  {
    id: '4-21',
    inputs: { totalMin: 4800, share: 0.82, rating: 1, units: 2000, allowance: 0.15, convention: 'shift' },
    printed: [
      { name: 'nt', value: 1.968, decimals: 3, agrees: true },
      { name: 'st', value: 2.315, decimals: 3, agrees: true },
    ],
    computed: { ot: 1.968, nt: 1.968, st: 2.315294117647 },
    seen: 'seen',
    source: 'note-a',
  },
  {
    id: '4-22',
    inputs: { totalMin: 9600, share: 0.8, rating: 0.8, units: 384, allowance: 0.08, convention: 'shift' },
    printed: [{ name: 'st', value: 17.4, decimals: 1, agrees: true }],
    computed: { ot: 20, nt: 16, st: 17.39130434783 },
    seen: 'seen',
    source: 'mcq-heizer',
    note: '160 h, 384 units, 80 % rating, 20 % idle, 8 % allowance.',
  },
  {
    id: '4-23',
    inputs: { totalMin: 480, share: 0.9, rating: 0.8, units: 40, allowance: 0.1, convention: 'shift' },
    printed: [{ name: 'st', value: 9.6, decimals: 1, agrees: true }],
    computed: { ot: 10.8, nt: 8.64, st: 9.6 },
    seen: 'seen',
    source: 'askfilo-ws',
    note: 'Allowance is 10 % of the STANDARD time (= shift convention).',
  },
  {
    id: '4-24',
    inputs: { totalMin: 480, share: 0.6, rating: 0.9, units: 1, allowance: 0.125, convention: 'job' },
    printed: [],
    computed: { ot: 288, nt: 259.2, st: 291.6 },
    seen: 'seen-inputs',
    source: 'edurev',
    note: 'Minutes per day 291.6; per 1000 units .2916 (ours).',
  },
];

export const machineWork: readonly Check<
  {
    readonly manual: number;
    readonly machine: number;
    readonly rating: number;
    readonly allowance: number;
    readonly convention: Convention;
    readonly allowOn: 'all' | 'manual';
  },
  SourceName
>[] = [
  {
    id: '4-25',
    inputs: { manual: 0.56, machine: 0.28, rating: 1.15, allowance: 0.12, convention: 'job', allowOn: 'all' },
    printed: [
      {
        name: 'st',
        value: 3.3376,
        decimals: 4,
        agrees: false,
        why: '1.0349: machine .28 + hand .56 x 1.15 = .924, x 1.12',
      },
    ],
    computed: { nt: 0.924, st: 1.03488 },
    seen: 'seen',
    source: 'ques10b',
    trap: true,
    note: '6000 min, 6000 pieces, 84 % working (28 % machine, 56 % hand), rating 115 % on hand work, 12 %: source divides by the number of observations (2500) instead of the pieces and ADDS 1.12.',
  },
];

export const randomTimes: readonly Check<
  {
    readonly numbers: Numbers;
    readonly periods: number;
    readonly want: number;
    readonly startMin: number;
    readonly step: number;
  },
  SourceName
>[] = [
  {
    id: '4-26',
    inputs: {
      numbers: [11, 38, 45, 87, 68, 20, 11, 26, 49, 5, 14, 15, 47, 22],
      periods: 48,
      want: 10,
      startMin: 420,
      step: 10,
    },
    printed: [],
    computed: {
      kept: [11, 38, 45, 20, 26, 5, 14, 15, 47, 22],
      times: ['7:50', '8:50', '9:20', '9:30', '10:20', '10:40', '11:20', '13:20', '14:30', '14:50'],
    },
    seen: 'seen',
    source: 'ilo-ws',
    note: 'ILO: two-digit random numbers, 48 ten-minute periods from 7:00. 87, 68, 49 dropped as > 48, the second 11 dropped as repeat, four more read: 14 15 47 22. 05 -> 7:50.',
  },
];

export const shareCharts: readonly Check<
  { readonly pbar: number; readonly n: number; readonly k: number },
  SourceName
>[] = [
  {
    id: '4-27',
    inputs: { pbar: 0.07466666666666667, n: 100, k: 3 },
    printed: [
      {
        name: 'ucl',
        value: 0.1536,
        decimals: 4,
        agrees: false,
        why: 'exact .153522; source uses p-bar = .0747',
      },
      { name: 'lcl', value: 0, decimals: 0, agrees: true },
    ],
    computed: { sigma: 0.02628527259808, ucl: 0.1535224844609, lcl: 0 },
    seen: 'seen',
    source: 'pchart',
    note: 'General p-chart.',
  },
  {
    id: '4-28',
    inputs: { pbar: 0.034, n: 500, k: 3 },
    printed: [
      { name: 'ucl', value: 0.0583, decimals: 4, agrees: true },
      { name: 'lcl', value: 0.0097, decimals: 4, agrees: true },
    ],
    computed: { sigma: 0.00810481338465, ucl: 0.05831444015395, lcl: 0.00968555984605 },
    seen: 'seen',
    source: 'pchart',
  },
  {
    id: '4-29',
    inputs: { pbar: 0.025, n: 144, k: 3 },
    printed: [
      { name: 'ucl', value: 0.064, decimals: 3, agrees: true },
      { name: 'lcl', value: 0, decimals: 0, agrees: true },
    ],
    computed: { sigma: 0.01301041249666, ucl: 0.06403123748999, lcl: 0 },
    seen: 'seen',
    source: 'pchart',
    note: '72 of 2880.',
  },
];

export const relativeObservationNumbers: readonly Check<
  { readonly p: number; readonly s: number; readonly z: number },
  SourceName
>[] = [
  {
    id: '4-32',
    inputs: { p: 0.3, s: 0.1, z: 1.96 },
    printed: [],
    computed: { n: 896.3733333333, nCeil: 897 },
    seen: 'seen-inputs',
    source: 'expertsmind-ws',
    note: 'Dorben library: within 10 % OF the proportion (relative): 896.4 -> 897. With p +/- .10 absolute it would be 81.',
  },
];
