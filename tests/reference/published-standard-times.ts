import type { Check, PublishedSource } from './check.ts';

/**
 * Figures on standard times of one element, of worker and machine, and on output.
 * As printed, and as computed in full precision by another program from the formulas in the sources. Units are those of
 * the source. A rating is a share of standard, `job` means an allowance on basic time, `shift` one on the working day.
 */
export const sources = {
  'stevenson-7': {
    reference: 'W. J. Stevenson. Operations Management, ch. 7 solutions. 2012-2021',
    locator: 'P1-P5 https://www.scribd.com/document/507637391',
    how: 'text seen',
  },
  nptel: { reference: 'NPTEL course. Assignment 9', locator: 'https://nptel.ac.in/', how: 'text seen' },
  mettach: {
    reference: 'Metta Charity Engineering blog. Work measurement worked examples. 2021',
    locator: 'https://mettacharityengg21.blogspot.com/',
    how: 'text seen',
  },
  studyx: {
    reference: 'StudyX. Standard time from five readings',
    locator: 'https://studyx.ai/',
    how: 'text seen',
  },
  indextest: {
    reference: 'answer site. Check the following calculations',
    locator: 'https://indextestingapp.uonbi.ac.ke/preguntia/14003372',
    how: 'text seen',
  },
  'blog-west': {
    reference: 'teaching blog (Spanish). Estudio del trabajo y metodos',
    locator: 'https://estudiodetrabajoymetodos.blogspot.com/',
    how: 'text seen',
  },
  'note-a': {
    reference:
      'public study note. Work study, work measurement, work sampling, learning curves (sections 1-12)',
    how: 'text seen in excerpts, page address not kept',
  },
  hilo: {
    reference: 'University of Hawaii at Hilo QBA 361. Chapter 10 Supplement: Time Studies',
    locator: 'https://studylib.net/doc/5841379/time-studies-writeup---university-of-hawaii-at-hilo',
    how: 'text seen (last figures cut off)',
  },
  storm: {
    reference: 'K. Storm. Industrial Process Plant Construction Estimating and Man-Hour Analysis. 2019',
    locator:
      'p. xxxii https://digilib.universitaspertamina.ac.id/ebook/Industrial%20Process%20Plant%20Construction%20Estimating%20and%20Man-Hour%20Analysis/files/basic-html/page17.html',
    how: 'text seen',
  },
  'stevenson-77': {
    reference: 'W. J. Stevenson. Operations Management, Problem 7-7. 2014',
    locator:
      'https://nursingexpertshelp.com/problem-7-7a-worker-machine-operation-was-found-to-involve-3-1-minutes-of-machine-time-per-cycle-in-the-course-of-40-cycles-of-stopwatch-study-the-workers-time-averaged-1-6-minutes-per-cyc/',
    how: 'text seen',
  },
  'groover-2': {
    reference: 'M. P. Groover. Work Systems: problem 2.7 solution (Course Hero file 24703599). 2007',
    locator: '2.7 https://www.coursehero.com/file/24703599/Solution-HW3pdf/',
    how: 'text seen',
  },
  vormeel: {
    reference: 'vormeel.com (Dutch). U doet toch ook wel eens een normaaltijdberekening?',
    locator: 'https://vormeel.com/u-doet-toch-ook-wel-eens-een-normaaltijdberekening/',
    how: 'formula seen, no numbers',
  },
  derived: { reference: 'Evenhand. derived identity. 2025', how: 'own derivation' },
  'ilo-es-mtm': {
    reference:
      'ingenieriametodos.blogspot.com (Spanish reproduction of ILO text). Suplementos y tiempos de las tareas. 2013-08',
    locator: 'https://ingenieriametodos.blogspot.com/2013/08/',
    how: 'text seen',
  },
} as const satisfies Readonly<Record<string, PublishedSource>>;

type SourceName = keyof typeof sources;
type Convention = 'job' | 'shift';

export const singleStandards: readonly Check<
  {
    readonly ot: number;
    readonly rating: number;
    readonly allowance: number;
    readonly convention: Convention;
  },
  SourceName
