import { apart } from './apart.ts';
import { avoidableDelay } from './avoidable-delay.ts';
import { bodyMotion } from './body-motion.ts';
import { fastCycle } from './fast-cycle.ts';
import { fumble } from './fumble.ts';
import { handToHand } from './hand-to-hand.ts';
import { hold } from './hold.ts';
import { inspection } from './inspection.ts';
import type { LeadRule } from './lead.ts';
import { longTransport } from './long-transport.ts';
import { machineWait } from './machine-wait.ts';
import { notMirrored } from './not-mirrored.ts';
import { placedAside } from './placed-aside.ts';
import { position } from './position.ts';
import { repeated } from './repeated.ts';
import { search } from './search.ts';
import { toolHandling } from './tool-handling.ts';
import { unevenLoad } from './uneven-load.ts';
import { wait } from './wait.ts';

/** Every kind of lead, in the order of the text of the guide. */
export const leadRules: readonly LeadRule[] = [
  hold,
  wait,
  unevenLoad,
  apart,
  notMirrored,
  search,
  longTransport,
  position,
  toolHandling,
  handToHand,
  avoidableDelay,
  bodyMotion,
  fastCycle,
  fumble,
  inspection,
  machineWait,
  placedAside,
  repeated,
];
