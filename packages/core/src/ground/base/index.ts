export * from './brands.ts';
export * from './result.ts';
export * from './search.ts';
