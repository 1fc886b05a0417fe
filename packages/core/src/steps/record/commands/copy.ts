import type { Edit } from '../../../ground/edit/index.ts';
import {
  type Cycle,
  type Hand,
  itemAt,
  itemsBetween,
  type Method,
  type Motion,
  otherHand,
  type Spanned,
  type Study,
  spanAt,
} from '../../../ground/study/index.ts';
import type { Target } from './mark.ts';
import { type MotionDraft, replaceSpan } from './replace-span.ts';

/** A stretch of a row from one boundary to another. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/**
 * Copies a span of one hand to the other, over the same time. Places change to their mirror images where the study
 * names them; the rest is copied as it is.
 */
export function copyToOtherHand(
  study: Study,
  { method, hand }: Target,
  span: Span,
  newId: () => string,
): Edit | undefined {
  const drafts = itemsBetween(method[hand], span.from, span.to).map(
    ({ item, start }): MotionDraft => mirrored(study, { ...copied(item), start }),
  );
  if (drafts.length === 0) return undefined;
  const to = otherHand(hand);
  const edits = replaceSpan(method, to, span.from, span.to, drafts, newId);
  return { type: 'group', name: `copy to the ${to} hand`, edits };
}

/** A copy is a person's own word, whoever said the original. */
function copied({ id: _, confidence: __, ...rest }: Motion): Omit<MotionDraft, 'confidence'> {
  return { ...rest, said: 'marked' };
}

function mirrored(study: Study, draft: MotionDraft): MotionDraft {
  const image = (id: string) => study.places.find((place) => place.id === id)?.mirror ?? id;
  return {
    ...draft,
    ...(draft.from === undefined ? {} : { from: image(draft.from) }),
    ...(draft.to === undefined ? {} : { to: image(draft.to) }),
  };
}

/** The cycle in which a boundary lies, and the one after it. */
function cyclesAround(
  method: Method,
  at: number,
): { here: Spanned<Cycle>; next: Spanned<Cycle> } | undefined {
  const here = itemAt(method.cycles, at);
  const next = here === undefined ? undefined : spanAt(method.cycles, here.index + 1);
  return here === undefined || next === undefined ? undefined : { here, next };
}

/**
 * Copies a span of the chosen hands to the same part of the next cycle, stretched or shrunk by the ratio of the two
 * cycles' lengths. Every motion keeps at least one step. Undefined when there is no next cycle.
 */
export function copyToNextCycle(
  method: Method,
  chosen: readonly Hand[],
  span: Span,
  newId: () => string,
): { readonly edit: Edit; readonly span: Span } | undefined {
  const cycles = cyclesAround(method, span.from);
  if (cycles === undefined) return undefined;
  const { here, next } = cycles;
  const scale = (next.end - next.start) / (here.end - here.start);
  const place = (at: number) => next.start + Math.round((Math.min(at, here.end) - here.start) * scale);
  const target: Span = { from: place(span.from), to: place(Math.min(span.to, here.end)) };
  if (target.to <= target.from) return undefined;
  const edits = chosen.flatMap((hand) => {
    const drafts = stretched(
      itemsBetween(method[hand], span.from, Math.min(span.to, here.end)),
      place,
      target,
    );
    return drafts.length === 0 ? [] : replaceSpan(method, hand, target.from, target.to, drafts, newId);
  });
  return edits.length === 0
    ? undefined
    : { edit: { type: 'group', name: 'copy to the next cycle', edits }, span: target };
}

function stretched(
  items: readonly Spanned<Method['left']['items'][number]>[],
  place: (at: number) => number,
  target: Span,
): MotionDraft[] {
  const drafts: MotionDraft[] = [];
  let least = target.from;
  items.forEach(({ item, start }, index) => {
    // What still follows needs one step each, or it would fall off the end of the span.
    const most = target.to - (items.length - index);
    const at = Math.max(least, Math.min(place(start), most));
    if (at >= target.to) return;
    drafts.push({ ...copied(item), start: at });
    least = at + 1;
  });
  return drafts;
}

/** Takes the marks of a span away: it is `unmarked` again. */
export function clearSpan({ method, hand }: Target, span: Span, newId: () => string): Edit | undefined {
  const touched = itemsBetween(method[hand], span.from, span.to);
  if (touched.every(({ item }) => item.kind === 'unmarked')) return undefined;
  const drafts: MotionDraft[] = [{ start: span.from, kind: 'unmarked', said: 'marked' }];
  return {
    type: 'group',
    name: 'clear marks',
    edits: replaceSpan(method, hand, span.from, span.to, drafts, newId),
  };
}
