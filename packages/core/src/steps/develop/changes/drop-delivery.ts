import type { ChangeRule } from './change.ts';
import { broughtTo } from './work-parts.ts';

/** How far from the work a drop opening stands, millimetres. Ours. */
const dropDistance = 90;

export const dropDelivery: ChangeRule = {
  code: 'drop-delivery',
  name: 'Drop delivery',
  what: 'An opening with a chute beside the work takes what is finished.',
  principle: 13,
  excludes: ['chute'],
  apply: (work) =>
    broughtTo(work, dropDistance, ({ kind }) => kind === 'exit', {
      within: dropDistance * 1.2,
      more: ({ name }) => ({ name: `${name}, as a chute`.slice(0, 200), width: 120 }),
    }),
};
