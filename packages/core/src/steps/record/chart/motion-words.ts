import type { MotionKind } from '../../../ground/tables/index.ts';

/** What a hand does, to whom the letter code says nothing: the verb, and the word before its object. */
const verbs: Readonly<Record<MotionKind, readonly [verb: string, before: string]>> = {
  TE: ['reach', 'for'],
  TL: ['carry', ''],
  G: ['grasp', ''],
  H: ['hold', ''],
  RL: ['let go', 'of'],
  P: ['position', ''],
  PP: ['pre-position', ''],
  U: ['use', ''],
  A: ['assemble', ''],
  DA: ['take off', ''],
  Sh: ['search', 'for'],
  F: ['find', ''],
  St: ['select', ''],
  I: ['inspect', ''],
  Pn: ['plan', ''],
  UD: ['wait', 'for'],
  AD: ['stand idle', 'with'],
  R: ['rest', 'after'],
  unmarked: ['not marked yet', ''],
};

export interface MotionWords {
  readonly kind: MotionKind;
  readonly object?: string | undefined;
  /** Names of the places, not their ids. */
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

/** A motion as a line of the chart: verb, object, from and to, as far as they are known. */
export function describeMotion({ kind, object, from, to }: MotionWords): string {
  const [verb, before] = verbs[kind];
  if (kind === 'unmarked') return verb;
  const parts = [verb];
  if (object !== undefined) parts.push(before, object);
  if (from !== undefined) parts.push('from', from);
  if (to !== undefined) parts.push(kind === 'TE' || kind === 'TL' ? 'to' : 'at', to);
  return parts.filter((part) => part !== '').join(' ');
}
