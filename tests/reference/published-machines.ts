import type { Check, PublishedSource } from './check.ts';

/**
 * Figures on the number of machines for a worker, with synchronous servicing and by the binomial rule.
 * As printed, and as computed in full precision by another program from the formulas in the sources.
 * Times are minutes;
 * l, m, w loading, machine and walking time; a, b, t time together, of the worker alone and of the machine alone;
 * R, S machine and service time, L, P cost of an hour of the worker and of a machine, U pieces a cycle, K machines.
 */
export const sources = {
  'niebel-sync': {
    reference: 'after B. Niebel, A. Freivalds. Worker-machine slides',
    locator: 'https://www.scribd.com/document/613025937',
    how: 'text seen',
  },
  manmach: {
    reference: 'lecture notes after Freivalds. Worker-machine relationships',
    locator: 'pp. 1-5 https://pl.scribd.com/document/56816649/Man-Mach',
    how: 'text seen (cost answer cut off)',
  },
  msc600: {
    reference: 'course key MSC 600. Synchronous servicing, R=13 S=3',
    locator: 'https://www.docsity.com/',
    how: 'text seen, page address not kept',
  },
  answerya: {
    reference: 'answer site. Three machines: load 3, unload 2, run 20',
    locator:
      'https://answer-ya.com/questions/465-it-takes-3-minutes-to-load-and-2-minutes-to-unload-a-machine.html',
    how: 'text seen',
  },
  ainshams: {
    reference:
      'Ain Shams University, Facility Planning. Assignment 4 Man-machine calculations, solution. 2015-2016',
    locator: '1 https://www.scribd.com/document/801871535',
    how: 'text seen',
  },
  tompkins: {
    reference: 'J. A. Tompkins et al.. Facilities Planning 4e, ch. 2 solutions part 2. 2010',
    locator: '2.41, 2.42 https://www.coursepaper.com/solution-manual/978-0470444047-chapter-2-part-2/',
    how: 'text seen',
  },
  theuvo: {
    reference: 'M. P. Groover. Machine cluster problem. 2007',
    locator: 'https://theuvocorp.com/a-worker-is-currently-responsible-for-tending-two-machines-in-4/',
    how: 'question seen, no answer',
  },
  'binom-es': {
    reference: 'lecture exercises. Ejercicios: maquinas asignadas a un operador (binomial)',
    locator: '1-2 https://it.scribd.com/document/394088726/ejercicios-de-1-1',
    how: 'text seen',
  },
  assexp: {
    reference: 'answer site. Binomial machines n=5 p=.2',
    locator: 'https://www.assignmentexpert.com/',
    how: 'text seen, page address not kept',
  },
  sqh: {
    reference: 'answer site. Binomial machines n=5 p=.15',
    locator: 'https://studyquestionhub.com/',
    how: 'text seen (one figure wrong), page address not kept',
  },
  'groover-218': {
    reference: 'IE 131 homework solutions (M. P. Groover, Work Systems). Problem 2.18. 2010',
    locator: 'HW 02-03-10 https://huggingface.co/datasets/nvidia/Nemotron-CC-Math-v1',
    how: 'text seen in a public text collection',
  },
} as const satisfies Readonly<Record<string, PublishedSource>>;

type SourceName = keyof typeof sources;

export const idealNumbers: readonly Check<
  { readonly l: number; readonly m: number; readonly w: number },
  SourceName
>[] = [
  {
    id: '7-01',
    inputs: { l: 1, m: 3, w: 0 },
    printed: [{ name: 'n', value: 4, decimals: 0, agrees: true }],
    computed: { n: 4, floor: 4 },
    seen: 'seen',
    source: 'niebel-sync',
    note: 'no walking',
  },
  {
    id: '7-02',
    inputs: { l: 1, m: 2, w: 0.1 },
    printed: [{ name: 'n', value: 2.7, decimals: 1, agrees: true }],
    computed: { n: 2.727272727272727, floor: 2 },
    seen: 'seen',
    source: 'manmach',
  },
  {
    id: '7-13',
    inputs: { l: 0.35, m: 1.9, w: 0.15 },
    printed: [],
    computed: { n: 4.5, floor: 4 },
    seen: 'seen-inputs',
    source: 'theuvo',
    note: 'n = 4.5; no printed answer',
  },
];

export const assignments: readonly Check<
  {
    readonly a: number;
    readonly b: number;
    readonly t: number;
    readonly m: number;
    readonly Co: number;
    readonly Cm: number;
  },
  SourceName
