import type { Micros } from '../../../ground/base/index.ts';
import type { Hand } from '../../../ground/study/index.ts';
import type { PrincipleNumber } from '../../../ground/tables/index.ts';
import type { CycleReading, MethodReading, Piece, Segment, Trace } from '../reading/index.ts';
import type { Arrangement, CycleModel, Effect, Stake } from '../stake/index.ts';

/** What a lead is called in files and links. */
export type LeadCode =
  | 'hold'
  | 'wait'
  | 'uneven-load'
  | 'apart'
  | 'not-mirrored'
  | 'search'
  | 'long-transport'
  | 'position'
  | 'tool-handling'
  | 'hand-to-hand'
  | 'placed-aside'
  | 'repeated'
  | 'inspection'
  | 'avoidable-delay'
  | 'fumble'
  | 'fast-cycle'
  | 'body-motion'
  | 'machine-wait';

/** What usually removes it, in the order of the ladder: eliminate before combine, rearrange, simplify. */
export interface Remedy {
  readonly how: 'eliminate' | 'combine' | 'rearrange' | 'simplify';
  readonly text: string;
}

/** One figure of the evidence. Shares are 0 to 1, lengths millimetres, times microseconds a cycle unless the name says else. */
export interface EvidenceFigure {
  readonly name: string;
  readonly value: number;
  readonly unit: 'time' | 'share' | 'count' | 'length' | 'ratio';
}

/** What the rule of a lead found in a reading. */
export interface LeadDraft {
  readonly hand: Hand | 'both';
  /** What sets it apart from other leads of the same code and hand: an object, a place, a cycle. */
  readonly about?: string | undefined;
  /** Where to look, in order of time. */
  readonly traces: readonly Trace[];
  /** One or two sentences with the figures in them. */
  readonly evidence: string;
  readonly figures: readonly EvidenceFigure[];
  /** What following it would leave of each motion, over all cycles of the reading. */
  readonly effects: readonly Effect[];
  /** Overrides the rule's arrangement. */
  readonly arrangement?: Arrangement | undefined;
}

/** One kind of lead. A file for each. */
export interface LeadRule {
  readonly code: LeadCode;
  /** "Holding in one hand". */
  readonly name: string;
  /** Numbers of the principles of motion economy it rests on (`principles` in the tables). */
  readonly principles: readonly PrincipleNumber[];
  /** Set where a limit in the rule is ours: what it is and why. */
  readonly limit?: string;
  readonly arrangement: Arrangement;
  /** How the effects were chosen, one sentence: "The hold is gone." The rule of the stake follows it. */
  readonly change: string;
  readonly remedies: readonly Remedy[];
  readonly questions: readonly string[];
  /** Said with the lead where the body is touched; names its source. */
  readonly caution?: string;
  readonly find: (context: LeadContext) => readonly LeadDraft[];
}

/** What every rule may read; made once for a reading. */
export interface LeadContext {
  readonly reading: MethodReading;
  readonly cycles: readonly CycleReading[];
  /** Segments of each cycle, by its position. */
  readonly segments: readonly (readonly Segment[])[];
  /** What the stakes need of each cycle, by its position. */
  readonly models: readonly CycleModel[];
  /** All pieces of a hand over the chosen cycles, in order. */
  readonly pieces: Readonly<Record<Hand, readonly Piece[]>>;
}

/** A lead as it is shown, printed and written as JSON. */
export interface Lead {
  /** Stable while the record keeps its words: `hold:left:body`. Notes of the critical examination hang on it. */
  readonly id: string;
  readonly code: LeadCode;
  readonly name: string;
  readonly principles: readonly PrincipleNumber[];
  readonly limit: string | undefined;
  readonly hand: Hand | 'both';
  readonly about: string | undefined;
  /** Numbers of the cycles in which it shows, rising; 0 for a record without cycles. */
  readonly cycles: readonly number[];
  readonly traces: readonly Trace[];
  readonly evidence: string;
  readonly figures: readonly EvidenceFigure[];
  /** Mean over all chosen cycles, microseconds a cycle. */
  readonly atStake: Stake;
  /** How the interval was computed, in words. */
  readonly rule: string;
  /** Hours a year at the yearly volume of the study; undefined when that is not known. */
  readonly hoursAYear: { readonly low: number; readonly high: number } | undefined;
  readonly remedies: readonly Remedy[];
  readonly questions: readonly string[];
  readonly caution: string | undefined;
}

export interface LeadList {
  /** In order of what they are worth: middle of the interval, then its upper end, then the id. */
  readonly leads: readonly Lead[];
  /** All of them together. Leads that overlap in time share what they save, so this is not their sum. */
  readonly joint: { readonly atStake: Stake; readonly hoursAYear: Lead['hoursAYear']; readonly rule: string };
  /** Mean length of the chosen cycles, microseconds. */
  readonly cycle: Micros;
}
