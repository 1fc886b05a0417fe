import type { LeadCode } from '../../examine/index.ts';
import type { ChangeCode } from './change.ts';

/** What answers a lead of the examination: changes to try, or why there is none; both where a word is needed beside them. */
export interface LeadAnswer {
  /** The one that goes to the root of it first. */
  readonly changes: readonly ChangeCode[];
  /** Said where no change answers it, or where one must be chosen by a person. */
  readonly words?: string;
}

const byItself =
  'The composer shares out the work anew, so the composed method does without it where that can be.';

/** For every kind of lead. Ours, after what the remedies of the leads say. */
export const leadAnswers: Readonly<Record<LeadCode, LeadAnswer>> = {
  hold: { changes: ['fixture', 'foot-pedal'] },
  wait: { changes: ['two-units', 'four-units', 'fixture'], words: byItself },
  'uneven-load': { changes: ['two-units', 'fixture', 'four-units'], words: byItself },
  apart: { changes: ['two-units'], words: byItself },
  'not-mirrored': { changes: ['two-units', 'four-units'] },
  search: { changes: ['aligned-supply', 'gravity-feed'] },
  'long-transport': { changes: ['closer-places', 'gravity-feed', 'drop-delivery', 'chute'] },
  position: { changes: ['guide', 'stop'] },
  'tool-handling': { changes: ['hung-tool', 'tool-at-hand', 'combine-tools'] },
  'hand-to-hand': {
    changes: ['fixture', 'without-step'],
    words: 'Leave out the step in which it passes from hand to hand: then one hand carries it all the way.',
  },
  'placed-aside': { changes: ['drop-delivery', 'chute'] },
  repeated: { changes: ['gang', 'combine-steps', 'combine-tools'] },
  inspection: { changes: ['without-inspection', 'stop'] },
  'avoidable-delay': {
    changes: [],
    words:
      'No change of the work answers it: the delay is not part of the work, and the composed method as it stands has none. Look for its cause where it was filmed.',
  },
  fumble: { changes: ['aligned-supply', 'guide', 'tool-at-hand'] },
  'fast-cycle': {
    changes: ['without-step'],
    words:
      'What the fast cycle did without can be left out as a step and tried. A faster pace is no change of the work and is not tried.',
  },
  'body-motion': { changes: ['closer-places', 'gravity-feed', 'drop-delivery'] },
  'machine-wait': {
    changes: ['two-units', 'four-units', 'foot-pedal'],
    words: 'What can be done during the wait is put there by the composer already.',
  },
};
