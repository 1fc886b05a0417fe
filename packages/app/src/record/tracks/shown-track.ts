import type { Film, FilmTrack, MethodClock } from '@evenhand/core/ground/study';
import {
  type BenchPlane,
  benchPlane,
  type HandMotions,
  handMotions,
  type SpeedRibbon,
  speedRibbon,
  type Track,
  trackOnBench,
} from '@evenhand/core/record';

/** A track with everything that is worked out from it, for the clock and the calibration of its film. */
export interface ShownTrack {
  readonly record: FilmTrack;
  /** As it was made. */
  readonly track: Track;
  /** Smoothed paths in the picture, in pixels; nothing for a track in millimetres. */
  readonly inPicture: HandMotions | undefined;
  /** Smoothed paths for figures: in millimetres when the bench is calibrated, else in pixels. */
  readonly motions: HandMotions;
  readonly unit: Track['unit'];
  readonly ribbon: SpeedRibbon | undefined;
}

/** The plane of the bench, if the film is calibrated and the calibration holds. */
export function planeOf(film: Film): BenchPlane | undefined {
  if (film.calibration === undefined) return undefined;
  const plane = benchPlane(film.calibration, film);
  return plane.ok ? plane.value : undefined;
}

export function shownTrack(record: FilmTrack, track: Track, film: Film, clock: MethodClock): ShownTrack {
  const plane = planeOf(film);
  const onBench = plane === undefined ? track : trackOnBench(track, plane);
  const motions = handMotions(onBench, clock.timeOf);
  const inPicture =
    track.unit !== 'pixels' ? undefined : onBench === track ? motions : handMotions(track, clock.timeOf);
  const ribbon = speedRibbon(motions, track.frames, clock.timeOf);
  return { record, track, inPicture, motions, unit: onBench.unit, ribbon };
}
