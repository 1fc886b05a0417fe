export { type Effect, effectMap, gone, shortened } from './effect.ts';
export { type Arrangement, type Stake, stakeOf, stakeRules } from './stake.ts';
