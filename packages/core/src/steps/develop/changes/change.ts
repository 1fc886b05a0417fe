import type { PrincipleNumber } from '../../../ground/tables/index.ts';
import type { Work } from '../work/index.ts';

/** Kinds of change, in the order in which several are made together: steps first, then places, then units. */
export const changeCodes = [
  'without-step',
  'without-inspection',
  'combine-steps',
  'foot-pedal',
  'combine-tools',
  'aligned-supply',
  'guide',
  'stop',
  'tool-at-hand',
  'hung-tool',
  'fixture',
  'closer-places',
  'gravity-feed',
  'drop-delivery',
  'chute',
  'two-units',
  'four-units',
  'gang',
] as const;

export type ChangeCode = (typeof changeCodes)[number];

/** What a change is called in files, links and at the command line: its kind, and what it is about where it may be about several things. */
export type ChangeId = ChangeCode | `${ChangeCode}:${string}`;

/** One thing that a change can be about in a work. */
export interface ChangeOption {
  /** Part of the id: ids of steps, or the name of an object. */
  readonly about: string;
  /** “sealing ring”, “Grasp collar and Position collar”. */
  readonly words: string;
}

/** A kind of change that can be tried before anyone builds it. A file for each. */
export interface ChangeRule {
  readonly code: ChangeCode;
  readonly name: string;
  /** What is built or rearranged. */
  readonly what: string;
  /** The principle of motion economy behind it. */
  readonly principle: PrincipleNumber | undefined;
  /** What the change supposes about times that nobody has measured, in words; ours. */
  readonly supposes?: string | undefined;
  /** Kinds that cannot be made together with it. */
  readonly excludes?: readonly ChangeCode[];
  /** What it can be about in this work; left out, it is about the work as a whole. */
  readonly options?: (work: Work) => readonly ChangeOption[];
  /** Only tried where a person asks for it: nobody can tell from the work whether it may be done. */
  readonly asked?: boolean;
  /** The work after it; undefined where there is nothing to change. */
  readonly apply: (work: Work, about: string) => Work | undefined;
}

/** A change of one work. */
export interface WorkChange {
  readonly id: ChangeId;
  readonly code: ChangeCode;
  readonly name: string;
  readonly what: string;
  readonly principle: PrincipleNumber | undefined;
  readonly supposes: string | undefined;
  readonly asked: boolean;
  readonly apply: (work: Work) => Work | undefined;
}
