/**
 * Mean times of P. M. Fitts, The information capacity of the human motor system in controlling the amplitude of movement,
 * J. Exp. Psychol. 47(6), 1954, 381–391. Distances and widths in inches, times in milliseconds.
 */
export interface TappedMean {
  readonly distance: number;
  readonly width: number;
  readonly time: number;
}

type Row = readonly [distance: number, width: number, time: number];

const rowsOf = (rows: readonly Row[]): readonly TappedMean[] =>
  rows.map(([distance, width, time]) => ({ distance, width, time }));

/** Table 1, stylus of 1 oz, as printed in I. S. MacKenzie, Fitts’ law, 2018, table 17.1 (https://www.yorku.ca/mack/hhci2018.html). */
export const lightTapping = rowsOf([
  [2, 0.25, 392],
  [2, 0.5, 281],
  [2, 1, 212],
  [2, 2, 180],
  [4, 0.25, 484],
  [4, 0.5, 372],
  [4, 1, 260],
  [4, 2, 203],
  [8, 0.25, 580],
  [8, 0.5, 469],
  [8, 1, 357],
  [8, 2, 279],
  [16, 0.25, 731],
  [16, 0.5, 595],
  [16, 1, 481],
  [16, 2, 388],
]);

/** Table 1, stylus of 1 lb. From memory. */
export const heavyTapping = rowsOf([
  [2, 0.25, 406],
  [4, 0.25, 510],
  [8, 0.25, 649],
  [16, 0.25, 781],
  [2, 0.5, 281],
  [4, 0.5, 370],
  [8, 0.5, 485],
  [16, 0.5, 641],
  [2, 1, 215],
  [4, 1, 273],
  [8, 1, 373],
  [16, 1, 526],
  [2, 2, 182],
  [4, 2, 219],
  [8, 2, 284],
  [16, 2, 413],
]);

/** Table 2, discs moved from pin to pin; the width is hole less pin. From memory. */
export const discTransfers = rowsOf([
  [4, 0.0625, 697],
  [8, 0.0625, 771],
  [16, 0.0625, 896],
  [32, 0.0625, 1096],
  [4, 0.125, 649],
  [8, 0.125, 734],
  [16, 0.125, 844],
  [32, 0.125, 1028],
  [4, 0.25, 607],
  [8, 0.25, 672],
  [16, 0.25, 779],
  [32, 0.25, 975],
  [4, 0.5, 535],
  [8, 0.5, 623],
  [16, 0.5, 724],
  [32, 0.5, 902],
]);

/** Table 3, pins moved from hole to hole, the row of the finest fit alone. From memory. */
export const pinTransfers = rowsOf([
  [1, 0.03125, 673],
  [2, 0.03125, 705],
  [4, 0.03125, 766],
  [8, 0.03125, 825],
  [16, 0.03125, 959],
]);