>[] = [
  {
    id: '7-03',
    inputs: { a: 1, b: 0, t: 2, m: 2, Co: 10, Cm: 20 },
    printed: [],
    computed: { nIdeal: 3, Tc: 3, cost: 1.25, opIdle: 1, machIdle: 0 },
    seen: 'seen-inputs',
    source: 'manmach',
    note: 'Two machines: cycle 3 min, (10+2*20)*3/60/2 = 1.25 per piece (ours; printed answer cut off). Walking happens inside the machine time.',
  },
  {
    id: '7-04',
    inputs: { a: 1, b: 0.1, t: 2, m: 3, Co: 10, Cm: 20 },
    printed: [],
    computed: {
      nIdeal: 2.727272727272727,
      Tc: 3.3000000000000003,
      cost: 1.2833333333333334,
      opIdle: 0,
      machIdle: 0.30000000000000027,
    },
    seen: 'seen-inputs',
    source: 'manmach',
    note: 'Three machines: cycle 3.3 min -> 1.2833 per piece (ours).',
  },
  {
    id: '7-09',
    inputs: { a: 5, b: 1, t: 20, m: 3, Co: 10, Cm: 30 },
    printed: [
      { name: 'nIdeal', value: 4.17, decimals: 2, agrees: true },
      { name: 'Tc', value: 25, decimals: 0, agrees: true },
      { name: 'opIdle', value: 7, decimals: 0, agrees: true },
      { name: 'cost', value: 13.88, decimals: 2, agrees: false, why: 'exact 13.8889: source truncates' },
    ],
    computed: { nIdeal: 4.166666666666667, Tc: 25, cost: 13.888888888888891, opIdle: 7, machIdle: 0 },
    seen: 'seen',
    source: 'answerya',
    note: 'load 3 + unload 2 are concurrent, inspection 1 independent',
  },
  {
    id: '7-10',
    inputs: { a: 6, b: 1, t: 25, m: 4, Co: 4, Cm: 6 },
    printed: [
      { name: 'nIdeal', value: 4.43, decimals: 2, agrees: true },
      { name: 'cost', value: 3.61, decimals: 2, agrees: false, why: 'exact 3.6167: source truncates' },
    ],
    computed: { nIdeal: 4.428571428571429, Tc: 31, cost: 3.616666666666667, opIdle: 3, machIdle: 0 },
    seen: 'seen',
    source: 'ainshams',
  },
  {
    id: '7-11',
    inputs: { a: 5, b: 1, t: 20, m: 5, Co: 12, Cm: 30 },
    printed: [
      { name: 'Tc', value: 30, decimals: 0, agrees: true },
      { name: 'cost', value: 16.2, decimals: 2, agrees: true },
    ],
    computed: { nIdeal: 4.166666666666667, Tc: 30, cost: 16.2, opIdle: 0, machIdle: 5 },
    seen: 'seen',
    source: 'tompkins',
    note: 'Problem 2.41: five machines each for three operators; 3 x 12 + 15 x 30 over 30 min and 15 pieces',
  },
  {
    id: '7-12',
    inputs: { a: 4, b: 8, t: 40, m: 3, Co: 0, Cm: 0 },
    printed: [{ name: 'nIdeal', value: 3.67, decimals: 2, agrees: true }],
    computed: { nIdeal: 3.6666666666666665, Tc: 44, cost: 0, opIdle: 8, machIdle: 0 },
    seen: 'seen',
    source: 'tompkins',
    note: '2.42',
  },
];

export const assignmentsOfPieces: readonly Check<
  {
    readonly R: number;
    readonly S: number;
    readonly L: number;
    readonly P: number;
    readonly U: number;
    readonly K: number;
  },
  SourceName
