import type { Check, PublishedSource } from './check.ts';

/**
 * Figures on whole studies, from elements to the standard time.
 * As printed, and as computed in full precision by another program from the formulas in the sources. Units are those of
 * the source. A rating is a share of standard, `job` means an allowance on basic time, `shift` one on the working day.
 */
export const sources = {
  'heizer-10-2': {
    reference: 'J. Heizer, B. Render. Operations Management, ch. 10, Example 2. 2011-2017',
    locator: 'Example 2 https://holooly.com/',
    how: 'inputs and method seen; printed intermediate figures from memory; the same data set (without the starred readings) also at studentsmerit.com paper 34661',
  },
  'heizer-hofstetter': {
    reference: 'J. Heizer, B. Render. Problem 10.23 Hofstetter/mailing study. 2020',
    locator:
      'https://quesba.com/questions/based-careful-work-study-hofstetter-corp-results-shown-following-table-1496580',
    how: 'data and answers seen on an answer page; quesba page has the question only',
  },
  'stevenson-7': {
    reference: 'W. J. Stevenson. Operations Management, ch. 7 solutions. 2012-2021',
    locator: 'P1-P5 https://www.scribd.com/document/507637391',
    how: 'text seen',
  },
  utec: {
    reference:
      'UTEC slides after W. J. Stevenson, Operations Management 14e. Work design and measurement (slides). 2021',
    locator: 'slides 15-25',
    how: 'text seen in excerpts, page address not kept',
  },
  stuvia: {
    reference: 'Stuvia answer. A time study was conducted on a job that contains four elements',
    locator: 'http://grafana.stuvia.com/nl-nl/doc/739899/',
    how: 'text seen',
  },
  'askfilo-q5': {
    reference: 'Filo. Work study question 5 (basic times, frequency, relaxation)',
    locator: 'https://askfilo.com/',
    how: 'text seen',
  },
  'askfilo-7': {
    reference: 'Filo. Seven-element study with 5 % contingency',
    locator: 'https://askfilo.com/',
    how: 'text seen',
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
  reid: {
    reference:
      'R. D. Reid, N. R. Sanders. Operations Management, ch. 11 solutions (Course Hero file 6300973). 2010',
    locator: 'Problems 2, 4, 6 https://www.coursehero.com/file/6300973/ch11/',
    how: 'text seen',
  },
  'scribd-5767': {
    reference: 'lecture exercise. Five-element study, 15 % + 2 %',
    locator: 'https://www.scribd.com/document/576730640',
    how: 'question seen, no answer',
  },
  'note-a': {
    reference:
      'public study note. Work study, work measurement, work sampling, learning curves (sections 1-12)',
    how: 'text seen in excerpts, page address not kept',
  },
  gauth: {
    reference: 'answer site. The result of a time study to perform a quality control test',
    locator: 'https://my.gauthmath.com/solution/1824210541603878/',
    how: 'text seen (automatic answer, wrong)',
  },
} as const satisfies Readonly<Record<string, PublishedSource>>;

type SourceName = keyof typeof sources;
type Numbers = readonly number[];
type Convention = 'job' | 'shift';

export const studies: readonly Check<
  {
    readonly elements: readonly {
      readonly readings?: Numbers;
      readonly ot?: number;
      readonly rating: number;
      readonly freq?: number;
    }[];
    readonly allowance: number;
    readonly convention: Convention;
  },
  SourceName
>[] = [
  {
    id: '2-01',
    inputs: {
      elements: [
        { readings: [8, 10, 9, 11], rating: 1.2 },
        { readings: [2, 3, 2, 1, 3], rating: 1.05 },
        { readings: [2, 1, 2, 1], rating: 1.1 },
      ],
      allowance: 0.15,
      convention: 'shift',
    },
    printed: [
      { name: 'ot1', value: 9.5, decimals: 1, agrees: true },
      { name: 'ot2', value: 2.2, decimals: 1, agrees: true },
      { name: 'ot3', value: 1.5, decimals: 1, agrees: true },
      { name: 'nt1', value: 11.4, decimals: 1, agrees: true },
      { name: 'nt2', value: 2.31, decimals: 2, agrees: true },
      { name: 'nt3', value: 1.65, decimals: 2, agrees: true },
      { name: 'ntTotal', value: 15.36, decimals: 2, agrees: true },
      { name: 'stTotal', value: 18.07, decimals: 2, agrees: true },
    ],
    computed: {
      ot1: 9.5,
      nt1: 11.4,
      ot2: 2.2,
      nt2: 2.31,
      ot3: 1.5,
      nt3: 1.65,
      ntTotal: 15.36,
      stTotal: 18.07058823529,
    },
    seen: 'memory',
    source: 'heizer-10-2',
    note: 'Two starred readings (21 and 5) excluded. Inputs and method seen; printed intermediate figures recalled.',
  },
  {
    id: '2-02',
    inputs: {
      elements: [
        { readings: [2.5, 3.5, 2.8, 2.1, 2.6, 3.3], rating: 0.85 },
        { readings: [0.8, 0.8, 0.6, 0.8, 0.7], rating: 1 },
        { readings: [0.4, 0.5, 0.3, 0.6, 0.5], rating: 0.95 },
        { readings: [1, 0.9, 1, 0.9], rating: 1.25 },
      ],
      allowance: 0.12,
      convention: 'shift',
    },
    printed: [
      { name: 'ot1', value: 2.8, decimals: 1, agrees: true },
      { name: 'ot2', value: 0.74, decimals: 2, agrees: true },
      { name: 'ot3', value: 0.46, decimals: 2, agrees: true },
      { name: 'ot4', value: 0.95, decimals: 2, agrees: true },
      { name: 'nt1', value: 2.38, decimals: 2, agrees: true },
      { name: 'nt2', value: 0.74, decimals: 2, agrees: true },
      { name: 'nt3', value: 0.437, decimals: 3, agrees: true },
      { name: 'nt4', value: 1.1875, decimals: 4, agrees: true },
      { name: 'stTotal', value: 5.4, decimals: 1, agrees: true },
    ],
    computed: {
      ot1: 2.8,
      nt1: 2.38,
      ot2: 0.74,
      nt2: 0.74,
      ot3: 0.46,
      nt3: 0.437,
      ot4: 0.95,
      nt4: 1.1875,
      ntTotal: 4.7445,
      stTotal: 5.391477272727,
    },
    seen: 'seen',
    source: 'heizer-hofstetter',
    note: 'Readings 3.1, 1.9, 2.9 and 4.4 carry foreign-element footnotes and are excluded.',
  },
  {
    id: '2-05',
    inputs: {
      elements: [
        { readings: [0.44, 0.5, 0.43, 0.45, 0.48, 0.46], rating: 0.9 },
        { readings: [1.5, 1.54, 1.47, 1.51, 1.49, 1.52], rating: 0.85 },
        { readings: [0.84, 0.89, 0.77, 0.83, 0.85, 0.8], rating: 1.1 },
        { readings: [1.1, 1.14, 1.08, 1.2, 1.16, 1.26], rating: 1 },
      ],
      allowance: 0.15,
      convention: 'shift',
    },
    printed: [{ name: 'stTotal', value: 4.43, decimals: 2, agrees: true }],
    computed: { ntTotal: 3.762916666667, stTotal: 4.426960784314 },
    seen: 'seen',
    source: 'stevenson-7',
    note: 'P3, percent of the workday. PAIR with 2-06: same data, other convention.',
  },
  {
    id: '2-06',
    inputs: {
      elements: [
        { readings: [0.44, 0.5, 0.43, 0.45, 0.48, 0.46], rating: 0.9 },
        { readings: [1.5, 1.54, 1.47, 1.51, 1.49, 1.52], rating: 0.85 },
        { readings: [0.84, 0.89, 0.77, 0.83, 0.85, 0.8], rating: 1.1 },
        { readings: [1.1, 1.14, 1.08, 1.2, 1.16, 1.26], rating: 1 },
      ],
      allowance: 0.15,
      convention: 'job',
    },
    printed: [{ name: 'stTotal', value: 4.33, decimals: 2, agrees: true }],
    computed: { ntTotal: 3.762916666667, stTotal: 4.327354166667 },
    seen: 'seen',
    source: 'utec',
    note: 'Same data, percent of job time. 4.43 against 4.33: the convention alone moves the standard 2.3 %.',
  },
  {
    id: '2-07',
    inputs: {
      elements: [
        { ot: 2.1, rating: 0.9, freq: 1 },
        { ot: 1.0999999999999999, rating: 0.9, freq: 1 },
        { ot: 3.4, rating: 0.9, freq: 1 },
        { ot: 4.1, rating: 0.9, freq: 1 },
        { ot: 1.45, rating: 0.9, freq: 1 },
      ],
      allowance: 0.15,
      convention: 'job',
    },
    printed: [
      { name: 'st1', value: 2.17, decimals: 2, agrees: true },
      { name: 'st2', value: 1.14, decimals: 2, agrees: true },
      { name: 'st3', value: 3.52, decimals: 2, agrees: true },
      { name: 'st4', value: 4.24, decimals: 2, agrees: true },
      { name: 'st5', value: 1.5, decimals: 2, agrees: true },
      { name: 'stTotal', value: 12.58, decimals: 2, agrees: true },
    ],
    computed: {
      st1: 2.1735,
      st2: 1.1385,
      st3: 3.519,
      st4: 4.2435,
      st5: 1.50075,
      ntTotal: 10.935,
      stTotal: 12.57525,
    },
    seen: 'seen',
    source: 'stevenson-7',
    note: 'P5: elements missing in some cycles are averaged over the times they occurred; the text sums them as if every element occurred each cycle.',
  },
  {
    id: '2-07f',
    inputs: {
      elements: [
        { ot: 2.1, rating: 0.9, freq: 0.8333333333333334 },
        { ot: 1.0999999999999999, rating: 0.9, freq: 0.5 },
        { ot: 3.4, rating: 0.9, freq: 1 },
        { ot: 4.1, rating: 0.9, freq: 0.3333333333333333 },
        { ot: 1.45, rating: 0.9, freq: 1 },
      ],
      allowance: 0.15,
      convention: 'job',
    },
    printed: [],
    computed: {
      ot1: 2.1,
      nt1: 1.575,
      st1: 1.81125,
      ot2: 1.1,
      nt2: 0.495,
      st2: 0.56925,
      ot3: 3.4,
      nt3: 3.06,
      st3: 3.519,
      ot4: 4.1,
      nt4: 1.23,
      st4: 1.4145,
      ot5: 1.45,
      nt5: 1.305,
      st5: 1.50075,
      ntTotal: 7.665,
      stTotal: 8.81475,
    },
    seen: 'derived',
    source: 'stevenson-7',
    note: 'Frequency-weighted version of 2-07 (occurrences 5,3,6,2,6 of 6 cycles), ours.',
  },
  {
    id: '2-08',
    inputs: {
      elements: [
        { ot: 0.452, rating: 0.9 },
        { ot: 1.508, rating: 0.85 },
        { ot: 0.833, rating: 1.1 },
        { ot: 1.15, rating: 1 },
      ],
      allowance: 0.13,
      convention: 'job',
    },
    printed: [
      { name: 'nt1', value: 0.407, decimals: 3, agrees: true },
      { name: 'nt2', value: 1.282, decimals: 3, agrees: true },
      { name: 'nt3', value: 0.916, decimals: 3, agrees: true },
      { name: 'st1', value: 0.468, decimals: 3, agrees: false, why: '.460' },
      { name: 'st2', value: 1.474, decimals: 3, agrees: false, why: '1.449' },
      { name: 'st3', value: 1.053, decimals: 3, agrees: false, why: '1.035' },
      {
        name: 'st4',
        value: 1.322,
        decimals: 3,
        agrees: false,
        why: '1.300 is right under the job convention',
      },
    ],
    computed: {
      nt1: 0.4068,
      st1: 0.459684,
      nt2: 1.2818,
      st2: 1.448434,
      nt3: 0.9163,
      st3: 1.035419,
      st4: 1.2995,
      ntTotal: 3.7549,
      stTotal: 4.243037,
    },
    seen: 'seen',
    source: 'stuvia',
    trap: true,
    note: 'question says 13 percent OF JOB TIME, answer divides by 0.87 (shift convention).',
  },
  {
    id: '2-13',
    inputs: {
      elements: [
        { ot: 0.098, rating: 0.8 },
        { ot: 0.15, rating: 1 },
        { ot: 0.392, rating: 1.1 },
      ],
      allowance: 0.12,
      convention: 'job',
    },
    printed: [
      { name: 'nt1', value: 0.0784, decimals: 4, agrees: true },
      { name: 'nt2', value: 0.15, decimals: 4, agrees: true },
      { name: 'nt3', value: 0.4312, decimals: 4, agrees: true },
      { name: 'ntTotal', value: 0.6596, decimals: 4, agrees: true },
      { name: 'stTotal', value: 0.7387, decimals: 4, agrees: false, why: 'exact .73875: source truncates' },
    ],
    computed: { nt1: 0.0784, nt2: 0.15, nt3: 0.4312, ntTotal: 0.6596, stTotal: 0.738752 },
    seen: 'seen',
    source: 'ques10',
    note: 'The statement table lists a rating of 100 for C, the solution uses 110.',
  },
  {
    id: '2-19',
    inputs: {
      elements: [
        { ot: 37.8, rating: 1.2 },
        { ot: 12.5, rating: 1.1 },
        { ot: 4, rating: 0.9 },
        { ot: 17.75, rating: 0.85 },
      ],
      allowance: 0.15,
      convention: 'shift',
    },
    printed: [
      { name: 'nt1', value: 45.36, decimals: 2, agrees: true },
      { name: 'nt2', value: 13.75, decimals: 2, agrees: true },
      { name: 'nt3', value: 3.6, decimals: 1, agrees: true },
      { name: 'nt4', value: 15.09, decimals: 2, agrees: true },
      { name: 'ntTotal', value: 77.8, decimals: 1, agrees: true },
      { name: 'stTotal', value: 91.53, decimals: 2, agrees: true },
    ],
    computed: { nt1: 45.36, nt2: 13.75, nt3: 3.6, nt4: 15.0875, ntTotal: 77.7975, stTotal: 91.52647058824 },
    seen: 'seen',
    source: 'heizer-sol-10',
    note: 'Problem 10.28.',
  },
  {
    id: '2-21',
    inputs: {
      elements: [
        { ot: 1.14, rating: 1 },
        { ot: 0.85, rating: 1 },
        { ot: 0.88, rating: 1 },
        { ot: 0.99, rating: 1 },
      ],
      allowance: 0.15,
      convention: 'job',
    },
    printed: [
      { name: 'st1', value: 1.311, decimals: 3, agrees: true },
      { name: 'st2', value: 0.978, decimals: 3, agrees: true },
      { name: 'st3', value: 1.012, decimals: 3, agrees: true },
      { name: 'st4', value: 1.139, decimals: 3, agrees: true },
      {
        name: 'stTotal',
        value: 4.44,
        decimals: 3,
        agrees: false,
        why: 'exact 4.439: source adds rounded elements',
      },
    ],
    computed: { st1: 1.311, st2: 0.9775, st3: 1.012, st4: 1.1385, ntTotal: 3.86, stTotal: 4.439 },
    seen: 'seen',
    source: 'reid',
    note: 'Problem 6. Line for element 3 prints 1.14 (typo; the product 1.012 needs .88).',
  },
  {
    id: '2-24',
    inputs: {
      elements: [
        { ot: 0.2, rating: 0.85 },
        { ot: 0.08, rating: 0.8 },
        { ot: 0.5, rating: 0.9 },
        { ot: 0.12, rating: 0.85 },
        { ot: 0.1, rating: 0.8 },
      ],
      allowance: 0.17,
      convention: 'job',
    },
    printed: [],
    computed: {
      ot1: 0.2,
      nt1: 0.17,
      st1: 0.1989,
      ot2: 0.08,
      nt2: 0.064,
      st2: 0.07488,
      ot3: 0.5,
      nt3: 0.45,
      st3: 0.5265,
      ot4: 0.12,
      nt4: 0.102,
      st4: 0.11934,
      ot5: 0.1,
      nt5: 0.08,
      st5: 0.0936,
      ntTotal: 0.866,
      stTotal: 1.01322,
    },
    seen: 'seen-inputs',
    source: 'scribd-5767',
    note: '15 % + 2 % of basic time; no printed answer.',
  },
  {
    id: '2-27',
    inputs: {
      elements: [
        { ot: 0.3, rating: 1.05 },
        { ot: 0.25, rating: 1.1 },
        { ot: 0.55, rating: 0.95 },
        { ot: 0.2, rating: 1.1 },
      ],
      allowance: 0.16,
      convention: 'shift',
    },
    printed: [
      { name: 'ntTotal', value: 1.3325, decimals: 4, agrees: true },
      { name: 'stTotal', value: 1.586, decimals: 3, agrees: true },
    ],
    computed: { ntTotal: 1.3325, stTotal: 1.58630952381 },
    seen: 'seen',
    source: 'note-a',
  },
  {
    id: '2-31',
    inputs: {
      elements: [
        { readings: [1.5, 1.8, 2, 1.7, 1.5], rating: 0.97 },
        { readings: [0.6, 0.4, 0.7, 0.5], rating: 1.05 },
        { readings: [0.5, 0.4, 0.6, 0.4, 0.4], rating: 0.86 },
        { readings: [0.6, 0.8, 0.7, 0.6, 0.7], rating: 0.9 },
      ],
      allowance: 0.23,
      convention: 'shift',
    },
    printed: [
      {
        name: 'stTotal',
        value: 4.791,
        decimals: 3,
        agrees: false,
        why: '4.200 with the outlier dropped and the shift convention (ours)',
      },
    ],
    computed: { ntTotal: 3.2341, stTotal: 4.20012987013 },
    seen: 'seen',
    source: 'gauth',
    trap: true,
    note: 'data carry a footnoted reading 3.7 to be dropped; the answer keeps it and uses NT x 1.23.',
  },
];

export const studiesWithOwnRelaxation: readonly Check<
  {
    readonly elements: readonly {
      readonly ot: number;
      readonly rating: number;
      readonly freq: number;
      readonly ra: number;
    }[];
    readonly contingency: number;
  },
  SourceName
>[] = [
  {
    id: '2-09',
    inputs: {
      elements: [
        { ot: 0.88, rating: 1, freq: 1, ra: 0.1 },
        { ot: 2.04, rating: 0.75, freq: 1, ra: 0.08 },
        { ot: 1.57, rating: 0.8, freq: 1, ra: 0.11 },
        { ot: 0.33, rating: 1.1, freq: 2, ra: 0.09 },
        { ot: 1.44, rating: 0.85, freq: 0.5, ra: 0.12 },
        { ot: 1.09, rating: 0.95, freq: 1, ra: 0.09 },
        { ot: 0.72, rating: 1, freq: 1, ra: 0.1 },
      ],
      contingency: 0.06,
    },
    printed: [
      { name: 'bt1', value: 0.88, decimals: 3, agrees: true },
      { name: 'bt2', value: 1.53, decimals: 3, agrees: true },
      { name: 'bt3', value: 1.256, decimals: 3, agrees: true },
      { name: 'bt4', value: 0.363, decimals: 3, agrees: true },
      { name: 'bt5', value: 1.224, decimals: 3, agrees: true },
      { name: 'bt6', value: 1.036, decimals: 3, agrees: true },
      { name: 'bt7', value: 0.72, decimals: 3, agrees: true },
      { name: 'sbt4', value: 0.726, decimals: 3, agrees: true },
      { name: 'sbt5', value: 0.612, decimals: 3, agrees: true },
    ],
    computed: {
      bt1: 0.88,
      bt2: 1.53,
      bt3: 1.256,
      bt4: 0.363,
      sbt4: 0.726,
      bt5: 1.224,
      sbt5: 0.612,
      bt6: 1.0355,
      bt7: 0.72,
      sbtTotal: 6.7595,
      actualTotal: 7.412035,
      standard: 7.8567571,
    },
    seen: 'seen',
    source: 'askfilo-q5',
    note: 'Basic time x frequency, then element relaxation, then contingency. Final total cut off: ours 7.857.',
  },
  {
    id: '2-10',
    inputs: {
      elements: [
        { ot: 2.05, rating: 0.75, freq: 1, ra: 0 },
        { ot: 1.5, rating: 0.85, freq: 1, ra: 0 },
        { ot: 1.15, rating: 1, freq: 1, ra: 0 },
        { ot: 1.75, rating: 0.8, freq: 1, ra: 0 },
        { ot: 2.02, rating: 0.75, freq: 1, ra: 0 },
        { ot: 1.99, rating: 0.75, freq: 1, ra: 0 },
        { ot: 1.34, rating: 0.9, freq: 2, ra: 0 },
      ],
      contingency: 0.05,
    },
    printed: [
      {
        name: 'sbtTotal',
        value: 10.79,
        decimals: 2,
        agrees: false,
        why: 'exact 10.782: source adds rounded basic times',
      },
      { name: 'contingency', value: 0.54, decimals: 2, agrees: true },
    ],
    computed: { sbtTotal: 10.782, actualTotal: 10.782, contingency: 0.5391, standard: 11.3211 },
    seen: 'seen',
    source: 'askfilo-7',
    note: 'Contingency .54 printed on 10.79 (sum of rounded basic times).',
  },
];
