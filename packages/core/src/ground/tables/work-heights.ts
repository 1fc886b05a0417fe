import type { SourceId } from './sources.ts';

/** Precision asks for sight and steady forearms, light work for free arms, heavy work for the weight of the body. */
export type WorkKind = 'precision' | 'light' | 'heavy';

/** What one publication says of the height of the work for people who stand, millimetres. */
export interface WorkHeightFacts {
  readonly kind: WorkKind;
  /** Above the elbow (below it where negative), from and to; undefined where it gives none. */
  readonly fromElbow?: readonly [low: number, high: number];
  /** Above the floor, from and to. */
  readonly fromFloor?: readonly [low: number, high: number];
  readonly note?: string;
  readonly source: SourceId;
}

const inch = 25.4;
const inches = (low: number, high: number): readonly [number, number] => [low * inch, high * inch];

/** Heights of the hands at work while standing, by kind of work. */
export const workHeights: readonly WorkHeightFacts[] = [
  {
    kind: 'precision',
    fromElbow: [50, 100],
    fromFloor: [1020, 1320],
    note: 'forearms must be supported',
    source: 'work-height-card',
  },
  { kind: 'light', fromElbow: [-100, -50], fromFloor: [870, 1170], source: 'work-height-card' },
  { kind: 'heavy', fromElbow: [-250, -100], fromFloor: [720, 1120], source: 'work-height-card' },
  { kind: 'precision', fromFloor: inches(37, 43), source: 'niosh-programs' },
  { kind: 'light', fromFloor: inches(34, 37), source: 'niosh-programs' },
  { kind: 'heavy', fromFloor: inches(28, 35), source: 'niosh-programs' },
  { kind: 'light', fromElbow: [-100, -50], note: 'general standing work', source: 'auva-height' },
  { kind: 'heavy', fromElbow: [-400, -150], source: 'auva-height' },
  { kind: 'precision', fromElbow: inches(4, 4), source: 'state-fund-height' },
  { kind: 'light', note: 'just below the elbow', source: 'state-fund-height' },
  { kind: 'heavy', fromElbow: inches(-6, -4), source: 'state-fund-height' },
];

/** Sitting, the surface lies at the height of the elbow. */
export const sittingHeight: { readonly fromElbow: readonly [number, number]; readonly source: SourceId } = {
  fromElbow: [0, 0],
  source: 'sitting-height-lecture',
};

/** What shoes add to sizes that were taken without them, millimetres: common practice, no source. */
export const shoes = 25;
