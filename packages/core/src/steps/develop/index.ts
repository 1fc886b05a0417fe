export * from './by-hand/index.ts';
export * from './changes/index.ts';
export * from './compose/index.ts';
export * from './predict/index.ts';
export * from './report/index.ts';
export * from './work/index.ts';
export * from './workplace/index.ts';
export * from './worth/index.ts';
