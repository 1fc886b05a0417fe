import type { Check, PublishedSource } from './check.ts';

/**
 * Figures on the number of machines for a worker, with synchronous and with random servicing.
 * As printed, and as computed in full precision by another program from the formulas in the sources. Times are minutes;
 * l, m, w loading, machine and walking time; a, b, t time together, of the worker alone and of the machine alone;
 * R, S machine and service time, L, P cost of an hour of the worker and of a machine, U pieces a cycle, K machines;
 * K, X, c machines, service factor and workers of a finite group.
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
  peck20: {
    reference:
      'after L. G. Peck, R. N. Hazelwood, Finite Queueing Tables (1958). Twenty machines, X=.10 (holooly)',
    locator: 'https://holooly.com/',
    how: 'text seen, page address not kept',
  },
  peck5: {
    reference: 'after Peck & Hazelwood. Finite queuing table N=5 (Course Hero file 8871054)',
    locator:
      'D-46 https://www.coursehero.com/file/8871054/44-Limited-Population-Model-Notations-D-Probability-that/',
    how: 'text seen',
  },
  'stevenson-18': {
    reference: 'W. J. Stevenson. Operations Management, ch. 18 solutions part 2. 2014',
    locator: '18-19 https://www.coursepaper.com/solution-manual/978-0078024108-chapter-18-part-2/',
    how: 'text seen',
  },
  csrfinite: {
    reference: 'answer site. Finite queue N=4, X=.1429',
    locator: 'https://csr.engine.ac.nz/encuentra/15843315',
    how: 'text seen (table misread)',
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

export const callingGroups: readonly Check<
  { readonly K: number; readonly X: number; readonly c: number },
  SourceName
>[] = [
  {
    id: '7-19-1',
    inputs: { K: 20, X: 0.1, c: 1 },
    printed: [{ name: 'F', value: 0.5, decimals: 3, agrees: true }],
    computed: {
      F: 0.49969151358345343,
      D: 0.9986281028365142,
      L: 10.006169728330931,
      H: 0.9993830271669072,
      J: 8.994447244502162,
      down: 11.005552755497838,
    },
    seen: 'seen',
    source: 'peck20',
  },
  {
    id: '7-19-2',
    inputs: { K: 20, X: 0.1, c: 2 },
    printed: [{ name: 'F', value: 0.878, decimals: 3, agrees: true }],
    computed: {
      F: 0.8780611281950762,
      D: 0.7726058214981314,
      L: 2.438777436098478,
      H: 1.7561222563901515,
      J: 15.805100307511372,
      down: 4.194899692488628,
    },
    seen: 'seen',
    source: 'peck20',
  },
  {
    id: '7-19-3',
    inputs: { K: 20, X: 0.1, c: 3 },
    printed: [{ name: 'F', value: 0.975, decimals: 3, agrees: true }],
    computed: {
      F: 0.9754253377178308,
      D: 0.3625179753074622,
      L: 0.4914932456433818,
      H: 1.9508506754356618,
      J: 17.557656078920957,
      down: 2.4423439210790434,
    },
    seen: 'seen',
    source: 'peck20',
  },
  {
    id: '7-19-4',
    inputs: { K: 20, X: 0.1, c: 4 },
    printed: [{ name: 'F', value: 0.995, decimals: 3, agrees: true }],
    computed: {
      F: 0.9947303906242178,
      D: 0.13052998246733782,
      L: 0.10539218751564237,
      H: 1.9894607812484355,
      J: 17.90514703123592,
      down: 2.09485296876408,
    },
    seen: 'seen',
    source: 'peck20',
  },
  {
    id: '7-19-5',
    inputs: { K: 20, X: 0.1, c: 5 },
    printed: [{ name: 'F', value: 0.999, decimals: 3, agrees: true }],
    computed: {
      F: 0.9989258247209503,
      D: 0.03799370256812284,
      L: 0.021483505580997073,
      H: 1.9978516494419,
      J: 17.980664844977106,
      down: 2.019335155022894,
    },
    seen: 'seen',
    source: 'peck20',
  },
  {
    id: '7-20-0.012-1',
    inputs: { K: 5, X: 0.012, c: 1 },
    printed: [
      { name: 'D', value: 0.048, decimals: 3, agrees: true },
      { name: 'F', value: 0.999, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9994033868605067,
      D: 0.04797877601293413,
      L: 0.0029830656974664626,
      H: 0.059964203211630394,
      J: 4.937052731090903,
      down: 0.06294726890909708,
    },
    seen: 'seen',
    source: 'peck5',
    note: 'D = probability an arriving unit waits',
  },
  {
    id: '7-20-0.025-1',
    inputs: { K: 5, X: 0.025, c: 1 },
    printed: [
      { name: 'D', value: 0.1, decimals: 3, agrees: true },
      { name: 'F', value: 0.997, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9973156720535231,
      D: 0.09980353542841068,
      L: 0.013421639732384489,
      H: 0.1246644590066904,
      J: 4.861913901260925,
      down: 0.13808609873907507,
    },
    seen: 'seen',
    source: 'peck5',
    note: 'D = probability an arriving unit waits',
  },
  {
    id: '7-20-0.05-1',
    inputs: { K: 5, X: 0.05, c: 1 },
    printed: [
      { name: 'D', value: 0.198, decimals: 3, agrees: true },
      { name: 'F', value: 0.989, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9885787048973773,
      D: 0.1983650019376388,
      L: 0.05710647551311305,
      H: 0.2471446762243444,
      J: 4.695748848262542,
      down: 0.304251151737458,
    },
    seen: 'seen',
    source: 'peck5',
    note: 'D = probability an arriving unit waits',
  },
  {
    id: '7-20-0.06-2',
    inputs: { K: 5, X: 0.06, c: 2 },
    printed: [
      { name: 'D', value: 0.02, decimals: 3, agrees: true },
      { name: 'F', value: 0.999, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9993515346988951,
      D: 0.020334095670670266,
      L: 0.003242326505524397,
      H: 0.2998054604096685,
      J: 4.696952213084807,
      down: 0.30304778691519285,
    },
    seen: 'seen',
    source: 'peck5',
    note: 'D = probability an arriving unit waits',
  },
  {
    id: '7-20-0.06-1',
    inputs: { K: 5, X: 0.06, c: 1 },
    printed: [
      { name: 'D', value: 0.237, decimals: 3, agrees: true },
      { name: 'F', value: 0.983, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9831951718153171,
      D: 0.23713610928677104,
      L: 0.0840241409234142,
      H: 0.29495855154459505,
      J: 4.62101730753199,
      down: 0.37898269246800975,
    },
    seen: 'seen',
    source: 'peck5',
    note: 'D = probability an arriving unit waits',
  },
  {
    id: '7-20-0.07-2',
    inputs: { K: 5, X: 0.07, c: 2 },
    printed: [
      { name: 'D', value: 0.027, decimals: 3, agrees: true },
      { name: 'F', value: 0.999, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9989702475714722,
      D: 0.0273952368675089,
      L: 0.005148762142638579,
      H: 0.34963958665001543,
      J: 4.645211651207346,
      down: 0.3547883487926544,
    },
    seen: 'seen',
    source: 'peck5',
    note: 'D = probability an arriving unit waits',
  },
  {
    id: '7-20-0.07-1',
    inputs: { K: 5, X: 0.07, c: 1 },
    printed: [
      { name: 'D', value: 0.275, decimals: 3, agrees: true },
      { name: 'F', value: 0.977, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9766755204268358,
      D: 0.27539623311087125,
      L: 0.11662239786582106,
      H: 0.3418364321493926,
      J: 4.541541169984787,
      down: 0.45845883001521326,
    },
    seen: 'seen',
    source: 'peck5',
    note: 'D = probability an arriving unit waits',
  },
  {
    id: '7-20-0.08-2',
    inputs: { K: 5, X: 0.08, c: 2 },
    printed: [
      { name: 'D', value: 0.035, decimals: 3, agrees: true },
      { name: 'F', value: 0.998, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9984630270053959,
      D: 0.0354146154337958,
      L: 0.007684864973020752,
      H: 0.39938521080215833,
      J: 4.592929924224821,
      down: 0.40707007577517906,
    },
    seen: 'seen',
    source: 'peck5',
    note: 'D = probability an arriving unit waits',
  },
  {
    id: '7-20-0.08-1',
    inputs: { K: 5, X: 0.08, c: 1 },
    printed: [
      { name: 'D', value: 0.313, decimals: 3, agrees: true },
      { name: 'F', value: 0.969, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9690002876299246,
      D: 0.3130527850671013,
      L: 0.1549985618503767,
      H: 0.3876001150519699,
      J: 4.4574013230976535,
      down: 0.5425986769023465,
    },
    seen: 'seen',
    source: 'peck5',
    note: 'D = probability an arriving unit waits',
  },
  {
    id: '7-20-0.09-2',
    inputs: { K: 5, X: 0.09, c: 2 },
    printed: [
      { name: 'D', value: 0.044, decimals: 3, agrees: true },
      { name: 'F', value: 0.998, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9978121367900703,
      D: 0.044358155808830735,
      L: 0.01093931604964802,
      H: 0.4490154615555316,
      J: 4.54004522239482,
      down: 0.45995477760518,
    },
    seen: 'seen',
    source: 'peck5',
    note: 'D = probability an arriving unit waits',
  },
  {
    id: '7-20-0.09-1',
    inputs: { K: 5, X: 0.09, c: 1 },
    printed: [
      { name: 'D', value: 0.35, decimals: 3, agrees: true },
      { name: 'F', value: 0.96, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9601655590685294,
      D: 0.35001422576309243,
      L: 0.1991722046573532,
      H: 0.4320745015808382,
      J: 4.3687532937618085,
      down: 0.6312467062381915,
    },
    seen: 'seen',
    source: 'peck5',
    note: 'D = probability an arriving unit waits',
  },
  {
    id: '7-20-0.1-2',
    inputs: { K: 5, X: 0.1, c: 2 },
    printed: [
      { name: 'D', value: 0.054, decimals: 3, agrees: true },
      { name: 'F', value: 0.997, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9970000447754511,
      D: 0.054191616766467075,
      L: 0.014999776122744439,
      H: 0.49850002238772556,
      J: 4.48650020148953,
      down: 0.5134997985104697,
    },
    seen: 'seen',
    source: 'peck5',
    note: 'D = probability an arriving unit waits',
  },
  {
    id: '7-20-0.1-1',
    inputs: { K: 5, X: 0.1, c: 1 },
    printed: [
      { name: 'D', value: 0.386, decimals: 3, agrees: true },
      { name: 'F', value: 0.95, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9501840098138568,
      D: 0.3861914117316868,
      L: 0.2490799509307163,
      H: 0.4750920049069283,
      J: 4.275828044162355,
      down: 0.7241719558376447,
    },
    seen: 'seen',
    source: 'peck5',
    note: 'D = probability an arriving unit waits',
  },
  {
    id: '7-21-1',
    inputs: { K: 10, X: 0.14, c: 1 },
    printed: [{ name: 'F', value: 0.68, decimals: 3, agrees: true }],
    computed: {
      F: 0.6802656739043721,
      D: 0.9185884821028162,
      L: 3.1973432609562784,
      H: 0.9523719434661212,
      J: 5.8502847955776,
      down: 4.1497152044224,
    },
    seen: 'seen',
    source: 'stevenson-18',
    note: 'Adjustment 14 min, running 86 min.',
  },
  {
    id: '7-21-2',
    inputs: { K: 10, X: 0.14, c: 2 },
    printed: [{ name: 'F', value: 0.947, decimals: 3, agrees: true }],
    computed: {
      F: 0.9469318239787482,
      D: 0.4373810832762789,
      L: 0.530681760212518,
      H: 1.3257045535702479,
      J: 8.143613686217234,
      down: 1.8563863137827656,
    },
    seen: 'seen',
    source: 'stevenson-18',
    note: 'Adjustment 14 min, running 86 min.',
  },
  {
    id: '7-21-3',
    inputs: { K: 10, X: 0.14, c: 3 },
    printed: [{ name: 'F', value: 0.991, decimals: 3, agrees: true }],
    computed: {
      F: 0.9914432535806238,
      D: 0.1321380177895191,
      L: 0.0855674641937624,
      H: 1.388020555012873,
      J: 8.526411980793366,
      down: 1.473588019206634,
    },
    seen: 'seen',
    source: 'stevenson-18',
    note: 'Adjustment 14 min, running 86 min.',
  },
  {
    id: '7-22',
    inputs: { K: 10, X: 0.14, c: 2 },
    printed: [
      { name: 'J', value: 8.144, decimals: 3, agrees: true },
      { name: 'down', value: 1.856, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9469318239787482,
      D: 0.4373810832762789,
      L: 0.530681760212518,
      H: 1.3257045535702479,
      J: 8.143613686217234,
      down: 1.8563863137827656,
    },
    seen: 'seen',
    source: 'stevenson-18',
    note: 'J = N F (1-X)',
  },
  {
    id: '7-23',
    inputs: { K: 10, X: 0.14, c: 3 },
    printed: [
      { name: 'J', value: 8.523, decimals: 3, agrees: false, why: 'exact 8.5264 from unrounded F' },
      { name: 'down', value: 1.477, decimals: 3, agrees: false, why: 'exact 1.4736' },
    ],
    computed: {
      F: 0.9914432535806238,
      D: 0.1321380177895191,
      L: 0.0855674641937624,
      H: 1.388020555012873,
      J: 8.526411980793366,
      down: 1.473588019206634,
    },
    seen: 'seen',
    source: 'stevenson-18',
  },
  {
    id: '7-24',
    inputs: { K: 4, X: 0.14285714285714285, c: 1 },
    printed: [
      { name: 'F', value: 0.936, decimals: 3, agrees: false, why: 'exact .9281' },
      { name: 'L', value: 0.256, decimals: 3, agrees: false, why: 'exact .2872' },
    ],
    computed: {
      F: 0.9282608695652174,
      D: 0.4098360655737704,
      L: 0.28695652173913044,
      H: 0.5304347826086957,
      J: 3.1826086956521737,
      down: 0.8173913043478263,
    },
    seen: 'seen',
    trap: true,
    source: 'csrfinite',
    note: 'F read from the wrong table row.',
  },
  {
    id: '7-25-4-1',
    inputs: { K: 4, X: 0.05, c: 1 },
    printed: [
      { name: 'D', value: 0.149, decimals: 3, agrees: true },
      { name: 'F', value: 0.992, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.991825009688194,
      D: 0.14921855618953114,
      L: 0.03269996124722426,
      H: 0.1983650019376388,
      J: 3.768935036815137,
      down: 0.23106496318486291,
    },
    seen: 'seen',
    source: 'peck20',
    note: 'table X = .05',
  },
  {
    id: '7-25-5-1',
    inputs: { K: 5, X: 0.05, c: 1 },
    printed: [
      { name: 'D', value: 0.198, decimals: 3, agrees: true },
      { name: 'F', value: 0.989, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9885787048973773,
      D: 0.1983650019376388,
      L: 0.05710647551311305,
      H: 0.2471446762243444,
      J: 4.695748848262542,
      down: 0.304251151737458,
    },
    seen: 'seen',
    source: 'peck20',
    note: 'table X = .05',
  },
  {
    id: '7-25-6-1',
    inputs: { K: 6, X: 0.05, c: 1 },
    printed: [
      { name: 'D', value: 0.247, decimals: 3, agrees: true },
      { name: 'F', value: 0.985, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9850153965559364,
      D: 0.24714467622434438,
      L: 0.08990762066438159,
      H: 0.29550461896678093,
      J: 5.614587760368837,
      down: 0.38541223963116256,
    },
    seen: 'seen',
    source: 'peck20',
    note: 'table X = .05',
  },
  {
    id: '7-25-6-2',
    inputs: { K: 6, X: 0.05, c: 2 },
    printed: [
      { name: 'D', value: 0.023, decimals: 3, agrees: true },
      { name: 'F', value: 0.999, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9993734022215058,
      D: 0.023203455713559164,
      L: 0.003759586670964927,
      H: 0.2998120206664517,
      J: 5.696428392662583,
      down: 0.3035716073374166,
    },
    seen: 'seen',
    source: 'peck20',
    note: 'table X = .05',
  },
  {
    id: '7-25-7-1',
    inputs: { K: 7, X: 0.05, c: 1 },
    printed: [
      { name: 'D', value: 0.296, decimals: 3, agrees: true },
      { name: 'F', value: 0.981, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9810937235361921,
      D: 0.2955046189667809,
      L: 0.13234393524665614,
      H: 0.3433828032376672,
      J: 6.524273261515677,
      down: 0.47572673848432334,
    },
    seen: 'seen',
    source: 'peck20',
    note: 'table X = .05',
  },
  {
    id: '7-25-7-2',
    inputs: { K: 7, X: 0.05, c: 2 },
    printed: [
      { name: 'D', value: 0.034, decimals: 3, agrees: true },
      { name: 'F', value: 0.999, decimals: 3, agrees: true },
    ],
    computed: {
      F: 0.9990572972938926,
      D: 0.03398410265139304,
      L: 0.006598918942751679,
      H: 0.3496700540528624,
      J: 6.643731027004386,
      down: 0.3562689729956139,
    },
    seen: 'seen',
    source: 'peck20',
    note: 'table X = .05',
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
