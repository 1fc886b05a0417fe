/**
 * One-way analysis of variance: sets of the Statistical Reference Datasets (StRD) of the National Institute of Standards
 * and Technology with their certified values as printed: https://www.itl.nist.gov/div898/strd/ (US government work; read
 * in the copies that come with Math.NET Numerics and SciPy). The values of the three sets with 18,009 readings were not
 * read; they are made by the rule that the smaller sets follow, and the certified sums of squares confirm them.
 */
export interface CertifiedAnova {
  readonly name: string;
  readonly groups: readonly (readonly number[])[];
  readonly between: { readonly degrees: number; readonly sum: string; readonly mean: string };
  readonly within: { readonly degrees: number; readonly sum: string; readonly mean: string };
  readonly ratio: string;
  readonly explained: string;
  readonly deviation: string;
  /** Digits that sums and ratio must reach: where it is few, the values themselves lose the rest as binary fractions. */
  readonly digits: number;
}

/** First value in tenths of each of nine groups; the others lie a tenth below and a tenth above it, in turn. */
const firsts = [14, 13, 15, 13, 15, 13, 15, 13, 15];

function made(offset: number, each: number): readonly (readonly number[])[] {
  const written = (tenths: number) => Number(`${offset + Math.floor(tenths / 10)}.${tenths % 10}`);
  return firsts.map((first) => [
    written(first),
    ...Array.from({ length: each - 1 }, (_, index) => written(index % 2 === 0 ? first - 1 : first + 1)),
  ]);
}

