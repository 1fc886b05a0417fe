/** The parts of the search for hands that need a page or a worker, for tests and benchmarks. */
export { browserHandModels } from './browser-models.ts';
export { FramePixels } from './frame-pixels.ts';
