import type { ChangeRule } from './change.ts';
import { withoutMotions } from './work-parts.ts';

export const alignedSupply: ChangeRule = {
  code: 'aligned-supply',
  name: 'Aligned supply',
  what: 'Parts lie singly and aligned, so that nothing is searched or selected.',
  principle: 20,
  apply: (work) => withoutMotions(work, ['Sh', 'F', 'St']),
};
