export { type CycleModel, cycleModel } from './cycle-model.ts';
export { type Effect, gone, shortened, unchanged } from './effect.ts';
export { type Arrangement, type Stake, stakeOf, stakeRules } from './stake.ts';
