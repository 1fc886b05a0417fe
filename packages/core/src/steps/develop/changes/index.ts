export { type LeadAnswer, leadAnswers } from './answers.ts';
export { type ArrangedChanges, type ArrangedChangesWish, arrangedWith } from './arranged-changes.ts';
export { type ChangeCode, type ChangeId, type ChangeRule, changeCodes, type WorkChange } from './change.ts';
export { type Combinations, type CombinationWish, combinationsOf, type FrontPoint } from './combinations.ts';
export { type CostRange, type Costs, costOf } from './cost.ts';
export { frontOf } from './front.ts';
export { changedBy, changeOf, changeRules, changesFor, clashOf, inOrder, workChanges } from './rules.ts';
export {
  type ChangeWorth,
  type DevelopedMethod,
  type DevelopWish,
  developed,
  savedBetween,
  type WorthList,
  worthOf,
  worthOfChanges,
} from './worth.ts';
