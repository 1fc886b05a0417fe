import type { Check, PublishedSource } from './check.ts';

/**
 * Figures on the number of cycles to observe: the 40-formula and Student’s t.
 * As printed, and as computed in full precision by another program from the formulas in the sources. Units are those of
 * the source.
 */
export const sources = {
  'ilo-es-cycles': {
    reference:
      '(teaching sheet; ILO attribution from memory). Calculo del numero de observaciones (tamano de la muestra)',
    locator: 'example 1 https://it.scribd.com/document/411466932/Calculo-Del-Numero-de-Observaciones',
    how: 'text seen; same example also at es.scribd.com/document/288889068 and ro.scribd.com/document/260949156 and ingenieriaindustrialonline.com',
  },
  'transtutors-n': {
    reference: 'Transtutors. Sample size determination (work measurement)',
    locator:
      'http://www.transtutors.com/homework-help/industrial-management/work-measurement/sample-size-determination.aspx',
    how: 'text seen',
  },
  'ilo-mem': {
    reference: 'International Labour Office (G. Kanawaty, ed.). Introduction to Work Study, 4th ed.. 1992',
    locator: 'ch. 14, 18, 20-23, app. 3',
    how: 'book text NOT seen; recalled from memory',
  },
  'fdoc-metodos': {
    reference: 'student paper. Trabajo metodos y tiempos',
    locator: 'pp. 1-3 https://fdocuments.co/document/trabajo-metodos-y-tiempos.html',
    how: 'text seen (decimal commas; individual readings of element A inconsistent with their squares)',
  },
  usu: {
    reference: 'Universitas Sumatera Utara thesis. Uji kecukupan data',
    locator: 'https://123dok.com/',
    how: 'text seen',
  },
  'pdfcookie-n': {
    reference: 'lecture notes. Ejemplo para calcular el Numero de Observaciones. 2019',
    locator: 'https://html.pdfcookie.com/02/2019/10/12/0nvodxxgqr28/0nvodxxgqr28.html',
    how: 'text seen',
  },
  crono: {
    reference: 'lecture exercises. Ejercicios de cronometraje resueltos. 2019',
    locator: 'D.2 https://www.scribd.com/document/423724695/Ejercicios-de-Cronometraje-Resueltos',
    how: 'text seen',
  },
  'niebel-t': {
    reference:
      'after B. Niebel, A. Freivalds. Methods, Standards and Work Design: exercise on number of observations',
    locator: 'https://code.policylink.org/comparte/13620730',
    how: 'text seen',
  },
  crono2: {
    reference: 'lecture slides. 2 Determinacion numero de observaciones. 2017',
    locator: 'https://es.scribd.com/presentation/364427591/2-Determinacion-numero-de-observaciones-pptx',
    how: 'text seen (final n cut off)',
  },
  'groover-rev': {
    reference: 'M. P. Groover. Work Systems review practice, ch. 13 and 15 (Course Hero file 76096463). 2007',
    locator: 'https://www.coursehero.com/file/76096463/WS-final-reviewpdf/',
    how: 'data seen; answers cut off',
  },
  derived: { reference: 'Evenhand. derived identity. 2025', how: 'own derivation' },
} as const satisfies Readonly<Record<string, PublishedSource>>;

type SourceName = keyof typeof sources;
type Numbers = readonly number[];

export const fortyFormulaFromReadings: readonly Check<
  { readonly readings: Numbers; readonly k: number },
  SourceName
>[] = [
  {
    id: '1-01',
    inputs: { readings: [8, 7, 8, 8, 7], k: 40 },
    printed: [
      { name: 'sumX', value: 38, decimals: 0, agrees: true },
      { name: 'sumX2', value: 290, decimals: 0, agrees: true },
      {
        name: 'n',
        value: 6.64,
        decimals: 2,
        agrees: false,
        why: 'exact 6.6482; source truncates instead of rounding',
      },
      { name: 'nCeil', value: 7, decimals: 0, agrees: true },
    ],
    computed: { n: 6.648199445983, nCeil: 7, sumX: 38, sumX2: 290 },
    seen: 'seen',
    source: 'ilo-es-cycles',
    note: 'k=40 -> 95.45 % confidence (2 sigma), +/-5 %. Source prints 6.64 (truncated); text says 94.45 %, a typo.',
  },
  {
    id: '1-02',
    inputs: { readings: [8, 7, 8, 9, 7], k: 20 },
    printed: [
      { name: 'sumX', value: 39, decimals: 0, agrees: true },
      { name: 'sumX2', value: 307, decimals: 0, agrees: true },
      {
        name: 'n',
        value: 3.87,
        decimals: 2,
        agrees: false,
        why: 'source prints 3.87; exact 3.6818; the rounded-up answer is the same',
      },
      { name: 'nCeil', value: 4, decimals: 0, agrees: true },
    ],
    computed: { n: 3.681788297173, nCeil: 4, sumX: 39, sumX2: 307 },
    seen: 'seen',
    source: 'transtutors-n',
    trap: true,
    note: 'k=20 -> +/-10 %.',
  },
  {
    id: '1-03',
    inputs: { readings: [7, 6, 7, 7, 6], k: 40 },
    printed: [{ name: 'nCeil', value: 9, decimals: 0, agrees: true }],
    computed: { n: 8.815426997245, nCeil: 9, sumX: 33, sumX2: 219 },
    seen: 'memory',
    source: 'ilo-mem',
    note: 'ILO own example (8.81 -> 9).',
  },
];

