export type { Figure, FigureUnit, Traced } from './figure.ts';
export { type FigureChoice, figuresOf, togetherTolerance } from './figures.ts';
export type { BestLag, LagAgreement, LagPoint } from './lag.ts';
export type {
  Balance,
  BeginEnd,
  CyclePart,
  Figures,
  Groups,
  Meeting,
  MotionsMeeting,
  Overlap,
  Pace,
  SameMotion,
  TimeRow,
  Times,
  Together,
  TogetherCode,
} from './shape.ts';
