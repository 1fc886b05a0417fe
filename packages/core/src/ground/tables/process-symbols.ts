import type { MotionKind } from './motion-kinds.ts';
import type { SourceId } from './sources.ts';

/** The five symbols of the two-handed process chart; the storage triangle stands for hold. */
export type ProcessSymbol = 'operation' | 'transport' | 'delay' | 'hold' | 'inspection';

export interface ProcessSymbolFacts {
  readonly symbol: ProcessSymbol;
  readonly name: string;
  readonly shape: 'circle' | 'arrow' | 'capital-d' | 'triangle-down' | 'square';
  readonly meaning: string;
  readonly source: SourceId;
}

export const processSymbols: readonly ProcessSymbolFacts[] = [
  {
    symbol: 'operation',
    name: 'operation',
    shape: 'circle',
    meaning: 'the hand grasps, lines up, uses, joins or lets go',
    source: 'two-hand-chart',
  },
  {
    symbol: 'transport',
    name: 'transport',
    shape: 'arrow',
    meaning: 'the hand moves to or from the work, a tool or material',
    source: 'two-hand-chart',
  },
  {
    symbol: 'delay',
    name: 'delay',
    shape: 'capital-d',
    meaning: 'this hand is idle, though the other may be working',
    source: 'two-hand-chart',
  },
  {
    symbol: 'hold',
    name: 'hold',
    shape: 'triangle-down',
    meaning: 'the hand holds work, tool or material',
    source: 'two-hand-chart',
  },
  {
    symbol: 'inspection',
    name: 'inspection',
    shape: 'square',
    meaning: 'the work is compared with what it should be',
    source: 'asme-symbols',
  },
];

/**
 * The symbol for a fundamental motion. Grasp, position, use, release, the transports, hold and idleness follow the
 * two-hand-chart source; for search, select, plan, find, inspect and rest the books settle nothing and the choice is ours.
 */
export const symbolOfMotion: Readonly<Record<Exclude<MotionKind, 'unmarked'>, ProcessSymbol>> = {
  G: 'operation',
  P: 'operation',
  PP: 'operation',
  A: 'operation',
  DA: 'operation',
  U: 'operation',
  RL: 'operation',
  Sh: 'operation',
  St: 'operation',
  I: 'inspection',
  TE: 'transport',
  TL: 'transport',
  H: 'hold',
  UD: 'delay',
  AD: 'delay',
  R: 'delay',
  Pn: 'delay',
  F: 'delay',
};