>[] = [
  {
    id: '7-05',
    inputs: { R: 13, S: 3, L: 14, P: 37, U: 3, K: 1 },
    printed: [
      { name: 'kIdeal', value: 5.33, decimals: 2, agrees: true },
      { name: 'C', value: 16, decimals: 0, agrees: true },
      { name: 'Q', value: 11.25, decimals: 2, agrees: true },
      { name: 'T', value: 4.533, decimals: 3, agrees: true },
      { name: 'opIdleHour', value: 48.75, decimals: 2, agrees: true },
    ],
    computed: {
      kIdeal: 5.333333333333333,
      C: 16,
      T: 4.533333333333333,
      Q: 11.25,
      opIdle: 13,
      opIdleHour: 48.75,
      machIdle: 0,
      machIdleHour: 0,
    },
    seen: 'seen',
    source: 'msc600',
    note: 'R machine time 13, S service 3 min, three pieces per machine cycle. T = C/(60 U) (L/K + P).',
  },
  {
    id: '7-06',
    inputs: { R: 13, S: 3, L: 14, P: 37, U: 3, K: 3 },
    printed: [
      { name: 'opIdle', value: 7, decimals: 0, agrees: true },
      { name: 'opIdleHour', value: 26.25, decimals: 2, agrees: true },
    ],
    computed: {
      kIdeal: 5.333333333333333,
      C: 16,
      T: 3.7037037037037037,
      Q: 11.25,
      opIdle: 7,
      opIdleHour: 26.25,
      machIdle: 0,
      machIdleHour: 0,
    },
    seen: 'seen',
    source: 'msc600',
  },
  {
    id: '7-07',
    inputs: { R: 13, S: 3, L: 14, P: 37, U: 3, K: 5 },
    printed: [
      { name: 'T', value: 3.537, decimals: 3, agrees: false, why: 'exact 3.53778: source truncates' },
    ],
    computed: {
      kIdeal: 5.333333333333333,
      C: 16,
      T: 3.5377777777777775,
      Q: 11.25,
      opIdle: 1,
      opIdleHour: 3.75,
      machIdle: 0,
      machIdleHour: 0,
    },
    seen: 'seen',
    source: 'msc600',
    note: 'Economic choice: five machines.',
  },
  {
    id: '7-08',
    inputs: { R: 13, S: 3, L: 14, P: 37, U: 3, K: 6 },
    printed: [
      { name: 'C', value: 18, decimals: 0, agrees: true },
      { name: 'machIdle', value: 2, decimals: 0, agrees: true },
      { name: 'machIdleHour', value: 6.67, decimals: 2, agrees: true },
    ],
    computed: {
      kIdeal: 5.333333333333333,
      C: 18,
      T: 3.9333333333333336,
      Q: 10,
      opIdle: 0,
      opIdleHour: 0,
      machIdle: 2,
      machIdleHour: 6.666666666666667,
    },
    seen: 'seen',
    source: 'msc600',
    note: 'Six machines: operator-bound; T(6) ours 3.933, dearer than five.',
  },
];

export const serviceLosses: readonly Check<
  { readonly n: number; readonly pDown: number; readonly hours: number },
  SourceName
>[] = [
  {
    id: '7-14',
    inputs: { n: 3, pDown: 0.4, hours: 8 },
    printed: [
      { name: 'p0', value: 0.216, decimals: 3, agrees: true },
      { name: 'p1', value: 0.432, decimals: 3, agrees: true },
      { name: 'p2', value: 0.288, decimals: 3, agrees: true },
      { name: 'p3', value: 0.064, decimals: 3, agrees: true },
      { name: 'lost2', value: 2.304, decimals: 3, agrees: true },
      { name: 'lost3', value: 1.024, decimals: 3, agrees: true },
      { name: 'lost', value: 3.328, decimals: 3, agrees: true },
      { name: 'lostPct', value: 13.9, decimals: 1, agrees: true },
      { name: 'eff', value: 86, decimals: 0, agrees: true },
    ],
    computed: {
      p0: 0.21599999999999997,
      p1: 0.43200000000000005,
      p2: 0.28800000000000003,
      p3: 0.06400000000000002,
      lost0: 0,
      lost1: 0,
      lost2: 2.3040000000000003,
      lost3: 1.0240000000000002,
      lost: 3.3280000000000003,
      lostPct: 13.866666666666667,
      eff: 86.13333333333333,
    },
    seen: 'seen',
    source: 'binom-es',
    note: 'Machines running 60 % of the time; same numbers as the classic Niebel example.',
  },
  {
    id: '7-15',
    inputs: { n: 4, pDown: 0.4, hours: 8 },
    printed: [
      { name: 'p0', value: 0.1296, decimals: 4, agrees: true },
      { name: 'p1', value: 0.3456, decimals: 4, agrees: true },
      { name: 'p2', value: 0.3456, decimals: 4, agrees: true },
      { name: 'p3', value: 0.1536, decimals: 4, agrees: true },
      { name: 'p4', value: 0.0256, decimals: 4, agrees: true },
      { name: 'lost2', value: 2.7648, decimals: 4, agrees: true },
      { name: 'lost3', value: 2.4576, decimals: 4, agrees: true },
      { name: 'lost4', value: 0.6144, decimals: 4, agrees: true },
      { name: 'lost', value: 5.8368, decimals: 4, agrees: true },
      {
        name: 'lostPct',
        value: 24,
        decimals: 0,
        agrees: false,
        why: 'exact 18.24: source divides 5.8368 by 24 h instead of 32 h - TRAP',
      },
      { name: 'eff', value: 76, decimals: 0, agrees: false, why: 'exact 81.76' },
    ],
    computed: {
      p0: 0.1296,
      p1: 0.34559999999999996,
      p2: 0.3456000000000001,
      p3: 0.15360000000000004,
      p4: 0.025600000000000005,
      lost0: 0,
      lost1: 0,
      lost2: 2.7648000000000006,
      lost3: 2.4576000000000007,
      lost4: 0.6144000000000001,
      lost: 5.836800000000001,
      lostPct: 18.240000000000002,
      eff: 81.75999999999999,
    },
    seen: 'seen',
    trap: true,
    source: 'binom-es',
  },
  {
    id: '7-16',
    inputs: { n: 3, pDown: 0.25, hours: 8 },
    printed: [
      { name: 'p0', value: 0.421875, decimals: 6, agrees: true },
      { name: 'p1', value: 0.421875, decimals: 6, agrees: true },
      { name: 'p2', value: 0.140625, decimals: 6, agrees: true },
      { name: 'p3', value: 0.015625, decimals: 6, agrees: true },
      { name: 'lost2', value: 1.125, decimals: 3, agrees: true },
      { name: 'lost3', value: 0.25, decimals: 2, agrees: true },
      { name: 'lost', value: 1.375, decimals: 3, agrees: true },
    ],
    computed: {
      p0: 0.421875,
      p1: 0.421875,
      p2: 0.140625,
      p3: 0.015625,
      lost0: 0,
      lost1: 0,
      lost2: 1.125,
      lost3: 0.25,
      lost: 1.375,
      lostPct: 5.729166666666667,
      eff: 94.27083333333333,
    },
    seen: 'seen',
    source: 'binom-es',
  },
];

