export * from './figures/index.ts';
export * from './leads/index.ts';
export * from './reading/index.ts';
export { type Arrangement, type Stake, stakeRules } from './stake/index.ts';
