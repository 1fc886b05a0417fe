/**
 * Films: opening, exact frames, and the player's logic. No framework, no DOM element of its own.
 *
 *     const opened = await openFilm(file);             // a File, { url, name }, or { handle, name } in Node
 *     if (!opened.ok) return show(opened.error);       // findings: what was found and what to do
 *     const film = opened.value;
 *     const player = createPlayer(film.reader, film.clock);
 *     player.onShown(({ handle }) => handle.draw(context, 0, 0, width, height));
 *     player.step(1); player.play(-0.25); player.setLoop({ from: 30, to: 90 });
 *     // in the end: player.dispose(); film.dispose();
 *
 *     const hands = await trackFilm(file, { onProgress, signal });  // where both hands are in every frame
 */
export type {
  Direction,
  FilmIndex,
  FrameHandle,
  FrameReader,
  FrameSpan,
  IndexedFilm,
  OpenFilm,
} from './film.ts';
export { trackFilm } from './hands/track-film.ts';
export {
  type HandProgress,
  type HandReport,
  type HandStretch,
  handsVersion,
  type TrackedFilm,
  type TrackFilmOptions,
} from './hands/tracking.ts';
export { indexFilm, type OpenOptions, openFilm } from './open-film.ts';
export { createPlayer, type Player, type PlayerPorts, type PlayerState, type ShownFrame } from './player.ts';
export { type BandColour, bandColour, bandsFault } from './scan/band-colour.ts';
export type { Region } from './scan/movement.ts';
export { type ScanOptions, scanFilm } from './scan/scan-film.ts';
export type { Band, ScanWish } from './scan/scan-messages.ts';
export type { ByHand, ScannedTrack } from './scan/scan-tracks.ts';
export type { FileFilm, FilmSource, UrlFilm } from './source.ts';
export { nextSpeed, type Speed, speeds, speedText } from './speeds.ts';
