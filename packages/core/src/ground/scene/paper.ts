export type PaperName = 'a4' | 'letter';

export interface Paper {
  readonly name: PaperName;
  /** Points, 1/72 inch. */
  readonly width: number;
  readonly height: number;
}

/** Points in a millimetre: 72 to the inch of 25.4 mm. */
export const pointsPerMillimetre = 72 / 25.4;

/** A4 is 210 × 297 mm (ISO 216); Letter is 8.5 × 11 in (ANSI/ASME Y14.1, size A). */
export const papers: Readonly<Record<PaperName, Paper>> = {
  a4: { name: 'a4', width: 210 * pointsPerMillimetre, height: 297 * pointsPerMillimetre },
  letter: { name: 'letter', width: 612, height: 792 },
};

/** The papers that everything is printed on, and A3 for drawings to scale. */
export type SheetName = PaperName | 'a3';

/** A3 is 297 × 420 mm (ISO 216). Width and height in points. */
export const sheets: Readonly<Record<SheetName, { readonly width: number; readonly height: number }>> = {
  ...papers,
  a3: { width: 297 * pointsPerMillimetre, height: 420 * pointsPerMillimetre },
};
