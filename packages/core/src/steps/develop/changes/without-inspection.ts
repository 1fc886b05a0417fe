import type { ChangeRule } from './change.ts';
import { withoutMotions } from './work-parts.ts';

export const withoutInspection: ChangeRule = {
  code: 'without-inspection',
  name: 'Inspection left out',
  what: 'What is inspected is made sure of otherwise: by a gauge, a stop or the next step.',
  principle: undefined,
  supposes: 'Somebody who answers for the quality agrees.',
  apply: (work) => withoutMotions(work, ['I']),
};
