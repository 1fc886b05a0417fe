/**
 * The parts of the search for hands, for tests and benchmarks: they run in Node too. The page uses `trackFilm` of the
 * package’s first door.
 */
export { type HandModels, handInput } from './hand-models.ts';
export { squareOfLandmarks, squareOfPalm } from './hand-square.ts';
export { HandTracker, type TrackerSettings, usualSettings } from './hand-tracker.ts';
export { reportOf, trackOf } from './hand-tracks.ts';
export { type LiteRtParts, liteRtHands, type ModuleFactory } from './lite-rt.ts';
export { packedPalmModel } from './packed-palm-model.ts';
export { type KeptSighting, packSightings, unpackSightings } from './packed-sightings.ts';
export type { Picture } from './picture.ts';
export type { Sighting } from './sighting.ts';
export { joinStretches } from './track-film.ts';
export { type HandStretch, handsVersion } from './tracking.ts';
export { assignHands, type TwoHands } from './two-hands.ts';
