import type { Check, PublishedSource } from './check.ts';

/**
 * Figures on means of readings, ratings and allowances.
 * As printed, and as computed in full precision by another program from the formulas in the sources. Units are those of
 * the source.
 */
export const sources = {
  'askfilo-r': {
    reference: 'Filo. Two-element study rated reading by reading',
    locator: 'https://askfilo.com/',
    how: 'data seen; answers cut off (a sister question is at answerhappy.com t=231583)',
  },
  ques10: {
    reference: 'Ques10. Standard time from continuous stopwatch readings',
    locator: 'p/26849 https://www.ques10.com/p/26849/',
    how: 'text seen',
  },
  'heizer-sol-10': {
    reference: 'J. Heizer, B. Render. Solutions manual ch. 10 (coursepaper). 2013',
    locator:
      '10.23, 10.26-10.29 https://www.coursepaper.com/solution-manual/978-0132921145-chapter-10-part-2/',
    how: 'text seen',
  },
  unscath: {
    reference: 'teaching blog (Spanish). Ejemplo de estudio de tiempos, 4 elementos x 10 ciclos',
    locator: 'https://unscathedsoul.blogspot.com/',
    how: 'text seen',
  },
  hilo: {
    reference: 'University of Hawaii at Hilo QBA 361. Chapter 10 Supplement: Time Studies',
    locator: 'https://studylib.net/doc/5841379/time-studies-writeup---university-of-hawaii-at-hilo',
    how: 'text seen (last figures cut off)',
  },
  'kraj-tb': {
    reference: 'L. Krajewski, M. Malhotra. Operations Management test bank ch. 2 part 3. 2018',
    locator: '36-40 https://www.coursepaper.com/quiz/978-0134741062-test-bank-chapter-2-part-3/',
    how: 'questions seen, no answers',
  },
  'ilo-es-example': {
    reference:
      'ingenieriametodos.blogspot.com (Spanish reproduction of ILO text). Ejemplo de estudio de tiempos: hoja de trabajo. 2013-07-23',
    locator: 'https://ingenieriametodos.blogspot.com/2013/07/ejemplo-de-estudio-de-tiempos-hoja-de_23.html',
    how: 'text seen',
  },
  'ilo-es-scales': {
    reference:
      'ingenieriametodos.blogspot.com (Spanish reproduction of ILO text). Escalas de valoracion I; Un obrero y una maquina II. 2013',
    locator: 'https://ingenieriametodos.blogspot.com/2013/04/escalas-de-valoracion-i.html',
    how: 'text seen (exact page slug recalled; the blog itself was seen)',
  },
  'ilo-rating-scribd': {
    reference: 'after G. Kanawaty (ed.), ILO. Rating Scale',
    locator: 'https://www.scribd.com/doc/194967442/Rating-Scale',
    how: 'text seen',
  },
  derived: { reference: 'Evenhand. derived identity. 2025', how: 'own derivation' },
  goconqr: {
    reference: 'GoConqr mind map. Cronometraje industrial',
    locator: 'https://goconqr.com/mapamental/3032033/cronometraje-industrial',
    how: 'text seen',
  },
  'stevenson-76': {
    reference: 'W. J. Stevenson. Operations Management, Problem 7-6 / Table of relaxation allowances. 2014',
    locator: 'https://nursingexpertshelp.com/',
    how: 'problem and table seen; the answer is not shown',
  },
  'sup-es': {
    reference: 'teaching sheet. Suplementos por descanso (percent of basic time, men/women)',
    locator: 'https://www.scribd.com/document/221205839',
    how: 'text seen',
  },
  'ilo-mem': {
    reference: 'International Labour Office (G. Kanawaty, ed.). Introduction to Work Study, 4th ed.. 1992',
    locator: 'ch. 14, 18, 20-23, app. 3',
    how: 'book text NOT seen; recalled from memory',
  },
} as const satisfies Readonly<Record<string, PublishedSource>>;

type SourceName = keyof typeof sources;
type Numbers = readonly number[];

export const ratedReadings: readonly Check<
  { readonly pairs: readonly Numbers[]; readonly band: number; readonly ra: number },
  SourceName
>[] = [
  {
    id: '2-11a',
    inputs: {
      pairs: [
        [16, 1.1],
        [17, 1.05],
        [18, 0.95],
        [16, 1.15],
        [19, 0.95],
        [18, 1.05],
        [16, 1.2],
        [17, 1.15],
      ],
      band: 0.1,
      ra: 0.08,
    },
    printed: [],
    computed: {
      avgOT: 17.125,
      avgBTall: 18.33125,
      lower: 15.4125,
      upper: 18.8375,
      kept: 5,
      dropped: 3,
      avgBT: 17.8,
      standard: 19.224,
    },
    seen: 'seen-inputs',
    source: 'askfilo-r',
    note: 'Each reading rated; basic times outside +/-10 % of the mean observed time are rejected. Answers not shown.',
  },
  {
    id: '2-11b',
    inputs: {
      pairs: [
        [18, 1.1],
        [19, 0.95],
        [18, 1],
        [16, 1],
        [17, 1.05],
        [17, 1],
        [16, 1.05],
        [18, 1.05],
        [17, 1.1],
        [16, 1.2],
      ],
      band: 0.1,
      ra: 0.1,
    },
    printed: [],
    computed: {
      avgOT: 17.2,
      avgBTall: 18.03,
      lower: 15.48,
      upper: 18.92,
      kept: 8,
      dropped: 2,
      avgBT: 17.6625,
      standard: 19.42875,
    },
    seen: 'seen-inputs',
    source: 'askfilo-r',
    note: 'Ten readings, each rated.',
  },
];