>[] = [
  {
    id: '2-03',
    inputs: { ot: 10.4, rating: 1.25, allowance: 0.16, convention: 'job' },
    printed: [
      { name: 'nt', value: 13, decimals: 1, agrees: true },
      { name: 'st', value: 15.08, decimals: 2, agrees: true },
    ],
    computed: { nt: 13, st: 15.08, af: 1.16 },
    seen: 'seen',
    source: 'stevenson-7',
    note: 'P1.',
  },
  {
    id: '2-04',
    inputs: { ot: 1.2, rating: 0.95, allowance: 0.1, convention: 'shift' },
    printed: [
      { name: 'nt', value: 1.14, decimals: 2, agrees: true },
      { name: 'st', value: 1.27, decimals: 2, agrees: true },
      { name: 'af', value: 1.11, decimals: 2, agrees: true },
    ],
    computed: { nt: 1.14, st: 1.266666666667, af: 1.111111111111 },
    seen: 'seen',
    source: 'stevenson-7',
    note: 'P2. AF printed 1.11 (exact 1.1111).',
  },
  {
    id: '2-14',
    inputs: { ot: 0.28, rating: 1.1, allowance: 0, convention: 'job' },
    printed: [{ name: 'nt', value: 0.308, decimals: 3, agrees: true }],
    computed: { nt: 0.308, st: 0.308, af: 1 },
    seen: 'seen',
    source: 'nptel',
    note: 'Observed .25, levelling 1.12, then 1.10.',
  },
  {
    id: '2-15',
    inputs: { ot: 8, rating: 1.2, allowance: 0.12, convention: 'shift' },
    printed: [
      { name: 'nt', value: 9.6, decimals: 1, agrees: true },
      { name: 'st', value: 10.91, decimals: 2, agrees: true },
    ],
    computed: { nt: 9.6, st: 10.90909090909, af: 1.136363636364 },
    seen: 'seen',
    source: 'mettach',
  },
  {
    id: '2-17',
    inputs: { ot: 5, rating: 1.2, allowance: 0.33, convention: 'shift' },
    printed: [
      { name: 'nt', value: 6, decimals: 0, agrees: true },
      { name: 'st', value: 8.96, decimals: 2, agrees: true },
    ],
    computed: { nt: 6, st: 8.955223880597, af: 1.492537313433 },
    seen: 'seen',
    source: 'mettach',
  },
  {
    id: '2-22',
    inputs: { ot: 30, rating: 1.25, allowance: 0.2, convention: 'job' },
    printed: [
      { name: 'nt', value: 37.5, decimals: 1, agrees: true },
      { name: 'st', value: 45, decimals: 0, agrees: true },
    ],
    computed: { nt: 37.5, st: 45, af: 1.2 },
    seen: 'seen',
    source: 'studyx',
    note: 'mean of 30 25 35 30 30 s',
  },
  {
    id: '2-23',
    inputs: { ot: 20, rating: 1.2, allowance: 0.2, convention: 'job' },
    printed: [
      { name: 'nt', value: 24, decimals: 0, agrees: true },
      { name: 'st', value: 28.8, decimals: 1, agrees: true },
    ],
    computed: { nt: 24, st: 28.8, af: 1.2 },
    seen: 'seen',
    source: 'indextest',
    note: 'mean of 27 19 20 21 13 s',
  },
  {
    id: '2-25',
    inputs: { ot: 534, rating: 0.9, allowance: 0, convention: 'job' },
    printed: [{ name: 'nt', value: 480.6, decimals: 1, agrees: true }],
    computed: { nt: 480.6, st: 480.6, af: 1 },
    seen: 'seen',
    source: 'blog-west',
    note: 'Levelling sum -0.10 (Westinghouse form): factor 0.90.',
  },
  {
    id: '2-26',
    inputs: { ot: 1.055, rating: 1.1, allowance: 0.15, convention: 'shift' },
    printed: [
      { name: 'nt', value: 1.1605, decimals: 4, agrees: true },
      { name: 'st', value: 1.365, decimals: 3, agrees: true },
    ],
    computed: { nt: 1.1605, st: 1.365294117647, af: 1.176470588235 },
    seen: 'seen',
    source: 'note-a',
    note: 'Output 480/1.365 = 351.6 per shift.',
  },
  {
    id: '2-28a',
    inputs: { ot: 2, rating: 1, allowance: 0.15, convention: 'shift' },
    printed: [{ name: 'st', value: 2.353, decimals: 3, agrees: true }],
    computed: { nt: 2, st: 2.352941176471, af: 1.176470588235 },
    seen: 'seen',
    source: 'note-a',
    note: 'PAIR: same normal time, both conventions.',
  },
  {
    id: '2-28b',
    inputs: { ot: 2, rating: 1, allowance: 0.15, convention: 'job' },
    printed: [{ name: 'st', value: 2.3, decimals: 2, agrees: true }],
    computed: { nt: 2, st: 2.3, af: 1.15 },
    seen: 'seen',
    source: 'note-a',
    note: '204 against 208.7 per 480 min.',
  },
  {
    id: '2-32',
    inputs: { ot: 21.5, rating: 0.85, allowance: 0.1, convention: 'shift' },
    printed: [],
    computed: { nt: 18.275, st: 20.30555555556, af: 1.111111111111 },
    seen: 'seen-inputs',
    source: 'hilo',
    note: '20 23 19 18 24 25 min, mean 21.5 printed; NT and ST cut off (ours 18.275, 20.306).',
  },
  {
    id: '2-34',
    inputs: { ot: 1, rating: 1, allowance: 0.15, convention: 'shift' },
    printed: [{ name: 'st', value: 1.176, decimals: 3, agrees: true }],
    computed: { nt: 1, st: 1.176470588235, af: 1.176470588235 },
    seen: 'seen',
    source: 'storm',
    note: 'Allowance multiplier for 15 % of the day.',
  },
  {
    id: '2-44',
    inputs: { ot: 0.5, rating: 1.25, allowance: 0, convention: 'job' },
    printed: [],
    computed: { nt: 0.625, st: 0.625, af: 1 },
    seen: 'derived',
    source: 'vormeel',
    note: '60-base form seen: NT = observed x rated tempo / 60. With 0.50 min at 75 -> .625 normal min; the same reading on the 0-100 scale is 93.75 -> .46875 basic min. Ratio 4/3.',
  },
  {
    id: '2-45',
    inputs: { ot: 0.5, rating: 0.9375, allowance: 0, convention: 'job' },
    printed: [],
    computed: { nt: 0.46875, st: 0.46875, af: 1 },
    seen: 'derived',
    source: 'derived',
    note: 'Companion of 2-44.',
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
    id: '2-16',
    inputs: { manual: 4, machine: 6, rating: 1.1, allowance: 0.1, convention: 'shift', allowOn: 'all' },
    printed: [
      { name: 'nt', value: 10.4, decimals: 1, agrees: true },
      { name: 'st', value: 11.56, decimals: 2, agrees: true },
    ],
    computed: { nt: 10.4, st: 11.55555555556 },
    seen: 'seen',
    source: 'mettach',
    note: 'Machine-paced part is not rated.',
  },
  {
    id: '2-35',
    inputs: {
      manual: 1.6,
      machine: 3.1,
      rating: 1.06,
      allowance: 0.06,
      convention: 'job',
      allowOn: 'manual',
    },
    printed: [{ name: 'st', value: 4.9, decimals: 2, agrees: true }],
    computed: { nt: 4.796, st: 4.89776 },
    seen: 'seen',
    source: 'stevenson-77',
    note: 'Allowance only on the worker part; a rest break inside the study is not in the times.',
  },
];

