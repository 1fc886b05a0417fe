import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { FilmIndex } from '../film.ts';
import { indexFilm } from '../open-film.ts';
import { reasonOf } from '../reason.ts';
import type { FilmSource } from '../source.ts';
import type { CameraMoves } from './camera-watch.ts';
import { handFindings } from './hand-findings.ts';
import { usualSettings } from './hand-tracker.ts';
import { reportOf, trackOf } from './hand-tracks.ts';
import { type KeptSighting, unpackSightings } from './packed-sightings.ts';
import { SearchRefused, searchAll } from './search-pool.ts';
import { type Stretch, stillToDo, stretchesOf } from './stretches.ts';
import { type HandStretch, handsVersion, type TrackedFilm, type TrackFilmOptions } from './tracking.ts';
import { assignHands } from './two-hands.ts';
import { workPace } from './work-pace.ts';

/**
 * Seeks both hands in every frame of a film, in workers, so that the page stays fluent. Nothing leaves the machine.
 * @returns what was found; findings when the film cannot be read or the search cannot run here
 * @throws DOMException `AbortError` when `signal` aborts; finished stretches were given to `onStretch`
 */
export async function trackFilm(
  film: FilmSource,
  options: TrackFilmOptions = {},
): Promise<Result<TrackedFilm, readonly Finding[]>> {
  const indexed = await indexFilm(film);
  if (!indexed.ok) return indexed;
  const { index, clock } = indexed.value;
  const stretches = stretchesOf(clock.frames, index.keyFrames);
  const done = (options.resumeFrom ?? []).filter(({ version }) => version === handsVersion);
  try {
    const searched = await search(reachable(film), stretches, done, clock.frames, options);
    return ok(tracked(index, clock.frames, searched, options.mirrored ?? false));
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') throw error;
    if (error instanceof SearchRefused) return fail(error.findings);
    return fail([finding('hands/search', {}, { reason: reasonOf(error) })]);
  }
}

/** A worker reads addresses from its own place, so they must be whole. */
function reachable(film: FilmSource): FilmSource {
  return 'url' in film ? { ...film, url: new URL(film.url, location.href).href } : film;
}

async function search(
  film: FilmSource,
  all: readonly Stretch[],
  earlier: readonly HandStretch[],
  frames: number,
  { workers = 2, settings, onProgress, onStretch, signal }: TrackFilmOptions,
): Promise<readonly HandStretch[]> {
  const done = all.flatMap(({ from, to }) => earlier.find((one) => one.from === from && one.to === to) ?? []);
  const stretches = stillToDo(all, done);
  const open = stretches.reduce((sum, { from, to }) => sum + to - from, 0);
  const pace = workPace(frames, frames - open, () => performance.now(), onProgress);
  await searchAll({
    film,
    stretches,
    workers,
    settings: { ...usualSettings, ...settings },
    signal,
    onFrame: pace.step,
    onSearched: ({ stretch: { from, to }, sightings, camera }) => {
      const stretch = { version: handsVersion, from, to, sightings, camera };
      done.push(stretch);
      onStretch?.(stretch);
    },
  });
  pace.end();
  return done.sort((a, b) => a.from - b.from);
}

function tracked(
  { width, height }: FilmIndex,
  frames: number,
  stretches: readonly HandStretch[],
  mirrored: boolean,
): TrackedFilm {
  const sightings = joinStretches(stretches);
  const hands = assignHands(sightings, mirrored);
  const report = reportOf(frames, hands, sightings);
  const findings = handFindings(report, cameraOf(stretches));
  return { track: trackOf({ frames, width, height }, hands), report, findings };
}

function cameraOf(stretches: readonly HandStretch[]): CameraMoves {
  const sum = (of: (camera: CameraMoves) => number) =>
    stretches.reduce((all, { camera }) => all + of(camera), 0);
  return { looks: sum(({ looks }) => looks), moves: sum(({ moves }) => moves) };
}

/** All sightings by frame; each stretch counted its trails from 1, here they are told apart. */
export function joinStretches(stretches: readonly Pick<HandStretch, 'sightings'>[]): readonly KeptSighting[] {
  let before = 0;
  return stretches.flatMap(({ sightings }) => {
    const here = unpackSightings(sightings).map((one) => ({ ...one, trail: one.trail + before }));
    before = here.reduce((most, { trail }) => Math.max(most, trail), before);
    return here;
  });
}