export const runningWatches: readonly Check<
  { readonly table: Readonly<Record<string, Numbers>>; readonly scale: number },
  SourceName
>[] = [
  {
    id: '2-12',
    inputs: {
      table: { A: [10, 73, 139, 203, 266], B: [25, 88, 155, 218, 280], C: [64, 128, 193, 257, 320] },
      scale: 0.01,
    },
    printed: [
      { name: 'mean_A', value: 0.098, decimals: 3, agrees: true },
      { name: 'mean_B', value: 0.15, decimals: 3, agrees: true },
      { name: 'mean_C', value: 0.392, decimals: 3, agrees: true },
    ],
    computed: { mean_A: 0.098, mean_B: 0.15, mean_C: 0.392 },
    seen: 'seen',
    source: 'ques10',
    note: 'Continuous (cumulative) watch, 0.01 min, 3 elements x 5 cycles: subtract the previous reading.',
  },
  {
    id: '2-38',
    inputs: { table: { TCM: [13.05] }, scale: 0.0625 },
    printed: [{ name: 'mean_TCM', value: 0.816, decimals: 3, agrees: true }],
    computed: { mean_TCM: 0.815625 },
    seen: 'seen',
    source: 'ilo-es-example',
    note: 'Machine-controlled time: 13.05 min over 16 kept cycles (two of 18 dropped).',
  },
];

export const means: readonly Check<{ readonly readings: Numbers }, SourceName>[] = [
  {
    id: '2-20a',
    inputs: { readings: [8, 9, 8, 11, 7] },
    printed: [{ name: 'mean', value: 8.6, decimals: 1, agrees: true }],
    computed: { mean: 8.6, s: 1.51657508881 },
    seen: 'seen',
    source: 'heizer-sol-10',
    note: '10.29',
  },
  {
    id: '2-20b',
    inputs: { readings: [36, 41, 39, 35] },
    printed: [{ name: 'mean', value: 37.75, decimals: 2, agrees: true }],
    computed: { mean: 37.75, s: 2.753785273643 },
    seen: 'seen',
    source: 'heizer-sol-10',
    note: '10.29',
  },
  {
    id: '2-20c',
    inputs: { readings: [15, 17, 13, 20, 18] },
    printed: [{ name: 'mean', value: 16.6, decimals: 1, agrees: true }],
    computed: { mean: 16.6, s: 2.701851217221 },
    seen: 'seen',
    source: 'heizer-sol-10',
    note: '10.29',
  },
  {
    id: '2-20d',
    inputs: { readings: [8, 6, 9] },
    printed: [{ name: 'mean', value: 7.67, decimals: 2, agrees: true }],
    computed: { mean: 7.666666666667, s: 1.527525231652 },
    seen: 'seen',
    source: 'heizer-sol-10',
    note: '10.29',
  },
  {
    id: '2-20e',
    inputs: { readings: [15, 18, 21, 17] },
    printed: [{ name: 'mean', value: 17.75, decimals: 2, agrees: true }],
    computed: { mean: 17.75, s: 2.5 },
    seen: 'seen',
    source: 'heizer-sol-10',
    note: '10.28 element 4',
  },
  {
    id: '2-29',
    inputs: { readings: [0.36, 0.31, 0.42, 0.35, 0.38, 0.3, 0.41, 0.42, 0.35, 0.35] },
    printed: [{ name: 'mean', value: 0.32, decimals: 2, agrees: false, why: 'true mean .365' }],
    computed: { mean: 0.365, s: 0.04249182927994 },
    seen: 'seen',
    source: 'unscath',
    trap: true,
    note: '10 readings of element 1, printed mean .32 is wrong.',
  },
  {
    id: '2-30a',
    inputs: { readings: [0.81, 0.95, 0.76, 0.85, 1.01, 1.02, 0.95, 0.9, 0.87, 0.88] },
    printed: [{ name: 'mean', value: 0.9, decimals: 2, agrees: true }],
    computed: { mean: 0.9, s: 0.08366600265341 },
    seen: 'seen',
    source: 'unscath',
    note: '10 readings.',
  },
  {
    id: '2-30b',
    inputs: { readings: [0.56, 0.38, 0.42, 0.45, 0.51, 0.48, 0.5, 0.52, 0.39, 0.46] },
    printed: [{ name: 'mean', value: 0.467, decimals: 3, agrees: true }],
    computed: { mean: 0.467, s: 0.05831904586935 },
    seen: 'seen',
    source: 'unscath',
    note: '10 readings.',
  },
  {
    id: '2-30c',
    inputs: { readings: [0.19, 0.12, 0.16, 0.21, 0.15, 0.16, 0.18, 0.19, 0.19, 0.15] },
    printed: [{ name: 'mean', value: 0.17, decimals: 2, agrees: true }],
    computed: { mean: 0.17, s: 0.02666666666667 },
    seen: 'seen',
    source: 'unscath',
    note: '10 readings.',
  },
  {
    id: '2-33',
    inputs: { readings: [20, 23, 19, 18, 24, 25] },
    printed: [{ name: 'mean', value: 21.5, decimals: 1, agrees: true }],
    computed: { mean: 21.5, s: 2.880972058178 },
    seen: 'seen',
    source: 'hilo',
  },
];