export const certifiedAnova: readonly CertifiedAnova[] = [
  {
    name: 'SiRstv',
    groups: [
      [196.3052, 196.124, 196.189, 196.2569, 196.3403],
      [196.3042, 196.3825, 196.1669, 196.3257, 196.0422],
      [196.1303, 196.2005, 196.2889, 196.0343, 196.1811],
      [196.2795, 196.1748, 196.1494, 196.1485, 195.9885],
      [196.2119, 196.1051, 196.185, 196.0052, 196.209],
    ],
    between: { degrees: 4, sum: '5.11462616000000E-02', mean: '1.27865654000000E-02' },
    within: { degrees: 20, sum: '2.16636560000000E-01', mean: '1.08318280000000E-02' },
    ratio: '1.18046237440255E+00',
    explained: '1.90999039051129E-01',
    deviation: '1.04076068334656E-01',
    digits: 12.9,
  },
  {
    name: 'AtmWtAg',
    groups: [
      [
        107.8681568, 107.8681465, 107.8681572, 107.8681785, 107.8681446, 107.8681903, 107.8681526,
        107.8681494, 107.8681616, 107.8681587, 107.8681519, 107.8681486, 107.8681419, 107.8681569,
        107.8681508, 107.8681672, 107.8681385, 107.8681518, 107.8681662, 107.8681424, 107.868136, 107.8681333,
        107.868161, 107.8681477,
      ],
      [
        107.8681079, 107.8681344, 107.8681513, 107.8681197, 107.8681604, 107.8681385, 107.8681642,
        107.8681365, 107.8681151, 107.8681082, 107.8681517, 107.8681448, 107.8681198, 107.8681482,
        107.8681334, 107.8681609, 107.8681101, 107.8681512, 107.8681469, 107.868136, 107.8681254, 107.8681261,
        107.868145, 107.8681368,
      ],
    ],
    between: { degrees: 1, sum: '3.63834187500000E-09', mean: '3.63834187500000E-09' },
    within: { degrees: 46, sum: '1.04951729166667E-08', mean: '2.28155932971014E-10' },
    ratio: '1.59467335677930E+01',
    explained: '2.57426544538321E-01',
    deviation: '1.51048314446410E-05',
    digits: 10.0,
  },
  {
    name: 'SmLs01',
    groups: made(0, 21),
    between: { degrees: 8, sum: '1.68000000000000E+00', mean: '2.10000000000000E-01' },
    within: { degrees: 180, sum: '1.80000000000000E+00', mean: '1.00000000000000E-02' },
    ratio: '2.10000000000000E+01',
    explained: '4.82758620689655E-01',
    deviation: '1.00000000000000E-01',
    digits: 12.5,
  },
  {
    name: 'SmLs02',
    groups: made(0, 201),
    between: { degrees: 8, sum: '1.60800000000000E+01', mean: '2.01000000000000E+00' },
    within: { degrees: 1800, sum: '1.80000000000000E+01', mean: '1.00000000000000E-02' },
    ratio: '2.01000000000000E+02',
    explained: '4.71830985915493E-01',
    deviation: '1.00000000000000E-01',
    digits: 12.5,
  },
  {
    name: 'SmLs03',
    groups: made(0, 2001),
    between: { degrees: 8, sum: '1.60080000000000E+02', mean: '2.00100000000000E+01' },
    within: { degrees: 18000, sum: '1.80000000000000E+02', mean: '1.00000000000000E-02' },
    ratio: '2.00100000000000E+03',
    explained: '4.70712773465067E-01',
    deviation: '1.00000000000000E-01',
    digits: 12.5,
  },
  {
    name: 'SmLs04',
    groups: made(999999, 21),
    between: { degrees: 8, sum: '1.68000000000000E+00', mean: '2.10000000000000E-01' },
    within: { degrees: 180, sum: '1.80000000000000E+00', mean: '1.00000000000000E-02' },
    ratio: '2.10000000000000E+01',
    explained: '4.82758620689655E-01',
    deviation: '1.00000000000000E-01',
    digits: 9.9,
  },
  {
    name: 'SmLs05',
    groups: made(999999, 201),
    between: { degrees: 8, sum: '1.60800000000000E+01', mean: '2.01000000000000E+00' },
    within: { degrees: 1800, sum: '1.80000000000000E+01', mean: '1.00000000000000E-02' },
    ratio: '2.01000000000000E+02',
    explained: '4.71830985915493E-01',
    deviation: '1.00000000000000E-01',
    digits: 9.8,
  },
  {
    name: 'SmLs06',
    groups: made(999999, 2001),
    between: { degrees: 8, sum: '1.60080000000000E+02', mean: '2.00100000000000E+01' },
    within: { degrees: 18000, sum: '1.80000000000000E+02', mean: '1.00000000000000E-02' },
    ratio: '2.00100000000000E+03',
    explained: '4.70712773465067E-01',
    deviation: '1.00000000000000E-01',
    digits: 9.8,
  },
  {
    name: 'SmLs07',
    groups: made(999999999999, 21),
    between: { degrees: 8, sum: '1.68000000000000E+00', mean: '2.10000000000000E-01' },
    within: { degrees: 180, sum: '1.80000000000000E+00', mean: '1.00000000000000E-02' },
    ratio: '2.10000000000000E+01',
    explained: '4.82758620689655E-01',
    deviation: '1.00000000000000E-01',
    digits: 3.9,
  },
  {
    name: 'SmLs08',
    groups: made(999999999999, 201),
    between: { degrees: 8, sum: '1.60800000000000E+01', mean: '2.01000000000000E+00' },
    within: { degrees: 1800, sum: '1.80000000000000E+01', mean: '1.00000000000000E-02' },
    ratio: '2.01000000000000E+02',
    explained: '4.71830985915493E-01',
    deviation: '1.00000000000000E-01',
    digits: 3.8,
  },
  {
    name: 'SmLs09',
    groups: made(999999999999, 2001),
    between: { degrees: 8, sum: '1.60080000000000E+02', mean: '2.00100000000000E+01' },
    within: { degrees: 18000, sum: '1.80000000000000E+02', mean: '1.00000000000000E-02' },
    ratio: '2.00100000000000E+03',
    explained: '4.70712773465067E-01',
    deviation: '1.00000000000000E-01',
    digits: 3.8,
  },
];
