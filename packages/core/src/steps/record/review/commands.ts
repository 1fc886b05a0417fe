import type { Edit } from '../../../ground/edit/index.ts';
import type { Hand, Method, MethodClock } from '../../../ground/study/index.ts';
import type { Proposal } from '../propose/index.ts';
import { clearedMethod, withoutMotions } from './cleared.ts';
import { confirmedCycle, confirmedMethod, refusedCycle } from './confirmed-method.ts';
import { methodChanges } from './method-changes.ts';
import type { ReviewItem } from './review-order.ts';
import { withProposal } from './with-proposal.ts';

// Every command gives one edit, so that one undo takes it back; undefined when it would change nothing.

/** Puts a proposal into the method in place of any before it; never touches what is marked or confirmed. */
export function proposalEdit(
  method: Method,
  proposal: Proposal,
  clock: Pick<MethodClock, 'timeOf'>,
  newId: () => string,
): Edit | undefined {
  return methodChanges(method, withProposal(method, proposal, clock, newId), 'propose the other cycles');
}

/** Takes every proposal out again. */
export function clearProposals(method: Method): Edit | undefined {
  return methodChanges(method, clearedMethod(method), 'clear the proposals');
}

/** Confirms one motion or one cycle mark. */
export function confirmProposed(
  method: Method,
  { row, id }: Pick<ReviewItem, 'row' | 'id'>,
): Edit | undefined {
  const next = confirmedMethod(method, {
    motion: (motion, hand) => hand === row && motion.id === id,
    cycle: (cycle) => row === 'cycles' && cycle.id === id,
  });
  return methodChanges(method, next, row === 'cycles' ? 'confirm a cycle mark' : 'confirm a motion');
}

/** Confirms a cycle as a whole, its bounds and the motions of both hands. */
export function confirmCycle(method: Method, id: string): Edit | undefined {
  return methodChanges(method, confirmedCycle(method, id), 'confirm a cycle');
}

/** Confirms all motions and cycle marks of which the program is at least this sure, 0 to 1; 0 confirms everything. */
export function confirmAbove(method: Method, confidence: number): Edit | undefined {
  const sure = (item: { readonly confidence?: number | undefined }) => (item.confidence ?? 0) >= confidence;
  const next = confirmedMethod(method, { motion: sure, cycle: sure });
  return methodChanges(method, next, 'confirm proposals');
}

/** Refuses one motion: its time is unmarked again. */
export function refuseMotion(method: Method, hand: Hand, id: string): Edit | undefined {
  const row = withoutMotions(method[hand], (motion) => motion.id === id && motion.said === 'proposed');
  return methodChanges(method, { ...method, [hand]: row }, 'refuse a motion');
}

/** Refuses a cycle: its proposed motions are unmarked again and its time belongs to no cycle. */
export function refuseCycle(method: Method, id: string): Edit | undefined {
  return methodChanges(method, refusedCycle(method, id), 'refuse a cycle');
}