export const standings: readonly Check<{ readonly n: number; readonly p: number }, SourceName>[] = [
  {
    id: '7-17',
    inputs: { n: 5, p: 0.2 },
    printed: [
      { name: 'p0', value: 0.32768, decimals: 5, agrees: true },
      { name: 'p4', value: 0.0064, decimals: 4, agrees: true },
      { name: 'p5', value: 0.00032, decimals: 5, agrees: true },
      { name: 'ge3', value: 0.05792, decimals: 5, agrees: true },
    ],
    computed: {
      p0: 0.3276800000000001,
      p1: 0.4096000000000001,
      p2: 0.2048000000000001,
      p3: 0.05120000000000002,
      p4: 0.006400000000000002,
      p5: 0.0003200000000000001,
      ge3: 0.05792000000000003,
    },
    seen: 'seen',
    source: 'assexp',
  },
  {
    id: '7-18',
    inputs: { n: 5, p: 0.15 },
    printed: [
      { name: 'p4', value: 0.002153, decimals: 6, agrees: false, why: 'exact .0021516' },
      { name: 'ge3', value: 0.026667, decimals: 6, agrees: false, why: 'exact .026612' },
    ],
    computed: {
      p0: 0.44370531249999995,
      p1: 0.3915046874999999,
      p2: 0.13817812499999996,
      p3: 0.024384374999999993,
      p4: 0.0021515625,
      p5: 7.593749999999998e-5,
      ge3: 0.026611874999999993,
    },
    seen: 'seen',
    trap: true,
    source: 'sqh',
    note: 'P(at least 3 of 5 down) misprinted.',
  },
];

export const orders: readonly Check<
  {
    readonly units: number;
    readonly t: number;
    readonly q: number;
    readonly hours: number;
    readonly avail: number;
    readonly setup: number;
  },
  SourceName
>[] = [
  {
    id: '7-26',
    inputs: { units: 1000, t: 9, q: 0.05, hours: 40, avail: 0.98, setup: 5 },
    printed: [
      { name: 'wl', value: 157.9, decimals: 1, agrees: true },
      { name: 'n', value: 4.62, decimals: 2, agrees: true },
      { name: 'nCeil', value: 5, decimals: 0, agrees: true },
    ],
    computed: { wl: 157.89473684210526, n: 4.616805170821791, nCeil: 5 },
    seen: 'seen',
    source: 'groover-218',
    note: 'Rush order: workload/(available - setup) machines.',
  },
];
