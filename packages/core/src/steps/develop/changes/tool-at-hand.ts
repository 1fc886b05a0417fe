import type { ChangeRule } from './change.ts';
import { withoutMotions } from './work-parts.ts';

export const toolAtHand: ChangeRule = {
  code: 'tool-at-hand',
  name: 'Tool or part pre-positioned',
  what: 'A holder or a tray lets tool and part stand as they are used, so that they need not be turned round.',
  principle: 20,
  apply: (work) => withoutMotions(work, ['PP']),
};
