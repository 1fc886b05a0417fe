import { micros } from '../../../ground/base/index.ts';
import type { MethodReading } from '../reading/index.ts';
import { type Effect, type Stake, stakeOf, stakeRules } from '../stake/index.ts';
import { leadContext, meanCycle } from './context.ts';
import { joinHands, type Ruled } from './join-hands.ts';
import type { Lead, LeadContext, LeadDraft, LeadList, LeadRule } from './lead.ts';
import { leadRules } from './rules.ts';

const jointRule =
  'All leads together, each motion taken out once: the same rules applied to all their changes at once. Not the sum of the leads, because they share the time they overlap in.';

/** The leads of a reading in order of what they are worth, with the bound on all of them together. */
export function findLeads(reading: MethodReading, rules: readonly LeadRule[] = leadRules): LeadList {
  const context = leadContext(reading);
  const found = rules.flatMap((rule) => rule.find(context).map((draft): Ruled => ({ rule, draft })));
  const drafts = joinHands(found, ({ rule, draft }) => {
    const { low, high } = meanStake(stakesOf(context, draft, rule));
    return low + high;
  });
  const worked = drafts.map(({ rule, draft }) => ({ rule, draft, stakes: stakesOf(context, draft, rule) }));
  const leads = worked.map(({ rule, draft, stakes }) => leadFrom(context, rule, draft, meanStake(stakes)));
  const joint = jointStake(
    context,
    drafts.flatMap(({ draft }) => draft.effects),
    worked.map(({ stakes }) => stakes),
  );
  return {
    leads: leads.sort(byWorth),
    joint: { atStake: joint, hoursAYear: hoursAYear(reading, joint), rule: jointRule },
    cycle: meanCycle(context),
  };
}

type Stakes = readonly Stake[];

/** What a draft is worth in each of the chosen cycles. */
function stakesOf(context: LeadContext, draft: LeadDraft, rule: LeadRule): Stakes {
  const arrangement = draft.arrangement ?? rule.arrangement;
  return perCycle(context, draft.effects).map((effects, position) =>
    cycleStake(context, position, effects, arrangement),
  );
}

function cycleStake(
  context: LeadContext,
  position: number,
  effects: readonly Effect[],
  arrangement: 'kept' | 'shared',
): Stake {
  const model = context.models[position];
  if (model === undefined) throw new RangeError(`no cycle at ${position}`);
  return stakeOf(model, effects, arrangement);
}

function perCycle(context: LeadContext, effects: readonly Effect[]): readonly (readonly Effect[])[] {
  const lists: Effect[][] = context.cycles.map(() => []);
  for (const effect of effects) lists[effect.piece.cycle]?.push(effect);
  return lists;
}

/** All effects at once, and never less than any lead alone. */
function jointStake(context: LeadContext, effects: readonly Effect[], single: readonly Stakes[]): Stake {
  const joint = perCycle(context, effects).map((list, position): Stake => {
    const all = cycleStake(context, position, list, 'shared');
    const least = single.reduce<number>(
      (most, stakes) => Math.max(most, stakes[position]?.low ?? 0),
      all.low,
    );
    const most = single.reduce<number>(
      (high, stakes) => Math.max(high, stakes[position]?.high ?? 0),
      all.high,
    );
    return { low: micros(least), high: micros(Math.max(most, least)) };
  });
  return meanStake(joint);
}

function meanStake(stakes: Stakes): Stake {
  const mean = (of: 'low' | 'high') =>
    micros(Math.round(stakes.reduce((sum, stake) => sum + stake[of], 0) / Math.max(1, stakes.length)));
  return { low: mean('low'), high: mean('high') };
}

function leadFrom(context: LeadContext, rule: LeadRule, draft: LeadDraft, atStake: Stake): Lead {
  const { reading } = context;
  const positions = [...new Set(draft.traces.map((trace) => trace.cycle))].sort((a, b) => a - b);
  return {
    id: [rule.code, draft.hand, draft.about].filter((part) => part !== undefined).join(':'),
    code: rule.code,
    name: rule.name,
    principles: rule.principles,
    limit: rule.limit,
    hand: draft.hand,
    about: draft.about,
    cycles: positions.map((position) => context.cycles[position]?.number ?? 0),
    traces: draft.traces,
    evidence: draft.evidence,
    figures: draft.figures,
    atStake,
    rule: `${rule.change} ${stakeRules[draft.arrangement ?? rule.arrangement]}`,
    hoursAYear: hoursAYear(reading, atStake),
    remedies: rule.remedies,
    questions: rule.questions,
    caution: rule.caution,
  };
}

/** Hours a year: seconds a cycle ÷ units a cycle × units a year ÷ 3600. */
function hoursAYear({ study, method }: MethodReading, stake: Stake): Lead['hoursAYear'] {
  const units = study.operation.unitsAYear;
  if (units === undefined) return undefined;
  const hours = (time: number) => (time / 1e6 / method.unitsPerCycle) * (units / 3600);
  return { low: hours(stake.low), high: hours(stake.high) };
}

function byWorth(a: Lead, b: Lead): number {
  const twice = ({ atStake }: Lead) => atStake.low + atStake.high;
  return twice(b) - twice(a) || b.atStake.high - a.atStake.high || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}
