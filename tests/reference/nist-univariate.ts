/**
 * Univariate sets of the Statistical Reference Datasets (StRD) of the National Institute of Standards and Technology, with
 * the certified mean and standard deviation as printed: https://www.itl.nist.gov/div898/strd/ (US government work; read
 * in the copies that come with Math.NET Numerics and SciPy).
 */
export interface CertifiedSet {
  readonly name: string;
  readonly values: readonly number[];
  readonly mean: string;
  readonly deviation: string;
  /** Decimal digits that must agree: fewer where the data themselves lose digits as binary fractions. */
  readonly digits: number;
}

const lew = [
  -213, -564, -35, -15, 141, 115, -420, -360, 203, -338, -431, 194, -220, -513, 154, -125, -559, 92, -21,
  -579, -52, 99, -543, -175, 162, -457, -346, 204, -300, -474, 164, -107, -572, -8, 83, -541, -224, 180, -420,
  -374, 201, -236, -531, 83, 27, -564, -112, 131, -507, -254, 199, -311, -495, 143, -46, -579, -90, 136, -472,
  -338, 202, -287, -477, 169, -124, -568, 17, 48, -568, -135, 162, -430, -422, 172, -74, -577, -13, 92, -534,
  -243, 194, -355, -465, 156, -81, -578, -64, 139, -449, -384, 193, -198, -538, 110, -44, -577, -6, 66, -552,
  -164, 161, -460, -344, 205, -281, -504, 134, -28, -576, -118, 156, -437, -381, 200, -220, -540, 83, 11,
  -568, -160, 172, -414, -408, 188, -125, -572, -32, 139, -492, -321, 205, -262, -504, 142, -83, -574, 0, 48,
  -571, -106, 137, -501, -266, 190, -391, -406, 194, -186, -553, 83, -13, -577, -49, 103, -515, -280, 201,
  300, -506, 131, -45, -578, -80, 138, -462, -361, 201, -211, -554, 32, 74, -533, -235, 187, -372, -442, 182,
  -147, -566, 25, 68, -535, -244, 194, -351, -463, 174, -125, -570, 15, 72, -550, -190, 172, -424, -385, 198,
  -218, -536, 96,
];

/** Speed of light less 299.00 thousand km/s, in tens of km/s. */
const michelso = [
  85, 74, 90, 107, 93, 85, 95, 98, 98, 88, 100, 98, 93, 65, 76, 81, 100, 100, 96, 96, 96, 94, 96, 94, 88, 80,
  85, 88, 90, 84, 83, 79, 81, 88, 88, 83, 80, 79, 76, 80, 88, 88, 88, 86, 72, 72, 62, 86, 97, 95, 88, 91, 85,
  87, 84, 84, 85, 84, 84, 84, 89, 81, 81, 82, 80, 77, 76, 74, 75, 76, 91, 92, 89, 86, 88, 72, 84, 85, 85, 78,
  89, 84, 78, 81, 76, 81, 79, 81, 82, 85, 87, 87, 81, 74, 81, 94, 95, 80, 81, 87,
];

/** Filter transmittance, in 1/100 000. */
const mavro = [
  200180, 200170, 200180, 200190, 200180, 200170, 200150, 200140, 200150, 200150, 200170, 200180, 200180,
  200190, 200190, 200210, 200200, 200160, 200140, 200130, 200130, 200150, 200150, 200160, 200150, 200140,
  200130, 200140, 200150, 200140, 200150, 200160, 200150, 200160, 200190, 200200, 200200, 200210, 200220,
  200230, 200240, 200250, 200270, 200260, 200260, 200260, 200270, 200260, 200250, 200240,
];

/** One value, then two others by turns, 1001 in all. */
const byTurns = (first: number, low: number, high: number) =>
  Array.from({ length: 1001 }, (_, index) => (index === 0 ? first : index % 2 === 1 ? low : high));

export const certifiedSets: readonly CertifiedSet[] = [
  { name: 'Lew', values: lew, mean: '-177.435000000000', deviation: '277.332168044316', digits: 14 },
  {
    name: 'Michelso',
    values: michelso.map((value) => (29_900 + value) / 100),
    mean: '299.852400000000',
    deviation: '0.0790105478190518',
    digits: 12,
  },
  {
    name: 'Mavro',
    values: mavro.map((value) => value / 100_000),
    mean: '2.00185600000000',
    deviation: '0.000429123454003053',
    digits: 12,
  },
  {
    name: 'NumAcc1',
    values: [10_000_001, 10_000_003, 10_000_002],
    mean: '10000002',
    deviation: '1',
    digits: 15,
  },
  { name: 'NumAcc2', values: byTurns(1.2, 1.1, 1.3), mean: '1.2', deviation: '0.1', digits: 14 },
  {
    name: 'NumAcc3',
    values: byTurns(1_000_000.2, 1_000_000.1, 1_000_000.3),
    mean: '1000000.2',
    deviation: '0.1',
    digits: 9,
  },
  {
    name: 'NumAcc4',
    values: byTurns(10_000_000.2, 10_000_000.1, 10_000_000.3),
    mean: '10000000.2',
    deviation: '0.1',
    digits: 8,
  },
];
