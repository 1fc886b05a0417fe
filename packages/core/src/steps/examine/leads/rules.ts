import { apart } from './apart.ts';
import { hold } from './hold.ts';
import type { LeadRule } from './lead.ts';
import { position } from './position.ts';
import { search } from './search.ts';
import { toolHandling } from './tool-handling.ts';
import { unevenLoad } from './uneven-load.ts';
import { wait } from './wait.ts';

/** Every kind of lead, in the order of the text of the guide. */
export const leadRules: readonly LeadRule[] = [hold, wait, unevenLoad, apart, search, position, toolHandling];
