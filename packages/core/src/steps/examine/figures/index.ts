export type { Figure, FigureUnit, Traced } from './figure.ts';
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
} from './figures.ts';
export type { BestLag, LagAgreement } from './lag.ts';
