import { hold } from './hold.ts';
import type { LeadRule } from './lead.ts';

/** Every kind of lead, in the order of the text of the guide. */
export const leadRules: readonly LeadRule[] = [hold];
