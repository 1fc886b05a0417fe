import type { SourceId } from './sources.ts';

export type AllowanceColumn = 'one' | 'men' | 'women';

export type AllowanceRowId =
  | 'personal'
  | 'basic-fatigue'
  | 'standing'
  | 'posture'
  | 'load'
  | 'light'
  | 'air'
  | 'attention'
  | 'noise'
  | 'mental-strain'
  | 'monotony'
  | 'tediousness';

/** Percent of basic time, one for each column of the edition; null where the edition prints none. */
export interface AllowanceLevel {
  readonly words: string;
  readonly percents: readonly (number | null)[];
}

export interface AllowanceRow {
  readonly id: AllowanceRowId;
  readonly words: string;
  readonly levels: readonly AllowanceLevel[];
}

/** One printed form of the table. Editions differ, and figures of two of them are never mixed. */
export interface AllowanceEdition {
  readonly name: string;
  readonly columns: readonly AllowanceColumn[];
  readonly rows: readonly AllowanceRow[];
  readonly caution: string;
  /** Where this edition differs from others. */
  readonly differs: string;
  readonly source: SourceId;
}

const caution =
  'These figures are time for rest. They say nothing about how much may be lifted, how much heat or noise may be borne or how little light is enough: local rules and qualified people settle that.';

/** Words of the levels are ours; the figures are printed. */
function levels(
  words: readonly string[],
  ...columns: readonly (readonly (number | null)[])[]
): AllowanceLevel[] {
  return words.map((each, index) => ({
    words: each,
    percents: columns.map((column) => column[index] ?? null),
  }));
}

const posture = ['a little awkward', 'awkward, bent', 'very awkward, lying or stretched'];
const light = ['a little below what is advised', 'well below', 'far too weak'];
const attention = ['fairly fine work', 'fine or exact work', 'very fine or very exact work'];
const mental = ['fairly complex', 'complex or with divided attention', 'very complex'];
const monotony = ['low', 'medium', 'high'];
const tedium = ['a little tedious', 'tedious', 'very tedious'];
const upTo = (unit: string, loads: readonly number[]) => loads.map((load) => `up to ${load} ${unit}`);

const pounds: AllowanceEdition = {
  name: 'Table with loads in pounds, one column',
  columns: ['one'],
  caution,
  differs: 'It has one column, and loads in pounds up to 70.',
  source: 'allowances-pounds',
  rows: [
    { id: 'personal', words: 'Personal needs', levels: levels(['always'], [5]) },
    { id: 'basic-fatigue', words: 'Basic fatigue', levels: levels(['always'], [4]) },
    { id: 'standing', words: 'Standing', levels: levels(['standing'], [2]) },
    { id: 'posture', words: 'Posture', levels: levels(posture, [0, 2, 7]) },
    {
      id: 'load',
      words: 'Weight lifted or force used',
      levels: levels(
        upTo('lb', [5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70]),
        [0, 1, 2, 3, 4, 5, 7, 9, 11, 13, 17, 22],
      ),
    },
    { id: 'light', words: 'Light', levels: levels(light, [0, 2, 5]) },
    { id: 'air', words: 'Heat and damp', levels: levels(['least', 'most'], [0, 10]) },
    { id: 'attention', words: 'Close attention', levels: levels(attention, [0, 2, 5]) },
    {
      id: 'noise',
      words: 'Noise',
      levels: levels(
        ['continuous', 'from time to time, loud', 'from time to time, very loud', 'high and loud'],
        [0, 2, 5, 5],
      ),
    },
    { id: 'mental-strain', words: 'Strain of the mind', levels: levels(mental, [1, 4, 8]) },
    { id: 'monotony', words: 'Monotony', levels: levels(monotony, [0, 1, 4]) },
    { id: 'tediousness', words: 'Tediousness', levels: levels(tedium, [0, 2, 5]) },
  ],
};

const kilograms: AllowanceEdition = {
  name: 'Table with loads in kilograms, columns for men and women',
  columns: ['men', 'women'],
  caution,
  differs: 'It prints 7 % of basic fatigue for women, where the other sheets print 4 % for both.',
  source: 'allowances-kilograms',
  rows: [
    { id: 'personal', words: 'Personal needs', levels: levels(['always'], [5], [7]) },
    { id: 'basic-fatigue', words: 'Basic fatigue', levels: levels(['always'], [4], [7]) },
    { id: 'standing', words: 'Standing', levels: levels(['standing'], [2], [4]) },
    { id: 'posture', words: 'Posture', levels: levels(posture, [0, 2, 7], [1, 3, 7]) },
    {
      id: 'load',
      words: 'Weight lifted or force used',
      levels: levels(
        upTo('kg', [2.5, 5, 7.5, 10, 15, 17.5, 20, 25, 30, 35.5]),
        [0, 1, 2, 3, 5, 7, 9, 13, 17, 22],
        [1, 2, 3, 4, 8, 10, 13, 20, null, null],
      ),
    },
    { id: 'light', words: 'Light', levels: levels(light, [0, 2, 5], [0, 2, 5]) },
    {
      id: 'air',
      words: 'Cooling power of the air (Kata thermometer)',
      levels: levels(
        [16, 14, 12, 10, 8, 6, 4, 2].map((reading) => `reading ${reading}`),
        [0, 0, 0, 3, 10, 21, 45, 100],
        [0, 0, 0, 3, 10, 21, 45, 100],
      ),
    },
    { id: 'attention', words: 'Close attention', levels: levels(attention, [0, 2, 5], [0, 2, 5]) },
    {
      id: 'noise',
      words: 'Noise',
      levels: levels(
        ['continuous', 'from time to time, loud', 'from time to time, very loud'],
        [0, 2, 5],
        [0, 2, 5],
      ),
    },
    { id: 'mental-strain', words: 'Strain of the mind', levels: levels(mental, [1, 4, 8], [1, 4, 8]) },
    { id: 'monotony', words: 'Monotony', levels: levels(monotony, [0, 1, 4], [0, 1, 4]) },
    { id: 'tediousness', words: 'Tediousness', levels: levels(tedium, [0, 2, 5], [0, 1, 2]) },
  ],
};

const constant: AllowanceEdition = {
  name: 'Constant allowances only, columns for men and women',
  columns: ['men', 'women'],
  caution,
  differs: 'It prints 4 % of basic fatigue for both, and a contingency of 5 % at most.',
  source: 'allowances-constant',
  rows: [
    { id: 'personal', words: 'Personal needs', levels: levels(['always'], [5], [7]) },
    { id: 'basic-fatigue', words: 'Basic fatigue', levels: levels(['always'], [4], [4]) },
  ],
};

/** Printed forms of the recommended relaxation allowances, percent of basic time, side by side. */
export const allowanceEditions = { pounds, kilograms, constant } as const satisfies Readonly<
  Record<string, AllowanceEdition>
>;

export type AllowanceEditionId = keyof typeof allowanceEditions;

/** The highest contingency allowance the sheet of constant allowances prints, percent. */
export const contingencyMost = { percent: 5, source: 'allowances-constant' } as const satisfies {
  readonly percent: number;
  readonly source: SourceId;
};