export const outputs: readonly Check<{ readonly minutes: number; readonly st: number }, SourceName>[] = [
  {
    id: '2-18',
    inputs: { minutes: 480, st: 8.96 },
    printed: [
      { name: 'q', value: 53.6, decimals: 1, agrees: true },
      { name: 'floor', value: 54, decimals: 0, agrees: false, why: 'only 53 complete units fit in 480 min' },
    ],
    computed: { q: 53.57142857143, floor: 53 },
    seen: 'seen',
    source: 'mettach',
    trap: true,
    note: 'whole units are 53, source rounds up to 54.',
  },
  {
    id: '2-26b',
    inputs: { minutes: 480, st: 1.365 },
    printed: [{ name: 'q', value: 351.6, decimals: 1, agrees: true }],
    computed: { q: 351.6483516484, floor: 351 },
    seen: 'seen',
    source: 'note-a',
  },
];

export const machineWorkTwoAllowances: readonly Check<
  {
    readonly manualNT: number;
    readonly machine: number;
    readonly aW: number;
    readonly aM: number;
    readonly units: number;
    readonly shiftMin: number;
    readonly lostMin: number;
  },
  SourceName
>[] = [
  {
    id: '2-36',
    inputs: { manualNT: 0.84, machine: 4.55, aW: 0.16, aM: 0.3, units: 85, shiftMin: 480, lostMin: 42 },
    printed: [
      { name: 'st', value: 6.889, decimals: 3, agrees: true },
      { name: 'stdHours', value: 9.76, decimals: 2, agrees: true },
      { name: 'eff', value: 1.22, decimals: 2, agrees: true },
      { name: 'perf', value: 1.393, decimals: 3, agrees: true },
    ],
    computed: { st: 6.8894, stdHours: 9.759983333333, eff: 1.219997916667, perf: 1.393170731707 },
    seen: 'seen',
    source: 'groover-2',
    note: 'Separate worker and machine allowances; efficiency and performance from a shift.',
  },
];

export const tmuAtStandard: readonly Check<{ readonly tmu: number }, SourceName>[] = [
  {
    id: '2-46',
    inputs: { tmu: 2000 },
    printed: [
      { name: 'stdMin', value: 1, decimals: 0, agrees: true },
      { name: 'factor', value: 0.83, decimals: 2, agrees: true },
    ],
    computed: { stdMin: 1, min: 1.2, factor: 0.8333333333333 },
    seen: 'seen',
    source: 'ilo-es-mtm',
    note: 'ILO: MTM totals times 0.83 give minutes at BSI 100; standard minutes = TMU / 2000.',
  },
];