export const fortyFormulaFromSums: readonly Check<
  { readonly n: number; readonly sumX: number; readonly sumX2: number; readonly k: number },
  SourceName
>[] = [
  {
    id: '1-04',
    inputs: { n: 13, sumX: 1982.71, sumX2: 302808.477, k: 40 },
    printed: [
      { name: 'n', value: 2.18, decimals: 2, agrees: false, why: 'exact 2.1861; source truncates' },
      { name: 'nCeil', value: 3, decimals: 0, agrees: true },
    ],
    computed: { n: 2.186137697549, nCeil: 3 },
    seen: 'seen',
    source: 'fdoc-metodos',
    note: 'Element C.',
  },
  {
    id: '1-05',
    inputs: { n: 10, sumX: 1714.29, sumX2: 296200.4, k: 40 },
    printed: [
      { name: 'n', value: 12.63, decimals: 2, agrees: false, why: 'exact 12.6386; source truncates' },
      { name: 'nCeil', value: 13, decimals: 0, agrees: true },
    ],
    computed: { n: 12.63855901935, nCeil: 13 },
    seen: 'seen',
    source: 'fdoc-metodos',
    note: 'Element B.',
  },
  {
    id: '1-06',
    inputs: { n: 10, sumX: 53.82, sumX2: 291.241, k: 40 },
    printed: [
      { name: 'n', value: 8.73, decimals: 2, agrees: false, why: 'exact 8.7372; source truncates' },
      { name: 'nCeil', value: 9, decimals: 0, agrees: true },
    ],
    computed: { n: 8.737218256873, nCeil: 9 },
    seen: 'seen',
    source: 'fdoc-metodos',
    note: 'Element A from its printed sums; the printed single readings and squares do not match each other, so only the sums can be checked.',
  },
  {
    id: '1-07',
    inputs: { n: 30, sumX: 7612, sumX2: 1931446, k: 40 },
    printed: [{ name: 'n', value: 0.02, decimals: 2, agrees: true }],
    computed: { n: 0.02308493738211, nCeil: 1 },
    seen: 'seen',
    source: 'usu',
    note: 'k/s = 2/0.05 = 40. Result far below N: data sufficient.',
  },
];

export const fortyFormulaPlusOne: readonly Check<
  { readonly readings: Numbers; readonly k: number; readonly e: number },
  SourceName
>[] = [
  {
    id: '1-08',
    inputs: { readings: [5, 8, 7, 5, 6, 7, 7, 6, 8, 5], k: 2, e: 0.04 },
    printed: [{ name: 'mean', value: 6.4, decimals: 1, agrees: true }],
    computed: { mean: 6.4, sigmaPop: 1.113552872566, n: 76.68359375 },
    seen: 'seen',
    source: 'pdfcookie-n',
    note: 'VARIANT: population sigma and "+1". Text: 66 further readings after the 10 taken, i.e. N = 76 (exact 76.68). A different published formula: do not mix.',
  },
];

export const studentFromReadings: readonly Check<
  { readonly readings: Numbers; readonly conf: number; readonly h: number },
  SourceName
