export * from './critical/index.ts';
export * from './elements/index.ts';
export * from './figures/index.ts';
export * from './leads/index.ts';
export * from './reading/index.ts';
export * from './report/index.ts';
export * from './sequences/index.ts';
export { type Arrangement, type Stake, stakeRules } from './stake/index.ts';
export * from './variation/index.ts';
