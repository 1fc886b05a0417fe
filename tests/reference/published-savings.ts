import type { Check, PublishedSource } from './check.ts';

/**
 * Figures on savings, payback and net present value.
 * As printed, and as computed in full precision by another program from the formulas in the sources. Rates, gains and
 * savings are shares of 1 in the inputs; flows come at the end of each year.
 */
export const sources = {
  'quesba-p': {
    reference: 'J. Heizer, B. Render. Lake Charles Seafood productivity problem',
    locator:
      'https://quesba.com/questions/lake-charles-seafood-makes-500-wooden-packing-boxes-fresh-seafood-per-day-w-1510610',
    how: 'text seen',
  },
  enotes: {
    reference: 'eNotes. Productivity 3 to 3.125',
    locator: 'https://www.enotes.com/',
    how: 'text seen, page address not kept',
  },
  ru25: {
    reference: 'school mathematics page (Russian). +25 % productivity',
    locator:
      'https://stroykomplekt-sk.ru/matematika/proizvoditelnost-truda-povysili-na-25-na-skolko-procentov-u-3770582',
    how: 'text seen',
  },
  ru20: {
    reference: 'school mathematics page (Russian). +20 % productivity',
    locator:
      'https://violadesign.ru/algebra/na-skolko-procentov-sokratitsya-vremya-na-vypolnenie-plana-esli-proizvoditelnost-truda-m-9445347',
    how: 'text seen',
  },
  derived: { reference: 'own derivation from the definitions', how: 'own derivation' },
  manpower: {
    reference: 'industrial-engineering teaching article. How to calculate manpower savings',
    locator: 'https://knowindustrialengineering.com/how-to-calculate-manpower-savings/',
    how: 'text seen',
  },
  'npv-misc': {
    reference: 'accounting course solutions. NPV and payback examples',
    how: 'text seen, page address not kept',
  },
  'npv-fool': {
    reference: 'finance article. NPV example 15000',
    locator: 'https://www.fool.com/',
    how: 'text seen, page address not kept',
  },
  blank: {
    reference: 'L. Blank, A. Tarquin. Engineering Economy, problem 13.37. 2012',
    locator: '13.37',
    how: 'text seen, page address not kept',
  },
  'payback-c': {
    reference: 'comment in a general finance library. payback example',
    how: 'text seen (wrong), page address not kept',
  },
} as const satisfies Readonly<Record<string, PublishedSource>>;

type SourceName = keyof typeof sources;

export const productivities: readonly Check<
  { readonly o1: number; readonly i1: number; readonly o2: number; readonly i2: number },
  SourceName
>[] = [
  {
    id: '10-01',
    inputs: { o1: 500, i1: 20, o2: 750, i2: 24 },
    printed: [
      { name: 'p1', value: 25, decimals: 0, agrees: true },
      { name: 'p2', value: 31.25, decimals: 2, agrees: true },
      { name: 'gain', value: 25, decimals: 0, agrees: true },
    ],
    computed: { p1: 25, p2: 31.25, gain: 25 },
    seen: 'seen',
    source: 'quesba-p',
  },
  {
    id: '10-02',
    inputs: { o1: 500, i1: 20, o2: 800, i2: 24 },
    printed: [{ name: 'p2', value: 33.34, decimals: 2, agrees: false, why: 'exact 33.333; printed 33.34' }],
    computed: { p1: 25, p2: 33.333333333333336, gain: 33.33333333333335 },
    seen: 'seen',
    source: 'quesba-p',
  },
  {
    id: '10-03',
    inputs: { o1: 3, i1: 1, o2: 3.125, i2: 1 },
    printed: [{ name: 'gain', value: 4.17, decimals: 2, agrees: true }],
    computed: { p1: 3, p2: 3.125, gain: 4.166666666666674 },
    seen: 'seen',
    source: 'enotes',
  },
];

