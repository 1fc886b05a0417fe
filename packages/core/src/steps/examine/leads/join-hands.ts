import type { LeadDraft, LeadRule } from './lead.ts';
import { inOrder } from './stretches.ts';

/** A draft with the rule that made it. */
export interface Ruled {
  readonly rule: LeadRule;
  readonly draft: LeadDraft;
}

/** What a draft is worth; only compared. */
type Worth = (ruled: Ruled) => number;

/** Our own choice, no source: so much more must the two be worth together than one by one. */
const more = 1.1;

/**
 * The same lead in both hands becomes one lead when it is worth more there than in each hand by itself: in a method whose
 * hands work side by side the cycle is shortened only where both of them lose the motion.
 */
export function joinHands(found: readonly Ruled[], worth: Worth): readonly Ruled[] {
  const taken = new Set<Ruled>();
  return found.flatMap((one) => {
    if (taken.has(one)) return [];
    const other = found.find((item) => !taken.has(item) && isSameInOtherHand(one, item));
    if (other === undefined) return [one];
    const joined = joinedDraft(one, other);
    if (worth(joined) <= more * (worth(one) + worth(other))) return [one];
    taken.add(other);
    return [joined];
  });
}

function isSameInOtherHand(a: Ruled, b: Ruled): boolean {
  const opposite = a.draft.hand === 'left' && b.draft.hand === 'right';
  return opposite && a.rule === b.rule && a.draft.about === b.draft.about;
}

function joinedDraft({ rule, draft: left }: Ruled, { draft: right }: Ruled): Ruled {
  const figures = [left, right].flatMap(({ hand, figures: own }) =>
    own.map((figure) => ({ ...figure, name: `${hand} hand: ${figure.name}` })),
  );
  return {
    rule,
    draft: {
      ...left,
      hand: 'both',
      traces: inOrder([...left.traces, ...right.traces]),
      evidence: `${left.evidence} ${right.evidence}`,
      figures,
      effects: [...left.effects, ...right.effects],
    },
  };
}