>[] = [
  {
    id: '1-16',
    inputs: { readings: [10, 8, 12, 10, 7], conf: 0.95, h: 0.04 },
    printed: [
      { name: 'mean', value: 9.4, decimals: 1, agrees: true },
      { name: 's', value: 1.95, decimals: 2, agrees: true },
      {
        name: 't',
        value: 2.7765,
        decimals: 4,
        agrees: false,
        why: 'exact t(0.975,4) = 2.776445; source prints 2.7765',
      },
      {
        name: 'n',
        value: 207.34,
        decimals: 2,
        agrees: false,
        why: 'exact 207.198; 207.34 comes from s = 1.95 and t = 2.7765',
      },
      { name: 'nFloor', value: 207, decimals: 0, agrees: true },
      {
        name: 'errorWithThisN',
        value: 0.257,
        decimals: 4,
        agrees: false,
        why: 'exact .2575 with unrounded s; source .2570 from rounded figures',
      },
    ],
    computed: {
      n: 207.1982529161,
      nCeil: 208,
      nFloor: 207,
      mean: 9.4,
      s: 1.949358868962,
      cv: 0.207378603081,
      t: 2.776445105198,
      errorWithThisN: 0.2574945454435,
      more: 203,
    },
    seen: 'seen',
    source: 'crono',
    note: 'Element 1. Source uses s rounded to 1.95 and rounds DOWN.',
  },
  {
    id: '1-17',
    inputs: { readings: [30, 35, 40, 37, 32], conf: 0.95, h: 0.04 },
    printed: [
      { name: 'mean', value: 34.8, decimals: 1, agrees: true },
      { name: 's', value: 3.9623, decimals: 4, agrees: true },
      {
        name: 'n',
        value: 62.39,
        decimals: 2,
        agrees: false,
        why: 'exact 62.46 with unrounded s; 62.39 with s=3.96',
      },
      { name: 'nFloor', value: 62, decimals: 0, agrees: true },
      { name: 'errorWithThisN', value: 0.1413, decimals: 4, agrees: false, why: 'exact .14137' },
    ],
    computed: {
      n: 62.45962381929,
      nCeil: 63,
      nFloor: 62,
      mean: 34.8,
      s: 3.962322551232,
      cv: 0.1138598434262,
      t: 2.776445105198,
      errorWithThisN: 0.1413756684234,
      more: 58,
    },
    seen: 'seen',
    source: 'crono',
    note: 'Element 2, source uses s = 3.96 and rounds down.',
  },
  {
    id: '1-19',
    inputs: { readings: [0.3, 0.45, 0.4, 0.36], conf: 0.95, h: 0.06 },
    printed: [
      { name: 'mean', value: 0.38, decimals: 2, agrees: true },
      { name: 's', value: 0.063, decimals: 3, agrees: true },
      { name: 'cv', value: 0.168, decimals: 3, agrees: true },
    ],
    computed: {
      n: 79.46056373006,
      nCeil: 80,
      mean: 0.3775,
      s: 0.06344288770225,
      cv: 0.1680606296748,
      t: 3.182446305284,
      errorWithThisN: 0.2674219649862,
      more: 76,
    },
    seen: 'seen',
    source: 'crono2',
    note: 'Outlier 3.00 dropped first; final n cut off in the text seen.',
  },
];

export const studentFromFigures: readonly Check<
  {
    readonly n: number;
    readonly mean: number;
    readonly s: number;
    readonly conf: number;
    readonly h: number;
  },
  SourceName
>[] = [
  {
    id: '1-18',
    inputs: { n: 10, mean: 0.3, s: 0.03, conf: 0.95, h: 0.05 },
    printed: [
      { name: 't', value: 2.262, decimals: 3, agrees: true },
      { name: 'n', value: 20.4666, decimals: 4, agrees: false, why: 'exact 20.4694; source uses t = 2.262' },
      { name: 'nCeil', value: 21, decimals: 0, agrees: true },
    ],
    computed: { n: 20.4694201168, nCeil: 21, t: 2.262157162798, more: 11 },
    seen: 'seen',
    source: 'niebel-t',
    note: 'Niebel-type: n = (t s / (k mean))^2, t from df = n-1 = 9.',
  },
  {
    id: '1-22',
    inputs: { n: 7, mean: 0.85, s: 0.15, conf: 0.95, h: 0.1 },
    printed: [],
    computed: { n: 18.64581261781, nCeil: 19, t: 2.446911851145, more: 12 },
    seen: 'seen-inputs',
    source: 'groover-rev',
    note: 'Answer cut off: ours n = 18.64 -> 19, 12 more.',
  },
];

export const studentMultipliers: readonly Check<
  { readonly conf: number; readonly df: number },
  SourceName
>[] = [
  {
    id: '1-25-95-4',
    inputs: { conf: 0.95, df: 4 },
    printed: [{ name: 't', value: 2.776, decimals: 3, agrees: true }],
    computed: { t: 2.776445105198 },
    seen: 'memory',
    source: 'derived',
    note: 'Student t, two-sided.',
  },
  {
    id: '1-25-95-9',
    inputs: { conf: 0.95, df: 9 },
    printed: [{ name: 't', value: 2.262, decimals: 3, agrees: true }],
    computed: { t: 2.262157162798 },
    seen: 'seen',
    source: 'niebel-t',
    note: 'Student t, two-sided.',
  },
  {
    id: '1-25-95-29',
    inputs: { conf: 0.95, df: 29 },
    printed: [{ name: 't', value: 2.045, decimals: 3, agrees: true }],
    computed: { t: 2.045229642133 },
    seen: 'memory',
    source: 'derived',
    note: 'Student t, two-sided.',
  },
  {
    id: '1-25-99-9',
    inputs: { conf: 0.99, df: 9 },
    printed: [{ name: 't', value: 3.25, decimals: 3, agrees: true }],
    computed: { t: 3.249835541592 },
    seen: 'memory',
    source: 'derived',
    note: 'Student t, two-sided.',
  },
  {
    id: '1-25-90-9',
    inputs: { conf: 0.9, df: 9 },
    printed: [{ name: 't', value: 1.833, decimals: 3, agrees: true }],
    computed: { t: 1.833112932656 },
    seen: 'memory',
    source: 'derived',
    note: 'Student t, two-sided.',
  },
];