export const savingsFromGain: readonly Check<{ readonly gain: number }, SourceName>[] = [
  {
    id: '10-04',
    inputs: { gain: 0.25 },
    printed: [{ name: 'saving', value: 0.2, decimals: 2, agrees: true }],
    computed: { saving: 0.19999999999999996 },
    seen: 'seen',
    source: 'ru25',
    note: '+25 % output rate = -20 % time',
  },
  {
    id: '10-05',
    inputs: { gain: 0.2 },
    printed: [{ name: 'saving', value: 0.1667, decimals: 4, agrees: true }],
    computed: { saving: 0.16666666666666663 },
    seen: 'seen',
    source: 'ru20',
    note: '+20 % = -16 2/3 % time',
  },
];

export const gainsFromSaving: readonly Check<{ readonly saving: number }, SourceName>[] = [
  {
    id: '10-06',
    inputs: { saving: 0.2 },
    printed: [],
    computed: { gain: 0.25 },
    seen: 'derived',
    source: 'ru25',
    note: 'inverse direction of 10-04: -20 % time = +25 % output',
  },
  {
    id: '10-07',
    inputs: { saving: 0.5 },
    printed: [],
    computed: { gain: 1 },
    seen: 'derived',
    source: 'derived',
    note: 'half the time: +100 % output',
  },
];

export const yearlySavings: readonly Check<
  { readonly out1: number; readonly out2: number; readonly demand: number; readonly ratePerHour: number },
  SourceName
>[] = [
  {
    id: '10-08',
    inputs: { out1: 120, out2: 145, demand: 200000, ratePerHour: 100 },
    printed: [
      { name: 't1', value: 0.5, decimals: 1, agrees: true },
      { name: 't2', value: 0.4137, decimals: 4, agrees: false, why: 'exact .41379: truncated' },
      { name: 'saved', value: 0.0863, decimals: 4, agrees: false, why: 'exact .08621' },
      { name: 'minutes', value: 17260, decimals: 0, agrees: false, why: 'exact 17241.4' },
      {
        name: 'money',
        value: 28651,
        decimals: 0,
        agrees: false,
        why: 'exact 28735.6: the source truncates 100/60 to 1.66 and .41379 to .4137; two truncations almost cancel',
      },
    ],
    computed: {
      t1: 0.5,
      t2: 0.41379310344827586,
      saved: 0.08620689655172414,
      minutes: 17241.37931034483,
      money: 28735.632183908052,
      pct: 17.24137931034483,
      gain: 20.833333333333325,
    },
    seen: 'seen',
    trap: true,
    source: 'manpower',
    note: 'Method improvement 120 -> 145 pieces per hour.',
  },
];

export const presentValues: readonly Check<
  { readonly cost: number; readonly flows: readonly number[]; readonly rate: number },
  SourceName
>[] = [
  {
    id: '10-09',
    inputs: {
      cost: 10000,
      flows: [1000, 1000, 1000, 1000, 1000, 1000, 1000, 1000, 1000, 1000, 1000, 1000],
      rate: 0.02,
    },
    printed: [{ name: 'npv', value: 575.34, decimals: 2, agrees: true }],
    computed: { npv: 575.341220917182 },
    seen: 'seen',
    source: 'npv-misc',
  },
  {
    id: '10-10',
    inputs: { cost: 10000, flows: [3500, 3500, 3500, 3500], rate: 0.12 },
    printed: [{ name: 'npv', value: 630.72, decimals: 2, agrees: true }],
    computed: { npv: 630.7227131924174 },
    seen: 'seen',
    source: 'npv-misc',
  },
  {
    id: '10-11',
    inputs: { cost: 15000, flows: [3000, 3000, 3000, 3000, 3000, 3000, 3000, 3000, 3000, 3000], rate: 0.1 },
    printed: [{ name: 'npv', value: 3433.7, decimals: 2, agrees: true }],
    computed: { npv: 3433.701317114039 },
    seen: 'seen',
    source: 'npv-fool',
  },
  {
    id: '10-12',
    inputs: { cost: 100000, flows: [80000, 50000], rate: 0.1 },
    printed: [
      { name: 'npv', value: 14049, decimals: 0, agrees: false, why: 'exact 14049.59: source truncates' },
    ],
    computed: { npv: 14049.58677685949 },
    seen: 'seen',
    source: 'npv-misc',
  },
];