export const weightedMeans: readonly Check<
  { readonly values: Numbers; readonly weights: Numbers },
  SourceName
>[] = [
  {
    id: '2-37',
    inputs: { values: [20, 25, 30, 35], weights: [10, 15, 12, 12] },
    printed: [],
    computed: { mean: 27.65306122449 },
    seen: 'seen-inputs',
    source: 'kraj-tb',
    note: 'Frequency table of readings (coursepaper 978-0134741062); normal time at 80 % falls in "less than 23 s" (22.12).',
  },
];

export const scaleConversions: readonly Check<
  { readonly rating: number; readonly from100: number; readonly to100: number },
  SourceName
>[] = [
  {
    id: '2-40',
    inputs: { rating: 60, from100: 80, to100: 100 },
    printed: [],
    computed: { r: 75 },
    seen: 'derived',
    source: 'ilo-es-scales',
    note: 'Scales seen, conversion ours: 80 is standard on 60/80, so 60 = 75 on 0-100.',
  },
  {
    id: '2-41',
    inputs: { rating: 133, from100: 133, to100: 100 },
    printed: [],
    computed: { r: 100 },
    seen: 'derived',
    source: 'ilo-es-scales',
    note: 'Scales seen, conversion ours: 100/133 scale: 133 is standard.',
  },
  {
    id: '2-42',
    inputs: { rating: 75, from100: 100, to100: 80 },
    printed: [],
    computed: { r: 60 },
    seen: 'derived',
    source: 'ilo-es-scales',
    note: '0-100 to 60/80 (ours): 75 = 60.',
  },
];

export const walkingLevels: readonly Check<
  { readonly base: number; readonly speeds: Numbers },
  SourceName
>[] = [
  {
    id: '2-43',
    inputs: { base: 4, speeds: [3, 4] },
    printed: [{ name: 'r1', value: 100, decimals: 0, agrees: true }],
    computed: { r0: 75, r1: 100 },
    seen: 'seen',
    source: 'ilo-rating-scribd',
    note: 'Walking 4 mile/h = standard 100 (printed); 3 mile/h = 75 follows.',
  },
  {
    id: '2-49',
    inputs: { base: 75, speeds: [100] },
    printed: [{ name: 'r0', value: 133, decimals: 0, agrees: true }],
    computed: { r0: 133.3333333333 },
    seen: 'seen',
    source: 'goconqr',
    note: 'Optimum activity is 33 % above normal (133.33).',
  },
];

export const conventionConversions: readonly Check<
  { readonly job?: number; readonly shift?: number },
  SourceName
>[] = [
  {
    id: '2-47',
    inputs: { job: 0.15 },
    printed: [],
    computed: { shift: 0.1304347826087 },
    seen: 'derived',
    source: 'derived',
    note: '15 % of basic time = 13.04 % of the shift.',
  },
  {
    id: '2-48',
    inputs: { shift: 0.15 },
    printed: [],
    computed: { job: 0.1764705882353 },
    seen: 'derived',
    source: 'derived',
    note: '15 % of the shift = 17.65 % of basic time.',
  },
];

export const allowanceSums: readonly Check<{ readonly parts: Numbers }, SourceName>[] = [
  {
    id: '3-01',
    inputs: { parts: [5, 4, 2, 0, 11, 5, 5, 0] },
    printed: [],
    computed: { total: 32 },
    seen: 'seen-inputs',
    source: 'stevenson-76',
    note: 'Personal 5 + basic fatigue 4 + standing 2 + slightly awkward 0 + 45 lb 11 + very inadequate light 5 + intermittent very loud 5 + low monotony 0 = 32 %. Printed answer not shown.',
  },
  {
    id: '3-02',
    inputs: { parts: [5, 4] },
    printed: [],
    computed: { total: 9 },
    seen: 'derived',
    source: 'sup-es',
    note: 'Constant allowances, men: personal 5 + basic fatigue 4 = 9 (rows seen, sum ours).',
  },
  {
    id: '3-03',
    inputs: { parts: [7, 4] },
    printed: [{ name: 'total', value: 11, decimals: 0, agrees: true }],
    computed: { total: 11 },
    seen: 'memory',
    source: 'ilo-mem',
    note: 'Constant allowances, women: 7 + 4. One Spanish sheet (scribd 221205839) prints 7 + 7; most others 7 + 4.',
  },
];