export const annuities: readonly Check<{ readonly rate: number; readonly n: number }, SourceName>[] = [
  {
    id: '10-13',
    inputs: { rate: 0.1, n: 5 },
    printed: [{ name: 'f', value: 3.7908, decimals: 4, agrees: true }],
    computed: { f: 3.7907867694084505 },
    seen: 'seen',
    source: 'npv-misc',
  },
];

export const paybacks: readonly Check<
  { readonly cost: number; readonly flows: readonly number[] },
  SourceName
>[] = [
  {
    id: '10-14',
    inputs: { cost: 6800, flows: [1950, 4100, 1750, 1450] },
    printed: [{ name: 'years', value: 2.43, decimals: 2, agrees: true }],
    computed: { years: 2.4285714285714284 },
    seen: 'seen',
    source: 'npv-misc',
  },
  {
    id: '10-15',
    inputs: { cost: 72000, flows: [25000, 25000, 15000, 10000, 30000] },
    printed: [{ name: 'years', value: 3.7, decimals: 1, agrees: true }],
    computed: { years: 3.7 },
    seen: 'seen',
    source: 'npv-misc',
  },
  {
    id: '10-16',
    inputs: { cost: 72000, flows: [22000, 15000, 50000] },
    printed: [{ name: 'years', value: 2.7, decimals: 1, agrees: true }],
    computed: { years: 2.7 },
    seen: 'seen',
    source: 'npv-misc',
  },
  {
    id: '10-19',
    inputs: { cost: 30000, flows: [12000, 9000, 6000, 3000] },
    printed: [{ name: 'years', value: 4, decimals: 0, agrees: true }],
    computed: { years: 4 },
    seen: 'seen',
    source: 'npv-misc',
  },
  {
    id: '10-21',
    inputs: { cost: 12000, flows: [3000, 4000, 6000, 5000] },
    printed: [],
    computed: { years: 2.8333333333333335 },
    seen: 'seen',
    source: 'npv-misc',
    note: 'running balance -9000, -5000, +1000: recovered in year 3 (2.83)',
  },
  {
    id: '10-22',
    inputs: { cost: 5000, flows: [1000, 1350, 1400, 1956, 2200] },
    printed: [
      {
        name: 'years',
        value: 3.36,
        decimals: 2,
        agrees: false,
        why: '1000+1350+1400 = 3750, remaining 1250 of 1956: 3.639',
      },
    ],
    computed: { years: 3.6390593047034763 },
    seen: 'seen',
    trap: true,
    source: 'payback-c',
    note: 'comment in a general finance library.',
  },
];

export const evenPaybacks: readonly Check<{ readonly cost: number; readonly perYear: number }, SourceName>[] =
  [
    {
      id: '10-17',
      inputs: { cost: 40000, perYear: 10000 },
      printed: [{ name: 'years', value: 4, decimals: 0, agrees: true }],
      computed: { years: 4 },
      seen: 'seen',
      source: 'blank',
    },
    {
      id: '10-18',
      inputs: { cost: 90000, perYear: 15000 },
      printed: [{ name: 'years', value: 6, decimals: 0, agrees: true }],
      computed: { years: 6 },
      seen: 'seen',
      source: 'blank',
    },
  ];

export const discountedPaybacks: readonly Check<
  { readonly cost: number; readonly flows: readonly number[]; readonly rate: number },
  SourceName
>[] = [
  {
    id: '10-20',
    inputs: { cost: 485000, flows: [185000, 185000, 185000, 185000, 185000, 185000], rate: 0.09 },
    printed: [{ name: 'years', value: 3.13, decimals: 2, agrees: true }],
    computed: { years: 3.12750386945946 },
    seen: 'seen',
    source: 'npv-misc',
    note: 'labour saving, discounted payback',
  },
];
